//! The command line, run as its users run it.

#![allow(clippy::unwrap_used, reason = "tests")]

use fh_store::demos::DEMOS;
use serde_json::Value;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use tempfile::TempDir;

const HOOK: &str = include_str!("hook.plan.json");

/// A folder of its own to work in, with a sound plan and one that cannot be forged.
pub(crate) struct Shop {
    folder: TempDir,
}

impl Shop {
    pub(crate) fn new() -> Self {
        let shop = Self { folder: tempfile::tempdir().unwrap() };
        shop.write("hook.plan.json", HOOK);
        let over_determined = r#""drawn": { "length": "9 in", "section""#;
        shop.write("stopped.plan.json", HOOK.replace(r#""drawn": { "section""#, over_determined));
        shop
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    pub(crate) fn write(&self, name: &str, contents: impl AsRef<[u8]>) {
        fs::write(self.path(name), contents).unwrap();
    }

    /// The program in this folder, without a display and with settings of its own.
    fn command(&self, args: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_firstheat"));
        command
            .args(args)
            .current_dir(self.folder.path())
            .env("FIRSTHEAT_HOME", self.folder.path())
            .env_remove("DISPLAY")
            .env_remove("WAYLAND_DISPLAY");
        command
    }

    fn run(&self, args: &[&str]) -> Output {
        self.command(args).output().unwrap()
    }

    /// Runs a command that must succeed, and gives its standard output.
    pub(crate) fn succeed(&self, args: &[&str]) -> String {
        let output = self.run(args);
        assert_eq!(output.status.code(), Some(0), "{args:?}: {}", text(&output.stderr));
        assert!(output.stderr.is_empty(), "{}", text(&output.stderr));
        text(&output.stdout)
    }

    /// Runs a command that must fail with status 2, and gives what it says on standard error: one line.
    fn fail(&self, args: &[&str]) -> String {
        let output = self.run(args);
        let error = text(&output.stderr);
        assert_eq!(output.status.code(), Some(2), "{args:?}: {error}");
        assert!(!error.contains("panicked"), "{error}");
        assert!(error.ends_with('\n') && error.lines().count() == 1, "an error is one line: {error}");
        assert!(!error.trim_end().contains(char::is_control), "{error:?}");
        error.trim_end().to_owned()
    }
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

pub(crate) fn keys(value: &Value) -> Vec<&str> {
    value.as_object().unwrap().keys().map(String::as_str).collect()
}

#[test]
fn marks_are_a_table_that_lines_up() {
    let shop = Shop::new();
    let table = shop.succeed(&["marks", "hook.plan.json"]);
    for words in
        ["Gate hook (mild steel)", "2 pieces", "Marks from the datum: point end", "cut length", "rest of the bar"]
    {
        assert!(table.contains(words), "{words} in\n{table}");
    }
    let head = table.lines().find(|line| line.contains("becomes")).unwrap();
    let column = head.find("becomes").unwrap();
    let rows: Vec<&str> = table.lines().filter(|line| line.contains(" in  ")).collect();
    assert_eq!(rows.len(), 6, "{table}");
    for row in rows {
        assert!(row.is_char_boundary(column) && row[..column].ends_with("  "), "{row}");
    }
}

#[test]
fn marks_of_several_bars_end_in_what_all_of_them_take() {
    let shop = Shop::new();
    assert!(!shop.succeed(&["marks", "hook.plan.json"]).contains("The whole plan"));
    let bar = |count: u32, mm: u32| {
        format!(
            r#"{{ "count": {count}, "stock": {{ "square": "12 mm" }}, "segments": [ {{ "name": "a", "form": {{ "plain": {{ "length": "{mm} mm" }} }} }} ] }}"#
        )
    };
    let head = r#""firstheat": 1, "title": "Stand", "units": { "length": "mm", "marks": "1 mm" }"#;
    shop.write("stand.plan.json", format!("{{ {head}, \"bars\": [ {}, {} ] }}", bar(1, 100), bar(3, 50)));
    let text = shop.succeed(&["marks", "stand.plan.json"]);
    // 12 · 12 · 250 mm³ × 7.85 mg/mm³ = 0.283 kg.
    for said in ["The whole plan: 2 bars, 4 pieces", "250 mm (250.0 mm)", "mass of all bars", "0.283 kg (0.62 lb)"] {
        assert!(text.contains(said), "{said} in\n{text}");
    }
}

#[test]
fn marks_for_other_programs_keep_their_keys_and_order() {
    let shop = Shop::new();
    let json: Value = serde_json::from_str(&shop.succeed(&["marks", "hook.plan.json", "--json"])).unwrap();
    assert_eq!(keys(&json), ["title", "bars", "findings", "cautions", "sizes"]);
    let bar = &json["bars"][0];
    let bar_keys = [
        "name",
        "count",
        "stock_area_mm2",
        "stock_length_mm",
        "finished_mass_kg",
        "stock_mass_kg",
        "segments",
        "blocks",
    ];
    assert_eq!(keys(bar), bar_keys);
    let segment_keys = [
        "path",
        "name",
        "finished_volume_mm3",
        "trimmed_volume_mm3",
        "forged_length_mm",
        "stock_length_mm",
        "mark_start_mm",
        "mark_end_mm",
        "mark_end_shop",
        "mark_fixed",
    ];
    assert_eq!(keys(&bar["segments"][5]), segment_keys);
    let block_keys = ["mark_start_mm", "mark_end_mm", "fixed", "over_mm3", "over_length_mm", "takes_up"];
    assert_eq!(keys(&bar["blocks"][0]), block_keys);
    assert_eq!(bar["blocks"][0]["fixed"], serde_json::json!([true, false]));
    assert_eq!(bar["segments"][0]["mark_fixed"], false);
    assert_eq!(bar["count"], 2);
    assert!((bar["stock_area_mm2"].as_f64().unwrap() - 161.29).abs() < 1e-9);
    assert_eq!(bar["segments"][0]["path"], "1");
    let marks: Vec<f64> = (0..6).map(|at| bar["segments"][at]["mark_end_mm"].as_f64().unwrap()).collect();
    assert!(marks.is_sorted() && marks[0] > 0.0, "{marks:?}");
    assert!(bar["segments"][0]["mark_end_shop"].as_str().unwrap().ends_with(" in"));
}

#[test]
fn findings_for_other_programs_name_their_place() {
    let shop = Shop::new();
    let output = shop.run(&["check", "stopped.plan.json", "--json"]);
    assert_eq!(output.status.code(), Some(1));
    let json: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(keys(&json), ["title", "findings", "cautions"]);
    let finding = &json["findings"][0];
    assert_eq!(keys(finding), ["id", "severity", "bar", "path", "message", "remedy"]);
    assert_eq!(
        (&finding["severity"], &finding["bar"], &finding["path"]),
        (&"stop".into(), &"hook".into(), &"2".into())
    );
}

#[test]
fn check_tells_by_its_status_whether_there_is_a_stop() {
    let shop = Shop::new();
    shop.succeed(&["check", "hook.plan.json"]);
    let stopped = shop.run(&["check", "stopped.plan.json"]);
    assert_eq!(stopped.status.code(), Some(1));
    assert!(text(&stopped.stdout).starts_with("stop     2 hook: "), "{}", text(&stopped.stdout));
}

#[test]
fn a_plan_is_read_from_standard_input() {
    let shop = Shop::new();
    for (plan, status) in [(HOOK.as_bytes(), 0), (b"{ \"firstheat\": 1 }", 2)] {
        let mut child = shop
            .command(&["marks", "-"])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        child.stdin.take().unwrap().write_all(plan).unwrap();
        let output = child.wait_with_output().unwrap();
        assert_eq!(output.status.code(), Some(status));
        assert_eq!(status == 2, text(&output.stderr).ends_with("(standard input)\n"));
    }
}

#[test]
fn errors_name_the_place_and_the_file() {
    let shop = Shop::new();
    shop.write("bare.json", HOOK.replace("\"6 in\" } } }\n", "6 } } }\n"));
    shop.write("later.json", "{ \"firstheat\": 9, \"something\": \"new\" }");
    shop.write("bytes.json", b"{ \"firstheat\": 1, \"title\": \"\xe9\" }");
    shop.write("twist.json", HOOK.replace("\"curve\"", "\"twist\""));
    shop.write("nan.json", HOOK.replace("\"1/8 in\"", "NaN"));
    fs::File::create(shop.path("huge.json")).unwrap().set_len(100 * 1024 * 1024).unwrap();
    for (file, start, words) in [
        ("bare.json", "error: line 44, column 68, at bars[0].segments[5].form.hold.length: ", "6"),
        ("later.json", "error: line 1, column 16, at firstheat: ", "by a newer First Heat"),
        ("bytes.json", "error: line 1, column 29: ", "not UTF-8"),
        (
            "twist.json",
            "error: line 24, column 32, at bars[0].segments[1].bend.twist.angle: ",
            "there is no key \"angle\"",
        ),
        ("nan.json", "error: line 29, column 67: ", "\"NaN\" was found"),
        ("huge.json", "error: the file has 100 MB", "16 MB at most"),
        ("none.json", "error: cannot read, there is no such file", ""),
        (".", "error: this is a folder, a pipe or a device, not a file: .", ""),
    ] {
        for command in ["marks", "check"] {
            let error = shop.fail(&[command, file]);
            assert!(error.starts_with(start) && error.contains(words) && error.contains(file), "{error}");
        }
        let sheet = shop.fail(&["sheet", file, "-o", "a.pdf"]);
        assert!(sheet.starts_with(start) && !shop.path("a.pdf").exists(), "{sheet}");
        assert!(shop.fail(&[file]).starts_with(start));
    }
}

#[test]
fn wrong_commands_are_told() {
    let shop = Shop::new();
    for (args, words) in [
        (&["marks"][..], "the following required arguments were not provided: <PLAN>"),
        (&["marks", "a", "b"], "unexpected argument 'b' found"),
        (&["check", "--loud"], "unexpected argument '--loud' found"),
        (&["new", "-o", "a.json"], "required arguments were not provided: --stock <STOCK>"),
        (&["a", "b"], "'b'"),
        (&["sheet", "a", "-o", "a.pdf", "--paper", "a5"], "[possible values: a4, letter]"),
        (&["sheet", "a", "-o", "a.pdf", "--what", "cutlist"], "invalid value 'cutlist'"),
        (&["marks", "a", "\u{1b}[31mred\n"], "unexpected argument"),
    ] {
        let error = shop.fail(args);
        assert!(error.starts_with("error: ") && error.contains(words), "{error}");
        assert!(!error.contains("Usage") && error.ends_with("(firstheat --help shows the commands)"), "{error}");
    }
}

#[test]
fn sheets_are_written_as_pdf_and_svg() {
    let shop = Shop::new();
    shop.succeed(&["sheet", "hook.plan.json", "-o", "a.pdf"]);
    shop.succeed(&["sheet", "hook.plan.json", "-o", "b.PDF", "--paper", "LETTER", "--what", "Marks"]);
    shop.succeed(&["sheet", "hook.plan.json", "-o", "c.svg"]);
    let said = shop.succeed(&["sheet", "hook.plan.json", "-o", "d.svg", "--what", "templates,marks,templates"]);
    assert!(said.starts_with("wrote 4 pages, d-1.svg to d-4.svg; print them at 100 %"), "{said}");
    let pages = ["d-1.svg", "d-2.svg", "d-3.svg"].map(|file| fs::read_to_string(shop.path(file)).unwrap());
    let first = |words: &str| pages.iter().position(|page| page.contains(words)).unwrap();
    assert!(first("TEMPLATES") == 0 && first("MARK SHEET") > 0);
    assert!(!shop.path("d.svg").exists());
    let start = |name: &str| fs::read(shop.path(name)).unwrap()[..4].to_vec();
    assert_eq!((start("a.pdf"), start("b.PDF")), (b"%PDF".to_vec(), b"%PDF".to_vec()));
    assert!(fs::read_to_string(shop.path("c-1.svg")).unwrap().contains("<svg"));
}

#[test]
fn sheets_that_cannot_be_written_are_told() {
    let shop = Shop::new();
    for (output, what, words) in [
        ("a.png", "marks", "a sheet is written as .pdf or .svg, not as a.png"),
        ("none/a.pdf", "marks", "cannot write, there is no such file or folder: none/a.pdf"),
    ] {
        let error = shop.fail(&["sheet", "hook.plan.json", "-o", output, "--what", what]);
        assert_eq!(error, format!("error: {words}"));
    }
}

#[test]
fn the_piece_and_its_outlines_are_written_for_other_programs() {
    let shop = Shop::new();
    for (file, start) in
        [("a.stl", None), ("b.OBJ", Some("# in millimetres")), ("c.dxf", None), ("d.svg", Some("<svg"))]
    {
        let said = shop.succeed(&["export", "hook.plan.json", "-o", file]);
        assert!(said.contains("in mm"), "{said}");
        let bytes = fs::read(shop.path(file)).unwrap();
        assert!(start.is_none_or(|start| bytes.starts_with(start.as_bytes())) && bytes.len() > 500, "{file}");
    }
    let error = shop.fail(&["export", "hook.plan.json", "-o", "a.step"]);
    assert!(error.contains("a piece is written as .stl or .obj"), "{error}");
}

#[test]
fn a_new_plan_can_be_worked_with() {
    let shop = Shop::new();
    shop.succeed(&["new", "--stock", "30 x 8 mm flat", "-o", "hinge.plan.json", "--title", "Cold frame hinge"]);
    assert!(shop.succeed(&["marks", "hinge.plan.json"]).starts_with("Cold frame hinge (mild steel)"));
    let error = shop.fail(&["new", "--stock", "1/2 in square", "-o", "hinge.plan.json"]);
    let (before, after) = error.split_once("hinge.plan.json").unwrap();
    assert!(before.contains("already") && after.contains("--force overwrites it"), "{error}");
    shop.succeed(&["new", "--stock", "1/2 in square", "-o", "hinge.plan.json", "--force"]);
    let plan = fs::read_to_string(shop.path("hinge.plan.json")).unwrap();
    assert!(plan.contains(r#""stock": { "square": "1/2 in" }"#) && plan.contains("1/16 in"), "{plan}");
    assert!(plan.contains(r#""scale": "2 %""#), "{plan}");
    for (scale, written) in [("5 %", Some(r#""scale": "5 %""#)), ("0 %", None)] {
        shop.succeed(&["new", "--stock", "12 mm square", "-o", "bar.plan.json", "--scale", scale, "--force"]);
        let plan = fs::read_to_string(shop.path("bar.plan.json")).unwrap();
        assert_eq!(plan.contains("\"scale\":"), written.is_some_and(|written| plan.contains(written)), "{plan}");
    }
    assert!(shop.fail(&["new", "--stock", "12 mm square", "-o", "b.json", "--scale", "much"]).contains("--scale"));
    assert!(shop.fail(&["new", "--stock", "a plank", "-o", "a.json"]).contains("is not a bar shape"));
}

#[test]
fn without_a_display_the_first_try_shows_something() {
    let shop = Shop::new();
    let demo = shop.succeed(&[]);
    assert!(demo.starts_with("There is no display"), "{demo}");
    let sheet = DEMOS[0].file_name.replace(".plan.json", "-marks.pdf");
    assert!(demo.contains(&sheet) && demo.contains("Marks from the datum"), "{demo}");
    assert!(fs::read(shop.path(&sheet)).unwrap().starts_with(b"%PDF"));
    shop.succeed(&["hook.plan.json"]);
    assert!(shop.path("hook-marks.pdf").exists());
    // What is there is the smith's own.
    shop.write("hook-marks.pdf", "my notes");
    assert!(shop.succeed(&["hook.plan.json"]).contains("was written to hook-marks-2.pdf;"));
    assert_eq!(fs::read_to_string(shop.path("hook-marks.pdf")).unwrap(), "my notes");
}

#[test]
fn the_schema_and_the_completions_are_printed() {
    let shop = Shop::new();
    let schema: Value = serde_json::from_str(&shop.succeed(&["schema"])).unwrap();
    assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        assert!(shop.succeed(&["completions", shell]).contains("firstheat"));
    }
}

#[test]
fn help_has_examples() {
    let shop = Shop::new();
    let help = shop.succeed(&["--help"]);
    for words in ["Examples:", "firstheat sheet hook.plan.json -o hook.pdf", "Exit status"] {
        assert!(help.contains(words), "{help}");
    }
    for command in ["marks", "check", "sheet", "export", "new", "completions"] {
        assert!(shop.succeed(&[command, "--help"]).contains("Example"), "{command}");
    }
    if Path::new("/dev/full").exists() {
        let full = fs::File::options().write(true).open("/dev/full").unwrap();
        assert_eq!(shop.command(&["--help"]).stdout(full).status().unwrap().code(), Some(2));
    }
    assert_eq!(shop.succeed(&["--version"]), format!("firstheat {}\n", env!("CARGO_PKG_VERSION")));
}

#[test]
fn a_reader_that_stops_early_is_no_fault() {
    let shop = Shop::new();
    for args in [&["schema"][..], &["marks", "hook.plan.json"], &["completions", "bash"], &["--help"]] {
        let mut child = shop.command(args).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        drop(child.stdout.take());
        let output = child.wait_with_output().unwrap();
        assert!(output.status.success() && output.stderr.is_empty(), "{args:?}: {}", text(&output.stderr));
    }
}

#[test]
fn a_plan_cannot_play_with_the_terminal() {
    let shop = Shop::new();
    shop.write("sly.json", HOOK.replace("\"Gate hook\"", "\"Gate\\u001b[31m hook\\n\""));
    let table = shop.succeed(&["marks", "sly.json"]);
    assert!(table.starts_with("Gate [31m hook  (mild steel)\n"), "{table}");
    // Nor where it cannot be read.
    let sly = "\\u001b[31mRED\\u001b]0;title\\u0007\\n\\u202e";
    let with = |from: &str, to: String| HOOK.replacen(from, &to, 1);
    for (name, plan) in [
        ("key.json", with("\"title\"", format!("\"{sly}\""))),
        ("material.json", with("\"bars\"", format!("\"material\": \"{sly}\", \"bars\""))),
        ("size.json", with("\"1/8 in\"", format!("\"1{sly} in\""))),
        ("section.json", with("\"square\"", format!("\"{sly}\""))),
    ] {
        shop.write(name, plan);
        assert!(shop.fail(&["marks", name]).contains(name));
    }
}

#[cfg(unix)]
#[test]
fn a_pipe_in_place_of_a_plan_is_refused_and_not_waited_for() {
    let shop = Shop::new();
    assert!(Command::new("mkfifo").arg(shop.path("pipe.json")).status().unwrap().success());
    for command in ["marks", "check", "steps"] {
        let error = shop.fail(&[command, "pipe.json"]);
        assert_eq!(error, "error: this is a folder, a pipe or a device, not a file: pipe.json");
    }
    let error = shop.fail(&["marks", "/dev/zero"]);
    assert!(error.contains("not a file"), "{error}");
}

#[test]
fn a_stream_without_end_is_refused() {
    let shop = Shop::new();
    let zeros = fs::File::open("/dev/zero").unwrap();
    let output = shop.command(&["marks", "-"]).stdin(zeros).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    let words = "error: the file has more than 16 MB, and a plan has 16 MB at most (standard input)";
    assert_eq!(text(&output.stderr).trim_end(), words);
}

#[test]
fn what_is_written_takes_the_place_of_its_own_kind_alone() {
    let shop = Shop::new();
    shop.write("work.pdf", HOOK);
    shop.write("mine.obj", "o a piece of somebody else's");
    for args in [&["sheet", "hook.plan.json", "-o", "work.pdf"][..], &["export", "hook.plan.json", "-o", "mine.obj"]] {
        let error = shop.fail(args);
        assert!(
            error.starts_with("error: there is already a file of another kind")
                && error.trim_end().ends_with("; --force overwrites it"),
            "{error}"
        );
    }
    assert_eq!(fs::read_to_string(shop.path("work.pdf")).unwrap(), HOOK);
    for _ in 0..2 {
        shop.succeed(&["sheet", "hook.plan.json", "-o", "work.pdf", "--force"]);
        shop.succeed(&["sheet", "hook.plan.json", "-o", "work.pdf"]);
        for file in ["a.stl", "a.dxf", "a.svg", "a.obj"] {
            shop.succeed(&["export", "hook.plan.json", "-o", file]);
        }
    }
}

#[cfg(unix)]
#[test]
fn a_link_to_a_plan_does_not_turn_it_into_a_sheet() {
    let shop = Shop::new();
    std::os::unix::fs::symlink("hook.plan.json", shop.path("sheet.pdf")).unwrap();
    assert!(shop.fail(&["sheet", "hook.plan.json", "-o", "sheet.pdf"]).contains("of another kind"));
    assert_eq!(fs::read_to_string(shop.path("hook.plan.json")).unwrap(), HOOK);
}

#[test]
fn a_write_protected_file_stays_as_it_is() {
    let shop = Shop::new();
    shop.succeed(&["sheet", "hook.plan.json", "-o", "a.pdf"]);
    for file in ["a.pdf", "hook.plan.json"] {
        let mut permissions = fs::metadata(shop.path(file)).unwrap().permissions();
        permissions.set_readonly(true);
        fs::set_permissions(shop.path(file), permissions).unwrap();
    }
    let error = shop.fail(&["sheet", "hook.plan.json", "-o", "a.pdf", "--what", "templates"]);
    assert_eq!(error, "error: the file is write-protected: a.pdf");
    let error = shop.fail(&["new", "--stock", "12 mm round", "-o", "hook.plan.json", "--force"]);
    assert_eq!(error, "error: the file is write-protected: hook.plan.json");
    assert_eq!(fs::read_to_string(shop.path("hook.plan.json")).unwrap(), HOOK);
}

#[test]
fn a_new_plan_can_be_sent_on() {
    let shop = Shop::new();
    let plan = shop.succeed(&["new", "--stock", "1/2 in square", "-o", "-", "--title", "Latch"]);
    assert!(plan.contains("\"title\": \"Latch\"") && !shop.path("-").exists(), "{plan}");
    shop.write("latch.plan.json", plan);
    assert!(shop.succeed(&["marks", "latch.plan.json"]).starts_with("Latch"));
}

#[test]
fn nothing_is_left_in_the_folder_but_what_was_asked_for() {
    let shop = Shop::new();
    shop.succeed(&["sheet", "hook.plan.json", "-o", "a.pdf"]);
    let names: Vec<String> = fs::read_dir(shop.folder.path())
        .unwrap()
        .map(|file| file.unwrap().file_name().into_string().unwrap())
        .collect();
    assert_eq!(names.len(), 3, "{names:?}");
    assert!(Path::new(&shop.path("a.pdf")).exists());
}

#[test]
fn where_nothing_is_found_it_says_what_was_not_looked_at() {
    let shop = Shop::new();
    let sound = r#"{ "firstheat": 1, "scale": "2 %", "bars": [{ "stock": { "square": "12 mm" }, "segments": [
        { "form": { "taper": { "length": "60 mm", "to": "point" } } }, { "form": { "plain": { "length": "150 mm" } } } ] }] }"#;
    shop.write("sound.plan.json", sound);
    assert_eq!(shop.succeed(&["check", "sound.plan.json"]), "Nothing found wrong. Strength is not checked.\n");
}

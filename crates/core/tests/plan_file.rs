//! Plan files: what is read, what is written, and what is refused in which words.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use fh_core::file::{self, FileError};
use fh_core::plan::FormKind;
use proptest::prelude::*;

const EVERY_KEY: &str = include_str!("every_key.plan.json");

/// A plan to break in one place at a time.
const SOUND: &str = r#"{
  "firstheat": 1,
  "units": { "length": "in", "marks": "1/16 in" },
  "bars": [
    {
      "name": "hook",
      "count": 2,
      "stock": { "square": "1/2 in" },
      "segments": [
        { "form": { "taper": { "length": "2 in", "to": "point", "runout": { "power": 2 } } } },
        { "form": { "drawn": { "length": "4 in", "section": { "round": "3/8 in" } } } },
        { "form": { "shoulder": { "to": "stock", "radius": "3 mm", "sides": "all" } } },
        { "form": { "plain": { "length": "5 in" } }, "bend": { "curve": { "angle": "90 deg" } } },
        { "form": { "flag": { "outline": { "polygon": [["0 mm", "0 mm"], ["9 mm", "0 mm"], ["5 mm", "9 mm"]] }, "thickness": "3 mm" } } }
      ]
    }
  ]
}
"#;

/// The error of the sound plan with one piece of its text changed.
fn broken(from: &str, to: &str) -> FileError {
    assert_eq!(SOUND.matches(from).count(), 1, "{from} must stand in the plan once");
    file::read(SOUND.replace(from, to).as_bytes()).expect_err(to)
}

fn error_of(bytes: &[u8]) -> FileError {
    file::read(bytes).unwrap_err()
}

#[test]
fn a_file_in_our_layout_is_written_as_it_was_read() {
    let plan = file::read(EVERY_KEY.as_bytes()).unwrap();
    assert_eq!(file::write(&plan), EVERY_KEY);
}

#[test]
fn what_is_written_is_read_as_the_same_plan() {
    let plan = file::read(SOUND.as_bytes()).unwrap();
    let text = file::write(&plan);
    assert_eq!(file::read(text.as_bytes()).unwrap(), plan);
    assert!(text.ends_with("}\n") && text.lines().all(|line| line.chars().count() <= 100));
}

#[test]
fn a_byte_order_mark_is_no_fault() {
    let mut bytes = b"\xef\xbb\xbf".to_vec();
    bytes.extend(SOUND.as_bytes());
    assert_eq!(file::read(&bytes).unwrap(), file::read(SOUND.as_bytes()).unwrap());
}

/// One way to break the sound plan: what is changed into what, with ▸ at the place that the error names, the key that it
/// names, and some of its words.
type Case<'a> = (&'a str, &'a str, &'a str, &'a str);

fn check(cases: &[Case<'_>]) {
    for &(from, marked, path, words) in cases {
        let text = SOUND.replace(from, marked);
        let (before, after) = text.split_once('▸').unwrap_or((&text, ""));
        let error = broken(from, &marked.replace('▸', ""));
        assert!(error.message.contains(words), "{marked}: {error}");
        assert_eq!(error.path, path, "{marked}: {error}");
        if !after.is_empty() {
            let line = before.split('\n').count();
            let column = before.chars().rev().take_while(|c| *c != '\n').count() + 1;
            assert_eq!((error.line, error.column), (Some(line), Some(column)), "{marked}: {error}");
        }
    }
}

#[test]
fn keys_that_are_wrong_are_named() {
    let drawn = "bars[0].segments[1].form.drawn";
    let form = "bars[0].segments[3].form";
    check(&[
        (r#""length": "4 in""#, r#"▸"lenght": "4 in""#, &format!("{drawn}.lenght"), r#"was "length" meant?"#),
        (r#""length": "4 in""#, r#""length": "4 in", ▸"length": "5 in""#, &format!("{drawn}.length"), "is here twice"),
        (r#""name": "hook""#, r#"▸"colour": 3"#, "bars[0].colour", r#"the keys are "name", "count", "stock""#),
        (r#""count": 2"#, r#"▸"tools": ["swage"]"#, "bars[0].tools", r#"there is no key "tools" here"#),
        (r#""units""#, r#"▸"firstheat""#, "firstheat", "is here twice"),
        ("{\n      \"name\": \"hook\"", "{ \"nam\\u0065\": \"hook\", ▸\"name\": \"\"", "bars[0].name", "is here twice"),
        (r#"{ "plain": { "length": "5 in" } }"#, "▸{}", form, "a name belongs here"),
        (
            r#"{ "plain": {"#,
            r#"▸{ "trim": { "length": "1 in" }, "plain": {"#,
            form,
            r#"but "trim" and "plain" were read"#,
        ),
        (r#""plain""#, r#"▸"plane""#, &format!("{form}.plane"), r#"was "plain" meant?"#),
        (r#""form": { "plain": { "length": "5 in" } }, "#, "", "bars[0].segments[3]", r#"the key "form" is missing"#),
    ]);
}

#[test]
fn lengths_of_the_wrong_kind_are_named() {
    for (read, words) in [
        ("4", "4"),
        (r#""4""#, "4"),
        (r#""4 kg""#, "kg"),
        (r#""0 in""#, "0"),
        (r#""-4 in""#, "-4"),
        (r#""NaN in""#, "NaN"),
        (r#""""#, ""),
        (r#"{ "in": 4 }"#, "a group in { } was found"),
        (r#"["4 in"]"#, "none belongs here"),
        ("true", "true was found"),
        ("null", "leave the key out"),
    ] {
        let marked = format!("▸{read}");
        check(&[(r#""4 in""#, &marked, "bars[0].segments[1].form.drawn.length", words)]);
        check(&[(r#""3/8 in""#, &marked, "bars[0].segments[1].form.drawn.section.round", words)]);
    }
}

#[test]
fn sections_of_the_wrong_kind_are_named() {
    let square = r#"{ "square": "1/2 in" }"#;
    check(&[
        (square, r#"{ "square": ▸0.5 }"#, "bars[0].stock.square", "0.5"),
        (
            square,
            r#"{ "square": ▸true }"#,
            "bars[0].stock.square",
            "wanted here: a length in quotes, or its sizes in { }",
        ),
        (square, r#"{ "square": { "side": ▸1 } }"#, "bars[0].stock.square.side", "1"),
        (square, r#"{ "square": ▸{ "edge_radius": "0 mm" } }"#, "bars[0].stock.square", r#"the key "side" is missing"#),
        (
            square,
            r#"{ "square": { "side": "1 in", ▸"edge": "0 mm" } }"#,
            "bars[0].stock.square.edge",
            r#"no key "edge""#,
        ),
        (square, r#"{ ▸"pentagon": "1 in" }"#, "bars[0].stock.pentagon", r#"there is no "pentagon" here"#),
        (square, r#"▸"square""#, "bars[0].stock", "its sizes are missing"),
        (square, r#"▸"hexagram""#, "bars[0].stock", r#"there is no "hexagram" here"#),
        (square, "▸12", "bars[0].stock", "a bare number was found"),
        (square, r#"▸["1/2 in"]"#, "bars[0].stock", "none belongs here"),
    ]);
}

#[test]
fn other_values_of_the_wrong_kind_are_named() {
    let sides = "bars[0].segments[2].form.shoulder.sides";
    let polygon = "bars[0].segments[4].form.flag.outline.polygon";
    check(&[
        (r#""count": 2"#, r#""count": ▸"2""#, "bars[0].count", "a whole number"),
        (r#""count": 2"#, r#""count": ▸-2"#, "bars[0].count", "the number -2 was found; wanted here: a whole number"),
        (r#""count": 2"#, r#""count": ▸2.5"#, "bars[0].count", "the number 2.5 was found"),
        (r#""count": 2"#, r#""count": ▸1e99"#, "bars[0].count", "a whole number"),
        (r#""count": 2"#, r#""count": ▸1e999"#, "bars[0].count", "too large"),
        (r#""power": 2"#, r#""power": ▸"2""#, "bars[0].segments[0].form.taper.runout.power", "wanted here: a number"),
        (r#""all""#, r#"▸"both""#, sides, r#"the text "both" was found; wanted here: "all" or a list"#),
        (r#""all""#, "▸[]", sides, "no side is named"),
        (r#""all""#, "▸[0, 0]", sides, "the side 0 is named twice"),
        (
            r#""all""#,
            "[0, ▸45]",
            &format!("{sides}[1]"),
            "the number 45 was found; wanted here: one of the sides 0 (up)",
        ),
        (r#""length": "in""#, r#""length": ▸"furlong""#, "units.length", r#"there is no "furlong" here"#),
        (r#""1/16 in""#, r#"▸"0 in""#, "units.marks", "0"),
        (r#""90 deg""#, r#"▸"90 in""#, "bars[0].segments[3].bend.curve.angle", "90 in"),
        (r#"["9 mm", "0 mm"]"#, r#"▸["9 mm"]"#, &format!("{polygon}[1]"), "a pair, along and across"),
        (
            r#"[["0 mm", "0 mm"], ["9 mm", "0 mm"]"#,
            r#"▸[["0 mm", "0 mm"]"#,
            polygon,
            "3 to 250 corners; this one has 2",
        ),
    ]);
}

#[test]
fn values_that_make_no_plan_are_named() {
    let square = r#"{ "square": "1/2 in" }"#;
    let touching = r#"▸[["0 mm", "0 mm"], ["9 mm", "0 mm"], ["5 mm", "0 mm"]]"#;
    let polygon = r#"[["0 mm", "0 mm"], ["9 mm", "0 mm"], ["5 mm", "9 mm"]]"#;
    check(&[
        (r#""count": 2"#, r#""count": ▸0"#, "bars[0].count", "at least 1 is made"),
        (r#""power": 2"#, r#""power": ▸10.5"#, "bars[0].segments[0].form.taper.runout.power", "from 0.1 to 10"),
        (square, r#"▸"point""#, "bars[0].stock", r#"no bar has the section "point""#),
        (
            r#"{ "round": "3/8 in" }"#,
            r#"▸"point""#,
            "bars[0].segments[1].form.drawn.section",
            "only be the end of a taper",
        ),
        (
            r#""to": "stock""#,
            r#""to": ▸{ "edge": "9 mm" }"#,
            "bars[0].segments[2].form.shoulder.to",
            "only be the end of a taper",
        ),
        (r#""to": "point""#, r#""to": ▸"same""#, "bars[0].segments[0].form.taper.to", "before the first there is none"),
        (r#""90 deg""#, r#"▸"-90 deg""#, "bars[0].segments[3].bend.curve.angle", "turns by more than 0"),
        (polygon, touching, "bars[0].segments[4].form.flag.outline.polygon", "touches itself"),
        (r#""units""#, r#""material": ▸"unobtainium", "units""#, "material", r#"it has "mild steel""#),
        (r#""units""#, r#""scale": ▸"100 %", "units""#, "scale", "100 %"),
        (r#""units""#, r#""limits": { "upset_sure": ▸0 }, "units""#, "limits.upset_sure", "a limit is above 0"),
    ]);
    let none = error_of(br#"{ "firstheat": 1, "bars": [] }"#);
    assert_eq!(none.to_string(), "line 1, column 27, at bars: a plan has at least one bar; this one has none");
}

#[test]
fn plates_that_say_too_much_or_too_little_of_their_blank_are_named() {
    let flag = "bars[0].segments[4].form.flag";
    let thickness = r#""thickness": "3 mm""#;
    let with = |keys: &str| format!("{keys}, {thickness}");
    let corner = r#"["9 mm", "0 mm"]"#;
    let polygon = r#"[["0 mm", "0 mm"], ["9 mm", "0 mm"], ["5 mm", "9 mm"]]"#;
    let both = format!(r#"{}, "trim": ▸"5 %""#, with(r#""blank": { "disc": { "diameter": "9 mm" } }"#));
    check(&[
        (thickness, &both, &format!("{flag}.trim"), r#"it has "blank" or "trim", one of the two"#),
        (
            thickness,
            &with(r#""blank": { "rectangle": ▸{ "length": "9 mm" } }"#),
            &format!("{flag}.blank.rectangle"),
            "a blank has both its sizes",
        ),
        (
            thickness,
            &with(r#""base_line": { "outline": ▸"1 mm" }"#),
            &format!("{flag}.base_line.outline"),
            "counted from the base line already",
        ),
        (
            thickness,
            &with(r#""base_line": { "blank": ▸"1 mm" }"#),
            &format!("{flag}.base_line.blank"),
            "this flag has no blank",
        ),
        (
            corner,
            r#"["9 mm", "0 mm"], { "arc": ▸"360 deg" }"#,
            &format!("{flag}.outline.polygon[2].arc"),
            "more than 0 and less than a turn",
        ),
        (
            corner,
            r#"["9 mm", "0 mm"], { "arc": "90 deg", ▸"bulge": "in" }"#,
            &format!("{flag}.outline.polygon[2].bulge"),
            r#"was "bulges" meant?"#,
        ),
        (
            polygon,
            r#"▸[["0 mm", "0 mm"], ["9 mm", "0 mm"], { "arc": "200 deg", "bulges": "in" }, ["5 mm", "9 mm"]]"#,
            &format!("{flag}.outline.polygon"),
            "touches itself",
        ),
        (
            polygon,
            r#"▸[["0 mm", "0 mm"], ["9 mm", "0 mm"], { "arc": "250 deg", "bulges": "in" }, ["5 mm", "9 mm"]]"#,
            &format!("{flag}.outline.polygon"),
            "take away all of it",
        ),
        (
            polygon,
            r#"▸[["0 mm", "0 mm"], { "arc": "90 deg" }, { "arc": "90 deg" }, ["9 mm", "0 mm"], ["5 mm", "9 mm"]]"#,
            &format!("{flag}.outline.polygon"),
            "two arcs follow corner 1",
        ),
    ]);
}

#[test]
fn text_that_is_no_json_is_placed() {
    check(&[
        (r#""4 in""#, "▸NaN", "", r#""NaN" was found; a value belongs here"#),
        (r#""4 in""#, "-▸Infinity", "", r#""Infinity" was found; this isn't a number"#),
        (r#""4 in""#, "▸'4 in'", "", "a value belongs here"),
        ("\"count\": 2,\n      \"stock", "\"count\": 2\n      ▸\"stock", "", "a , or the } that ends the group"),
        (r#""count": 2,"#, r#""count" ▸2,"#, "", "a : belongs between"),
        (r#""count": 2,"#, "▸count: 2,", "", r#""count" was found; a key in quotes belongs here"#),
        (r#""90 deg" } } },"#, r#""90 deg" } } }, ▸,"#, "", "a value belongs here"),
        (r#""name": "hook""#, "\"name\": \"h▸o\nok\"", "", "may not run over the end of a line"),
        (r#""name": "hook""#, r#""name": "h\▸ook""#, "", "must be written twice"),
        ("  ]\n}\n", "  ],\n▸}\n", "", "nothing behind it"),
        ("  ]\n}\n", "  ]\n} ▸}\n", "", "the plan is closed before this"),
    ]);
    for end in [1, 100, 300, SOUND.len() - 3] {
        let error = error_of(&SOUND.as_bytes()[..end]);
        assert!(error.message.contains("the file ends"), "{error}");
    }
}

#[test]
fn other_files_are_told_from_plans() {
    for (bytes, words) in [
        (&b""[..], "the file is empty"),
        (b" \n", "the file is empty"),
        (b"[]", "this isn't a plan of First Heat: a plan is a group in { }, but a list in [ ] was found"),
        (b"\"plan\"", "this isn't a plan of First Heat"),
        (b"{ \"bars\": [] }", "the key \"firstheat\" is missing"),
        (b"{ \"firstheat\": 2, \"later\": 3 }", "by a newer First Heat, in version 2"),
        (b"{ \"firstheat\": 0 }", "this isn't a version of the plan file"),
        (b"{ \"firstheat\": \"1\" }", "this isn't a version of the plan file"),
        (b"{ \"firstheat\": 1.5 }", "this isn't a version of the plan file"),
        (b"\xff\xfe{\0", "UTF-16"),
        (b"%PDF-1.7", "a value belongs here"),
    ] {
        let error = error_of(bytes);
        assert!(error.message.contains(words), "{error}");
    }
}

#[test]
fn bytes_that_are_no_text_are_placed() {
    let mut bytes = SOUND.as_bytes().to_vec();
    let at = SOUND.find("hook").unwrap();
    bytes[at] = 0xE9;
    let error = error_of(&bytes);
    assert_eq!((error.line, error.column), (Some(6), Some(16)));
    assert!(error.message.contains("not UTF-8") && error.message.contains("0xe9"), "{error}");
}

#[test]
fn a_file_far_too_large_is_refused_at_once() {
    let bytes = vec![b' '; 17 * 1024 * 1024];
    assert!(error_of(&bytes).message.contains("16 MB at most"));
}

#[test]
fn a_well_without_bottom_neither_hangs_nor_overflows() {
    for (open, close) in [("[", "]"), ("{\"bars\":[", "]}")] {
        let deep = 500_000;
        let text = format!("{{\"firstheat\":1,\"bars\":{}{}}}", open.repeat(deep), close.repeat(deep));
        assert!(error_of(text.as_bytes()).message.contains("too deep"));
    }
}

#[test]
fn a_plan_in_memory_is_checked_as_one_that_is_read() {
    let mut plan = file::read(SOUND.as_bytes()).unwrap();
    assert_eq!(file::check(&plan), Ok(()));
    plan.bars[0].count = Some(0);
    assert_eq!(
        file::check(&plan).unwrap_err().to_string(),
        "at bars[0].count: 0 pieces were read, but at least 1 is made"
    );
}

#[test]
fn large_nonsense_is_told_in_few_words() {
    let many_keys: Vec<String> = (0..200_000).map(|number| format!("\"{number}\": 1")).collect();
    let long_key = "x".repeat(1_000_000);
    for text in [
        format!("{{ \"firstheat\": 1, {} }}", many_keys.join(", ")),
        format!("{{ \"firstheat\": 1, \"{long_key}\": 1 }}"),
        SOUND.replace("plain", &long_key),
        SOUND.replace("\"all\"", &format!("\"{long_key}\"")),
        SOUND.replace("\"4 in\"", &format!("\"{long_key}\"")),
        SOUND.replace("\"units\"", &format!("\"material\": \"{long_key}\", \"units\"")),
    ] {
        let error = error_of(text.as_bytes());
        assert!(error.to_string().chars().count() < 600, "{error}");
    }
}

#[test]
fn joints_are_refused_in_the_smiths_words() {
    let with = |joints: &str| {
        let end = SOUND.rfind('}').unwrap();
        format!("{}, \"joints\": {joints} }}", &SOUND[..end])
    };
    let joint = |fixed: &str, moved: &str| {
        with(&format!(
            r#"[{{ "kind": "weld", "fixed": {{ "bar": "hook", "segment": "a"{fixed} }}, "moved": [{moved}] }}]"#
        ))
    };
    let other = r#"{ "bar": "hook", "segment": "b" }"#;
    assert!(file::read(joint("", other).as_bytes()).is_ok());
    for (text, path, words) in [
        (joint("", ""), "joints[0].moved", "at least one member"),
        (joint(r#", "turn": "90 deg""#, other), "joints[0].fixed.turn", "is not turned"),
        (joint(r#", "copy": 0"#, other), "joints[0].fixed.copy", "counted from 1"),
        (joint(r#", "side": "top""#, other), "joints[0].fixed.side", "top"),
        (joint(r#", "side": 90"#, other), "joints[0].fixed.side", "\"start\""),
        (with(r#"[{ "kind": "glue" }]"#), "joints[0].kind", "there is no \"glue\" here"),
    ] {
        let error = error_of(text.as_bytes());
        assert_eq!(error.path, path, "{error}");
        assert!(error.message.contains(words), "{error}");
    }
}

#[test]
fn a_plan_of_many_segments_is_read() {
    let segment = r#"{ "form": { "plain": { "length": "5 in" } }, "bend": { "curve": { "angle": "90 deg" } } },"#;
    let count = 2 * 1024 * 1024 / segment.len();
    let start = format!("\"segments\": [{}", segment.repeat(count));
    let plan = file::read(SOUND.replace("\"segments\": [", &start).as_bytes()).unwrap();
    assert_eq!(plan.bars[0].segments.len(), count + 5);
}

#[test]
fn a_sketch_is_read_under_its_first_name_too() {
    let old = EVERY_KEY.replace("\"sketch\"", "\"underlay\"");
    assert_ne!(old, EVERY_KEY);
    let plan = file::read(old.as_bytes()).unwrap();
    assert!(plan.underlay.is_some());
    assert_eq!(plan, file::read(EVERY_KEY.as_bytes()).unwrap());
}

#[test]
fn the_schema_names_every_key_of_the_example() {
    let schema = file::schema().to_string();
    let plan: serde_json::Value = serde_json::from_str(EVERY_KEY).unwrap();
    let mut left = vec![plan];
    while let Some(value) = left.pop() {
        match value {
            serde_json::Value::Object(members) => {
                for (key, value) in members {
                    assert!(schema.contains(&format!("\"{key}\"")), "{key}");
                    left.push(value);
                }
            }
            serde_json::Value::Array(items) => left.extend(items),
            _ => {}
        }
    }
}

proptest! {
    #[test]
    fn no_bytes_make_the_reader_panic(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let _ = file::read(&bytes);
    }

    #[test]
    fn no_change_of_a_plan_makes_the_reader_panic(
        start in 0..EVERY_KEY.len(),
        length in 0_usize..40,
        bytes in proptest::collection::vec(prop_oneof![any::<u8>(), Just(b'"'), Just(b'{'), Just(b']'), b'0'..=b'9'], 0..12),
    ) {
        let mut text = EVERY_KEY.as_bytes().to_vec();
        let end = (start + length).min(text.len());
        text.splice(start..end, bytes);
        if let Ok(plan) = file::read(&text) {
            let again = file::write(&plan);
            prop_assert_eq!(file::read(again.as_bytes()).map_err(|error| error.to_string()), Ok(plan));
        }
    }

    #[test]
    fn no_text_in_place_of_a_size_makes_the_reader_panic(text in "\\PC{0,16}|[-0-9./ ¼½'\"inmcft]{0,12}") {
        let text = serde_json::Value::from(text).to_string();
        let _ = file::read(SOUND.replace("\"4 in\"", &text).as_bytes());
    }
}

#[test]
fn the_schema_tells_each_form_where_it_stands() {
    let schema = file::schema();
    let forms = schema["$defs"]["Form"]["oneOf"].as_array().unwrap();
    assert_eq!(forms.len(), FormKind::ALL.len());
    for kind in FormKind::ALL {
        let form = forms.iter().find(|form| form["required"][0] == kind.name()).unwrap();
        let sizes = &form["properties"][kind.name()];
        assert_eq!(sizes["type"], "object", "{}", kind.name());
        assert_eq!(sizes["additionalProperties"], false, "{}", kind.name());
        assert!(sizes.get("description").is_none(), "it is told once: {}", kind.name());
        assert!(form["description"].is_string(), "{}", kind.name());
    }
}

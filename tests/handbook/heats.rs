//! Heats and times that others have counted, beside what the program says: the table of `docs/handbook/heats-beside-books.md`.

use fh_core::balance::balance;
use fh_core::file;
use fh_core::plan::{Operation as O, Plan};
use fh_store::demos::DEMOS;
use fh_work::{Shop, Worked, WorkedStep, work_out};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use tests::{one_bar, project};

fn worked(plan: &Plan) -> Worked {
    work_out(plan, &balance(plan), &Shop::default())
}

fn demo(name: &str) -> Worked {
    let demo = DEMOS.iter().find(|demo| demo.file_name == format!("{name}.plan.json")).unwrap();
    worked(&file::read(demo.text.as_bytes()).unwrap())
}

fn on(stock: &Value, segments: &[Value]) -> Worked {
    worked(&tests::read(&one_bar(stock, segments)))
}

fn part(name: &str, form: &Value) -> Value {
    json!({ "name": name, "form": form })
}

fn bent(name: &str, form: &Value, bend: &Value) -> Value {
    json!({ "name": name, "form": form, "bend": bend })
}

/// A nail of 6 mm square: its point, and a head upset on the end.
fn nail() -> Worked {
    on(
        &json!({ "square": "6 mm" }),
        &[
            part("point", &json!({ "taper": { "length": "50 mm", "to": "point" } })),
            part("head", &json!({ "drawn": { "length": "3 mm", "section": { "square": "11 mm" } } })),
        ],
    )
}

/// Both faces of a tong jaw, its boss and the rein, with the quarter turn between them.
fn tong() -> Worked {
    let boss = json!({ "hole": { "outline": { "rectangle": { "length": "30 mm", "width": "25 mm" } }, "thickness": "10 mm",
        "hole": { "round": "9 mm" }, "made": "punched" } });
    let turn =
        json!({ "drawn": { "length": "30 mm", "section": { "flat": { "width": "18 mm", "thickness": "11 mm" } } } });
    on(
        &json!({ "flat": { "width": "25 mm", "thickness": "12 mm" } }),
        &[
            part(
                "jaw",
                &json!({ "drawn": { "length": "50 mm", "section": { "flat": { "width": "22 mm", "thickness": "8 mm" } } } }),
            ),
            part("boss", &boss),
            bent("turn", &turn, &json!({ "twist": { "turns": 0.25 } })),
            part("rein", &json!({ "plain": { "length": "150 mm" } })),
        ],
    )
}

/// An S-hook of 1/4 in square with a rat-tail at either end and a twist between.
fn s_hook() -> Worked {
    let tail = json!({ "taper": { "length": "3 in", "to": { "round": "1/8 in" } } });
    let bow = |side: &str| json!({ "curve": { "angle": "200 deg", "inside_radius": "3/4 in", "side": side } });
    on(
        &json!({ "square": "1/4 in" }),
        &[
            bent("tail", &tail, &bow("0 deg")),
            bent("body", &json!({ "plain": { "length": "2 in" } }), &json!({ "twist": { "turns": 1.5 } })),
            bent("other tail", &tail, &bow("180 deg")),
        ],
    )
}

/// A shoe of 3/4 × 3/8 in that is welded across its heels.
fn bar_shoe() -> Worked {
    let ring = json!({ "drawn": { "length": "13 in", "section": "stock" } });
    on(
        &json!({ "flat": { "width": "3/4 in", "thickness": "3/8 in" } }),
        &[bent("shoe", &ring, &json!({ "ring": {} })), part("lap", &json!({ "weld": { "allowance": "3/8 in" } }))],
    )
}

fn eye() -> Worked {
    let eye = json!({ "drawn": { "section": "stock" } });
    let ring = json!({ "ring": { "inside_diameter": "25 mm", "sweep": "316 deg" } });
    on(
        &json!({ "round": "10 mm" }),
        &[part("shank", &json!({ "plain": { "length": "250 mm" } })), bent("eye", &eye, &ring)],
    )
}

fn square_hole() -> Worked {
    let hole = json!({ "hole": { "outline": { "rectangle": { "length": "1 in", "width": "3/4 in" } }, "thickness": "3/8 in",
        "hole": { "square": "1/4 in" }, "made": "punched" } });
    let plain = json!({ "plain": { "length": "4 in" } });
    on(&json!({ "square": "1/2 in" }), &[part("near", &plain), part("eye", &hole), part("far", &plain)])
}

fn link() -> Worked {
    on(
        &json!({ "round": "8 mm" }),
        &[
            bent("link", &json!({ "drawn": { "length": "100 mm", "section": "stock" } }), &json!({ "ring": {} })),
            part("lap", &json!({ "weld": { "allowance": "8 mm" } })),
        ],
    )
}

fn shoulder() -> Worked {
    on(
        &json!({ "square": "12 mm" }),
        &[
            part("shank", &json!({ "plain": { "length": "150 mm" } })),
            part(
                "step",
                &json!({ "shoulder": { "to": { "flat": { "width": "12 mm", "thickness": "9 mm" } }, "radius": "3 mm", "sides": [0] } }),
            ),
            part("tongue", &json!({ "drawn": { "length": "60 mm", "section": "same" } })),
        ],
    )
}

fn doing(worked: &Worked, operation: O) -> WorkedStep {
    let does = |step: &&WorkedStep| step.tasks.iter().any(|task| task.operation == operation);
    worked.steps.iter().find(does).unwrap_or_else(|| panic!("nothing does {}", operation.name())).clone()
}

fn minutes(worked: &Worked) -> f64 {
    worked.steps.iter().filter(|step| step.is_hot()).map(|step| step.minutes).sum()
}

/// Heats and the minutes of work in them.
fn both(worked: &Worked) -> String {
    format!("{}, {:.1} min of work", worked.heats_words(), minutes(worked))
}

/// What the program says beside an entry; none where it has no figure.
fn said() -> BTreeMap<&'static str, String> {
    let mild = tests::read(&one_bar(&json!({ "square": "12 mm" }), &[])).material().forging.unwrap();
    let range = format!("{:.0} to {:.0} °C", mild.usual_celsius, mild.finish_celsius);
    let weld = doing(&link(), O::Weld);
    let set_down = doing(&shoulder(), O::SetDown);
    BTreeMap::from([
        ("H05", both(&nail())),
        ("H13", format!("{} heat", doing(&demo("cloche-lifter"), O::Open).needs)),
        ("H15", format!("{:.0} s a heat, {} heats", weld.heat_minutes.unwrap() * 60.0, weld.needs)),
        ("H17", both(&tong())),
        ("H21", both(&nail())),
        ("H25", both(&s_hook())),
        ("H29", both(&bar_shoe())),
        ("H33", both(&square_hole())),
        ("H37", both(&s_hook())),
        ("H39", both(&eye())),
        ("H41", both(&demo("draw-hoe"))),
        ("H45", format!("about {:.0} blows", set_down.minutes * 60.0 * 1.7)),
        ("H47", range.clone()),
        ("H49", range.clone()),
        ("H51", range),
    ])
}

/// The rows of the page's tables, each as its cells.
fn rows() -> Vec<Vec<String>> {
    let page = std::fs::read_to_string(project().join("docs/handbook/heats-beside-books.md")).unwrap();
    let cells = |line: &str| line.trim_matches('|').split('|').map(|cell| cell.trim().to_owned()).collect::<Vec<_>>();
    page.lines().filter(|line| line.starts_with('|')).map(cells).collect()
}

#[test]
fn the_figures_beside_the_books_are_the_programs() {
    let said = said();
    let rows = rows();
    let entries: Vec<&Vec<String>> = rows.iter().filter(|row| row[0].starts_with('H')).collect();
    assert_eq!(entries.len(), 26);
    let wrong: Vec<String> = entries
        .iter()
        .filter_map(|row| {
            let wanted = said.get(row[0].as_str()).map_or("none", String::as_str);
            (row[2] != wanted).then(|| format!("{}: {wanted}", row[0]))
        })
        .collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(entries.iter().all(|row| row.len() == 4 && !row[3].is_empty()), "each says where they part");
}

#[test]
fn the_heats_of_the_demos_are_the_programs() {
    let rows = rows();
    let demos: Vec<&Vec<String>> = rows.iter().filter(|row| row[0].ends_with("-demo")).collect();
    assert_eq!(demos.len(), 5);
    let wrong: Vec<String> = demos
        .iter()
        .filter_map(|row| {
            let [low, high] = demo(row[0].trim_end_matches("-demo")).heats_between;
            let wanted = format!("{low} to {high}");
            (row[2] != wanted).then(|| format!("{}: {wanted}", row[0]))
        })
        .collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

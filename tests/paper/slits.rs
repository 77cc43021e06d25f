//! Slits, marks on their branches and the middles of holes: where they stand on the printed bar.

use crate::paper::page::Rendered;
use crate::paper::{CLOSE_MM, Printed, run};
use fh_print::drawing::Item;
use fh_print::paper::{Orientation, Paper};
use fh_print::pen::Pen;
use serde_json::{Value, json};
use tests::{one_bar, read};

/// From the left edge of the paper to the datum: the margin, and room for the arrow.
const DATUM_MM: f64 = 17.0;

/// 20 mm square, split in three: 15, 30 and 15 mm of bar, so a quarter, a half and a quarter of the section. The boss
/// behind it takes (20 × 24 - 9 π) × 10 mm³: 11.3 mm of bar, its hole in the middle.
fn split_bar() -> Value {
    let branch = |name: &str, length: &str, second: &str| {
        let part = |name: &str, length: &str| json!({ "name": name, "form": { "drawn": { "length": length, "section": { "square": "10 mm" } } } });
        json!({ "name": name, "segments": [part("tip", length), part("foot", second)] })
    };
    let split = json!({ "name": "tines", "form": { "split": { "side": "0 deg", "branches": [
        branch("upper", "30 mm", "30 mm"), branch("middle", "60 mm", "60 mm"), branch("lower", "20 mm", "40 mm"),
    ] } } });
    let boss = json!({ "name": "boss", "form": { "hole": {
        "outline": { "rectangle": { "length": "24 mm", "width": "20 mm" } },
        "thickness": "10 mm", "hole": { "round": "6 mm" }, "made": "drifted",
    } } });
    one_bar(&json!({ "square": "20 mm" }), &[split, boss])
}

fn printed() -> Printed {
    Printed::of(read(&split_bar()), |plan, balance| {
        fh_print::sheets::mark_sheet(plan, balance, Paper::A4, Orientation::Landscape)
    })
}

/// The upper and the lower edge of the first bar, in mm from the top.
fn edges(printed: &Printed) -> [f64; 2] {
    let level = printed.drawing.pages[0].items.iter().filter_map(|item| match item {
        Item::Line { from, to, pen: Pen::Outline } if (from.y - to.y).abs() < 1e-9 => Some(from.y),
        _ => None,
    });
    let edges: Vec<f64> = level.take(2).collect();
    [edges[0].min(edges[1]), edges[0].max(edges[1])]
}

/// The middles of narrow runs of ink at a height, from the datum.
fn marks_at(page: &Rendered, y: f64) -> Vec<f64> {
    page.runs_at(y).into_iter().filter(|run| run.length() < 1.0).map(|run| run.middle() - DATUM_MM).collect()
}

#[test]
fn cuts_divide_the_bar_at_true_scale() {
    let printed = printed();
    let page = Rendered::new(&printed, 0);
    let [top, bottom] = edges(&printed);
    // Down a line at 5 mm from the datum: both edges, and the cuts at a quarter from each.
    let ink = page.runs_down(DATUM_MM + 5.0, [top - 1.0, bottom + 1.0]);
    let middles: Vec<f64> = ink.iter().map(|run| run.middle() - top).collect();
    assert_eq!(middles.len(), 4, "{middles:?}");
    for (place, want) in middles.iter().zip([0.0, 5.0, 15.0, 20.0]) {
        assert!((place - want).abs() <= CLOSE_MM, "{middles:?}");
    }
    // The slit is as long as the metal of all branches takes: 240 mm of 10 mm square in 20 mm square;
    // its line runs up to the mark, 0.3 mm wide.
    let cut = page.runs_at(top + 5.0).into_iter().map(|run| run.right - DATUM_MM).find(|end| *end > 50.0).unwrap();
    assert!((cut - 60.15).abs() <= CLOSE_MM, "{cut}");
}

#[test]
fn marks_on_branches_stand_out_on_their_own_side() {
    let printed = printed();
    let page = Rendered::new(&printed, 0);
    let [top, bottom] = edges(&printed);
    let near = |places: &[f64], want: f64| places.iter().any(|place| (place - want).abs() <= CLOSE_MM);
    let (above, below) = (marks_at(&page, top - 4.0), marks_at(&page, bottom + 4.0));
    // Half of the first two branches' metal, a third of the last one's: their branch is as long as the slit.
    assert!(near(&above, 30.0) && !near(&below, 30.0), "{above:?} {below:?}");
    assert!(near(&below, 20.0) && !near(&above, 20.0), "{above:?} {below:?}");
    for total in [60.0, 71.3] {
        assert!(near(&above, total) && near(&below, total), "{above:?} {below:?}");
    }
    // The middle of the hole.
    assert!(near(&marks_at(&page, bottom + 1.0), 65.65), "{:?}", marks_at(&page, bottom + 1.0));
}

#[test]
fn the_table_names_branches_and_tools() {
    let printed = printed();
    let words = run("pdftotext", &["-raw", &printed.pdf().to_string_lossy(), "-"]);
    let joined: String = words.chars().filter(|c| !c.is_whitespace()).collect();
    for told in ["1.1.1", "1.3.2", "middle", "slitline5.0mmand15.0mmfromthetopedge", "middleofthehole", "hole65.6mm"] {
        assert!(joined.contains(told), "{told}: {words}");
    }
    // No rule for the slit is chosen, so both answers stand there.
    assert!(joined.contains("slit9.0mm") && joined.contains("oraslitof4.5mm"), "{words}");
}

//! The worked examples of the handbook's pages: each stands in a plan beside its page, and comes out as the page says.

use fh_core::balance::{Balance, SegmentBalance, balance, legs};
use fh_core::file;
use fh_core::findings::Severity;
use fh_core::plan::SizeName;
use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;
use tests::{mm, mm3, project};

/// What a page states of a segment.
#[derive(Clone, Copy, Debug)]
enum What {
    /// The length of bar that it takes, in mm.
    Bar,
    /// The same, in inches.
    BarInches,
    /// Its length forged, in mm.
    Forged,
    /// Its finished metal, in mm³.
    Metal,
    /// The metal that is cut away, in mm³.
    Lost,
    /// The leg before it from outside to outside, in mm.
    LegOutside,
    /// The length of a shape on the way, in mm: with all its metal, or with all scale lost.
    OnTheWay(usize, bool),
    /// A size that follows, in mm; the number tells those of one name apart.
    Follows(SizeName, usize),
}

/// A plan under the handbook, its bar, its segment counted through the bar from 0, and what the page states in its own figures.
type Example = (&'static str, usize, usize, What, &'static str);

use What::{Bar, BarInches, Follows, Forged, LegOutside, Lost, Metal, OnTheWay};

const FORMS: [Example; 52] = [
    ("examples/dies", 0, 0, Bar, "99.1"),
    ("examples/dies", 0, 1, Bar, "93.8"),
    ("examples/asked-sizes", 0, 0, Forged, "114"),
    ("examples/open", 0, 0, Bar, "20"),
    ("examples/open", 0, 0, Metal, "2880"),
    ("examples/marks-first", 0, 0, Forged, "75"),
    ("examples/marks-first", 0, 1, Forged, "78.75"),
    ("examples/marks-first", 0, 1, Bar, "35"),
    ("examples/marks-first", 0, 3, Metal, "2880"),
    ("examples/plain", 0, 0, BarInches, "5"),
    ("examples/drawn", 0, 1, BarInches, "2.25"),
    ("examples/drawn", 1, 1, Bar, "31.25"),
    ("examples/taper", 0, 0, Bar, "40.0"),
    ("examples/taper", 1, 0, Bar, "44.6"),
    ("examples/taper", 2, 0, Bar, "64.0"),
    ("examples/taper", 3, 0, Bar, "20.0"),
    ("examples/taper", 4, 1, Bar, "58.3"),
    ("examples/taper", 5, 0, Bar, "60"),
    ("examples/shoulder", 0, 1, Metal, "741"),
    ("examples/shoulder", 0, 1, Bar, "2.9"),
    ("examples/flag", 0, 0, Metal, "2970"),
    ("examples/flag", 0, 0, Bar, "20.6"),
    ("examples/flag", 1, 1, Metal, "12574"),
    ("examples/flag", 1, 1, Lost, "226"),
    ("examples/cut-to-shape", 0, 1, Metal, "9120"),
    ("examples/cut-to-shape", 0, 1, Lost, "2080"),
    ("examples/cut-to-shape", 0, 1, Bar, "77.8"),
    ("examples/hole", 0, 1, Bar, "30.7"),
    ("examples/hole", 0, 1, Lost, "192"),
    ("examples/hole", 1, 1, Follows(SizeName::Slit, 0), "14.9"),
    ("examples/hole", 1, 1, Follows(SizeName::BossShorter, 0), "4.9"),
    ("examples/hole", 1, 1, Follows(SizeName::OtherSlit, 0), "7.5"),
    ("examples/hole", 1, 1, Follows(SizeName::BossLonger, 0), "2.5"),
    ("upright", 0, 1, BarInches, "0.36"),
    ("examples/split", 0, 1, Follows(SizeName::Slit, 0), "60"),
    ("examples/split", 0, 2, Forged, "120"),
    ("examples/split", 0, 2, Metal, "12000"),
    ("examples/split", 1, 2, Metal, "30000"),
    ("examples/split", 1, 3, Metal, "10000"),
    ("examples/split", 1, 1, Follows(SizeName::Slit, 0), "64"),
    ("examples/split", 1, 1, Follows(SizeName::Cut, 0), "18.75"),
    ("examples/split", 2, 1, Follows(SizeName::Slit, 0), "81.5"),
    ("examples/split", 2, 1, Follows(SizeName::Cut, 0), "17.5"),
    ("examples/ball-and-cube", 0, 1, Bar, "19"),
    ("examples/ball-and-cube", 1, 1, Bar, "28.4"),
    ("examples/ball-and-cube", 2, 1, Bar, "72"),
    ("examples/weld", 0, 1, Bar, "9"),
    ("examples/weld", 0, 1, Follows(SizeName::Scarf, 0), "13.5"),
    ("rivet", 0, 0, BarInches, "1.125"),
    ("examples/collar", 0, 0, BarInches, "3.25"),
    ("examples/collar", 1, 0, BarInches, "3.3125"),
    ("examples/collar", 2, 0, BarInches, "3.39"),
];

const BENDS: [Example; 24] = [
    ("examples/on-the-way", 0, 0, Metal, "3435"),
    ("examples/on-the-way", 0, 0, Lost, "275"),
    ("examples/on-the-way", 0, 0, Bar, "26.6"),
    ("examples/on-the-way", 0, 0, OnTheWay(0, false), "45.5"),
    ("examples/on-the-way", 0, 0, OnTheWay(0, true), "44.2"),
    ("examples/on-the-way", 0, 0, OnTheWay(1, false), "47.2"),
    ("examples/on-the-way", 0, 0, OnTheWay(1, true), "45.8"),
    ("examples/trim-and-hold", 0, 0, Bar, "3"),
    ("examples/trim-and-hold", 0, 2, Bar, "120"),
    ("examples/trim-and-hold", 0, 2, Metal, "0"),
    ("examples/curve", 0, 1, Bar, "97.4"),
    ("examples/ring", 0, 1, Bar, "157.1"),
    ("examples/ring", 1, 1, Bar, "130.9"),
    ("examples/ring", 2, 2, Follows(SizeName::InsideDiameter, 0), "52.0"),
    ("examples/corner", 0, 1, Metal, "2615"),
    ("examples/corner", 0, 1, Bar, "18.2"),
    ("examples/corner", 0, 1, Forged, "14.1"),
    ("examples/corner", 0, 1, LegOutside, "100"),
    ("examples/scroll", 0, 1, Bar, "285.6"),
    ("examples/scroll", 1, 1, Bar, "310.9"),
    ("examples/socket", 0, 0, Follows(SizeName::Width, 0), "100.8"),
    ("examples/twist", 0, 1, Forged, "60"),
    ("examples/twist", 0, 1, Bar, "60"),
    ("examples/twist", 0, 1, Follows(SizeName::EdgeFibre, 0), "80.3"),
];

fn handbook() -> PathBuf {
    project().join("docs/handbook")
}

fn worked(name: &str) -> Balance {
    let bytes = fs::read(handbook().join(format!("{name}.plan.json"))).unwrap();
    balance(&file::read(&bytes).unwrap_or_else(|error| panic!("{name}: {error}")))
}

fn follows(segment: &SegmentBalance, name: SizeName, nth: usize) -> f64 {
    let size = segment.derived.iter().filter(|size| size.name == name).nth(nth);
    mm(size.and_then(|size| size.length).unwrap_or_else(|| panic!("no {name:?} among {:?}", segment.derived)))
}

fn stated((name, bar, at, what, _): Example) -> f64 {
    let balance = worked(name);
    let segment = &balance.bars[bar].segments[at];
    match what {
        Bar => mm(segment.stock_length),
        BarInches => mm(segment.stock_length) / 25.4,
        Forged => mm(segment.forged_length),
        Metal => mm3(segment.finished_volume),
        Lost => mm3(segment.trimmed_volume),
        LegOutside => {
            legs(&balance.bars[bar]).iter().find(|leg| leg.segments.1 + 1 == at).map(|leg| mm(leg.outside)).unwrap()
        }
        OnTheWay(shape, is_low) => {
            let follows = segment.via[shape].follows.unwrap();
            mm(if is_low { follows.low } else { follows.size })
        }
        Follows(name, nth) => follows(segment, name, nth),
    }
}

#[test]
fn every_example_comes_out_as_its_page_says() {
    for example in FORMS.into_iter().chain(BENDS) {
        let figures = example.4;
        let decimals = figures.split_once('.').map_or(0, |(_, after)| after.len());
        let half_of_the_last = 0.5 * 0.1_f64.powi(i32::try_from(decimals).unwrap());
        let (got, wanted) = (stated(example), figures.parse::<f64>().unwrap());
        assert!((got - wanted).abs() <= half_of_the_last + 1e-9, "{example:?}: {got}");
    }
}

/// The plans in the folder of the examples, without their endings.
fn names() -> BTreeSet<String> {
    let files = fs::read_dir(handbook().join("examples")).unwrap();
    let names = files.map(|file| file.unwrap().file_name().into_string().unwrap());
    names.map(|name| format!("examples/{}", name.trim_end_matches(".plan.json"))).collect()
}

#[test]
fn every_example_plan_is_checked_and_named_by_a_page() {
    let checked: BTreeSet<String> = FORMS.into_iter().chain(BENDS).map(|example| example.0.to_owned()).collect();
    for name in names() {
        assert!(checked.contains(&name), "nothing of {name} is checked");
        let page = name.trim_start_matches("examples/");
        let of_a_form = handbook().join(format!("forms/{page}.md"));
        let chapter = handbook().join(format!("{page}.md"));
        let of_a_bend = handbook().join(format!("bends/{page}.md"));
        let path = [&of_a_form, &chapter].into_iter().find(|path| path.exists()).unwrap_or(&of_a_bend);
        let from_there = if *path == chapter { "" } else { "../" };
        let words = fs::read_to_string(path).unwrap_or_else(|error| panic!("the page of {name}: {error}"));
        assert!(words.contains(&format!("({from_there}{name}.plan.json)")), "{page}.md does not name its plan");
    }
}

#[test]
fn no_example_has_a_stop_and_only_the_large_ball_is_warned_of() {
    for name in names() {
        let warned: Vec<&str> = worked(&name)
            .findings
            .iter()
            .filter(|finding| finding.severity >= Severity::Warning)
            .map(|finding| finding.id)
            .collect();
        let wanted: &[&str] = if name == "examples/ball-and-cube" { &["upset-buckles"] } else { &[] };
        assert_eq!(warned, wanted, "{name}");
    }
}

//! Ready-made wholes: what smiths make again and again, with sizes that suit the bar, to be typed over.

use super::{corner, first_bend, root};
use crate::first_sizes::FirstSizes;
use crate::forms;
use crate::plan::{
    Bend, BendKind, Branch, Form, HoleSpec, Made, OutlineSpec, SectionSpec, Segment, SquareSpec, ThicknessSpec,
};
use fh_measure::WrittenAngle;

/// A ready-made whole: a part, or a few that belong together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Whole {
    /// A drawn end rolled to a scroll.
    Curl,
    /// A drawn end bent to a half circle.
    Hook,
    /// A drawn-down end turned to a small closed eye.
    Eye,
    /// The bar turned to a large closed ring.
    Ring,
    /// The bar turned about itself.
    Twist,
    /// A right angle, sharp outside.
    Corner,
    /// A flat end with two holes.
    ScrewPlate,
    /// A leaf on a drawn stem.
    Leaf,
    /// A long thin end to be driven into wood.
    Tang,
    /// A flat end that widens.
    Fishtail,
    /// An end slit in two, each half drawn to a tine and bent clear of the other.
    Tines,
}

/// The leaf beside its stem.
const LEAF_PART: &str = "leaf";

/// Where a whole is put.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Around {
    /// Its free end lies towards the datum: nothing comes before it.
    pub first: bool,
    /// The bar is round: a twist would not show.
    pub is_round: bool,
}

/// Sizes against the width of the bar, or against its smaller side where that is said: common practice, no source.
const CURL: f64 = 14.0;
const HOOK: f64 = 10.0;
const TWIST: f64 = 10.0;
const TANG: f64 = 7.0;
const STEM: f64 = 5.0;
/// How thin an end is drawn, against the smaller side.
const THIN: f64 = 0.5;
const TANG_END: f64 = 0.35;
const STEM_THICK: f64 = 0.6;
/// Inside diameters, against the smaller side.
const EYE: f64 = 1.5;
const RING: f64 = 5.0;
/// A plate: how wide against the bar, how thick against the smaller side, how long each half against its width.
const PLATE_WIDE: f64 = 1.75;
const PLATE_THICK: f64 = 0.4;
/// A screw's hole against the width of its plate.
const SCREW: f64 = 0.25;
/// A leaf and a fishtail against the bar, and their thickness against its smaller side.
const LEAF: [f64; 2] = [3.5, 1.75];
const FISHTAIL: [f64; 3] = [2.0, 1.0, 1.75];
const FLAT_THICK: f64 = 0.35;
/// A tine: its length; its thickness against the root of the bar's area, and at most against its smaller side; how far it is
/// bent out in degrees, and how tight against its thickness.
const TINE: f64 = 6.0;
const TINE_THICK: f64 = 0.55;
const TINE_MOST: f64 = 0.85;
const TINE_ANGLE: f64 = 40.0;
const TINE_BEND: f64 = 1.5;

impl Whole {
    /// Every one, in the order they are offered.
    pub const ALL: [Self; 11] = [
        Self::Curl,
        Self::Hook,
        Self::Eye,
        Self::Ring,
        Self::Twist,
        Self::Corner,
        Self::ScrewPlate,
        Self::Leaf,
        Self::Tang,
        Self::Fishtail,
        Self::Tines,
    ];

    /// The smith's words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Curl => "curl",
            Self::Hook => "hook",
            Self::Eye => "eye",
            Self::Ring => "ring",
            Self::Twist => "twist",
            Self::Corner => "square corner",
            Self::ScrewPlate => "screw plate",
            Self::Leaf => "leaf with stem",
            Self::Tang => "tang",
            Self::Fishtail => "fishtail",
            Self::Tines => "two tines",
        }
    }

    /// The name of the part whose sizes it is known by.
    pub fn main_part(self) -> &'static str {
        match self {
            Self::Leaf => LEAF_PART,
            _ => self.name(),
        }
    }

    /// What it is, in a line.
    pub fn summary(self) -> &'static str {
        match self {
            Self::Curl => "A drawn end rolled up to a scroll.",
            Self::Hook => "A drawn end bent to a half circle.",
            Self::Eye => "An end drawn down and turned to a small eye.",
            Self::Ring => "The bar turned to a large ring.",
            Self::Twist => "The bar turned about itself.",
            Self::Corner => "A right angle, sharp outside.",
            Self::ScrewPlate => "A flat end with two holes for screws.",
            Self::Leaf => "A leaf on a stem drawn down.",
            Self::Tang => "A long thin end to drive into wood.",
            Self::Fishtail => "A flat end that widens.",
            Self::Tines => "An end slit in two and spread to tines.",
        }
    }

    /// Its parts from the datum on; none where the plan's unit cannot write their sizes.
    pub fn parts(self, sizes: &FirstSizes, around: Around) -> Option<Vec<Segment>> {
        let mut parts = self.outward(sizes, around)?;
        if around.first {
            parts.reverse();
        }
        Some(parts)
    }

    /// Its parts from the bar to the free end.
    fn outward(self, sizes: &FirstSizes, around: Around) -> Option<Vec<Segment>> {
        let [width, thickness] = sizes.stock_mm;
        let least = width.min(thickness);
        let one = |form: Form, bend: Option<Bend>| {
            let mut segment = Segment::new(self.name(), form);
            segment.bend = bend;
            Some(vec![segment])
        };
        match self {
            Self::Curl => {
                let form = drawn_out(CURL * width, THIN, sizes, around)?;
                let bend = first_bend(BendKind::Scroll, &Segment::new("", form.clone()), None, sizes, around.first)?;
                one(form, Some(bend))
            }
            Self::Hook => {
                let angle = WrittenAngle::from_degrees(180.0).ok();
                one(
                    drawn_out(HOOK * width, THIN, sizes, around)?,
                    Some(Bend::Curve { angle, inside_radius: None, side: None }),
                )
            }
            Self::Eye => {
                let form = Form::Drawn(forms::Drawn { length: None, section: smaller(STEM_THICK, sizes)? });
                in_line(self, &form, [sizes.size(STEM_THICK * thickness)?.mm(), EYE * least], sizes)
            }
            Self::Ring => in_line(self, &Form::Plain(forms::Plain { length: None }), [thickness, RING * least], sizes),
            Self::Twist => twisted(sizes, around).and_then(|(form, bend)| one(form, Some(bend))),
            Self::Corner => {
                one(Form::Peak(forms::Peak { section: SectionSpec::Stock, left: None, driven: false }), corner(sizes))
            }
            Self::ScrewPlate => {
                let half = |name: &str| Some(Segment::new(name, plate(width, least, sizes)?));
                Some(vec![half("screw plate")?, half("screw plate end")?])
            }
            Self::Leaf => {
                let stem = forms::Drawn { length: sizes.size(STEM * width), section: smaller(STEM_THICK, sizes)? };
                let leaf =
                    OutlineSpec::Leaf { length: sizes.size(LEAF[0] * width)?, width: sizes.size(LEAF[1] * width)? };
                Some(vec![
                    Segment::new("stem", Form::Drawn(stem)),
                    Segment::new(LEAF_PART, flat(leaf, FLAT_THICK * least, sizes)?),
                ])
            }
            Self::Tines => one(tines(sizes, around)?, None),
            Self::Tang => one(drawn_out(TANG * width, TANG_END, sizes, around)?, None),
            Self::Fishtail => {
                let [length, root, tip] = FISHTAIL.map(|share| sizes.size(share * width));
                one(
                    flat(
                        OutlineSpec::Trapezoid { length: length?, root: root?, tip: tip? },
                        FLAT_THICK * least,
                        sizes,
                    )?,
                    None,
                )
            }
        }
    }

    /// Other words under which it is looked for.
    pub fn also(self) -> &'static [&'static str] {
        match self {
            Self::Curl => &["scroll", "snub", "roll"],
            Self::Hook => &["half circle", "bend", "curve"],
            Self::Eye => &["loop", "ring"],
            Self::Ring => &["loop", "circle", "hoop"],
            Self::Twist => &["turn"],
            Self::Corner => &["angle", "right angle", "bend", "peak"],
            Self::ScrewPlate => &["plate", "holes", "flat", "pad"],
            Self::Leaf => &["stem", "flag"],
            Self::Tang => &["spike", "taper", "point"],
            Self::Fishtail => &["tail", "flag", "spread"],
            Self::Tines => &["fork", "split", "prongs"],
        }
    }
}

/// The bar's section so many times as large; a square where the bar is no flat.
fn smaller(share: f64, sizes: &FirstSizes) -> Option<SectionSpec> {
    let [width, thickness] = sizes.stock_mm;
    if (width - thickness).abs() < 0.01 * width {
        let side = sizes.size(share * width)?;
        return Some(SectionSpec::Square(SquareSpec { side, edge_radius: None }));
    }
    let (width, thickness) = (sizes.size(share * width)?, sizes.size(share * thickness)?);
    Some(SectionSpec::Flat { width, thickness, edge_radius: None })
}

/// An end drawn out to so much of the bar, thin at its free end.
fn drawn_out(length: f64, share: f64, sizes: &FirstSizes, around: Around) -> Option<Form> {
    let (length, thin) = (Some(sizes.size(length)?), smaller(share, sizes)?);
    let (from, to) = if around.first { (Some(thin), SectionSpec::Stock) } else { (None, thin) };
    Some(Form::Taper(forms::Taper { length, from, to, runout: None }))
}

/// A ring of bar of a thickness, its middle in line with the bar: a neck set back first, then the ring until it meets the
/// neck. Both bend about as tight as the bar is thick or the ring asks for.
fn in_line(whole: Whole, form: &Form, [thick, inside]: [f64; 2], sizes: &FirstSizes) -> Option<Vec<Segment>> {
    let (tight, inside) = (sizes.size(thick)?, sizes.size(inside)?);
    let (neck, ring) = (tight.mm() + thick / 2.0, (inside.mm() + thick) / 2.0);
    let both = neck + ring;
    // The ring's middle is in line where the neck turns so far that both radii drop as much as the neck alone.
    let back = (neck / both).acos();
    // The outer corner of the ring's end comes to lie on the neck: the cosine rule about the middles of both.
    let outer = ring + thick / 2.0;
    let face = neck + thick / 2.0;
    let left_open = ((both * both + outer * outer - face * face) / (2.0 * both * outer)).acos();
    let degrees = |radians: f64| WrittenAngle::from_degrees(radians.to_degrees().round()).ok();
    let sweep = WrittenAngle::from_degrees((360.0 - left_open.to_degrees() - 1.0).floor()).ok();
    let (up, down) = (WrittenAngle::from_degrees(0.0).ok(), WrittenAngle::from_degrees(180.0).ok());
    let mut first = Segment::new(&format!("{} neck", whole.name()), form.clone());
    first.bend = Some(Bend::Curve { angle: degrees(back), inside_radius: Some(tight), side: down });
    let mut second = Segment::new(whole.name(), form.clone());
    second.bend = Some(Bend::Ring { inside_diameter: Some(inside), sweep, side: up });
    Some(vec![first, second])
}

/// A length with edges that show the twist.
fn twisted(sizes: &FirstSizes, around: Around) -> Option<(Form, Bend)> {
    let length = Some(sizes.size(TWIST * sizes.stock_mm[0])?);
    let form = if around.is_round {
        Form::Drawn(forms::Drawn { length, section: smaller(0.75, sizes)? })
    } else {
        Form::Plain(forms::Plain { length })
    };
    let bend = first_bend(BendKind::Twist, &Segment::new("", form.clone()), None, sizes, around.first)?;
    Some((form, bend))
}

/// Half of a plate, with a hole in its middle.
fn plate(width: f64, least: f64, sizes: &FirstSizes) -> Option<Form> {
    let wide = PLATE_WIDE * width;
    Some(Form::Hole(forms::Hole {
        outline: OutlineSpec::Rectangle { length: Some(sizes.size(wide)?), width: Some(sizes.size(wide)?) },
        thickness: sizes.size(PLATE_THICK * least)?,
        hole: HoleSpec::Round(sizes.size(SCREW * wide)?),
        made: Made::Drilled,
        slug: None,
        at: None,
    }))
}

/// A split with two tines: each bent out from the root, back to straight, and drawn to a point.
fn tines(sizes: &FirstSizes, around: Around) -> Option<Form> {
    // The first branch lies away from the smith.
    let branches = vec![tine("far tine", 270.0, sizes, around)?, tine("near tine", 90.0, sizes, around)?];
    Some(Form::Split(forms::Split { branches, root: root(sizes), ..forms::Split::default() }))
}

/// A tine that is bent out towards a side, in degrees.
fn tine(name: &str, out: f64, sizes: &FirstSizes, around: Around) -> Option<Branch> {
    let [width, thickness] = sizes.stock_mm;
    let side = (TINE_THICK * (width * thickness).sqrt()).min(TINE_MOST * width.min(thickness));
    let section = SectionSpec::Square(SquareSpec { side: sizes.size(side)?, edge_radius: None });
    let bent = |part: &str, toward: f64| {
        let form = Form::Drawn(forms::Drawn { length: None, section: section.clone() });
        let mut segment = Segment::new(&format!("{name} {part}"), form);
        segment.bend = Some(Bend::Curve {
            angle: WrittenAngle::from_degrees(TINE_ANGLE).ok(),
            inside_radius: Some(sizes.size(TINE_BEND * side)?),
            side: WrittenAngle::from_degrees(toward).ok(),
        });
        Some(segment)
    };
    let (length, from) = (Some(sizes.size(TINE * width)?), around.first.then(|| section.clone()));
    let point = Form::Taper(forms::Taper { length, from, to: SectionSpec::Point, runout: None });
    let point = Segment::new(&format!("{name} point"), point);
    let mut parts = vec![bent("out", out)?, bent("back", (out + 180.0) % 360.0)?, point];
    if around.first {
        parts.reverse();
    }
    Some(Branch::new(name, parts))
}

fn flat(outline: OutlineSpec, thickness: f64, sizes: &FirstSizes) -> Option<Form> {
    let thickness = ThicknessSpec::Even(sizes.size(thickness)?);
    let (blank, base_line) = (None, None);
    Some(Form::Flag(forms::Flag { outline, blank, base_line, thickness, trim: None, joined: false, holes: Vec::new() }))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use crate::balance::balance;
    use crate::findings::Severity;
    use crate::plan::{Plan, Units};
    use fh_measure::WrittenShare;

    const BARS: [&str; 11] = [
        "8 mm square",
        "12 mm square",
        "20 mm square",
        "10 mm round",
        "16 mm round",
        "20 x 6 mm",
        "30 x 10 mm",
        "1/2 in square",
        "3/8 in round",
        "1 x 1/4 in",
        "5/8 in hexagon",
    ];

    /// What is found above a note where a whole is put on a bar: alone, at either end, and between two parts.
    fn found(whole: Whole, bar: &str, place: usize, others: usize) -> Vec<String> {
        let units = if bar.ends_with("mm") || bar.contains("mm ") { Units::millimeters() } else { Units::inches() };
        let stock = SectionSpec::said(bar, Some(units.length.length_unit())).unwrap();
        let is_round = matches!(stock, SectionSpec::Round(_));
        let mut plan = Plan::new("", units, stock);
        plan.scale = WrittenShare::parse(Plan::USUAL_SCALE, true).ok();
        let sizes = FirstSizes::new(units, balance(&plan).bars.first());
        let parts = whole.parts(&sizes, Around { first: place == 0, is_round }).unwrap();
        let plain = || Segment::new("bar", Form::Plain(forms::Plain { length: sizes.size(100.0) }));
        let mut all: Vec<Segment> = (0..others).map(|_| plain()).collect();
        all.splice(place..place, parts);
        plan.bars[0].segments = all;
        let balance = balance(&plan);
        // Tines alone are held together by nothing, until the bar that they are slit from is there.
        if whole == Whole::Tines && others == 0 {
            return Vec::new();
        }
        assert!(balance.bars[0].segments.iter().all(|segment| segment.shape.is_some()), "{whole:?} on {bar}");
        let grave = balance.findings.iter().filter(|finding| finding.severity > Severity::Note);
        grave.map(|finding| format!("{whole:?} on {bar} at {place} of {others}: {}", finding.message)).collect()
    }

    #[test]
    fn no_whole_breaks_a_rule_on_any_bar() {
        let places = [(0, 0), (0, 1), (1, 1), (1, 2)];
        let all = || Whole::ALL.into_iter().flat_map(|whole| BARS.map(move |bar| (whole, bar)));
        let found: Vec<String> = all()
            .flat_map(|(whole, bar)| places.into_iter().flat_map(move |(at, of)| found(whole, bar, at, of)))
            .collect();
        assert!(found.is_empty(), "{}", found.join("\n"));
    }

    #[test]
    fn every_whole_has_the_part_that_it_is_known_by() {
        let sizes = FirstSizes::without_stock(Units::millimeters());
        for whole in Whole::ALL {
            let parts = whole.parts(&sizes, Around { first: false, is_round: false }).unwrap();
            assert!(parts.iter().any(|part| part.name == whole.main_part()), "{whole:?}");
        }
    }

    #[test]
    fn every_whole_has_a_name_and_a_summary_of_its_own() {
        let names: std::collections::HashSet<_> = Whole::ALL.iter().map(|whole| whole.name()).collect();
        assert_eq!(names.len(), Whole::ALL.len());
        assert!(Whole::ALL.iter().all(|whole| whole.summary().ends_with('.') && !whole.also().is_empty()));
    }
}

//! The names of the sizes of a segment. Code finds a size by its name, never by the words for it.

use fh_measure::WrittenLength;

/// What looks at lengths.
pub(crate) type Looking<'a> = &'a mut dyn FnMut(SizeName, &WrittenLength);
/// What changes lengths.
pub(crate) type Visiting<'a> = &'a mut dyn FnMut(SizeName, &mut WrittenLength);

/// Which size of a segment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SizeName {
    /// How long it is along the bar.
    Length,
    /// How wide it is, seen from above.
    Width,
    /// How thick it is, seen from the side.
    Thickness,
    /// How thick a tapered plate is at its root.
    RootThickness,
    /// How thick a tapered plate is at its tip.
    TipThickness,
    /// Across what is round.
    Diameter,
    /// The side of what is square.
    Side,
    /// How far a curve turns.
    Angle,
    /// The radius inside a curve.
    InsideRadius,
    /// The diameter inside a ring.
    InsideDiameter,
    /// A scroll's radius at its eye.
    InnerRadius,
    /// A scroll's radius where it opens.
    OuterRadius,
    /// How many turns a scroll has.
    Turns,
    /// What a socket is rolled round.
    Mandrel,
    /// How far round a socket goes.
    HowFarRound,
    /// From where a corner's bend starts to its apex.
    BendToApex,
    /// How long the edges of a twist become.
    EdgeFibre,
    /// How long a slit is cut.
    Slit,
    /// How long the slit of a written cut is.
    SlitLength,
    /// Where a cut along the bar stands.
    CutLine,
    /// How wide a saw cuts.
    Kerf,
    /// How long a slit is by the other school's rule.
    OtherSlit,
    /// By how much a boss gets shorter while it is drifted.
    BossShorter,
    /// By how much a boss gets longer while it is drifted.
    BossLonger,
    /// The punch for a hole.
    Punch,
    /// The drill for a hole.
    Drill,
    /// How long a scarf is.
    Scarf,
    /// How far from the edge the first cut of a split is.
    Cut,
    /// The same of the second.
    SecondCut,
    /// The same of the third.
    ThirdCut,
    /// The same of the fourth.
    FourthCut,
    /// The same of the fifth.
    FifthCut,
    /// How much the edges of a section are eased.
    EdgeRadius,
    /// From flat to flat of a section with six or eight sides.
    AcrossFlats,
    /// How high a half-round is.
    Height,
    /// How wide a fishtail is at its root.
    RootWidth,
    /// How wide a fishtail is at its tip.
    TipWidth,
    /// How far along or across a corner of an outline lies.
    Corner,
    /// Across a round hole.
    HoleDiameter,
    /// The side of a square hole.
    HoleSide,
    /// How long a slot is.
    HoleLength,
    /// How wide a slot is.
    HoleWidth,
    /// Across the slug that a punch drives out.
    Slug,
    /// From the root of a boss to the middle of its hole.
    MiddleOfHole,
    /// How thick what a pin goes through is.
    Grip,
    /// What stands out for a head, or is left for a weld.
    Allowance,
    /// How wide the bundle in a collar is.
    BundleWidth,
    /// How high the bundle in a collar is.
    BundleHeight,
    /// The radius at the end of a slit.
    RootRadius,
    /// Across the hole at the end of a slit.
    RootHole,
    /// How wide a closed slit is opened.
    Opening,
    /// What another part supplies of a socket.
    Less,
    /// From mark to mark of a row.
    RowStep,
    /// How wide a mark of a row is.
    RowWidth,
    /// What a row leaves free at its ends.
    RowMargin,
    /// The radius of a die's nose or hollow.
    DieRadius,
    /// Where a dressed length begins.
    DressedFrom,
    /// How long it is.
    DressedLength,
    /// How far its die goes in.
    DressedDepth,
    /// The radius of the anvil's edge for the set-down at a peak's start.
    NearEdge,
    /// The same at its end.
    FarEdge,
    /// From foot to foot of the set-downs beside a peak.
    Base,
    /// From wall to wall of them.
    BetweenWalls,
    /// How long the bite of a tool is along the bar.
    Bite,
    /// How long the blank of a plate is.
    BlankLength,
    /// How wide it is.
    BlankWidth,
    /// How wide it is at its root.
    BlankRootWidth,
    /// How wide it is at its tip.
    BlankTipWidth,
    /// Across a round one.
    BlankDiameter,
    /// How far along or across a corner of it lies.
    BlankCorner,
    /// From the edge of an outline toward you to the base line.
    BaseLine,
    /// The same of a blank.
    BlankBaseLine,
    /// From the base line of a plate, away from you, to the middle of a hole.
    HoleAcross,
}

impl SizeName {
    /// Every name.
    pub const ALL: [Self; 73] = [
        Self::Length,
        Self::Width,
        Self::Thickness,
        Self::RootThickness,
        Self::TipThickness,
        Self::Diameter,
        Self::Side,
        Self::Angle,
        Self::InsideRadius,
        Self::InsideDiameter,
        Self::InnerRadius,
        Self::OuterRadius,
        Self::Turns,
        Self::Mandrel,
        Self::HowFarRound,
        Self::BendToApex,
        Self::EdgeFibre,
        Self::Slit,
        Self::OtherSlit,
        Self::BossShorter,
        Self::BossLonger,
        Self::Punch,
        Self::Drill,
        Self::Scarf,
        Self::Cut,
        Self::SecondCut,
        Self::ThirdCut,
        Self::FourthCut,
        Self::FifthCut,
        Self::EdgeRadius,
        Self::AcrossFlats,
        Self::Height,
        Self::RootWidth,
        Self::TipWidth,
        Self::Corner,
        Self::HoleDiameter,
        Self::HoleSide,
        Self::HoleLength,
        Self::HoleWidth,
        Self::Slug,
        Self::MiddleOfHole,
        Self::Grip,
        Self::Allowance,
        Self::BundleWidth,
        Self::BundleHeight,
        Self::RootRadius,
        Self::RootHole,
        Self::Opening,
        Self::SlitLength,
        Self::CutLine,
        Self::Kerf,
        Self::Less,
        Self::RowStep,
        Self::RowWidth,
        Self::RowMargin,
        Self::DieRadius,
        Self::DressedFrom,
        Self::DressedLength,
        Self::DressedDepth,
        Self::NearEdge,
        Self::FarEdge,
        Self::Base,
        Self::BetweenWalls,
        Self::Bite,
        Self::BlankLength,
        Self::BlankWidth,
        Self::BlankRootWidth,
        Self::BlankTipWidth,
        Self::BlankDiameter,
        Self::BlankCorner,
        Self::BaseLine,
        Self::BlankBaseLine,
        Self::HoleAcross,
    ];

    /// The cuts of a split, in their order.
    pub const CUTS: [Self; 5] = [Self::Cut, Self::SecondCut, Self::ThirdCut, Self::FourthCut, Self::FifthCut];

    /// The name of a size of an outline where it is that of a blank.
    pub(crate) fn of_blank(self) -> Self {
        match self {
            Self::Length => Self::BlankLength,
            Self::Width => Self::BlankWidth,
            Self::RootWidth => Self::BlankRootWidth,
            Self::TipWidth => Self::BlankTipWidth,
            Self::Diameter => Self::BlankDiameter,
            Self::Corner => Self::BlankCorner,
            Self::BaseLine => Self::BlankBaseLine,
            other => other,
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::balance::balance;
    use crate::file;
    use crate::plan::Segment;
    use crate::plan::sizes::tests::SEGMENTS;
    use serde_json::{Value, json};
    use std::collections::BTreeSet;

    /// Without what is left out.
    fn pruned(mut value: Value) -> Value {
        match &mut value {
            Value::Object(group) => {
                group.retain(|_, value| !value.is_null());
                group.values_mut().for_each(|value| *value = pruned(value.take()));
            }
            Value::Array(list) => list.iter_mut().for_each(|value| *value = pruned(value.take())),
            _ => {}
        }
        value
    }

    /// The names of the sizes that follow, or that gave, in a bar of one segment.
    fn found(stock: &Value, length: Option<&str>, segment: Value) -> BTreeSet<SizeName> {
        let mut bar = json!({ "name": "bar", "stock": stock, "segments": [pruned(segment)] });
        if let Some(length) = length {
            bar["length"] = json!(length);
            bar["takes_up"] = json!("it");
        }
        let plan = json!({ "firstheat": 1, "bars": [bar] });
        let balance = balance(&file::read(plan.to_string().as_bytes()).unwrap());
        let names: BTreeSet<_> = balance.bars[0].segments[0].derived.iter().map(|size| size.name).collect();
        for name in &names {
            assert!(balance.bars[0].segments[0].derived(*name).is_some(), "{name:?}");
        }
        names
    }

    #[test]
    fn each_size_has_words_of_its_own() {
        let words: BTreeSet<_> = SizeName::ALL.into_iter().map(SizeName::words).collect();
        assert_eq!(words.len(), SizeName::ALL.len(), "{words:?}");
        assert!(words.iter().all(|words| !words.trim().is_empty()));
        assert_eq!(SizeName::ALL.len(), SizeName::HoleAcross as usize + 1, "all of them are listed");
    }

    fn drawn(length: Option<&str>, bend: Value) -> Value {
        let form = json!({ "drawn": { "length": length, "section": { "square": "10 mm" } } });
        json!({ "name": "it", "form": form, "bend": bend })
    }

    /// Segments in which a size follows from the bend.
    fn of_bends() -> Vec<Value> {
        let flag = |width: Option<&str>, bend: Value| {
            let outline = json!({ "rectangle": { "length": "60 mm", "width": width } });
            let form = json!({ "flag": { "outline": outline, "thickness": "2 mm" } });
            json!({ "name": "it", "form": form, "bend": bend })
        };
        let scroll = |inner: Option<&str>, outer: Option<&str>, turns: Option<f64>| {
            json!({ "scroll": { "inner_radius": inner, "outer_radius": outer, "turns": turns, "run": "opening",
                "eye": "end" } })
        };
        vec![
            drawn(None, json!({ "curve": { "angle": "90 deg", "inside_radius": "30 mm" } })),
            drawn(Some("100 mm"), json!({ "curve": { "angle": "90 deg" } })),
            drawn(Some("100 mm"), json!({ "curve": { "inside_radius": "50 mm" } })),
            drawn(Some("300 mm"), json!({ "ring": {} })),
            drawn(Some("400 mm"), scroll(None, Some("60 mm"), Some(1.5))),
            drawn(Some("400 mm"), scroll(Some("10 mm"), None, Some(1.5))),
            drawn(Some("400 mm"), scroll(Some("10 mm"), Some("60 mm"), None)),
            drawn(Some("100 mm"), json!({ "twist": { "turns": 1 } })),
            flag(None, json!({ "socket": { "mandrel": "30 mm", "axis": "along" } })),
            flag(Some("100 mm"), json!({ "socket": { "axis": "along" } })),
            flag(Some("100 mm"), json!({ "socket": { "mandrel": "40 mm", "axis": "along" } })),
            json!({ "name": "it", "form": { "peak": { "section": "stock" } },
                "bend": { "corner": { "angle": "90 deg", "inside_radius": "5 mm" } } }),
            json!({ "name": "it", "form": { "peak": { "section": { "square": "10 mm" }, "left": {} } },
                "bend": { "corner": { "angle": "90 deg", "inside_radius": "1 mm" } } }),
        ]
    }

    fn hole(made: &str) -> Value {
        let boss = json!({ "rectangle": { "length": "40 mm", "width": "30 mm" } });
        let hole = json!({ "outline": boss, "thickness": "10 mm", "hole": { "round": "12 mm" }, "made": made });
        pruned(json!({ "name": "it", "form": { "hole": hole } }))
    }

    /// Segments in which a size follows from a rule of the trade.
    fn of_the_trade() -> Vec<Value> {
        let branch = |name: &str| json!({ "name": name, "segments": [drawn(Some("50 mm"), Value::Null)] });
        let branches: Vec<_> = ["a", "b", "c", "d", "e", "f"].map(branch).into();
        vec![
            hole("drifted"),
            hole("punched"),
            hole("drilled"),
            json!({ "name": "it", "form": { "weld": { "allowance": "20 mm" } } }),
            json!({ "name": "it", "form": { "split": { "branches": branches } } }),
        ]
    }

    /// Segments of which a size gives to fit a bar that is cut.
    fn giving() -> Vec<Value> {
        let giving = |form: Value, gives: &str| json!({ "name": "it", "form": form, "gives": gives });
        let plate = |thickness: Value| json!({ "flag": { "outline": { "disc": { "diameter": "50 mm" } }, "thickness": thickness } });
        vec![
            giving(plate(json!("4 mm")), "thickness"),
            giving(plate(json!("4 mm")), "width"),
            giving(plate(json!({ "root": "4 mm", "tip": "2 mm" })), "thickness"),
            giving(json!({ "ball": { "diameter": "30 mm" } }), "length"),
            giving(json!({ "cube": { "side": "30 mm" } }), "length"),
        ]
    }

    #[test]
    fn each_size_is_found_by_its_name_in_some_segment() {
        let bar = json!({ "square": "20 mm" });
        let mut all = BTreeSet::new();
        // What is written is found among the written.
        let every_key = file::read(include_bytes!("../../tests/every_key.plan.json")).unwrap();
        let every_place: Vec<Segment> = serde_json::from_str(SEGMENTS).unwrap();
        let built = serde_json::from_value::<Segment>(hole("drilled")).unwrap();
        let of_bars = every_key.bars.iter().flat_map(|bar| &bar.segments);
        for segment in of_bars.chain(&every_place).chain([&built]) {
            segment.sizes(&mut |name, _| {
                all.insert(name);
            });
        }
        for segment in of_bends().into_iter().chain(of_the_trade()) {
            all.extend(found(&bar, None, segment));
        }
        for segment in giving() {
            all.extend(found(&bar, Some("40 mm"), segment));
        }
        let missing: Vec<_> = SizeName::ALL.into_iter().filter(|name| !all.contains(name)).collect();
        assert!(missing.is_empty(), "nothing finds {missing:?}");
    }
}

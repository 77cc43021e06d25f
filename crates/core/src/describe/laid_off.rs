//! What is laid off on the cold bar, in words: on which side, holes by their middles, slits from where to where.

use super::{Face, fine_length};
use crate::balance::{BarBalance, HoleMark, SlitEnd, SlitMark};
use crate::metal::View;
use crate::plan::{Bar, PlanUnit};

/// The side of the bar that is punched: `top`, `near side`.
pub fn marked_side_words(view: View) -> &'static str {
    match view {
        View::Top => "top",
        View::Side => "near side",
    }
}

/// What a hole is: `middle of the hole`, `middle of the root hole, Ø 6.0 mm`.
pub fn hole_words(hole: &HoleMark, unit: PlanUnit) -> String {
    match hole.root {
        Some(diameter) => format!("middle of the root hole, Ø {}", fine_length(diameter, unit)),
        None => "middle of the hole".to_owned(),
    }
}

/// How far the cuts of a slit lie from an edge.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LaidCuts {
    /// How far: `10.0 mm`.
    pub far: String,
    /// From which edge: `far edge`.
    pub edge: String,
}

/// How far a slit's cuts lie from the edge; none where it has none.
pub fn laid_cuts(slit: &SlitMark, unit: PlanUnit) -> Option<LaidCuts> {
    let cuts: Vec<String> = slit.cuts.iter().map(|cut| fine_length(*cut, unit)).collect();
    (!cuts.is_empty()).then(|| LaidCuts { far: cuts.join(" and "), edge: Face::at_radians(slit.side).edge() })
}

/// The same in words: `10.0 mm from the far edge`; empty where it has none.
pub fn laid_cuts_words(slit: &SlitMark, unit: PlanUnit) -> String {
    laid_cuts(slit, unit).map_or_else(String::new, |LaidCuts { far, edge }| format!("{far} from the {edge}"))
}

/// From where to where a slit is cut: `from the tip of the tines to the hole at 42 mm`.
pub fn laid_from_to_words(bar: &Bar, balance: &BarBalance, slit: &SlitMark) -> String {
    let last = balance.whole().last().map(|(_, segment)| segment.mark_end_shop);
    let words = |end: &SlitEnd| match end.is_hole {
        true => format!("the hole at {}", end.shop.text()),
        false if end.shop.mm() <= 0.0 => format!("the {}", bar.datum_name()),
        false if Some(end.shop) == last => "the end of the bar".to_owned(),
        false => end.shop.text(),
    };
    format!("from {} to {}", words(&slit.ends[0]), words(&slit.ends[1]))
}

/// Where the slit of a segment is cut: how far from which edge, and from where to where; none without one.
pub fn slit_line_words(unit: PlanUnit, bar: &Bar, balance: &BarBalance, segment: usize) -> Option<String> {
    let laid = balance.laid_off();
    let slit = laid.slits.iter().find(|slit| slit.segment == segment)?;
    let cuts = laid_cuts_words(slit, unit);
    let cuts = if cuts.is_empty() { cuts } else { format!("{cuts}, ") };
    Some(format!("slit line {cuts}{}", laid_from_to_words(bar, balance, slit)))
}

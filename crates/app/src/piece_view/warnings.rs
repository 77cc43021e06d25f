//! What is wrong with the piece as it is put together: parts that run into each other, joints that miss.

use super::place::name_of;
use crate::state::Document;
use fh_core::describe::short_name;
use fh_core::plan::Plan;
use fh_measure::format_length;
use fh_piece::{Overlap, PartOf, Piece, overlaps};

/// The warnings, the worst first. The first that are alike on several copies stand for all of them.
pub(super) fn warnings(document: &Document, piece: &Piece) -> Vec<String> {
    let plan = document.plan();
    let mut overlaps = overlaps(plan, document.balance(), piece);
    overlaps.sort_by(|a, b| b.depth_mm.total_cmp(&a.depth_mm));
    let mut words: Vec<String> = overlaps.iter().map(|overlap| overlap_words(plan, overlap)).collect();
    for closed in piece.loops.iter().filter(|closed| closed.gap_mm > MISSED) {
        let title = plan.joints.get(closed.joint).map_or_else(String::new, |joint| joint.title(closed.joint));
        words.push(format!("“{title}” does not meet: {} apart", length(plan, closed.gap_mm)));
    }
    words.dedup();
    words
}

/// By less than this a joint that closes a loop does not miss, in mm: it is drawn together.
const MISSED: f64 = 0.5;

fn overlap_words(plan: &Plan, overlap: &Overlap) -> String {
    let name = |part: PartOf| {
        let segment = name_of(plan, (part.bar, part.segment));
        let bar = plan.bars.get(part.bar).filter(|bar| plan.bars.len() > 1 && !bar.name.trim().is_empty());
        bar.map_or(segment.clone(), |bar| format!("{segment} of {}", short_name(&bar.name)))
    };
    let depth = length(plan, overlap.depth_mm);
    format!("{} overlaps {} by {depth}", name(overlap.first), name(overlap.second))
}

/// A length fine enough to be seen.
fn length(plan: &Plan, mm: f64) -> String {
    format_length(mm, plan.units.length.length_unit(), plan.units.length.finest())
}

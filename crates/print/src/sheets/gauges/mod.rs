//! The gauge strip: a strip of sheet at full scale with a notch for each size, as it must go over, and as it must not.

mod notches;
mod strip;

use self::notches::{Group, group};
use self::strip::{Row, row_block};
use crate::fonts::Weight;
use crate::sheets::cautions;
use crate::sheets::flow::Flow;
use crate::sheets::names::title;
use crate::sheets::paragraph::paragraph;
use crate::sheets::sizes_in_words::mm_words;
use crate::sheets::title::title_block;
use crate::sheets::type_sizes::{BODY, FACT};
use fh_core::cautions::Cautions;
use fh_core::plan::Plan;
use fh_work::{Gauge, Worked};

/// What stands over the strips (common practice, no source).
const MAKE: &str = "Full scale. Glue it onto sheet metal 1.5 to 2 mm thick, and cut and file each notch to the middle of its lines. \
    The go notch slides over the forged part, the no-go notch does not. “hot” goes over it at forging heat, “hot no go” does not: \
    a neck that takes it is too thin.";
/// Between two strips.
const BETWEEN_MM: f64 = 7.0;

/// Puts the gauges of a plan's order on the flow.
pub(super) fn put(flow: &mut Flow, plan: &Plan, worked: &Worked, warned: &Cautions) {
    let width = flow.width();
    flow.start_part(format!("{} · gauges", title(plan)));
    flow.put(title_block(&title(plan), "", "GAUGES", width).then_free(2.0));
    cautions::put_own(flow, warned);
    let (thin, notched): (Vec<&Gauge>, Vec<&Gauge>) = worked.gauges.iter().partition(|gauge| gauge.caliper);
    if worked.gauges.is_empty() {
        flow.put(paragraph("No size of this piece asks for a gauge.", FACT, Weight::SemiBold, width));
        return;
    }
    if !notched.is_empty() {
        flow.put(paragraph(MAKE, BODY, Weight::Regular, width).then_free(3.0));
    }
    let mut too_wide = Vec::new();
    let mut row = Row::default();
    for gauge in notched {
        for group in group(plan, gauge, width) {
            if !group.fits(width) {
                too_wide.push(format!("{}: {}", mm_words(plan.units.length, gauge.size_mm), gauge.what));
                continue;
            }
            if !row.has_room(&group, width) {
                put_row(flow, plan, &std::mem::take(&mut row));
            }
            row.add(group);
        }
    }
    put_row(flow, plan, &row);
    too_wide.dedup();
    if !too_wide.is_empty() {
        let words = format!("Too wide for a strip of sheet: {}.", too_wide.join("; "));
        flow.put(paragraph(&words, BODY, Weight::Regular, width));
    }
    if !thin.is_empty() {
        let words: Vec<String> = thin.iter().map(|gauge| caliper_words(plan, gauge)).collect();
        let words = format!("Too thin for a notch, measure with the caliper: {}.", words.join("; "));
        flow.put(paragraph(&words, BODY, Weight::Regular, width));
    }
}

/// A size for the caliper, with what it may be: `leaf: thickness at the tip 1.6 mm, 1.4 to 1.8 mm`.
fn caliper_words(plan: &Plan, gauge: &Gauge) -> String {
    let words = |mm: f64| mm_words(plan.units.length, mm);
    match gauge.go_mm {
        Some(go_mm) => format!("{} {}, {} to {}", gauge.what, gauge.words, words(gauge.no_go_mm), words(go_mm)),
        None => format!("{} {}", gauge.what, gauge.words),
    }
}

fn put_row(flow: &mut Flow, plan: &Plan, row: &Row) {
    if row.is_empty() {
        return;
    }
    flow.put(row_block(row, plan.units.length, flow.width()));
    flow.skip(BETWEEN_MM);
}

/// Whether a group keeps within a page.
impl Group {
    fn fits(&self, width: f64) -> bool {
        self.width_mm() <= width - 2.0 * notches::END_MM && self.deepest_mm() <= strip::DEEPEST_MM
    }
}

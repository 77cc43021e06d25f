//! How a part is upset: which end is struck, in how many goes, and what is dressed afterwards.

use super::from_the_ends;
use crate::brief::swelling_side;
use crate::neck::least;
use crate::site::{Part, Site, extents, in_mm};
use crate::words::length_words;
use fh_core::metal::Shape;
use fh_core::plan::{Form, Limits};

/// A bar that stands farther out of the heat than so many times its thickness whips under the blow: common
/// practice, no source.
const WHIPS: f64 = 20.0;
/// No length is upset in more goes than this: beyond it another way has to be found.
const MOST_STAGES: f64 = 20.0;

/// Whether a part is upset in the vice: on the anvil the bar would whip.
pub(crate) fn is_clamped(site: &Site<'_>, part: Part<'_>) -> bool {
    let [before, after] = from_the_ends(site, part);
    before.max(after) > WHIPS * least(extents(&site.raw_section(part.at)))
}

/// In how many goes a part is upset: what is longer than the plan's limits of thicknesses buckles in one.
pub(crate) fn stages(site: &Site<'_>, part: Part<'_>) -> usize {
    if let Form::Rivet(_) = part.segment.form {
        return 1;
    }
    let limits = &site.plan.limits;
    let likely = limits.upset_likely.unwrap_or(Limits::UPSET_LIKELY);
    let sure = limits.upset_sure.unwrap_or(Limits::UPSET_SURE).max(0.1);
    let free = in_mm(part.balance.stock_length) / least(extents(&site.raw_section(part.at))).max(1e-6);
    if free > likely { (free / sure).ceil().clamp(2.0, MOST_STAGES) as usize } else { 1 }
}

pub(super) fn words(site: &Site<'_>, part: Part<'_>) -> String {
    let [before, after] = from_the_ends(site, part);
    let datum = format!("the {}", site.bar.datum_name());
    let [near, far] =
        if before < after { [datum, "the far end".to_owned()] } else { ["the far end".to_owned(), datum] };
    let mut all = vec![match is_clamped(site, part) {
        true if before.min(after) < 1.0 => {
            format!("Clamp it in the vice just below the heat, {near} up, and strike that end in line with the bar.")
        }
        true => {
            format!("Clamp it in the vice just beside the heat, {near} up, and strike that end in line with the bar.")
        }
        false => format!("Stand it on {near} on the face, and strike {far} in line with the bar."),
    }];
    let stages = stages(site, part);
    if stages > 1 {
        all.push(format!(
            "It is long for its thickness: upset it in {stages} goes from its free end, with a short heat for each."
        ));
    }
    all.push("When it bends, straighten it at once.".to_owned());
    if let Some(Shape::Prism { .. }) = &part.balance.shape {
        all.push("Then true its sides to size.".to_owned());
    }
    if let Some(side) = swelling_side(part) {
        let [wide, thick] = extents(&site.raw_section(part.at)).map(|side| length_words(site.plan, side));
        let thick = if wide == thick { thick } else { format!("{wide} × {thick}") };
        all.push(format!(
            "Then lay it down, and flatten the other sides to {thick}, so that all of the swelling stands on the {side}: over the edge of the anvil, so that it is not struck flat. That draws it out again, so upset it a little shorter first."
        ));
    }
    all.join(" ")
}

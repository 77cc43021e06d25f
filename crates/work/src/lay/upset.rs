//! How a part is upset: which end is struck, in how many goes, and what is dressed afterwards.

use super::from_the_ends;
use crate::brief::swelling_side;
use crate::neck::least;
use crate::site::{Part, Site, extents, in_mm};
use crate::words::length_words;
use fh_core::metal::Shape;

/// A bar that stands farther out of the heat than so many times its thickness whips under the blow.
const WHIPS: f64 = 20.0;
/// A length of more than so many times the thickness buckles: common practice, no source; the limit of the finding is the
/// plan's own.
const BUCKLES: f64 = 2.5;

/// Whether a part is upset in the vice: on the anvil the bar would whip.
pub(crate) fn is_clamped(site: &Site<'_>, part: Part<'_>) -> bool {
    let [before, after] = from_the_ends(site, part);
    before.max(after) > WHIPS * least(extents(&site.raw_section(part.at)))
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
    if in_mm(part.balance.stock_length) > BUCKLES * least(extents(&site.raw_section(part.at))) {
        all.push("It is long for its thickness: upset it in parts, with a short heat for each.".to_owned());
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

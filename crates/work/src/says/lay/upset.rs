//! How a part is upset: which end is struck, in how many goes, and what is dressed afterwards.

use crate::job::site::{Part, Site, extents};
use crate::job::upsets::{from_the_ends, is_clamped, stages};
use crate::says::words::length_words;
use fh_core::metal::Shape;

/// The side that the metal of a peak stands on, in words: the outside of its bend; none of other parts.
pub(crate) fn swelling_side(part: Part<'_>) -> Option<String> {
    match &part.balance.shape {
        Some(Shape::Peak { corner, .. }) => {
            Some(crate::says::words::side_up((corner.side.to_degrees() + 180.0).rem_euclid(360.0)))
        }
        _ => None,
    }
}

pub(crate) fn words(site: &Site<'_>, part: Part<'_>) -> String {
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
        // In the middle of the bar there is no free end to begin at.
        let from = if before.min(after) < 1.0 { "from its free end" } else { "from one of its marks to the other" };
        all.push(format!("Upset it in {stages} goes {from}, a short heat for each: it is long for its thickness."));
    }
    all.push("When it bends, straighten it at once.".to_owned());
    if let Some(Shape::Prism { .. }) = &part.balance.shape {
        all.push("Then true its sides to size.".to_owned());
    }
    if let Some(side) = swelling_side(part) {
        let [wide, thick] = extents(&site.raw_section(part.at)).map(|side| length_words(site.plan, side));
        let thick = if wide == thick { thick } else { format!("{wide} × {thick}") };
        all.push(format!(
            "Then, in a heat of its own, lay it down, and flatten the other sides to {thick}, so that all of the swelling is on the {side}: over the edge of the anvil, so that it is not struck flat. That draws it out again, so upset it a little shorter first."
        ));
    }
    all.join(" ")
}

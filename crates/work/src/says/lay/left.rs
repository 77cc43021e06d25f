//! How the sides of a peak are set down whose metal is left: nothing is done to the peak itself.

use crate::job::site::{Part, Site, in_mm};
use crate::says::words::{length_words, side_up};
use fh_core::metal::Standing;

/// From where the two set-downs are made, over which edges, and how far apart.
pub(super) fn words(site: &Site<'_>, part: Part<'_>, standing: &Standing) -> String {
    let size = |mm: f64| length_words(site.plan, mm);
    let under = side_up((standing.corner.side.to_degrees() + 180.0).rem_euclid(360.0));
    let legs = size(in_mm(standing.corner.thickness));
    let [near, far] = standing.edges.map(|edge| edge_words(&size, in_mm(edge)));
    let mut all = vec![format!(
        "Lay its {under} on the anvil. Set down over the near edge{near}, to {legs}, half on and half off; then, turned end for end or moved across, over the far edge{far} to the same: both from the same side of the bar."
    )];
    if let Some(set_downs) = standing.set_downs() {
        let apart = match set_downs.top {
            Some(top) => {
                let inside = (in_mm(part.balance.stock_length) - in_mm(top)) / 2.0;
                let from_marks =
                    if inside > 0.0 { format!(", {} inside each mark", size(inside)) } else { String::new() };
                format!("The walls are {} apart{from_marks}.", size(in_mm(top)))
            }
            None => format!("They meet in a ridge {} above the legs.", size(in_mm(set_downs.height))),
        };
        all.push(apart);
    }
    all.push("Leave the peak between them alone; let it spread sideways.".to_owned());
    all.join(" ")
}

fn edge_words(size: &impl Fn(f64) -> String, edge_mm: f64) -> String {
    if edge_mm > 0.0 { format!(" (rounded to {})", size(edge_mm)) } else { String::new() }
}

//! How ends are scarfed and welded, and how parts are put together.

use crate::site::{Part, Site, in_mm};
use crate::words::length_words;
use fh_core::plan::JointKind;

/// How a lap is welded.
pub(super) const WELD: &str = "Brush the lap and flux it at an orange heat; heat it slowly in a clean fire until its surface looks wet. Light, quick blows from the middle of the lap outward; then flux, a second welding heat, and dress it to size.";

/// How an end is scarfed.
pub(super) fn scarf(site: &Site<'_>, part: Part<'_>) -> String {
    let long = part.balance.derived.iter().find(|size| size.name == "scarf").and_then(|size| size.length);
    let over = long.map_or_else(String::new, |long| format!(" over {}", length_words(site.plan, in_mm(long))));
    format!(
        "Upset the end a little, the bar behind it cooled. Then bevel one side{over}, slightly crowned, to a thin lip; the end that it meets on the opposite side."
    )
}

/// How a joint is made.
pub(super) fn at_joint(site: &Site<'_>, joint: usize) -> Option<&'static str> {
    Some(match site.plan.joints.get(joint)?.kind {
        JointKind::Weld => WELD,
        JointKind::Tenon => {
            "Hold it below its shoulder in the vice, with soft jaws. Head what stands out with the hammer first, then with the rivet set; from about 6 mm on hot."
        }
        JointKind::Rivet => {
            "Its head on a bolster; swell what stands out with the hammer first, then round it with the rivet set; from about 6 mm on hot."
        }
        JointKind::Collar => "Hot, over the bars that it binds: close its ends one after the other, and let it shrink.",
        _ => return None,
    })
}

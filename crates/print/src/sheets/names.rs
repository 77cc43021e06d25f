//! What sheets call a piece and its bars.

use fh_core::plan::{Bar, Plan};

/// The title of a plan that has none.
const UNTITLED: &str = "Untitled piece";

/// The title of a plan.
pub(super) fn title(plan: &Plan) -> &str {
    if plan.title.trim().is_empty() { UNTITLED } else { plan.title.trim() }
}

/// The bar's name, with its number where there are several.
pub(super) fn bar_name(plan: &Plan, index: usize, bar: &Bar) -> String {
    let count = plan.bars.len();
    match (bar.name.trim(), count) {
        ("", 1) => "bar".to_owned(),
        ("", _) => format!("bar {} of {count}", index + 1),
        (name, 1) => name.to_owned(),
        (name, _) => format!("bar {} of {count}: {name}", index + 1),
    }
}

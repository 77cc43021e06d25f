//! What sheets call a piece and its bars.

use fh_core::plan::{Bar, Plan};

/// The title of a plan that has none.
const UNTITLED: &str = "Untitled piece";

/// No heading has room for more letters.
const MOST_LETTERS: usize = 200;

/// The title of a plan, cut off with `…` where it is longer than any heading.
pub(super) fn title(plan: &Plan) -> String {
    let title = plan.title.trim();
    match title.char_indices().nth(MOST_LETTERS) {
        _ if title.is_empty() => UNTITLED.to_owned(),
        Some((end, _)) => format!("{}…", &title[..end]),
        None => title.to_owned(),
    }
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

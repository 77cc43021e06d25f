//! The heading of a bar's part: the piece, the bar, and the facts that the bar is fetched and cut by.

use super::words::BarWords;
use crate::sheets::flow::Block;
use crate::sheets::title::title_block as sheet_title;

/// The title with the name of the bar.
pub(super) fn title_block(title: &str, bar: &BarWords, width: f64) -> Block {
    sheet_title(title, &bar.name, "MARK SHEET", width)
}

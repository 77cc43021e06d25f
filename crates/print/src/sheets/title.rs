//! The head of a sheet: what the piece is called, and which sheet and which bar this is.

use crate::drawing::{Text, at};
use crate::fonts::Weight;
use crate::pen::Gray;
use crate::sheets::flow::Block;
use crate::sheets::type_sizes::{BODY, CAPTION, TITLE};
use crate::typeset;

/// The title of the piece, with the name of the bar (or nothing) and the kind of the sheet at its right.
pub(super) fn title_block(title: &str, bar: &str, kind: &str, width: f64) -> Block {
    let bar_name = typeset::shorten(bar, BODY * 1.2, Weight::SemiBold, width * 0.4);
    let right = Text::new(at(width, 7.2), BODY * 1.2, &bar_name).right().bold();
    let kind = Text::new(at(width, 2.4), CAPTION, kind).right().gray(Gray::DARK);
    let room = width - right.width_mm().max(kind.width_mm()) - 6.0;
    let size = typeset::fitting_size(title, TITLE, 0.6 * TITLE, Weight::SemiBold, room);
    let title = typeset::shorten(title, size, Weight::SemiBold, room);
    Block { height: 10.0, items: vec![Text::new(at(0.0, 7.2), size, &title).bold().into(), kind.into(), right.into()] }
}

//! The step sheets: the order of work, sheet in hand. A card for each step, or the whole job in a table.

mod anchor;
mod anvil;
mod at_hand;
mod bar_scale;
mod bend_notes;
mod bent;
mod card;
mod card_body;
mod cards;
pub(super) mod cell;
mod detail;
mod dimension_lines;
mod faces;
mod hatch;
pub(super) mod in_short;
mod job;
mod label_layout;
mod label_tries;
mod mark_numbers;
mod mark_table;
mod metal_grid;
pub(super) mod opening;
mod outline;
mod piece_labels;
mod piece_page;
pub(super) mod piece_picture;
mod piece_view;
mod ready;
mod said_before;
mod short_rows;
mod size_table;
mod slim_card;
mod states;
mod step_picture;
mod strip;
mod strip_bar;
mod table;
pub(super) mod usual_heat;
pub(super) mod words;

use crate::sheets::flow::Block;
use fh_core::balance::Balance;
use fh_core::plan::Plan;

pub(super) use job::Job;

/// A picture of the finished piece with its overall sizes, no taller than so many mm; none where it cannot be drawn.
pub(super) fn piece_block(plan: &Plan, balance: &Balance, width: f64, tallest: f64) -> Option<Block> {
    piece_picture::Picture::new(plan, balance, piece_picture::Named::Nothing, [width, tallest])
        .map(|picture| picture.drawn(width, tallest).block)
}

#[cfg(test)]
mod tests;

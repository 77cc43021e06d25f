//! The widgets of this program: fields that take what a smith writes, choosers with drawings, small pictures.

pub(crate) mod chooser;
pub(crate) mod command_button;
pub(crate) mod compared;
pub(crate) mod entry;
pub(crate) mod fields;
pub(crate) mod fill;
pub(crate) mod follow_focus;
pub(crate) mod form_card;
pub(crate) mod form_icon;
pub(crate) mod hatch;
pub(crate) mod heading;
pub(crate) mod keys;
pub(crate) mod line;
pub(crate) mod menu_of_part;
pub(crate) mod motif_card;
pub(crate) mod motif_picture;
pub(crate) mod page;
pub(crate) mod plan_tile;
pub(crate) mod prose;
pub(crate) mod row;
pub(crate) mod scale;
pub(crate) mod section_form;
pub(crate) mod section_picture;
pub(crate) mod severity_sign;
mod sizing;
pub(crate) mod table;
mod whole_icon;

pub(crate) use sizing::Sizing;

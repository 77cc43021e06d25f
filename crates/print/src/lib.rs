//! A page-sized drawing in millimetres, its PDF and SVG, and the sheets.
//!
//! Every sheet is first a [`drawing::Drawing`]: pages of lines, areas and words in true millimetres, the origin in the
//! top left corner, y down. The file formats are written from that and know nothing of forging.

pub mod drawing;
pub mod fonts;
pub mod paper;
pub mod pen;
pub mod sheets;
pub mod typeset;

mod error;
mod fractions;
mod glyph_lines;
mod pdf;
mod shaping;
mod svg;
mod text_form;

pub use error::PrintError;
pub use pdf::pdf;
pub use svg::svg;
pub use text_form::text_form;

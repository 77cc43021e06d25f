//! What can go wrong between a drawing and its file.

use thiserror::Error;

/// Why a drawing could not be written.
#[derive(Debug, Error)]
pub enum PrintError {
    /// A font that is built into the program could not be read.
    #[error("the built-in font {name} cannot be read")]
    Font {
        /// The font's name.
        name: &'static str,
    },
    /// The paper has no usable size.
    #[error("the paper size {width_mm} mm × {height_mm} mm cannot be printed")]
    PaperSize {
        /// Its width.
        width_mm: f64,
        /// Its height.
        height_mm: f64,
    },
    /// A line or a text stands at a place that is not a number.
    #[error("page {page}, item {item} stands at a place that is not a number")]
    NotANumber {
        /// The page, counted from 1.
        page: usize,
        /// The item on it, counted from 1.
        item: usize,
    },
    /// The PDF could not be put together.
    #[error("the PDF could not be put together: {0}")]
    Pdf(String),
}

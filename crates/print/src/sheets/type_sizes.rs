//! The sizes of letters on a sheet: few, and large enough for arm's length. Each is the height of the em in mm.

/// The title of the piece.
pub(super) const TITLE: f64 = 9.0;
/// Running totals and steps: figures 4.5 mm high.
pub(super) const FIGURE: f64 = 6.8;
/// What a fact of the heading says.
pub(super) const FACT: f64 = 5.4;
/// Names, sentences, and whatever else is read.
pub(super) const BODY: f64 = 4.2;
/// Captions.
pub(super) const CAPTION: f64 = 3.4;
/// The least that figures are reduced to where they have to fit.
pub(super) const SMALLEST: f64 = 2.8;

/// From one baseline to the next, as a share of the em.
pub(super) const LINE_PITCH: f64 = 1.22;

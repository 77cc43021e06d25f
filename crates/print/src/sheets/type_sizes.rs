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

/// What a step of the bench sheet says, from the largest that fits its leaf down to the least. At arm's length, some 650 mm,
/// capitals are read with ease from 1/200 of that and just so at 1/250 (common practice, no source): 3.3 mm to 2.7 mm here.
pub(super) const STEP: [f64; 4] = [5.0, 4.7, 4.4, 4.1];
/// What stands below a step and beside a mark there: capitals of 2.6 mm.
pub(super) const BELOW_STEP: f64 = 4.0;

/// From one baseline to the next on the bench sheet, as a share of the em: its paragraphs are short.
pub(super) const CLOSE_PITCH: f64 = 1.09;

/// From one baseline to the next, as a share of the em.
pub(super) const LINE_PITCH: f64 = 1.22;

//! Distances on the screen, in points: steps of a 4 pt grid.

/// The grid.
pub const GRID: f32 = 4.0;
/// Between things that belong together.
pub const TIGHT: f32 = GRID;
/// Between neighbors.
pub const GAP: f32 = 2.0 * GRID;
/// Around the contents of a panel.
pub const PAD: f32 = 3.0 * GRID;
/// Between groups.
pub const GROUP: f32 = 4.0 * GRID;
/// The least height of what can be clicked.
pub const TARGET: f32 = 7.0 * GRID;
/// A hairline.
pub const HAIRLINE: f32 = 1.0;
/// A drawn line.
pub const LINE: f32 = 1.5;
/// A heavy line: what is selected.
pub const HEAVY: f32 = 2.5;
/// The rounding of fields and buttons.
pub const CORNER: u8 = 3;

/// How wide dialogs are, in points at normal text size: by what they hold, so that alike ones look alike.
pub mod dialog {
    /// A question with its answers, or a field or two.
    pub const QUESTION: f32 = 460.0;
    /// A form of some lines.
    pub const FORM: f32 = 560.0;
    /// A list, or a form with its outcome below.
    pub const LIST: f32 = 640.0;
    /// A table of several columns.
    pub const TABLE: f32 = 900.0;
    /// Pages to read or to print, with a list beside them.
    pub const PAGES: f32 = 1000.0;
    /// Cards beside each other, as many as a window of usual width has room for.
    pub const CARDS: f32 = 1240.0;
}

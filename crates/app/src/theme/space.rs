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

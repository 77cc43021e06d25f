//! The sizes of the drawing that do not follow from the metal: steps of the theme's grid and heights of its text.

use crate::theme::{Text, Theme, space};

/// How many rows of labels the marks have where there is room, and in a window lower than so many lines.
const LANES: [usize; 2] = [3, 2];
const LOW_LINES: f32 = 16.0;

/// Sizes in points, grown with the text.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Sizes {
    /// A line of small text.
    pub(super) line: f32,
    /// The captions at the left.
    pub(super) gutter: f32,
    /// The ruler.
    pub(super) ruler: f32,
    /// The least and the greatest height of the bands.
    pub(super) bands: [f32; 2],
    /// The least height of a row.
    pub(super) row: f32,
    /// The width in which the pointer catches a boundary.
    pub(super) catch: f32,
    /// A shape that tells of a finding, a knob, a bracket's arm.
    pub(super) shape: f32,
    /// Between hatch lines.
    pub(super) hatch: f32,
    /// The least width of a box for a segment that is not settled.
    pub(super) unsettled: f32,
    /// The least distance of the ruler's ticks.
    pub(super) tick: f32,
    /// The narrowest place for a name.
    pub(super) name: f32,
    /// The line below the lengths where the length of what is hot stands; 0 where no step is shown.
    pub(super) zone: f32,
    /// What stays free at the left and the right end of a fitted bar.
    pub(super) margins: [f32; 2],
}

impl Sizes {
    /// How many rows of labels the marks have in a window of a height in points.
    pub(super) fn lanes(&self, window: f32) -> usize {
        LANES[usize::from(window < LOW_LINES * self.line)]
    }

    /// With a line for what is hot in a step; the bands give way for it.
    pub(super) fn with_zone(self) -> Self {
        Self { zone: self.line + space::GAP, bands: [self.line * 1.8, self.bands[1]], ..self }
    }

    /// The sizes of a theme.
    pub(super) fn new(theme: &Theme) -> Self {
        let line = (theme.font(Text::Small).size * 1.3).ceil();
        let steps = |grid: f32| theme.scaled(grid * space::GRID);
        Self {
            line,
            gutter: steps(15.0),
            ruler: line + steps(3.0),
            bands: [line * 2.0, steps(40.0)],
            row: space::GAP,
            catch: steps(3.0),
            shape: theme.scaled(space::GAP),
            hatch: steps(2.0),
            unsettled: steps(4.0),
            tick: space::GRID,
            name: steps(8.0),
            zone: 0.0,
            margins: [steps(4.0), steps(10.0)],
        }
    }
}

//! What is to be drawn.

use crate::theme::Theme;
use fh_core::balance::Balance;
use fh_core::plan::Plan;

/// What is to be drawn.
pub struct Scene<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// Its balance.
    pub balance: &'a Balance,
    /// Numbers that change whenever the plan or the balance does: while they stay, nothing is worked out again. Where there are
    /// none, all of it is in each frame.
    pub stamp: Option<[u64; 3]>,
    /// The bar of it that is shown.
    pub bar: usize,
    /// The selected segment.
    pub selected: Option<usize>,
    /// The segments that are selected besides.
    pub also: &'a [usize],
    /// Where the plot's cursor stands, in mm on the starting bar.
    pub cursor_mm: Option<f64>,
    /// The look.
    pub theme: &'a Theme,
    /// Where the bar is drawn as it is after a step; nothing of it can be dragged then.
    pub step: Option<AfterStep<'a>>,
}

/// That the bar is drawn as it is after a step.
#[derive(Clone, Copy, Debug)]
pub struct AfterStep<'a> {
    /// The number of the step, counted from 1.
    pub number: usize,
    /// The segments that it changes.
    pub lit: &'a [usize],
    /// What is hot, in mm on the bar as it is after the step, and how long it is before it, in words with their head.
    pub hot: Option<([f64; 2], &'a str)>,
    /// The length that the drawing has room for at least, in mm, so that what grows is drawn to one scale.
    pub room_mm: f64,
    /// The thickness that it has room for at least, from the side and from above, in mm.
    pub room_across_mm: [f64; 2],
}

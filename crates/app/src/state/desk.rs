//! What panels and dialogs may look at.

use super::{Document, OrderDesk, PieceState, Selection, Settings, Shown, Steel, Views};
use crate::theme::Theme;
use fh_store::Recent;
use fh_work::Worked;

/// What panels and dialogs may look at.
pub(crate) struct Desk<'a> {
    pub(crate) document: &'a Document,
    pub(crate) selection: Selection,
    /// The parts that are selected besides.
    pub(crate) also: &'a [usize],
    pub(crate) theme: &'a Theme,
    pub(crate) settings: &'a Settings,
    pub(crate) recent: &'a Recent,
    pub(crate) views: Views,
    pub(crate) exaggeration: f32,
    /// Whether both views were asked for and there is room for one.
    pub(crate) hides_a_view: bool,
    pub(crate) findings_open: bool,
    /// The finding that was looked at last, by its place in the list.
    pub(crate) finding: Option<usize>,
    pub(crate) piece_open: bool,
    pub(crate) piece: PieceState,
    /// What was last worked out of how the plan is forged, for its findings; whether or not anything shows the order.
    pub(crate) worked: Option<&'a Worked>,
    /// The order of work, where something shows it.
    pub(crate) order: Option<OrderDesk<'a>>,
    /// Which bar, the rack, the cut list and the quote.
    pub(crate) steel: &'a Steel,
    /// What was last said.
    pub(crate) said: &'a str,
}

impl<'a> Desk<'a> {
    /// Whether the order of work stands in place of the list of parts.
    pub(crate) fn order_open(&self) -> bool {
        self.settings.order_open
    }

    /// The bars after the chosen step, where they are shown in place of the finished ones.
    pub(crate) fn shown(&self) -> Option<&'a Shown> {
        self.order.filter(|_| self.order_open()).and_then(|order| order.shown)
    }
}

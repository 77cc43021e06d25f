//! What the editor remembers from frame to frame. Panels read it and ask for changes; nothing here draws.

mod clipboard;
mod document;
mod keeper;
mod kept;
mod lines;
mod request;
mod selection;
mod settings;

pub(crate) use clipboard::Clipboard;
pub(crate) use document::{Document, PlanFile};
pub(crate) use keeper::Keeper;
pub(crate) use kept::Kept;
pub(crate) use lines::{Line, lines};
pub(crate) use request::{Choice, Request, Side, Then};
pub(crate) use selection::{Focus, Selection};
pub(crate) use settings::{PaperSize, Settings, SheetKind, ViewsShown};

use crate::canvas::Views;
use crate::order::{OrderDesk, Shown};
use crate::piece_view::PieceState;
use crate::theme::Theme;
use fh_store::Recent;
use fh_work::Worked;

/// What panels and dialogs may look at.
pub(crate) struct Desk<'a> {
    pub(crate) document: &'a Document,
    pub(crate) selection: Selection,
    pub(crate) theme: &'a Theme,
    pub(crate) settings: &'a Settings,
    pub(crate) recent: &'a Recent,
    pub(crate) views: Views,
    pub(crate) exaggeration: f32,
    pub(crate) findings_open: bool,
    /// The finding that was looked at last, by its place in the list.
    pub(crate) finding: Option<usize>,
    pub(crate) piece_open: bool,
    pub(crate) piece: PieceState,
    /// What was last worked out of how the plan is forged, for its findings; whether or not anything shows the order.
    pub(crate) worked: Option<&'a Worked>,
    /// The order of work, where something shows it.
    pub(crate) order: Option<OrderDesk<'a>>,
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

//! The editor: everything in the window. It needs no window itself, so that tests can show it in any `Ui`.

mod anvil;
mod apply;
mod asked;
mod chrome;
mod events;
mod export;
mod files;
mod hang;
mod job;
mod layout;
mod motifs;
mod order;
mod run;
mod segments;
mod several;
mod sheet;
mod steel;
mod underlay;
mod whole;
mod whole_added;

use crate::anvil::Anvil;
use crate::canvas::Canvas;
use crate::dialogs::{Dialog, NewPlan, Recovered, Spots, Tour};
use crate::panels::area_plot::Curve;
use crate::piece_view::PieceView;
use crate::services::Services;
use crate::state::{
    Clipboard, Desk, Document, Keeper, Kept, Order, PlanFile, Request, Selection, Settings, Steel, Then,
};
use crate::theme::{self, Theme};
use fh_core::balance::Balance;
use fh_core::plan::{Plan, PlanUnit, SectionSpec, Segment, Units};
use fh_store::{Journal, Recent};
use std::path::{Path, PathBuf};
use whole_added::WholeAdded;

/// The editor: the open plan, what is selected, and the dialog in front.
pub struct Editor {
    services: Services,
    kept: Kept,
    pub(crate) settings: Settings,
    recent: Recent,
    theme: Theme,
    is_dressed: bool,
    pub(crate) document: Document,
    pub(crate) selection: Selection,
    /// The parts that are selected besides.
    pub(super) also: Vec<usize>,
    /// The whole that was put in last, until something is chosen by hand.
    whole_added: Option<WholeAdded>,
    pub(crate) canvas: Canvas,
    pub(crate) piece_view: PieceView,
    pub(crate) order: Order,
    pub(crate) steel: Steel,
    /// The view at the anvil, while it is open.
    pub(crate) anvil: Option<Anvil>,
    curve: Curve,
    curve_of: Option<(u64, u64, usize)>,
    pub(crate) clipboard: Clipboard,
    pub(crate) dialog: Option<Dialog>,
    tour: Option<Tour>,
    spots: Spots,
    keeper: Keeper,
    /// The journal of the job in hand.
    job_keeper: Keeper,
    said: String,
    /// Requests that wait until a field that was being typed in is settled.
    waiting: Vec<Request>,
    /// What is to be done once the plan is saved.
    after_save: Option<Then>,
    /// What is to be done once the job is saved.
    after_job_save: Option<Then>,
    /// Whether the window may close.
    may_close: bool,
    told_title: String,
    serial: u64,
    looked_at_finding: Option<usize>,
    /// Counts how often the look was changed: panels are sized anew then.
    sized_for: u32,
    /// Whether the window was so narrow that it squeezed its panels.
    is_squeezed: bool,
    has_room_for_findings: bool,
    has_room_for_piece: bool,
    /// The units that a plan had before another unit was chosen, and the serial number of that plan.
    left_units: Option<(u64, Units)>,
}

impl Editor {
    /// An editor with nothing in it but an empty plan, and the dialog that asks for its bar.
    pub fn new(services: Services) -> Self {
        let mut editor = Self::bare(services, Document::new(empty_plan(), None, 0));
        editor.dialog = Some(Dialog::NewPlan(NewPlan::new(PlanUnit::Inch, Vec::new())));
        editor.tell_what_was_left();
        editor
    }

    /// An editor with a plan in it that is in no file.
    pub fn with_plan(services: Services, plan: Plan) -> Self {
        let mut editor = Self::bare(services, Document::new(plan, None, 0));
        editor.selection = Selection::first(&editor.document);
        editor.begin_tour_once();
        editor.tell_what_was_left();
        editor
    }

    /// An editor as the program starts: with the plan that was open last, or else with another one.
    pub fn at_start(services: Services, instead: Plan) -> Self {
        let mut editor = Self::bare(services, Document::new(instead, None, 0));
        editor.selection = Selection::first(&editor.document);
        let is_plan = |path: &&PathBuf| path.is_file() && !job::is_job_file(path);
        let last = editor.recent.paths().iter().find(is_plan).filter(|_| editor.settings.reopens_last).cloned();
        if let Some(path) = last {
            editor.open_file(&path);
        }
        editor.begin_tour_once();
        editor.tell_what_was_left();
        editor
    }

    /// An editor that opens a plan's file. Where it cannot be read, a dialog says why.
    pub fn with_file(services: Services, path: &Path) -> Self {
        let mut editor = Self::bare(services, Document::new(empty_plan(), None, 0));
        editor.begin_tour_once();
        if job::is_job_file(path) {
            editor.open_job_with_plan(path);
        } else {
            editor.open_file(path);
        }
        editor.tell_what_was_left();
        editor
    }

    fn bare(services: Services, document: Document) -> Self {
        let home = services.home.as_ref();
        let (kept, settings, tools) = Kept::read(home);
        let recent = home.map_or_else(Recent::default, Recent::load);
        let mut canvas = Canvas::default();
        canvas.set_views(settings.views);
        Self {
            services,
            kept,
            theme: Theme::new(settings.look, settings.text_size),
            is_dressed: false,
            settings,
            recent,
            selection: Selection::first(&document),
            also: Vec::new(),
            whole_added: None,
            document,
            canvas,
            piece_view: PieceView::default(),
            order: Order::with_shop(tools),
            steel: Steel::default(),
            anvil: None,
            curve: Curve::default(),
            curve_of: None,
            clipboard: Clipboard::default(),
            dialog: None,
            tour: None,
            spots: Spots::default(),
            keeper: Keeper::default(),
            job_keeper: Keeper::default(),
            said: String::new(),
            waiting: Vec::new(),
            after_save: None,
            after_job_save: None,
            may_close: false,
            told_title: String::new(),
            serial: 0,
            looked_at_finding: None,
            sized_for: 0,
            is_squeezed: false,
            has_room_for_findings: true,
            has_room_for_piece: true,
            left_units: None,
        }
    }

    /// The plan as it stands.
    pub fn plan(&self) -> &Plan {
        self.document.plan()
    }

    /// What follows from the plan.
    pub fn balance(&self) -> &Balance {
        self.document.balance()
    }

    /// Whether the plan has changes that are not saved.
    pub fn is_changed(&self) -> bool {
        self.document.is_changed()
    }

    /// The place of the selected segment on its bar, where one is selected.
    pub fn selected(&self) -> Option<usize> {
        self.selection.segment()
    }

    /// What panels and dialogs may look at.
    pub(crate) fn desk(&self) -> Desk<'_> {
        Desk {
            document: &self.document,
            selection: self.selection,
            also: &self.also,
            theme: &self.theme,
            settings: &self.settings,
            recent: &self.recent,
            views: self.settings.views,
            exaggeration: self.canvas.exaggeration(),
            hides_a_view: self.canvas.hides_a_view(),
            findings_open: self.settings.findings_open.unwrap_or(self.has_room_for_findings),
            finding: self.looked_at_finding,
            piece_open: self.settings.piece_open.unwrap_or(self.has_room_for_piece),
            piece: self.piece_view.state(),
            worked: self.order.worked().filter(|_| self.order.knows(&self.document)),
            order: self.order.desk().filter(|_| self.wants_order()),
            steel: &self.steel,
            said: &self.said,
        }
    }

    /// The selected segment.
    pub(crate) fn selected_segment(&self) -> Option<&Segment> {
        self.document.plan().segment(self.selection.bar, self.selection.segment()?)
    }

    /// One line over the strips.
    pub(crate) fn say(&mut self, words: impl Into<String>) {
        self.said = words.into();
    }

    /// Puts another plan in the place of the open one.
    fn take(&mut self, plan: Plan, file: Option<PlanFile>, is_recovered: bool) {
        self.steel.job.settle_open(&self.document);
        self.serial += 1;
        self.document = if is_recovered {
            Document::recovered(plan, file, self.serial)
        } else {
            Document::new(plan, file, self.serial)
        };
        self.selection = Selection::first(&self.document);
        self.canvas.fit();
        self.dialog = None;
        self.said.clear();
        self.looked_at_finding = None;
    }

    /// Says what of the program's own files was not read, and offers back unsaved work; once the plan is open, which says
    /// something of its own.
    fn tell_what_was_left(&mut self) {
        if !self.kept.told.is_empty() {
            self.said = format!("■ {}", std::mem::take(&mut self.kept.told));
        }
        let Some(home) = &self.services.home else { return };
        let left = Journal::leftovers(home);
        if !left.work.is_empty() || !left.broken.is_empty() {
            self.dialog = Some(Dialog::Recovered(Recovered::new(left)));
        }
    }

    fn begin_tour_once(&mut self) {
        if !self.settings.tour_seen {
            self.start_tour();
        }
    }

    /// Begins the tour of the screen.
    pub(crate) fn start_tour(&mut self) {
        self.tour = Some(Tour::default());
    }

    /// Makes fonts and colors known. In the first frame nothing can be shown: fonts are there from the next one on.
    fn dress(&mut self, ctx: &egui::Context) -> bool {
        let was_dressed = self.is_dressed;
        if !was_dressed {
            theme::install_fonts(ctx);
            ctx.options_mut(|options| options.zoom_with_keyboard = false);
            self.theme.apply(ctx);
            self.is_dressed = true;
            ctx.request_repaint();
        }
        was_dressed
    }

    fn keep_settings(&mut self) {
        if let Err(error) = self.kept.keep_settings(&self.settings) {
            self.said = format!("The settings were not kept: {error}");
        }
    }
}

/// The plan behind the dialog that asks for a bar.
fn empty_plan() -> Plan {
    let units = Units::inches();
    let side = fh_measure::WrittenLength::parse("1/2 in", None, fh_measure::LengthRange::AboveZero);
    let stock = side
        .map_or(SectionSpec::Point, |side| SectionSpec::Square(fh_core::plan::SquareSpec { side, edge_radius: None }));
    Plan::new("", units, stock)
}

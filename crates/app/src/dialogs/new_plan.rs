//! The dialog that begins a plan: what it is called, its unit, and first of all the bar.

use super::frame::{Frame, main_button, other_button};
use crate::state::{Desk, Request};
use crate::theme::space::dialog;
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields, section_form};
use egui::{Context, Label, RichText, TextEdit, Ui};
use fh_core::edit::{Edit, MarkEdit};
use fh_core::plan::{Plan, PlanUnit, SectionKind, SectionSpec, SquareSpec, Units};
use fh_measure::{LengthRange, LengthUnit, WrittenLength, WrittenShare};
use fh_rack::said::section;

/// What the scale is.
const SCALE: &str = "What the fire takes of the metal. The order of work tells later what each part loses.";

/// A plan being begun.
pub(crate) struct NewPlan {
    title: String,
    units: Units,
    stock: SectionSpec,
    scale: Option<WrittenShare>,
    /// The bar as it was said, and why that is none.
    said: String,
    told: Option<String>,
    /// The sections that lie on the rack.
    rack: Vec<SectionSpec>,
    /// Marks in a row, where there are some already, and why they cannot be.
    marks: String,
    marks_told: Option<String>,
    /// Whether the title has had the keyboard; it has it first.
    met: bool,
}

impl NewPlan {
    /// Begins with a common bar in a unit.
    pub(crate) fn new(unit: PlanUnit, rack: Vec<SectionSpec>) -> Self {
        let units = match unit {
            PlanUnit::Inch => Units::inches(),
            PlanUnit::Millimeter => Units::millimeters(),
        };
        let scale = WrittenShare::parse(Plan::USUAL_SCALE, true).ok();
        let stock = common_bar(unit);
        Self {
            title: String::new(),
            units,
            stock,
            scale,
            said: String::new(),
            told: None,
            rack,
            marks: String::new(),
            marks_told: None,
            met: false,
        }
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: "New plan", width: dialog::QUESTION };
        let mut begun = None;
        frame.show(
            ctx,
            desk,
            out,
            |ui, _| self.contents(ui, desk),
            |ui, out, can_begin| {
                if main_button(ui, desk.theme, "Begin", can_begin) {
                    begun = Some(());
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
        if begun.is_some()
            && let Ok(plan) = self.plan()
        {
            out.push(Request::Begin(Box::new(plan)));
        }
    }

    /// The plan that is begun with it, with its marks set where some were typed.
    fn plan(&self) -> Result<Plan, String> {
        let plan = Plan::new(self.title.trim(), self.units, self.stock.clone());
        let plan = Plan { scale: self.scale.clone(), ..plan };
        if self.marks.trim().is_empty() {
            return Ok(plan);
        }
        let marks = Edit::Mark(MarkEdit::Row { bar: 0, text: self.marks.clone() });
        marks.applied(&plan).map(|(plan, _)| plan).map_err(|refusal| refusal.to_string())
    }

    /// Whether a plan can be begun with it.
    fn contents(&mut self, ui: &mut Ui, desk: &Desk<'_>) -> bool {
        let label = ui.label("What is the piece called?");
        let field = TextEdit::singleline(&mut self.title).desired_width(f32::INFINITY).hint_text("Gate hook");
        let response = ui.add(field).labelled_by(label.id);
        if !std::mem::replace(&mut self.met, true) {
            response.request_focus();
        }
        ui.add_space(space::GAP);
        ui.horizontal(|ui| {
            ui.label("Units");
            for units in [Units::inches(), Units::millimeters()] {
                let words = match units.length {
                    PlanUnit::Inch => "inches",
                    PlanUnit::Millimeter => "millimetres",
                };
                if ui.radio(self.units.length == units.length, words).clicked() && self.units.length != units.length {
                    self.units = units;
                    self.stock = common_bar(units.length);
                }
            }
        });
        ui.add_space(space::GAP);
        ui.label(RichText::new("The bar").text_style(Text::Heading.style()));
        self.bar_as_said(ui, desk);
        let sizing = Sizing::without_stock(desk.theme, self.units);
        let kinds: Vec<_> = SectionKind::ALL.into_iter().filter(|kind| kind.is_stock_shape()).collect();
        if let Some(stock) = section_form::show_in_full(ui, &sizing, "bar", &self.stock, &kinds) {
            self.take(stock, None);
        }
        let entry = Entry::named("Scale", "Scale of the plan").hint("none");
        if let Some(scale) = fields::optional_share(ui, &sizing, &entry, self.scale.as_ref()) {
            self.scale = scale;
        }
        let words = RichText::new(SCALE).text_style(Text::Small.style());
        ui.label(words.color(desk.theme.ink_quiet));
        self.marks_in_row(ui, desk);
        self.told.is_none() && self.marks_told.is_none()
    }

    /// A field for marks that there are already: of a piece that is copied, or from a sheet.
    fn marks_in_row(&mut self, ui: &mut Ui, desk: &Desk<'_>) {
        ui.add_space(space::GAP);
        let label = ui.label("Its marks, where you have them already");
        let hint = match self.units.length {
            PlanUnit::Inch => "from the datum end, in a row: 2, 4 1/4, 6",
            PlanUnit::Millimeter => "from the datum end, in a row: 50, 110, 155",
        };
        let field = TextEdit::singleline(&mut self.marks).desired_width(f32::INFINITY).hint_text(hint);
        ui.add(field).labelled_by(label.id);
        self.marks_told = self.plan().err();
        // Its line is always there: nothing below moves.
        let words = self.marks_told.as_ref().map_or_else(String::new, |why| format!("■ {why}"));
        ui.add(Label::new(RichText::new(words).text_style(Text::Small.style()).color(desk.theme.stop)).truncate());
    }

    /// Takes a bar; a plan is in the unit that its bar is said in.
    fn take(&mut self, stock: SectionSpec, units: Option<Units>) {
        (self.stock, self.told) = (stock, None);
        self.units = units.unwrap_or(self.units);
    }

    /// A field for the bar as one says it, and the bars on the rack.
    fn bar_as_said(&mut self, ui: &mut Ui, desk: &Desk<'_>) {
        let field = TextEdit::singleline(&mut self.said).desired_width(f32::INFINITY);
        let field = ui.add(field.hint_text("as you say it: 12 mm square, 1/2 in round, 30 x 8 mm flat"));
        if field.accessible_name("The bar, as you say it").changed() {
            let unit = section::unit_of(&self.said).unwrap_or_else(|| self.units.length.length_unit());
            let units = if unit == LengthUnit::Inch { Units::inches() } else { Units::millimeters() };
            match section::parse_in(&self.said, Some(unit)) {
                Ok(stock) => self.take(stock, Some(units)),
                Err(_) if self.said.trim().is_empty() => self.told = None,
                Err(why) => self.told = Some(why),
            }
        }
        // Its line is always there: nothing below moves.
        let (words, ink) = match &self.told {
            Some(why) => (format!("■ {why}"), desk.theme.stop),
            None => (format!("It is {}.", self.stock.describe()), desk.theme.ink_quiet),
        };
        ui.add(Label::new(RichText::new(words).text_style(Text::Small.style()).color(ink)).truncate());
        if self.rack.is_empty() {
            return;
        }
        let mut taken = None;
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new("On your rack").color(desk.theme.ink_quiet));
            for section in &self.rack {
                if ui.button(section.describe()).clicked() {
                    taken = Some(section.clone());
                }
            }
        });
        if let Some(stock) = taken {
            let units = if section::is_in_inches(&stock.describe()) { Units::inches() } else { Units::millimeters() };
            self.said.clear();
            self.take(stock, Some(units));
        }
    }
}

/// A bar that most smiths have on the rack.
fn common_bar(unit: PlanUnit) -> SectionSpec {
    let size = match unit {
        PlanUnit::Inch => 12.7,
        PlanUnit::Millimeter => 12.0,
    };
    match WrittenLength::from_mm(size, unit.length_unit(), LengthRange::AboveZero) {
        Ok(side) => SectionSpec::Square(SquareSpec { side, edge_radius: None }),
        // Cannot be reached: these sizes are lengths. A point is a section without any.
        Err(_) => SectionSpec::Point,
    }
}

//! The dialog that begins a plan: what it is called, its unit, and first of all the bar.

use super::frame::{Frame, main_button, other_button};
use crate::state::{Desk, Request};
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, fields, section_form};
use egui::{Context, RichText, TextEdit, Ui};
use fh_core::plan::{Plan, PlanUnit, SectionKind, SectionSpec, SquareSpec, Units};
use fh_measure::{LengthRange, WrittenLength, WrittenShare};

/// What the scale is.
const SCALE: &str = "What the fire takes of the metal. The order of work tells later what each part loses.";

/// A plan being begun.
pub(crate) struct NewPlan {
    title: String,
    units: Units,
    stock: SectionSpec,
    scale: Option<WrittenShare>,
    /// Whether the title has had the keyboard; it has it first.
    met: bool,
}

impl NewPlan {
    /// Begins with a common bar in a unit.
    pub(crate) fn new(unit: PlanUnit) -> Self {
        let units = match unit {
            PlanUnit::Inch => Units::inches(),
            PlanUnit::Millimeter => Units::millimeters(),
        };
        let scale = WrittenShare::parse(Plan::USUAL_SCALE, true).ok();
        Self { title: String::new(), units, stock: common_bar(unit), scale, met: false }
    }

    pub(super) fn show(&mut self, ctx: &Context, desk: &Desk<'_>, out: &mut Vec<Request>) {
        let frame = Frame { title: "New plan", width: 460.0 };
        let mut begun = None;
        frame.show(
            ctx,
            desk,
            out,
            |ui, _| self.contents(ui, desk),
            |ui, out, ()| {
                if main_button(ui, desk.theme, "Begin", true) {
                    begun = Some(());
                }
                if other_button(ui, "Cancel") {
                    out.push(Request::CloseDialog);
                }
            },
        );
        if begun.is_some() {
            let plan = Plan::new(self.title.trim(), self.units, self.stock.clone());
            out.push(Request::Begin(Box::new(Plan { scale: self.scale.clone(), ..plan })));
        }
    }

    fn contents(&mut self, ui: &mut Ui, desk: &Desk<'_>) {
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
        let sizing = Sizing::without_stock(desk.theme, self.units);
        let kinds: Vec<_> = SectionKind::ALL.into_iter().filter(|kind| kind.is_stock_shape()).collect();
        if let Some(stock) = section_form::show(ui, &sizing, "bar", &self.stock, &kinds) {
            self.stock = stock;
        }
        let entry = Entry::named("Scale", "Scale of the plan").hint("none");
        if let Some(scale) = fields::optional_share(ui, &sizing, &entry, self.scale.as_ref()) {
            self.scale = scale;
        }
        let words = RichText::new(SCALE).text_style(Text::Small.style());
        ui.label(words.color(desk.theme.ink_quiet));
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

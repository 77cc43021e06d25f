//! The whole plan: what it is called, its unit, its material, and the limits that it is held against.

use super::{asked, hangs, joints, limits, notes};
use crate::state::{Command, Desk, Request};
use crate::theme::Text;
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields, heading};
use egui::{RichText, Ui};
use fh_core::edit::{Edit, PlanHeader};
use fh_core::material;
use fh_core::plan::{Coating, CollarRule, Duty, PlanUnit, Practice, SlitRule, Units};
use fh_measure::Rounding;

/// Shows the plan.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let plan = desk.document.plan();
    let sizing = Sizing::new(desk.theme, plan.units, None);
    let mut next = PlanHeader::from(plan);
    ui.label(RichText::new("Plan").text_style(Text::Heading.style()).color(desk.theme.ink));
    if let Some(title) = fields::words(ui, &sizing, &Entry::new("Title"), &plan.title) {
        next.title = title;
    }
    units(ui, &sizing, &mut next.units, out);
    heading::show(ui, desk.theme, "Material");
    material(ui, &sizing, &mut next, plan.material_name());
    let scale = Entry::named("Scale", "Scale of the plan").hint("none");
    if let Some(scale) = fields::optional_share(ui, &sizing, &scale, plan.scale.as_ref()) {
        next.scale = scale;
    }
    let coatings = std::iter::once((None, "not stated".to_owned()))
        .chain(Coating::ALL.into_iter().map(|coating| (Some(coating), coating.name().to_owned())));
    if let Some(coating) =
        chooser::show(ui, desk.theme, "Coating", "Coating of the stock", plan.coating, &coatings.collect::<Vec<_>>())
    {
        next.coating = coating;
    }
    heading::show(ui, desk.theme, "Use");
    let duties = std::iter::once((None, "not stated".to_owned()))
        .chain(Duty::ALL.into_iter().map(|duty| (Some(duty), duty.name().to_owned())));
    if let Some(duty) = chooser::show(ui, desk.theme, "Use", "Use of the piece", plan.duty, &duties.collect::<Vec<_>>())
    {
        next.duty = duty;
    }
    heading::show(ui, desk.theme, "Where smiths differ");
    practice(ui, &sizing, &mut next.practice);
    limits::show(ui, &sizing, &mut next.limits);
    joints::show(ui, &sizing, desk, out);
    asked::show(ui, &sizing, desk, out);
    hangs::show(ui, &sizing, &mut next.hangs);
    heading::show(ui, desk.theme, "Notes");
    if let Some(notes) = notes::show(ui, "Notes on the plan", plan.notes.as_deref()) {
        next.notes = notes;
    }
    if next != PlanHeader::from(plan) {
        out.push(Request::Edit(Edit::SetPlan(Box::new(next))));
    }
}

fn units(ui: &mut Ui, sizing: &Sizing<'_>, units: &mut Units, out: &mut Vec<Request>) {
    let choices = [(PlanUnit::Inch, "inches".to_owned()), (PlanUnit::Millimeter, "millimetres".to_owned())];
    if let Some(unit) = chooser::show(ui, sizing.theme, "Units", "Unit of lengths", units.length, &choices) {
        // The command remembers what the marks were rounded to.
        out.push(Request::Run(match unit {
            PlanUnit::Inch => Command::Inches,
            PlanUnit::Millimeter => Command::Millimeters,
        }));
    }
    let choices: Vec<_> = Rounding::CHOICES.into_iter().map(|rounding| (rounding, rounding.text())).collect();
    if let Some(marks) = chooser::show(ui, sizing.theme, "Marks to", "Rounding of the marks", units.marks, &choices) {
        units.marks = marks;
    }
}

fn material(ui: &mut Ui, sizing: &Sizing<'_>, next: &mut PlanHeader, now: &str) {
    let known = material::find(now).map(|material| material.name);
    let at = material::ALL.iter().position(|material| Some(material.name) == known);
    let choices: Vec<_> =
        material::ALL.iter().enumerate().map(|(at, material)| (Some(at), material.name.to_owned())).collect();
    if let Some(choice) = chooser::show(ui, sizing.theme, "Metal", "Material", at, &choices) {
        next.material = choice.and_then(|at| material::ALL.get(at)).map(|material| material.name.to_owned());
    }
}

/// The rules that schools disagree on.
fn practice(ui: &mut Ui, sizing: &Sizing<'_>, practice: &mut Practice) {
    let slits = SlitRule::ALL.into_iter().map(|rule| (Some(rule), rule.name().to_owned()));
    let choices: Vec<_> = std::iter::once((None, "show both".to_owned())).chain(slits).collect();
    let name = "Rule for the slit of a drifted hole";
    if let Some(choice) = chooser::show(ui, sizing.theme, "Slit", name, practice.slit, &choices) {
        practice.slit = choice;
    }
    let collars = CollarRule::ALL.into_iter().map(|rule| (rule, rule.name().to_owned()));
    let choices: Vec<_> = collars.collect();
    let now = practice.collar.unwrap_or(CollarRule::Butted);
    if let Some(choice) = chooser::show(ui, sizing.theme, "Collars", "Rule for collars", now, &choices) {
        practice.collar = Some(choice);
    }
}

//! The sizes that the finished piece is asked to have, on the plan's page.

use crate::state::{Desk, Request, asked_to_open};
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields, heading};
use egui::{Align, Button, CollapsingHeader, RichText, Ui};
use fh_core::describe::{asked_size_state, asked_size_words};
use fh_core::edit::Edit;
use fh_core::plan::{AskedSize, Bar, Direction, Feature, FeatureAt, Overall, Plan, Taken};
use fh_measure::{LengthRange, WrittenLength};

/// Shows the asked sizes, and a button for another one.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let plan = desk.document.plan();
    heading::show(ui, sizing.theme, "Asked sizes");
    let mut next = plan.sizes.clone();
    let mut removed = None;
    let to_open = ui.data_mut(|data| data.remove_temp::<usize>(asked_to_open()));
    for (index, size) in next.iter_mut().enumerate() {
        let balance = desk.document.balance().sizes.get(index);
        let state = balance.map(|balance| asked_size_state(size, balance, plan.units.length)).unwrap_or_default();
        let header = CollapsingHeader::new(format!("{}: {state}", size.title(index)));
        let header = header.id_salt(("asked size", index)).open((to_open == Some(index)).then_some(true));
        let shown = header.show(ui, |ui| {
            if one(ui, sizing, plan, size, index + 1) {
                removed = Some(index);
            }
        });
        if to_open == Some(index) {
            shown.header_response.scroll_to_me(Some(Align::TOP));
        }
    }
    if let Some(index) = removed {
        next.remove(index);
    }
    if let Some(size) = add(ui, sizing, plan) {
        out.push(Request::AskSize(Box::new(size)));
    } else if next != plan.sizes {
        out.push(Request::Edit(Edit::SetSizes(next)));
    }
}

/// The button that adds a size: over all of the first bar, as a start.
fn add(ui: &mut Ui, sizing: &Sizing<'_>, plan: &Plan) -> Option<AskedSize> {
    let tip = "Ask for a size of the finished piece. It is checked, or a part gives to keep it.";
    let button = ui.add_enabled(!plan.bars.is_empty(), Button::new("Ask for a size")).on_hover_text(tip);
    button.clicked().then_some(())?;
    let size = start_size(sizing)?;
    let overall = Some(Overall { direction: Direction::Along, of: None });
    Some(AskedSize { name: String::new(), bar: None, from: None, to: None, taken: None, overall, size, kept_by: None })
}

/// The size that is asked for at first.
fn start_size(sizing: &Sizing<'_>) -> Option<WrittenLength> {
    WrittenLength::from_mm(100.0, sizing.first.units.marks.unit(), LengthRange::AboveZero).ok()
}

/// Shows one size; whether it is to be taken out.
fn one(ui: &mut Ui, sizing: &Sizing<'_>, plan: &Plan, size: &mut AskedSize, number: usize) -> bool {
    let about = RichText::new(asked_size_words(size)).text_style(Text::Small.style()).color(sizing.theme.ink_quiet);
    ui.label(about);
    let name = |what: &str| format!("{what} of size {number}");
    if let Some(typed) = fields::words(ui, sizing, &Entry::named("Name", &name("Name")).hint("none"), &size.name) {
        size.name = typed;
    }
    let label = name("Asked");
    // Two places may touch; over all there is always something.
    let range = if size.overall.is_some() { LengthRange::AboveZero } else { LengthRange::ZeroOrMore };
    if let Some(typed) = fields::length(ui, sizing, &Entry::named("Size", &label), &size.size, range) {
        size.size = typed;
    }
    let bar = bar(ui, sizing, plan, size, &name("Bar"));
    let flat = bar.map(Bar::flat).unwrap_or_default();
    let parts: Vec<&str> = flat.iter().map(|flat| flat.segment.name.as_str()).filter(|name| !name.is_empty()).collect();
    kind(ui, sizing, &parts, size, &name("Kind"));
    if size.overall.is_some() {
        overall(ui, sizing, &parts, size, &name);
    } else {
        between(ui, sizing, &parts, size, &name);
    }
    if let Some(kept_by) = optional_part(
        ui,
        sizing,
        ("Kept by", &name("Kept by"), "nothing: only checked"),
        &parts,
        size.kept_by.as_deref(),
    ) {
        size.kept_by = kept_by;
    }
    ui.add_space(space::GAP);
    ui.button(format!("Remove size {number}")).clicked()
}

/// The bar that it is taken on, to be chosen where there are several.
fn bar<'p>(ui: &mut Ui, sizing: &Sizing<'_>, plan: &'p Plan, size: &mut AskedSize, name: &str) -> Option<&'p Bar> {
    if plan.bars.len() > 1 || size.bar.is_some() {
        let names: Vec<&str> = plan.bars.iter().map(|bar| bar.name.as_str()).filter(|name| !name.is_empty()).collect();
        if let Some(chosen) = optional_part(ui, sizing, ("Bar", name, "the first"), &names, size.bar.as_deref()) {
            size.bar = chosen;
        }
    }
    match &size.bar {
        Some(name) => plan.bars.iter().find(|bar| bar.name == *name),
        None => plan.bars.first(),
    }
}

/// Overall, or between two places.
fn kind(ui: &mut Ui, sizing: &Sizing<'_>, parts: &[&str], size: &mut AskedSize, name: &str) {
    let choices = [(true, "overall".to_owned()), (false, "between two places".to_owned())];
    let Some(is_overall) = chooser::show(ui, sizing.theme, "Kind", name, size.overall.is_some(), &choices) else {
        return;
    };
    if is_overall {
        size.overall = Some(Overall { direction: Direction::Along, of: None });
        (size.from, size.to, size.taken) = (None, None, None);
        // Over all there is always something.
        if let Some(start) = (size.size.lowest_mm() <= 0.0).then(|| start_size(sizing)).flatten() {
            size.size = start;
        }
    } else if let (Some(first), Some(last)) = (parts.first(), parts.last()) {
        size.overall = None;
        size.from = Some(Feature::new(first, FeatureAt::Start));
        size.to = Some(Feature::new(last, FeatureAt::End));
    }
}

fn overall(ui: &mut Ui, sizing: &Sizing<'_>, parts: &[&str], size: &mut AskedSize, name: &impl Fn(&str) -> String) {
    let Some(overall) = &mut size.overall else { return };
    let choices = Direction::ALL.map(|direction| (direction, direction.name().to_owned()));
    if let Some(chosen) = chooser::show(ui, sizing.theme, "Direction", &name("Direction"), overall.direction, &choices)
    {
        overall.direction = chosen;
    }
    let label = name("Direction's part");
    if let Some(of) = optional_part(ui, sizing, ("Of", &label, "the bar"), parts, overall.of.as_deref()) {
        overall.of = of;
    }
}

fn between(ui: &mut Ui, sizing: &Sizing<'_>, parts: &[&str], size: &mut AskedSize, name: &impl Fn(&str) -> String) {
    for (label, feature) in [("From", &mut size.from), ("To", &mut size.to)] {
        let Some(feature) = feature else { continue };
        if let Some(part) = chooser::by_name(ui, sizing.theme, (label, &name(label)), parts, &feature.part) {
            feature.part = part;
        }
        let choices = FeatureAt::ALL.map(|at| (at, at.name().to_owned()));
        let label = name(&format!("{label}, its place"));
        if let Some(at) = chooser::show(ui, sizing.theme, "Its", &label, feature.at, &choices) {
            feature.at = at;
        }
    }
    taken(ui, sizing, parts, size, name);
}

fn taken(ui: &mut Ui, sizing: &Sizing<'_>, parts: &[&str], size: &mut AskedSize, name: &impl Fn(&str) -> String) {
    let now = match &size.taken {
        None | Some(Taken::InSpace) => 0,
        Some(Taken::Along(_)) => 1,
        Some(Taken::OnStraightBar) => 2,
    };
    let words = ["straight across", "along a part", "on the straight bar"].map(str::to_owned);
    let choices: Vec<(usize, String)> = words.into_iter().enumerate().collect();
    if let Some(chosen) = chooser::show(ui, sizing.theme, "Taken", &name("Taken"), now, &choices) {
        size.taken = match chosen {
            1 => parts.first().map(|part| Taken::Along((*part).to_owned())),
            2 => Some(Taken::OnStraightBar),
            _ => None,
        };
    }
    if let Some(Taken::Along(part)) = &mut size.taken
        && let Some(chosen) = chooser::by_name(ui, sizing.theme, ("Along", &name("Along")), parts, part)
    {
        *part = chosen;
    }
}

/// A name to be chosen, or none of them, which is said in words.
fn optional_part(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    (label, name, none): (&str, &str, &str),
    names: &[&str],
    now: Option<&str>,
) -> Option<Option<String>> {
    let at = now.map(|now| names.iter().position(|name| *name == now));
    let mut choices: Vec<(Option<Option<usize>>, String)> = vec![(None, none.to_owned())];
    choices.extend(names.iter().enumerate().map(|(at, name)| (Some(Some(at)), fh_core::describe::short_name(name))));
    if let (Some(None), Some(now)) = (at, now) {
        choices.push((Some(None), format!("“{}” (missing)", fh_core::describe::short_name(now))));
    }
    let chosen = chooser::show(ui, sizing.theme, label, name, at, &choices)?;
    match chosen {
        None => Some(None),
        Some(at) => names.get(at?).map(|name| Some((*name).to_owned())),
    }
}

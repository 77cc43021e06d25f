//! The selected segment: its name, its form and bend with their sizes, what it gives, its section and its figures.

use super::{bend, contents, dressed, facts, form, ladder, mark, notes, repeats, split, trade, via};
use crate::figures;
use crate::state::{Command, Desk, Request};
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::form_card::Offer;
use crate::widgets::{Sizing, chooser, fields, form_card, form_icon, heading, row};
use egui::{ComboBox, Grid, Rect, RichText, Sense, Ui, vec2};
use fh_core::balance::SegmentBalance;
use fh_core::describe::{derived_words, segment_end_words};
use fh_core::edit::{Edit, PartChange};
use fh_core::plan::{Chain, FormKind, Gives, Segment};

/// The width of the cards that forms are offered on, in points at normal text size.
const CARD: f32 = 260.0;
/// The most cards beside each other.
const COLUMNS: usize = 4;
/// The height of the list of forms.
const LIST: f32 = 560.0;
/// The height of the drawing beside the form's name.
const ICON: f32 = 20.0;

/// Shows the segment.
pub(super) fn show(ui: &mut Ui, desk: &Desk<'_>, at: usize, out: &mut Vec<Request>) {
    let bar = desk.selection.bar;
    let plan = desk.document.plan();
    let Some(segment) = plan.segment(bar, at) else { return };
    let bar_balance = desk.document.balance().bars.get(bar);
    let balance = bar_balance.and_then(|bar| bar.segments.get(at));
    let (chain, place) = plan.bars.get(bar).and_then(|bar| bar.place_of(at)).unwrap_or((Chain::Bar, at));
    let first = place == 0;
    let sizing = Sizing::within(desk.theme, plan.units, bar_balance, chain);
    let mut next = segment.clone();
    head(ui, desk, at);
    if let Some(name) = fields::words(ui, &sizing, &Entry::new("Name"), &segment.name) {
        next.name = name;
    }
    let mut chosen = form_chooser(ui, desk, segment.form.kind()).map(PartChange::Form);
    form::show(ui, &sizing, &mut next, balance, first);
    let wish = split::show(ui, &sizing, &mut next.form, balance);
    if let Some(balance) = balance {
        what_gave(ui, desk, balance);
    }
    if bend::is_offered(&next) {
        heading::show(ui, desk.theme, "Bend");
        chosen = bend::show(ui, &sizing, &mut next, balance).or(chosen);
    }
    if segment.form.kind().has_via() {
        heading::show(ui, desk.theme, "Shapes on the way");
        let change = via::show(ui, &sizing, &mut next, balance, first);
        chosen = chosen.or(change.map(PartChange::Via));
    }
    trade::show(ui, desk, at);
    if FormKind::DRESSED.contains(&segment.form.kind()) {
        heading::show(ui, desk.theme, "Dressed in a die");
        dressed::show(ui, &sizing, &mut next, balance, ends(desk, at)[0]);
    }
    heading::show(ui, desk.theme, "Repeats");
    repeats::show(ui, &sizing, &mut next, balance, ends(desk, at));
    contents::show(ui, desk, at, out);
    heading::show(ui, desk.theme, "Its mark, and what gives when it is moved");
    mark::show(ui, desk, &sizing, at, out);
    gives(ui, &sizing, &mut next, balance);
    facts::show(ui, desk, at);
    ladder::show(ui, desk, at);
    heading::show(ui, desk.theme, "Notes");
    if let Some(notes) = notes::show(ui, "Notes on this part", next.notes.as_deref()) {
        next.notes = notes;
    }
    let typed = (next != *segment).then(|| PartChange::Typed(Box::new(next)));
    let changes = typed.into_iter().chain(chosen);
    out.extend(changes.map(|change| Request::Edit(Edit::ChangePart { bar, at, change })));
    match wish {
        Some(split::Wish::Select(branch)) => out.push(Request::SelectBranch { bar, split: at, branch }),
        Some(split::Wish::AddTo(branch)) => {
            out.push(Request::SelectBranch { bar, split: at, branch });
            out.push(Request::Run(Command::AddAfter));
        }
        None => {}
    }
}

/// The words for the segment's two ends.
fn ends(desk: &Desk<'_>, at: usize) -> [&'static str; 2] {
    let bar = desk.selection.bar;
    let both = desk.document.plan().bars.get(bar).zip(desk.document.balance().bars.get(bar));
    both.map_or(["its start", "its end"], |(bar, balance)| segment_end_words(bar, balance, at))
}

fn head(ui: &mut Ui, desk: &Desk<'_>, at: usize) {
    let path = desk.document.plan().bars.get(desk.selection.bar).map_or_else(String::new, |bar| bar.path(at));
    let words = format!("Part {path}");
    ui.label(RichText::new(words).text_style(Text::Heading.style()).color(desk.theme.ink));
}

/// The form, with its drawing; the list offers each with a line of what it is.
fn form_chooser(ui: &mut Ui, desk: &Desk<'_>, now: FormKind) -> Option<FormKind> {
    row::show(ui, desk.theme, "Form", |ui| ui.horizontal(|ui| form_combo(ui, desk, now)).inner)
}

fn form_combo(ui: &mut Ui, desk: &Desk<'_>, now: FormKind) -> Option<FormKind> {
    let theme = desk.theme;
    let icon = vec2(form_icon::width_for(theme.scaled(ICON)), theme.scaled(ICON));
    let (rect, _) = ui.allocate_exact_size(vec2(icon.x, theme.scaled(space::TARGET)), Sense::hover());
    form_icon::paint(ui.painter(), theme, Rect::from_center_size(rect.center(), icon), now);
    let combo = ComboBox::from_id_salt("form").selected_text(form_card::title(now)).width(ui.available_width());
    let shown = combo.height(theme.scaled(LIST)).show_ui(ui, |ui| {
        // Several beside each other where the window is wide enough: so all of them are seen at once.
        let room = ui.ctx().content_rect().width() - 2.0 * space::GROUP;
        let columns = ((room / (theme.scaled(CARD) + space::TIGHT)) as usize).clamp(1, COLUMNS);
        let mut chosen = None;
        Grid::new("forms").num_columns(columns).spacing([space::TIGHT, space::TIGHT]).show(ui, |ui| {
            for (index, kind) in FormKind::ALL.into_iter().enumerate() {
                if form_card::show(ui, theme, Offer::Form(kind), theme.scaled(CARD), kind == now).clicked() {
                    chosen = Some(kind);
                    ui.close();
                }
                if (index + 1) % columns == 0 {
                    ui.end_row();
                }
            }
        });
        chosen
    });
    shown.response.accessible_name("Form");
    shown.inner.flatten().filter(|kind| *kind != now)
}

/// The sizes that gave to fit a bar already cut: what is written above does not hold for them.
fn what_gave(ui: &mut Ui, desk: &Desk<'_>, balance: &SegmentBalance) {
    let unit = desk.document.plan().units.length;
    for words in balance.derived.iter().filter(|size| size.gave.is_some()).filter_map(|size| derived_words(size, unit))
    {
        ui.label(RichText::new(format!("now {words}")).italics().color(desk.theme.ink));
    }
}

fn gives(ui: &mut Ui, sizing: &Sizing<'_>, segment: &mut Segment, balance: Option<&SegmentBalance>) {
    let usual = segment.form.default_gives();
    let words = |gives: Gives| {
        let usual = if gives == usual { " (usual)" } else { "" };
        format!("its {}{usual}", gives.name())
    };
    let choices: Vec<_> = Gives::ALL
        .into_iter()
        .map(|gives| {
            (gives, if gives == Gives::Nothing { "nothing: all its sizes are fixed".to_owned() } else { words(gives) })
        })
        .collect();
    if let Some(gives) = chooser::show(ui, sizing.theme, "Gives", "What gives", segment.giving(), &choices) {
        segment.gives = (gives != usual).then_some(gives);
    }
    let share = balance.map_or(0.0, |balance| balance.scale_share);
    let hint =
        if share > 0.0 { format!("{}, as the bar", figures::percent(share)) } else { "none, as the bar".to_owned() };
    let entry = Entry::named("Scale", "Scale of this part").hint(&hint);
    if let Some(scale) = fields::optional_share(ui, sizing, &entry, segment.scale.as_ref()) {
        segment.scale = scale;
    }
}

//! A line of the list of parts: a drawing, a name, what it becomes, and how much bar it takes.

use crate::figures;
use crate::state::Desk;
use crate::theme::{Text, Theme, space};
use crate::widgets::form_card::{self, Offer};
use crate::widgets::{form_icon, line, severity_sign};
use egui::{Align2, Color32, Rect, Response, Role, Sense, Ui, WidgetInfo, pos2, vec2};
use fh_core::balance::{BarBalance, SegmentBalance};
use fh_core::describe::{bend_words, derived_words, made_words, segment_name, short_name};
use fh_core::findings::Severity;
use fh_core::metal::Shape;
use fh_core::new_segment::Whole;
use fh_core::plan::{Bar, Bend, BendKind, Chain, Segment, SizeName};

/// The height of a line, in points at normal text size.
const HEIGHT: f32 = 44.0;
/// The height of the drawing.
const ICON: f32 = 20.0;
/// How far segments stand in from their bar.
const INDENT: f32 = 8.0;
/// How far each split stands in, and what it holds.
const DEEPER: f32 = 14.0;

/// The height of a line.
pub(super) fn height(theme: &Theme) -> f32 {
    theme.scaled(HEIGHT)
}

/// What a line says.
pub(super) struct Part {
    /// Its name for screen readers.
    pub(super) spoken: String,
    name: String,
    below: String,
    value: String,
    icon: Option<Offer>,
    worst: Option<Severity>,
    is_head: bool,
    /// How many splits it lies within; 0 for what is no segment.
    depth: usize,
}

impl Part {
    /// The whole plan.
    pub(super) fn plan(desk: &Desk<'_>) -> Self {
        let plan = desk.document.plan();
        let name = desk.document.name();
        let below = format!("{}, marks to {}", plan.material_name(), plan.units.marks.text());
        Self {
            spoken: format!("Plan: {name}"),
            name,
            below,
            value: String::new(),
            icon: None,
            worst: None,
            is_head: true,
            depth: 0,
        }
    }

    /// A bar.
    pub(super) fn bar(desk: &Desk<'_>, index: usize) -> Option<Self> {
        let bar = desk.document.plan().bars.get(index)?;
        let balance = desk.document.balance().bars.get(index)?;
        let title = if bar.name.trim().is_empty() { format!("bar {}", index + 1) } else { short_name(&bar.name) };
        let name = if bar.pieces() > 1 { format!("{title}  × {}", bar.pieces()) } else { title.clone() };
        let value = balance.cut_length_shop(desk.document.plan().units.marks).text();
        let spoken = format!("Bar: {title}");
        let below = format!("{} bar", bar.stock.describe());
        Some(Self { spoken, name, below, value, icon: None, worst: worst(desk, index, None), is_head: true, depth: 0 })
    }

    /// A branch of a split.
    pub(super) fn branch(desk: &Desk<'_>, bar: usize, split: usize, index: usize, depth: usize) -> Option<Self> {
        let plan = desk.document.plan();
        let branch = plan.segment(bar, split)?.form.branches().get(index)?;
        let name = branch.title(index);
        let path = plan.bars.get(bar)?.path(split);
        let balance = desk.document.balance().bars.get(bar)?;
        let size = match &balance.segments.get(split)?.shape {
            Some(Shape::Split(cut)) => cut.branches.get(index),
            _ => None,
        };
        let below = if branch.segments.is_empty() {
            "empty: add its parts".to_owned()
        } else {
            size.map_or_else(String::new, |size| format!("{} of the cut bar", figures::percent(size.share)))
        };
        Some(Self {
            spoken: format!("Branch {path}.{}: {name}", index + 1),
            name,
            below,
            value: along_the_slit(plan.bars.get(bar)?, balance, Chain::Branch { split, branch: index }),
            icon: None,
            worst: None,
            is_head: true,
            depth,
        })
    }

    /// A segment that lies within so many splits.
    pub(super) fn segment(desk: &Desk<'_>, bar: usize, index: usize, depth: usize) -> Option<Self> {
        let segment = desk.document.plan().segment(bar, index)?;
        let balance = desk.document.balance().bars.get(bar)?;
        let written = desk.document.plan().bars.get(bar)?;
        let name = segment_name(written, index);
        Some(Self {
            spoken: format!("Part {}: {name}", written.path(index)),
            name,
            below: below(desk, segment, balance.segments.get(index)?),
            value: balance.step_shop(index)?.text(),
            icon: Some(drawing_of(segment)),
            worst: worst(desk, bar, Some(index)),
            is_head: false,
            depth,
        })
    }
}

/// How much bar the segments of a branch take along the slit, by their marks; nothing where there are none.
fn along_the_slit(bar: &Bar, balance: &BarBalance, chain: Chain) -> String {
    let count = bar.chain(chain).map_or(0, Vec::len);
    let at = |place: Option<usize>| balance.block_shop(bar.number_of(chain, place?)?);
    let ends = at((count > 0).then_some(0)).zip(at(count.checked_sub(1)));
    ends.map_or_else(String::new, |([first, _], [_, last])| (last - first).text())
}

/// What a segment becomes; where a size gave to fit the bar, that size in place of the written one.
fn below(desk: &Desk<'_>, segment: &Segment, balance: &SegmentBalance) -> String {
    let unit = desk.document.plan().units.length;
    let gave = balance.derived.iter().filter(|size| size.gave.is_some() && size.name != SizeName::Length);
    let gave: Vec<String> = gave.filter_map(|size| derived_words(size, unit)).collect();
    let form = match gave.is_empty() {
        true => made_words(segment, balance, unit).form,
        false => format!("{}: {}", segment.form.kind().name(), gave.join(", ")),
    };
    // What it is bent to is what tells it from the others.
    match bend_words(segment, &[]) {
        Some(bend) => format!("{bend}; {form}"),
        None => form,
    }
}

/// A part as it is drawn in its line: by its bend, or else by its form.
fn drawing_of(segment: &Segment) -> Offer {
    match segment.bend.as_ref().map(Bend::kind) {
        Some(BendKind::Curve) => Offer::Whole(Whole::Hook),
        Some(BendKind::Ring) => Offer::Whole(Whole::Ring),
        Some(BendKind::Scroll) => Offer::Whole(Whole::Curl),
        Some(BendKind::Twist) => Offer::Whole(Whole::Twist),
        Some(BendKind::Corner) => Offer::Whole(Whole::Corner),
        Some(BendKind::Socket) | None => Offer::Form(segment.form.kind()),
    }
}

/// The worst finding that speaks of a place.
fn worst(desk: &Desk<'_>, bar: usize, segment: Option<usize>) -> Option<Severity> {
    let findings = desk.document.balance().findings.iter();
    let here = findings.filter(|finding| finding.place.bar == Some(bar) && finding.place.segment == segment);
    here.map(|finding| finding.severity).max().filter(|severity| *severity != Severity::Note)
}

/// Shows a line.
pub(super) fn show(ui: &mut Ui, theme: &Theme, part: &Part, selected: bool) -> Response {
    let size = vec2(ui.available_width(), height(theme));
    let (rect, response) = ui.allocate_exact_size(size, Sense::CLICK | Sense::DRAG);
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, selected, &part.spoken));
    if ui.is_rect_visible(rect) {
        paint_ground(ui, theme, rect, &response, selected);
        paint_words(ui, theme, rect, part);
    }
    response
}

fn paint_ground(ui: &Ui, theme: &Theme, rect: Rect, response: &Response, selected: bool) {
    let painter = ui.painter();
    if selected {
        painter.rect_filled(rect, 0.0, theme.band_selected);
        painter.rect_filled(Rect::from_min_size(rect.min, vec2(space::TIGHT, rect.height())), 0.0, theme.accent);
    } else if response.hovered() {
        painter.rect_filled(rect, 0.0, theme.panel_raised);
    }
    painter.hline(rect.x_range(), rect.bottom() - theme.hairline() / 2.0, (theme.hairline(), theme.rule));
    if response.has_focus() {
        let ring = (space::HEAVY, theme.focus);
        painter.rect_stroke(rect, 0.0, ring, egui::StrokeKind::Inside);
    }
}

fn paint_words(ui: &Ui, theme: &Theme, rect: Rect, part: &Part) {
    let painter = ui.painter();
    let rect = rect.shrink2(vec2(space::PAD, space::TIGHT));
    let mut left = rect.left() + theme.scaled(DEEPER) * part.depth as f32;
    if let Some(kind) = part.icon {
        left += INDENT;
        let icon = vec2(form_icon::width_for(theme.scaled(ICON)), theme.scaled(ICON));
        let at = pos2(left, rect.center().y - icon.y / 2.0);
        form_card::paint_drawing(painter, theme, Rect::from_min_size(at, icon), kind);
        left += icon.x + space::GAP;
    }
    let value = line::lay(ui, &part.value, theme.font(Text::Body), theme.ink, rect.width());
    let value_left = rect.right() - value.size().x;
    let name_font = theme.font(if part.is_head { Text::Heading } else { Text::Strong });
    let name = line::lay(ui, &part.name, name_font, theme.ink, value_left - left - space::GAP);
    let sign = part.worst.map(|worst| (severity_sign::sign(worst), severity_sign::color(theme, worst)));
    let below_width = rect.right() - left - if sign.is_some() { theme.scaled(20.0) } else { 0.0 };
    let below = line::lay(ui, &part.below, theme.font(Text::Small), theme.ink_quiet, below_width);
    let top = rect.center().y - (name.size().y + below.size().y) / 2.0;
    let middle = top + name.size().y;
    painter.galley(pos2(value_left, top + (name.size().y - value.size().y) / 2.0), value, theme.ink);
    painter.galley(pos2(left, top), name, theme.ink);
    painter.galley(pos2(left, middle), below, theme.ink_quiet);
    if let Some((sign, color)) = sign {
        paint_sign(ui, theme, pos2(rect.right(), middle), sign, color);
    }
}

fn paint_sign(ui: &Ui, theme: &Theme, at: egui::Pos2, sign: &str, color: Color32) {
    ui.painter().text(at, Align2::RIGHT_TOP, sign, theme.font(Text::Small), color);
}

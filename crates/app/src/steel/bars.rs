//! One bar of the cut list to scale: its pieces with their letters, where each is cut from one end, and what is left.

use crate::theme::{Text, Theme, space};
use egui::{Align2, Painter, Rect, Role, Sense, Stroke, Ui, WidgetInfo, pos2, vec2};
use fh_rack::list::make::{BarCuts, CutList, Group};
use fh_rack::list::source::{From, Source};
use fh_rack::list::words::marked;

/// The width of the words before a bar, its height, and that of the figures below it, in points at normal text size.
const WORDS: f32 = 168.0;
const HEIGHT: f32 = 22.0;
const FIGURES: f32 = 18.0;
/// Between hatch lines of what is scrap.
const HATCH: f32 = 7.0;
/// A piece is never drawn narrower than this.
const LEAST: f32 = 1.5;

/// The letters of a piece, counted from 0: A to Z, then AA and on.
fn letters(index: usize) -> String {
    let letter = char::from(b'A' + (index % 26) as u8);
    match index / 26 {
        0 => letter.to_string(),
        more => format!("{}{letter}", letters(more - 1)),
    }
}

/// A group, and its pieces, each once: their places are their letters, here and on paper.
pub(super) struct Lettered<'a> {
    pub(super) group: &'a Group,
    pub(super) pieces: Vec<usize>,
}

impl<'a> Lettered<'a> {
    /// Gives the pieces of a group their letters.
    pub(super) fn of(group: &'a Group) -> Self {
        let mut pieces: Vec<usize> = group.bars.iter().flat_map(|bar| bar.cuts.iter().map(|cut| cut.piece)).collect();
        pieces.extend(group.left.iter().map(|left| left.piece));
        pieces.sort_unstable();
        pieces.dedup();
        Self { group, pieces }
    }

    /// The letters of a piece.
    pub(super) fn letter(&self, piece: usize) -> String {
        letters(self.pieces.iter().position(|known| *known == piece).unwrap_or(0))
    }
}

/// Shows a bar; the longest of the list is as wide as there is room.
pub(super) fn show(ui: &mut Ui, theme: &Theme, list: &CutList, of: &Lettered<'_>, bar: &BarCuts, longest_nm: i64) {
    let Some(source) = list.sources.get(bar.source) else { return };
    let height = theme.scaled(HEIGHT) + theme.scaled(FIGURES) + space::GAP;
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), height), Sense::hover());
    if !ui.is_rect_visible(rect) {
        return;
    }
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, spoken(of, bar, source)));
    head(ui, theme, bar, source, rect, of.group.sections.len() > 1);
    let left = rect.left() + theme.scaled(WORDS);
    let wide = (rect.right() - left - space::GAP).max(1.0);
    let x = |nm: i64| left + wide * (nm as f64 / longest_nm.max(1) as f64) as f32;
    let (top, foot) = (rect.top(), rect.top() + theme.scaled(HEIGHT));
    let painter = ui.painter_at(rect);
    let end = x(source.length_nm);
    let used = pieces(&painter, theme, of, bar, source, &x, [top, foot]);
    offcut(&painter, theme, bar, source, Rect::from_min_max(pos2(used.min(end), top), pos2(end, foot)));
    painter.rect_stroke(
        Rect::from_min_max(pos2(left, top), pos2(end, foot)),
        0,
        Stroke::new(space::LINE, theme.stock_edge),
        egui::StrokeKind::Inside,
    );
    response.on_hover_text_at_pointer(spoken(of, bar, source));
}

/// How many bars are cut so, how long each is, and where it comes from.
fn head(ui: &Ui, theme: &Theme, bar: &BarCuts, source: &Source, rect: Rect, names_section: bool) {
    let width = theme.scaled(WORDS) - space::GAP;
    let times = format!("{} × {}", bar.times, source.called.text());
    let galley = crate::widgets::line::lay(ui, &times, theme.font(Text::Strong), theme.ink, width);
    let below = rect.left_top() + vec2(0.0, galley.size().y);
    ui.painter().galley(rect.left_top(), galley, theme.ink);
    let small = theme.font(Text::Small);
    let from = crate::widgets::line::lay(ui, &from(source, names_section), small, theme.ink_quiet, width);
    ui.painter().galley(below, from, theme.ink_quiet);
}

/// Where it comes from, with its section where that has to be said.
fn from(source: &Source, names_section: bool) -> String {
    let place = match (source.from, &source.place) {
        (From::Rack(_), Some(place)) => format!("rack, {place}"),
        (From::Rack(_), None) => "rack".to_owned(),
        (From::New(_), _) => "new".to_owned(),
    };
    if names_section { format!("{place}: {}", source.section.describe()) } else { place }
}

/// Draws the pieces and the figures of their cuts; where the last cut ends.
fn pieces(
    painter: &Painter,
    theme: &Theme,
    of: &Lettered<'_>,
    bar: &BarCuts,
    source: &Source,
    x: &dyn Fn(i64) -> f32,
    [top, foot]: [f32; 2],
) -> f32 {
    let small = theme.font(Text::Small);
    let (mut at_nm, mut free) = (0_i64, f32::NEG_INFINITY);
    for cut in &bar.cuts {
        let (from, to) = (x(at_nm), x(at_nm + cut.length_nm).max(x(at_nm) + LEAST));
        let piece = Rect::from_min_max(pos2(from, top), pos2(to, foot));
        painter.rect(piece, 0, theme.stock_fill, (theme.hairline(), theme.stock_edge), egui::StrokeKind::Inside);
        let letter = painter.layout_no_wrap(of.letter(cut.piece), theme.font(Text::Strong), theme.ink);
        if letter.size().x < piece.width() {
            painter.galley(piece.center() - letter.size() / 2.0, letter, theme.ink);
        }
        let words = marked(cut.at_nm, source);
        let words = words.strip_suffix(" mm").unwrap_or(&words).to_owned();
        let figure = painter.layout_no_wrap(words, small.clone(), theme.ink_quiet);
        // A figure stands at the end of its piece, as far as it meets no other.
        let at = to - figure.size().x;
        if at > free {
            free = to + space::TIGHT;
            painter.vline(to, foot..=foot + space::TIGHT, (theme.hairline(), theme.stock_edge));
            painter.galley(pos2(at, foot + space::TIGHT), figure, theme.ink_quiet);
        }
        at_nm += cut.length_nm + of.group.kerf_nm;
        // The kerf, never so thin that it cannot be seen.
        let kerf = Rect::from_min_max(pos2(to - 0.5, top), pos2(x(at_nm).max(to + 0.5), foot));
        painter.rect_filled(kerf, 0, theme.stock_edge);
    }
    x(at_nm)
}

/// What is left: plain where it is kept, hatched where it is scrap, with its length where that has room.
fn offcut(painter: &Painter, theme: &Theme, bar: &BarCuts, source: &Source, rect: Rect) {
    if bar.offcut_nm <= 0 || rect.width() <= 0.0 {
        return;
    }
    painter.rect_filled(rect, 0, theme.ground);
    if !bar.is_kept {
        let inside = painter.with_clip_rect(rect.intersect(painter.clip_rect()));
        let mut left = rect.left() - rect.height();
        while left < rect.right() {
            let line = [pos2(left, rect.bottom()), pos2(left + rect.height(), rect.top())];
            inside.line_segment(line, Stroke::new(theme.hairline(), theme.edge));
            left += HATCH;
        }
    }
    let words = painter.layout_no_wrap(left_words(bar, source), theme.font(Text::Small), theme.ink);
    if words.size().x + space::GAP < rect.width() {
        let place = Align2::CENTER_CENTER.anchor_size(rect.center(), words.size());
        painter.rect_filled(place.expand(2.0), 0, theme.ground);
        painter.galley(place.min, words, theme.ink);
    } else if words.size().x < painter.clip_rect().right() - rect.left() {
        painter.galley(pos2(rect.left() + space::TIGHT, rect.bottom() + space::TIGHT), words, theme.ink);
    }
}

fn left_words(bar: &BarCuts, source: &Source) -> String {
    let length = marked(bar.offcut_nm, source);
    if bar.is_kept { format!("keep {length}") } else { format!("scrap {length}") }
}

/// The bar in words: `2 × 6 m, new: A at 231.8, A at 466.6 mm; keep 543 mm`.
fn spoken(of: &Lettered<'_>, bar: &BarCuts, source: &Source) -> String {
    let cuts = bar.cuts.iter().map(|cut| format!("{} at {}", of.letter(cut.piece), marked(cut.at_nm, source)));
    let cuts = cuts.collect::<Vec<_>>().join(", ");
    let each = if of.group.hold_nm.is_some() { ", each from the fresh-cut end" } else { "" };
    format!(
        "{} × {}, {}: {cuts}{each}; {}",
        bar.times,
        source.called.text(),
        from(source, true),
        left_words(bar, source)
    )
}

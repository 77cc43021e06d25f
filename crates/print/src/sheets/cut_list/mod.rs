//! The sheets of a cut list: bar after bar to one scale, what to buy, and labels for the offcuts. Nothing of it is at full scale.

mod bar;
mod labels;
mod shopping;

use crate::drawing::Drawing;
use crate::fonts::Weight;
use crate::paper::{Orientation, Paper};
use crate::sheets::findings::heading;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::letters::letters;
use crate::sheets::paragraph::paragraph;
use crate::sheets::rows::{Col, Row, put_rows};
use crate::sheets::title::title_block;
use crate::sheets::type_sizes::{BODY, CAPTION};
use fh_rack::list::make::{CutList, Group};
use fh_rack::list::words::{known, tenths, way};

/// What stands at the head of the sheets.
#[derive(Clone, Copy, Debug, Default)]
pub struct CutHead<'a> {
    /// What the job is called.
    pub title: &'a str,
    /// Whom it is for; may be empty.
    pub customer: &'a str,
    /// The date; may be empty.
    pub date: &'a str,
}

/// The sheets of a cut list: the bars, what to buy where anything is, labels where offcuts are kept.
pub fn cut_sheets(list: &CutList, head: CutHead<'_>, paper: Paper) -> Drawing {
    let orientation = Orientation::Landscape;
    let mut flow = Flow::without_scale(paper, orientation);
    put_list(&mut flow, list, head);
    shopping::put(&mut flow, list, head);
    labels::put(&mut flow, list, head);
    Drawing { title: format!("{}: cut list", head.title), paper, orientation, pages: flow.into_pages() }
}

fn put_list(flow: &mut Flow, list: &CutList, head: CutHead<'_>) {
    let width = flow.width();
    flow.start_part(format!("{}, cut list", head.title));
    let whom = [head.customer, head.date].into_iter().filter(|words| !words.is_empty()).collect::<Vec<_>>().join(", ");
    flow.put(title_block(head.title, &whom, "CUT LIST", width).then_free(2.0));
    let longest = list.groups.iter().flat_map(|group| &group.bars).filter_map(|bar| list.sources.get(bar.source));
    let longest = longest.map(|source| source.length_nm).max().unwrap_or(1);
    for group in &list.groups {
        put_group(flow, list, group, longest);
    }
    put_notes(flow, list);
}

fn put_group(flow: &mut Flow, list: &CutList, group: &Group, longest_nm: i64) {
    let width = flow.width();
    let words = format!("{}, {}", group.sections.join(" or "), group.material);
    let how = paragraph(&way_words(group), BODY, Weight::Regular, width);
    let sure = paragraph(&known(list, group), BODY, Weight::SemiBold, width);
    let mut head = heading(&words).over(how).over(sure).then_free(1.0);
    if group.bars.is_empty() {
        flow.put(head);
    } else {
        let pieces = Pieces::of(list, group);
        let first = bar::block(list, group, &group.bars[0], &pieces, longest_nm, width);
        // The head stays with the table of pieces and the first bar.
        flow.need(head.height + first.height + 20.0);
        flow.put(std::mem::take(&mut head));
        pieces.put(flow, list);
        flow.skip(2.0);
        for bar in &group.bars {
            flow.put(bar::block(list, group, bar, &pieces, longest_nm, width));
        }
    }
    flow.skip(3.0);
}

fn way_words(group: &Group) -> String {
    let measure = match group.hold_nm {
        Some(_) => "Measure each piece from the fresh-cut end.",
        None => "Measure every cut from one end; saw on the far side of the mark.",
    };
    format!("{}. {measure}", way(group))
}

/// The pieces of a group, each with its letter.
struct Pieces {
    all: Vec<usize>,
}

impl Pieces {
    fn of(list: &CutList, group: &Group) -> Self {
        let mut all: Vec<usize> = group.bars.iter().flat_map(|bar| bar.cuts.iter().map(|cut| cut.piece)).collect();
        all.extend(group.left.iter().map(|left| left.piece));
        all.sort_unstable();
        all.dedup();
        all.retain(|piece| *piece < list.wanted.pieces.len());
        Self { all }
    }

    /// The letter of a piece.
    fn letter(&self, piece: usize) -> String {
        letters(self.all.iter().position(|known| *known == piece).unwrap_or(0))
    }

    fn put(&self, flow: &mut Flow, list: &CutList) {
        let columns = [
            Col { head: "", share: 0.05, is_figures: false },
            Col { head: "piece", share: 0.45, is_figures: false },
            Col { head: "how many", share: 0.12, is_figures: true },
            Col { head: "length", share: 0.2, is_figures: true },
            Col { head: "cut to", share: 0.18, is_figures: true },
        ];
        let row = |&piece: &usize| {
            let of = &list.wanted.pieces[piece];
            let length = of.ways.first().map_or(0, |way| way.length_nm);
            let cut = format!("{} mm", tenths(length as f64 / 1e6));
            let cells = vec![self.letter(piece), of.name.clone(), of.count.to_string(), of.words.clone(), cut];
            Row { cells, ..Row::default() }
        };
        put_rows(flow, &columns, &self.all.iter().map(row).collect::<Vec<_>>());
    }
}

/// What is not cut, what is cut already, and what has to be known.
fn put_notes(flow: &mut Flow, list: &CutList) {
    let width = flow.width();
    let name = |piece: usize| list.wanted.pieces.get(piece).map_or("", |piece| piece.name.as_str());
    let left = list.groups.iter().flat_map(|group| &group.left).map(|over| match over.too_long_nm {
        Some(nm) if nm > 0 => {
            format!(
                "NOT CUT: {} × {}, {} mm too long for every bar.",
                over.count,
                name(over.piece),
                tenths(nm as f64 / 1e6)
            )
        }
        _ => format!("NOT CUT: {} × {}, there is no bar for it.", over.count, name(over.piece)),
    });
    let already = list.wanted.cut_already.iter().map(|(piece, count)| format!("Cut already: {count} × {piece}."));
    for words in left.chain(already).chain(list.wanted.told.iter().cloned()) {
        flow.put(paragraph(&words, BODY, Weight::SemiBold, width).then_free(1.0));
    }
    flow.put(paragraph("Not drawn at full scale: cut by the figures.", CAPTION, Weight::Regular, width));
}

/// A block of nothing, as high as is asked.
fn gap(height: f64) -> Block {
    Block { height, items: Vec::new() }
}

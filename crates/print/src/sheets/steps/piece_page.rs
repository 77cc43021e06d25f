//! What is to be forged: the notes, a picture of the finished piece, and the names of its parts.

use super::at_hand::reading_block;
use super::piece_picture::{Drawn, Named, Picture};
use crate::drawing::{Text, at};
use crate::fonts::Weight;
use crate::sheets::findings::heading;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::names::bar_name;
use crate::sheets::paragraph::paragraph;
use crate::sheets::type_sizes::{BODY, CAPTION};
use fh_core::balance::Balance;
use fh_core::describe::segment_name;
use fh_core::plan::{Bar, Hangs, Plan};

/// How tall the metal on a picture is tried, in mm; the last only where a page has no more room.
const TALL_MM: [f64; 4] = [75.0, 62.0, 48.0, 30.0];
/// The same, where a piece has several pictures.
const TALL_OF_SEVERAL_MM: [f64; 4] = [58.0, 50.0, 42.0, 30.0];
/// With less room than this beside a picture, nothing is put there.
const ASIDE_MM: f64 = 62.0;
/// Between a picture and what stands beside it.
const GUTTER_MM: f64 = 6.0;

/// Puts the piece on the flow: its notes, its picture with every part numbered, and the names of the parts of each bar.
pub(super) fn put_piece(flow: &mut Flow, plan: &Plan, balance: &Balance) {
    let width = flow.width();
    let notes = plan.notes.as_deref().map(str::trim).filter(|notes| !notes.is_empty());
    let mut head = heading("The piece");
    if let Some(notes) = notes {
        head = head.over(paragraph(notes, BODY, Weight::Regular, width).then_free(1.5));
    }
    let tall = if plan.bars.len() > 1 { TALL_OF_SEVERAL_MM } else { TALL_MM };
    let mut page = Page { tall, head: Some(head), reading: Some(reading_block) };
    if plan.bars.len() > 1 && !plan.joints.is_empty() {
        page.put_picture(flow, plan, balance, Named::Bars);
    }
    for (index, (bar, own)) in plan.bars.iter().zip(&balance.bars).enumerate() {
        if plan.bars.len() > 1 {
            let name = format!("{}, make {}", bar_name(plan, index, bar), bar.pieces());
            let name = paragraph(&name, BODY * 1.1, Weight::SemiBold, width).then_free(1.5);
            page.head = Some(page.head.take().map_or(name.clone(), |head| head.over(name)));
        }
        // One bar of several hangs nowhere by itself.
        let hangs = if plan.bars.len() > 1 { Hangs::default() } else { plan.hangs.clone() };
        let mut alone = bar.clone();
        alone.count = None;
        let alone = Plan { bars: vec![alone], joints: Vec::new(), underlay: None, hangs, ..plan.clone() };
        let balance = Balance::of_bars(vec![own.clone()]);
        page.put_picture(flow, &alone, &balance, Named::Parts);
        let names = part_names(bar);
        flow.put(paragraph(&names, BODY, Weight::Regular, width));
        flow.skip(3.0);
    }
    page.finish(flow, plan, balance);
}

/// `1 leaf · 2 stem · 3 hook`.
fn part_names(bar: &Bar) -> String {
    let numbered = bar.paths().into_iter().enumerate();
    numbered.map(|(at, path)| format!("{path} {}", segment_name(bar, at))).collect::<Vec<_>>().join(" · ")
}

/// What still waits to be put.
struct Page {
    /// How tall the metal on a picture is tried, in mm.
    tall: [f64; 4],
    /// What stands over the next picture.
    head: Option<Block>,
    /// How the cards are read, until it has found a place.
    reading: Option<fn(&Plan, &Balance, f64) -> Block>,
}

impl Page {
    /// A picture under what stands over it, as large as there is room for, with words beside it where it leaves that free.
    fn put_picture(&mut self, flow: &mut Flow, plan: &Plan, balance: &Balance, named: Named) {
        let width = flow.width();
        let head = self.head.take().unwrap_or_default();
        let Some(picture) = Picture::new(plan, balance, named, [width, self.tall[0]]) else {
            flow.put(head);
            return;
        };
        let (here, page) = (flow.room() - head.height, flow.page_room() - head.height);
        let tries = || self.tall.iter().map(|tall| picture.drawn(width, *tall));
        let fits = tries().take(3).find(|drawn| drawn.block.height <= here);
        let Some(drawn) = fits.or_else(|| tries().find(|drawn| drawn.block.height <= page)) else {
            flow.put(head);
            return;
        };
        let block = self.with_words(plan, balance, drawn, width);
        flow.put(head.over(block).then_free(2.0));
    }

    /// A picture with how the cards are read beside it, where there is room.
    fn with_words(&mut self, plan: &Plan, balance: &Balance, drawn: Drawn, width: f64) -> Block {
        let mut block = drawn.block;
        let (left, top) = (drawn.free[0] + GUTTER_MM, drawn.free[1]);
        if let Some(reading) = self.reading.filter(|_| width - left >= ASIDE_MM) {
            let words = reading(plan, balance, width - left);
            if top + words.height <= block.height {
                self.reading = None;
                block.items.extend(words.items.into_iter().map(|item| item.shifted(left, top)));
            }
        }
        if drawn.left_out {
            let words = "The parts follow each other along the bar; a number is left out where it has no room.";
            let words = Text::new(at(0.0, CAPTION), CAPTION, words);
            block = block.over(Block { height: CAPTION * 1.4, items: vec![words.into()] });
        }
        block
    }

    /// What found no place so far.
    fn finish(self, flow: &mut Flow, plan: &Plan, balance: &Balance) {
        if let Some(head) = self.head {
            flow.put(head);
        }
        if let Some(reading) = self.reading {
            let block = reading(plan, balance, flow.width());
            flow.put(block);
            flow.skip(3.0);
        }
    }
}

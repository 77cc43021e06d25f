//! What is put on a sheet, one block below the other, running over to further pages.

use crate::drawing::{Item, Page, Text, at};
use crate::fonts::Weight;
use crate::paper::{Area, Orientation, Paper};
use crate::pen::Gray;
use crate::sheets::check_lines;
use crate::sheets::type_sizes::CAPTION;
use crate::typeset;

/// Something that is not broken over two pages, drawn from its own top left corner.
#[derive(Clone, Debug, Default)]
pub(super) struct Block {
    /// Its height in mm.
    pub(super) height: f64,
    /// What is drawn, from its own top left corner.
    pub(super) items: Vec<Item>,
}

impl Block {
    /// The same block moved to the right.
    pub(super) fn indented(self, mm: f64) -> Self {
        Self { height: self.height, items: self.items.into_iter().map(|item| item.shifted(mm, 0.0)).collect() }
    }

    /// Another block right below this one, the two kept together.
    pub(super) fn over(mut self, lower: Self) -> Self {
        self.items.extend(lower.items.into_iter().map(|item| item.shifted(0.0, self.height)));
        self.height += lower.height;
        self
    }

    /// The same block with some mm left free below it.
    pub(super) fn then_free(self, mm: f64) -> Self {
        Self { height: self.height + mm, ..self }
    }
}

/// The height of the line at the head of a page that runs on.
const RUNNING_HEAD_MM: f64 = 7.0;

/// A page, and how far down it is filled.
#[derive(Default)]
struct Filled {
    page: Page,
    y: f64,
}

/// The pages as they fill up.
pub(super) struct Flow {
    area: Area,
    bottom: f64,
    running_head: String,
    pages: Vec<Filled>,
}

impl Flow {
    /// No page yet, on the given paper.
    pub(super) fn new(paper: Paper, orientation: Orientation) -> Self {
        let area = paper.printable(orientation);
        let bottom = area.bottom - check_lines::height_mm(area.width());
        Self { area, bottom, running_head: String::new(), pages: Vec::new() }
    }

    /// The width that can be drawn on, in mm.
    pub(super) fn width(&self) -> f64 {
        self.area.width()
    }

    /// What is left of the page, in mm.
    pub(super) fn room(&self) -> f64 {
        self.pages.last().map_or(0.0, |filled| self.bottom - filled.y)
    }

    /// What a page that runs on has room for, in mm.
    pub(super) fn page_room(&self) -> f64 {
        self.bottom - self.area.top - RUNNING_HEAD_MM
    }

    /// How many pages there are so far.
    pub(super) fn page_count(&self) -> usize {
        self.pages.len()
    }

    /// Starts a page with nothing at its head; pages that follow it carry `running_head`.
    pub(super) fn start_part(&mut self, running_head: String) {
        self.running_head = running_head;
        self.pages.push(Filled { page: Page::default(), y: self.area.top });
    }

    /// Puts a block below what is there, on a further page where there is no room.
    pub(super) fn put(&mut self, block: Block) {
        self.need(block.height);
        let left = self.area.left;
        if let Some(filled) = self.pages.last_mut() {
            filled.draw(block, left);
        }
    }

    /// Whether some page has room at its foot for a block.
    pub(super) fn has_room_at_a_foot(&self, block: &Block) -> bool {
        self.pages.iter().any(|filled| filled.y <= self.bottom - block.height)
    }

    /// Puts a block at the foot of the first page that has room for it, or of a further one.
    pub(super) fn put_at_a_foot(&mut self, block: Block) {
        let (left, top) = (self.area.left, self.bottom - block.height);
        if !self.has_room_at_a_foot(&block) {
            self.run_on();
        }
        if let Some(filled) = self.pages.iter_mut().find(|filled| filled.y <= top) {
            filled.y = top;
            filled.draw(block, left);
        }
    }

    /// Leaves some mm free; what is left over at the foot of a page is not carried over.
    pub(super) fn skip(&mut self, mm: f64) {
        let bottom = self.bottom;
        if let Some(filled) = self.pages.last_mut() {
            filled.y = (filled.y + mm).min(bottom);
        }
    }

    /// Leaves nothing more on this page: what follows starts a further one.
    pub(super) fn fill_page(&mut self) {
        let bottom = self.bottom;
        if let Some(filled) = self.pages.last_mut() {
            filled.y = bottom;
        }
    }

    /// Starts a further page unless so many mm are left on this one.
    pub(super) fn need(&mut self, mm: f64) {
        if mm > self.room() {
            self.run_on();
        }
    }

    fn run_on(&mut self) {
        let words = typeset::shorten(&self.running_head, CAPTION, Weight::Regular, self.width());
        let head = Text::new(at(self.area.left, self.area.top + CAPTION), CAPTION, &words).gray(Gray::DARK);
        self.pages.push(Filled { page: Page { items: vec![head.into()] }, y: self.area.top + RUNNING_HEAD_MM });
    }

    /// The pages, each with its check lines and its number.
    pub(super) fn finish(self) -> Vec<Page> {
        let (count, area) = (self.pages.len(), self.area);
        let foot = |(number, filled): (usize, Filled)| {
            let mut page = filled.page;
            page.items.extend(check_lines::items(area, number, count));
            page
        };
        (1..).zip(self.pages).map(foot).collect()
    }
}

impl Filled {
    fn draw(&mut self, block: Block, left: f64) {
        let top = self.y;
        self.page.items.extend(block.items.into_iter().map(|item| item.shifted(left, top)));
        self.y += block.height;
    }
}

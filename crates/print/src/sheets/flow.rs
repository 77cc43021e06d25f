//! What is put on a sheet, one block below the other, running over to further pages.

use crate::drawing::{Item, Page, Point, Text, at};
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

/// The height of the number at the foot of a page that has no check lines.
const NUMBER_MM: f64 = 8.0;

/// Free above what stands at the foot of a page.
const ABOVE_THE_FOOT_MM: f64 = 1.0;

/// A page, and how far down it is filled.
#[derive(Clone, Default)]
struct Filled {
    page: Page,
    y: f64,
    /// Whether what follows starts a further page, however much room there is.
    is_closed: bool,
}

/// The pages as they fill up.
#[derive(Clone)]
pub(super) struct Flow {
    orientation: Orientation,
    area: Area,
    bottom: f64,
    /// Whether anything on it is at full scale, so that its check lines are needed.
    is_scaled: bool,
    running_head: String,
    pages: Vec<Filled>,
}

impl Flow {
    /// No page yet, on the given paper.
    pub(super) fn new(paper: Paper, orientation: Orientation) -> Self {
        let area = paper.printable(orientation);
        let bottom = area.bottom - check_lines::height_mm(area.width());
        Self { orientation, area, bottom, is_scaled: true, running_head: String::new(), pages: Vec::new() }
    }

    /// No page yet, for what is not drawn at full scale: there is no check line at the foot.
    pub(super) fn without_scale(paper: Paper, orientation: Orientation) -> Self {
        let area = paper.printable(orientation);
        Self { bottom: area.bottom - NUMBER_MM, is_scaled: false, ..Self::new(paper, orientation) }
    }

    /// The width that can be drawn on, in mm.
    pub(super) fn width(&self) -> f64 {
        self.area.width()
    }

    /// What is left of the page, in mm.
    pub(super) fn room(&self) -> f64 {
        self.pages.last().filter(|filled| !filled.is_closed).map_or(0.0, |filled| self.bottom - filled.y)
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
        self.pages.push(Filled { page: Page::default(), y: self.area.top, is_closed: false });
    }

    /// Puts a block below what is there, on a further page where there is no room.
    pub(super) fn put(&mut self, block: Block) {
        self.need(block.height);
        let left = self.area.left;
        if let Some(filled) = self.pages.last_mut() {
            filled.draw(block, left);
        }
    }

    /// The pages in the order in which their feet are filled: what is cut apart, such as templates, comes last.
    pub(super) fn feet(&self) -> Vec<usize> {
        let mut feet: Vec<usize> = (0..self.pages.len()).collect();
        feet.sort_by_key(|page| self.pages[*page].is_closed);
        feet
    }

    /// What is left at the foot of a page below what is drawn on it, in mm.
    pub(super) fn room_at_the_foot(&self, page: usize) -> f64 {
        self.pages.get(page).map_or(0.0, |filled| self.bottom - filled.lowest() - ABOVE_THE_FOOT_MM)
    }

    /// What is left below what is drawn on a page, in mm.
    pub(super) fn room_below(&self, page: usize) -> f64 {
        self.pages.get(page).map_or(0.0, |filled| self.bottom - filled.y)
    }

    /// Puts a block below what is drawn on a page, which may be an earlier one.
    pub(super) fn put_below(&mut self, page: usize, block: Block) {
        let left = self.area.left;
        if let Some(filled) = self.pages.get_mut(page) {
            filled.draw(block, left);
        }
    }

    /// Puts a block at the very foot of a page.
    pub(super) fn put_at_the_foot(&mut self, page: usize, block: Block) {
        let (left, top) = (self.area.left, self.bottom - block.height);
        if let Some(filled) = self.pages.get_mut(page) {
            filled.y = top;
            filled.draw(block, left);
        }
    }

    /// The width and height that are free beside the check lines of a page, in mm; none where they fill it.
    pub(super) fn free_beside_the_check_lines(&self) -> Option<[f64; 2]> {
        check_lines::free_beside(self.area).map(|free| [free.width(), free.height()])
    }

    /// Puts a block beside the check lines of a page.
    pub(super) fn put_beside_the_check_lines(&mut self, page: usize, block: Block) {
        if let Some((free, filled)) = check_lines::free_beside(self.area).zip(self.pages.get_mut(page)) {
            filled.page.items.extend(block.items.into_iter().map(|item| item.shifted(free.left, free.top)));
        }
    }

    /// Puts a block at the foot of a further page.
    pub(super) fn put_at_a_new_foot(&mut self, block: Block) {
        self.run_on();
        self.put_at_the_foot(self.pages.len() - 1, block);
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
        if let Some(filled) = self.pages.last_mut() {
            filled.is_closed = true;
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
        self.pages.push(Filled {
            page: Page { items: vec![head.into()], ..Page::default() },
            y: self.area.top + RUNNING_HEAD_MM,
            is_closed: false,
        });
    }

    /// Which way its pages lie.
    pub(super) fn orientation(&self) -> Orientation {
        self.orientation
    }

    /// The pages of a document of its own.
    pub(super) fn into_pages(self) -> Vec<Page> {
        let count = self.pages.len();
        self.finish(1, count)
    }

    /// The pages, each with its check lines and its number: from `first` on, of `count` in the document.
    pub(super) fn finish(self, first: usize, count: usize) -> Vec<Page> {
        let (area, orientation, is_scaled) = (self.area, self.orientation, self.is_scaled);
        let foot = |(number, filled): (usize, Filled)| {
            let mut page = Page { orientation: Some(orientation), ..filled.page };
            match is_scaled {
                true => page.items.extend(check_lines::items(area, number, count)),
                false => page.items.push(check_lines::number(area, number, count)),
            }
            page
        };
        (first..).zip(self.pages).map(foot).collect()
    }
}

impl Filled {
    /// How far down something is drawn, in mm; what was left free below it does not count.
    fn lowest(&self) -> f64 {
        self.page.items.iter().map(lowest).fold(0.0, f64::max)
    }

    fn draw(&mut self, block: Block, left: f64) {
        let top = self.y;
        self.page.items.extend(block.items.into_iter().map(|item| item.shifted(left, top)));
        self.y += block.height;
    }
}

/// How far down an item reaches, in mm.
fn lowest(item: &Item) -> f64 {
    /// What hangs below the line of letters, as a share of the em.
    const BELOW: f64 = 0.28;
    let points = |points: &[Point]| points.iter().map(|point| point.y).fold(0.0, f64::max);
    match item {
        Item::Line { from, to, .. } => from.y.max(to.y),
        Item::Polyline { points: all, .. } | Item::Polygon { points: all, .. } => points(all),
        Item::Text(text) => text.at.y + BELOW * text.size_mm,
    }
}

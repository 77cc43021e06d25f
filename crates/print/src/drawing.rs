//! A drawing in true millimetres: pages of lines, areas and words, from which each file format is written.
//!
//! The origin is the top left corner of the page, x runs to the right and y down.

use crate::fonts::Weight;
use crate::paper::{Area, Orientation, Paper};
use crate::pen::{Gray, Pen};
use crate::typeset;

/// A document of one page or more, all on the same paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// The title of the document.
    pub title: String,
    /// The paper it is drawn for.
    pub paper: Paper,
    /// Which way the paper lies, but for pages that say otherwise.
    pub orientation: Orientation,
    /// The pages, in order.
    pub pages: Vec<Page>,
}

impl Drawing {
    /// Width and height of a page in mm.
    pub fn size_mm(&self, page: &Page) -> (f64, f64) {
        self.paper.size_mm(self.lies(page))
    }

    /// Which way a page lies.
    pub fn lies(&self, page: &Page) -> Orientation {
        page.orientation.unwrap_or(self.orientation)
    }
}

/// One page: what is drawn on it, in the order of drawing and of reading.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Page {
    /// Which way it lies; none where it lies as its document does.
    pub orientation: Option<Orientation>,
    /// What is drawn.
    pub items: Vec<Item>,
}

/// A place on a page, in mm.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Point {
    /// To the right of the left edge.
    pub x: f64,
    /// Below the top edge.
    pub y: f64,
}

impl Point {
    /// The area of a width and a height in mm about it.
    pub(crate) fn area(self, [width, height]: [f64; 2]) -> Area {
        let Self { x, y } = self;
        Area { left: x - width / 2.0, top: y - height / 2.0, right: x + width / 2.0, bottom: y + height / 2.0 }
    }
}

/// The place `x` mm from the left and `y` mm from the top.
pub fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

/// One thing on a page.
#[derive(Clone, Debug, PartialEq)]
pub enum Item {
    /// A straight line.
    Line {
        /// From here.
        from: Point,
        /// To there.
        to: Point,
        /// How it is drawn.
        pen: Pen,
    },
    /// Several lines, end to end.
    Polyline {
        /// Its corners.
        points: Vec<Point>,
        /// How it is drawn.
        pen: Pen,
    },
    /// A closed area.
    Polygon {
        /// Its corners.
        points: Vec<Point>,
        /// What it is filled with, if it is.
        fill: Option<Gray>,
        /// How its edge is drawn, if it is.
        pen: Option<Pen>,
    },
    /// One line of words.
    Text(Text),
}

/// Which part of the words stands at their place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Their start.
    Left,
    /// Their middle.
    Center,
    /// Their end.
    Right,
}

/// Which way the words run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// From left to right.
    Level,
    /// A quarter turn anticlockwise: from the bottom up.
    Upward,
}

/// One line of words on a page.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    content: String,
    /// Where they stand, on their baseline.
    pub at: Point,
    /// The height of the em in mm; a figure or a capital is 0.66 of it.
    pub size_mm: f64,
    /// Which part of them stands there.
    pub align: Align,
    /// How bold they are.
    pub weight: Weight,
    /// How dark they are.
    pub gray: Gray,
    /// Which way they run.
    pub turn: Turn,
}

impl Text {
    /// Words that start at a place, level, in black and of normal weight. Fractions are set as fractions and characters
    /// that do not print are replaced, see [`typeset::printable`].
    pub fn new(at: Point, size_mm: f64, content: &str) -> Self {
        Self {
            content: typeset::printable(content),
            at,
            size_mm,
            align: Align::Left,
            weight: Weight::Regular,
            gray: Gray::BLACK,
            turn: Turn::Level,
        }
    }

    /// The same words with their middle at the place.
    pub fn centered(self) -> Self {
        Self { align: Align::Center, ..self }
    }

    /// The same words with their end at the place.
    pub fn right(self) -> Self {
        Self { align: Align::Right, ..self }
    }

    /// The same words at another place.
    pub fn moved_to(self, at: Point) -> Self {
        Self { at, ..self }
    }

    /// The same words in a given weight.
    pub fn weight(self, weight: Weight) -> Self {
        Self { weight, ..self }
    }

    /// The same words, bolder.
    pub fn bold(self) -> Self {
        Self { weight: Weight::SemiBold, ..self }
    }

    /// The same words in another gray.
    pub fn gray(self, gray: Gray) -> Self {
        Self { gray, ..self }
    }

    /// The same words running from the bottom up.
    pub fn upward(self) -> Self {
        Self { turn: Turn::Upward, ..self }
    }

    /// The words as they are printed.
    pub fn content(&self) -> &str {
        &self.content
    }

    /// How long the words are on paper, in mm.
    pub fn width_mm(&self) -> f64 {
        typeset::width_mm(&self.content, self.size_mm, self.weight)
    }

    /// How far before their place the words start, in mm along their run.
    pub fn lead_mm(&self) -> f64 {
        match self.align {
            Align::Left => 0.0,
            Align::Center => self.width_mm() / 2.0,
            Align::Right => self.width_mm(),
        }
    }
}

impl Item {
    /// A straight line between two places.
    pub fn line(from: Point, to: Point, pen: Pen) -> Self {
        Self::Line { from, to, pen }
    }

    /// A rectangle by two opposite corners.
    pub fn rectangle(corner: Point, opposite: Point, fill: Option<Gray>, pen: Option<Pen>) -> Self {
        let points = vec![corner, at(opposite.x, corner.y), opposite, at(corner.x, opposite.y)];
        Self::Polygon { points, fill, pen }
    }

    /// The same item moved by `dx` to the right and `dy` down.
    pub fn shifted(mut self, dx: f64, dy: f64) -> Self {
        let shift = |point: &mut Point| *point = at(point.x + dx, point.y + dy);
        match &mut self {
            Self::Line { from, to, .. } => {
                shift(from);
                shift(to);
            }
            Self::Polyline { points, .. } | Self::Polygon { points, .. } => points.iter_mut().for_each(shift),
            Self::Text(text) => shift(&mut text.at),
        }
        self
    }

    /// Whether every place and size of it is a number.
    pub fn is_finite(&self) -> bool {
        let sound = |point: &Point| point.x.is_finite() && point.y.is_finite();
        match self {
            Self::Line { from, to, .. } => sound(from) && sound(to),
            Self::Polyline { points, .. } | Self::Polygon { points, .. } => points.iter().all(sound),
            Self::Text(text) => sound(&text.at) && text.size_mm.is_finite(),
        }
    }
}

impl From<Text> for Item {
    fn from(text: Text) -> Self {
        Self::Text(text)
    }
}

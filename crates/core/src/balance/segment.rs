//! The balance of one segment.

use super::trouble::Trouble;
use super::{FixedMark, GaveFor};
use crate::metal::{Bent, Dressing, HoleInPlate, Moved, Shape, Standing, View, gone_at, in_mm, mm, mm2};
use crate::plan::{Chain, Gives, SizeName};
use crate::space::Formed;
use fh_measure::RoundedLength;
use uom::si::f64::{Area, Length, Mass, Volume};

/// A size that was not written but follows, or that gave way to a fixed length of bar.
#[derive(Clone, Debug, PartialEq)]
pub struct Derived {
    /// Which size.
    pub name: SizeName,
    /// Its value, where it is a length.
    pub length: Option<Length>,
    /// Its value where it is an angle, in radians.
    pub radians: Option<f64>,
    /// Its value where it is a count, as of turns.
    pub count: Option<f64>,
    /// Why it follows, in a few words.
    pub because: &'static str,
    /// Whether it is tied to others by the bend, and follows from them.
    pub tied: bool,
    /// What it gave for, though it is written; none of a size that did not give.
    pub gave: Option<GaveFor>,
}

impl Derived {
    /// A length that follows for a reason of its own.
    pub(crate) fn length(name: SizeName, length: Length, because: &'static str) -> Self {
        Self { name, length: Some(length), radians: None, count: None, because, tied: false, gave: None }
    }

    /// A length that follows from the bend.
    pub(crate) fn tied(name: SizeName, length: Length) -> Self {
        Self { tied: true, ..Self::length(name, length, FROM_BEND) }
    }

    /// An angle that follows from the bend, in radians.
    pub(crate) fn tied_angle(name: SizeName, radians: f64) -> Self {
        Self { name, length: None, radians: Some(radians), count: None, because: FROM_BEND, tied: true, gave: None }
    }

    /// A count of turns that follows from the bend.
    pub(crate) fn turns(turns: f64) -> Self {
        Self { count: Some(turns), radians: None, ..Self::tied_angle(SizeName::Turns, 0.0) }
    }
}

/// Why a tied size follows.
const FROM_BEND: &str = "follows from the bend";

/// Everything that follows for one segment.
#[derive(Clone, Debug, PartialEq)]
pub struct SegmentBalance {
    /// The chain it belongs to: the bar itself, or a branch of a split.
    pub chain: Chain,
    /// The segment's shape with every size settled; none where a size could not be settled.
    pub shape: Option<Shape>,
    /// Its bend with every size settled; none where it stays straight or a size could not be settled.
    pub bent: Option<Bent>,
    /// How many times more metal than its shape it takes: above 1 for a twist that makes it shorter and thicker.
    pub swell: f64,
    /// Whether it is read from its other end: the first segment, whose tip is the free end of the bar.
    pub reversed: bool,
    /// Metal of the finished piece.
    pub finished_volume: Volume,
    /// Metal that is cut away or left in the tongs.
    pub trimmed_volume: Volume,
    /// Metal of the finished piece that its blank has not got: its outline runs out of it. It is no metal of the bar.
    pub missing_volume: Volume,
    /// The share of metal lost to scale, 0 to 1.
    pub scale_share: f64,
    /// The mass of the finished metal.
    pub finished_mass: Mass,
    /// Its length forged and still straight.
    pub forged_length: Length,
    /// Where it starts on the forged bar.
    pub forged_start: Length,
    /// Its length of starting bar.
    pub stock_length: Length,
    /// Where it starts on the starting bar, from the datum end.
    pub mark_start: Length,
    /// Where it ends on the starting bar, from the datum end.
    pub mark_end: Length,
    /// The mark at its end where the smith fixed it. What its block has over or is short of lies before that mark.
    pub fixed_mark: Option<FixedMark>,
    /// The mark at its end, rounded for the shop: to the nearest step, and the last of a bar up, for there it is cut.
    pub mark_end_shop: RoundedLength,
    /// The sizes that were not written but follow.
    pub derived: Vec<Derived>,
    /// The mark before it: where the step to its own mark begins, rounded for the shop.
    pub mark_start_shop: RoundedLength,
    /// How far its middle is shifted at its start by one-sided set-downs, and for the drawing of branches beside each
    /// other: toward you and up, in mm.
    pub offset_mm: [f64; 2],
    /// Whether a fire weld is still to be made of it. Once it is made, its metal is in what it is welded to.
    pub unwelded: bool,
    /// What is left standing for its corner; none where its metal is upset, and of all but a peak.
    pub standing: Option<Standing>,
    /// What its section grows to, where that is left as it grows.
    pub grown: Option<Grown>,
    /// The shapes that it has on the way, one after the other.
    pub via: Vec<ViaBalance>,
    /// The lengths of it that are dressed in a die, in the plan's order.
    pub dressed: Vec<Dressing>,
    /// What the dies move of its metal.
    pub moved: Moved,
}

/// A shape that a segment has on the way, with every size settled.
#[derive(Clone, Debug, PartialEq)]
pub struct ViaBalance {
    /// Its shape while it is straight; none where a size could not be settled.
    pub shape: Option<Shape>,
    /// Its bend; none where it is straight by then or a size could not be settled.
    pub bent: Option<Bent>,
    /// Whether it is read from its other end.
    pub reversed: bool,
    /// The metal that the segment then has: what is trimmed and scaled later is still in it.
    pub metal: Volume,
    /// What the sizes as they are written hold; the metal itself where one of them follows from it.
    pub held: Volume,
    /// The size that follows from the metal; none where all of its form are written.
    pub follows: Option<Follows>,
    /// The sizes that were not written but follow.
    pub derived: Vec<Derived>,
    /// Why a size could not be settled.
    pub(crate) trouble: Option<Trouble>,
}

/// A size that follows from the metal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Follows {
    /// Which size.
    pub name: SizeName,
    /// Which one gives.
    pub gives: Gives,
    /// Its value with all the metal in it.
    pub size: Length,
    /// Its value where all of the scale were lost by then.
    pub low: Length,
}

/// What a section grows to that is struck down one way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grown {
    /// Across the blow and along it, before it is struck.
    pub before: [Length; 2],
    /// What it is struck to.
    pub struck_to: Length,
    /// How long a bite is along the bar.
    pub bite: Length,
    /// Whether its width grows; else its thickness.
    pub is_width: bool,
    /// What it is seldom under, what it most likely is and what it is seldom over; none where nothing is struck down.
    pub size: Option<[Length; 3]>,
}

impl SegmentBalance {
    /// A size that was not written but follows, or that gave; none where it is not among these.
    pub fn derived(&self, name: SizeName) -> Option<&Derived> {
        self.derived.iter().find(|derived| derived.name == name)
    }

    /// The same, where it is a length.
    pub fn derived_length(&self, name: SizeName) -> Option<Length> {
        self.derived(name)?.length
    }

    /// What says where it lies in space.
    pub fn formed(&self) -> Formed<'_> {
        Formed { shape: self.shape.as_ref(), bent: self.bent, reversed: self.reversed, swell: self.swell }
    }

    /// Where the mark at its end lies on the bar: where it was fixed, else where its metal ends.
    pub fn end_on_bar(&self) -> Length {
        self.fixed_mark.as_ref().map_or(self.mark_end, |fixed| fixed.at)
    }

    /// How far the rounded mark at its end lies from its true place; none of a fixed mark, which is printed as it was typed.
    pub fn rounding_error(&self) -> Length {
        if self.fixed_mark.is_some() {
            return mm(0.0);
        }
        mm((self.mark_end_shop.mm() - in_mm(self.mark_end)).abs())
    }

    /// Its outline as a closed polygon in mm, forged and still straight: along the bar from its datum end, then up (seen
    /// from the side) or away from you (seen from above) from the middle of the first segment.
    pub fn silhouette_mm(&self, view: View) -> Vec<[f64; 2]> {
        self.shape.as_ref().map_or_else(Vec::new, |shape| self.placed(shape, view))
    }

    /// The blank that it is cut from, as [`Self::silhouette_mm`]; empty where it has none.
    pub fn blank_mm(&self, view: View) -> Vec<[f64; 2]> {
        self.shape.as_ref().and_then(Shape::blank).map_or_else(Vec::new, |blank| self.placed(&blank, view))
    }

    fn placed(&self, shape: &Shape, view: View) -> Vec<[f64; 2]> {
        let (start, length) = (in_mm(self.forged_start), in_mm(self.forged_length));
        let across = match view {
            View::Side => self.offset_mm[1],
            View::Top => -self.offset_mm[0],
        };
        let place = |[along, aside]: [f64; 2]| {
            let along = if self.reversed { length - along } else { along };
            [start + along, aside + across]
        };
        shape.silhouette(view).into_iter().map(place).collect()
    }

    /// The outlines of its holes as closed polygons in mm where they are seen: from above, as [`Self::silhouette_mm`].
    pub fn holes_mm(&self) -> Vec<Vec<[f64; 2]>> {
        const TURN_POINTS: usize = 48;
        let placed = |points: Vec<[f64; 2]>| points.into_iter().map(|point| self.seen_from_above_mm(point)).collect();
        match &self.shape {
            Some(Shape::Hole { hole, at, .. }) => {
                let points = hole.points_mm(TURN_POINTS).into_iter();
                vec![placed(points.map(|[along, toward]| [in_mm(*at) + along, -toward]).collect())]
            }
            Some(shape) => shape.plate_holes().iter().map(|hole| placed(hole.points_mm(TURN_POINTS))).collect(),
            None => Vec::new(),
        }
    }

    /// The middles of its holes, in the same order, seen in the same way.
    pub fn middles_mm(&self) -> Vec<[f64; 2]> {
        let middles = match &self.shape {
            Some(Shape::Hole { at, .. }) => vec![[in_mm(*at), 0.0]],
            Some(shape) => shape.plate_holes().iter().map(HoleInPlate::middle_mm).collect(),
            None => Vec::new(),
        };
        middles.into_iter().map(|middle| self.seen_from_above_mm(middle)).collect()
    }

    /// A place of it, along the bar from its root and away from you, on the forged bar seen from above.
    fn seen_from_above_mm(&self, [along, away]: [f64; 2]) -> [f64; 2] {
        let along = if self.reversed { in_mm(self.forged_length) - along } else { along };
        [in_mm(self.forged_start) + along, away - self.offset_mm[0]]
    }

    /// The area of its section at a share (0 to 1) of its forged length from the datum side.
    pub fn area_at(&self, share: f64) -> Area {
        let Some(shape) = &self.shape else { return mm2(0.0) };
        let gone = gone_at(shape, self.reversed, &self.dressed, share * in_mm(shape.length()));
        let share = if self.reversed { 1.0 - share } else { share };
        shape.area_at(share.clamp(0.0, 1.0)) - mm2(gone)
    }
}

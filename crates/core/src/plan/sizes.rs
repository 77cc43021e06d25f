//! Every length that is written in a segment, a section or a bar, with its name, to be looked at or changed.
//!
//! The lengths come in a fixed order. Each place says twice what it has, for looking and for changing; a test holds the one
//! against the other.

use super::size_name::{Looking, Visiting};
use super::{
    Bar, Bend, Corners, Dressed, Form, HoleSpec, OutlineSpec, Repeat, RootSpec, SectionSpec, Segment, SizeName,
    ThicknessSpec,
};
use fh_measure::WrittenLength;

impl Bar {
    /// Looks at every length that is written in it.
    ///
    /// Those of the stock and of the bar's own length come first, then those of the segments.
    pub fn lengths(&self, visit: &mut dyn FnMut(&WrittenLength)) {
        self.sizes(&mut |_, length| visit(length));
    }

    /// Changes every length that is written in it.
    ///
    /// Those of the stock and of the bar's own length come first, then those of the segments.
    pub fn lengths_mut(&mut self, visit: &mut dyn FnMut(&mut WrittenLength)) {
        self.sizes_mut(&mut |_, length| visit(length));
    }
}

impl Segment {
    /// Looks at every length that is written in it.
    ///
    /// Those of its branches count too.
    pub fn lengths(&self, visit: &mut dyn FnMut(&WrittenLength)) {
        self.sizes(&mut |_, length| visit(length));
    }

    /// Changes every length that is written in it.
    ///
    /// Those of its branches count too.
    pub fn lengths_mut(&mut self, visit: &mut dyn FnMut(&mut WrittenLength)) {
        self.sizes_mut(&mut |_, length| visit(length));
    }
}

impl Form {
    /// Looks at every length that is written in it.
    pub fn lengths(&self, visit: &mut dyn FnMut(&WrittenLength)) {
        self.sizes(&mut |_, length| visit(length));
    }

    /// Changes every length that is written in it.
    pub fn lengths_mut(&mut self, visit: &mut dyn FnMut(&mut WrittenLength)) {
        self.sizes_mut(&mut |_, length| visit(length));
    }
}

impl SectionSpec {
    /// Looks at every length that is written in it.
    pub fn lengths(&self, visit: &mut dyn FnMut(&WrittenLength)) {
        self.sizes(&mut |_, length| visit(length));
    }

    /// Changes every length that is written in it.
    pub fn lengths_mut(&mut self, visit: &mut dyn FnMut(&mut WrittenLength)) {
        self.sizes_mut(&mut |_, length| visit(length));
    }
}

impl Bar {
    /// Looks at every length that is written in it, with its name.
    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        self.stock.sizes(visit);
        self.length.iter().for_each(|length| visit(SizeName::Length, length));
        self.segments.iter().for_each(|segment| segment.sizes(visit));
    }

    /// Changes every length that is written in it.
    pub(crate) fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.stock.sizes_mut(visit);
        self.length.iter_mut().for_each(|length| visit(SizeName::Length, length));
        self.segments.iter_mut().for_each(|segment| segment.sizes_mut(visit));
    }
}

impl Segment {
    /// Looks at every length that is written in it, with its name.
    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        self.form.sizes(visit);
        self.bend.iter().for_each(|bend| bend.sizes(visit));
        self.dressed.iter().for_each(|dressed| dressed.sizes(visit));
        self.repeats.iter().for_each(|repeat| repeat.sizes(visit));
        for via in &self.via {
            via.form.iter().for_each(|form| form.sizes(visit));
            via.bend.iter().for_each(|bend| bend.sizes(visit));
        }
    }

    /// Changes every length that is written in it.
    pub(crate) fn sizes_mut(&mut self, visit: Visiting<'_>) {
        self.form.sizes_mut(visit);
        self.bend.iter_mut().for_each(|bend| bend.sizes_mut(visit));
        self.dressed.iter_mut().for_each(|dressed| dressed.sizes_mut(visit));
        self.repeats.iter_mut().for_each(|repeat| repeat.sizes_mut(visit));
        for via in &mut self.via {
            via.form.iter_mut().for_each(|form| form.sizes_mut(visit));
            via.bend.iter_mut().for_each(|bend| bend.sizes_mut(visit));
        }
    }
}

impl Form {
    /// Looks at every length that is written in it, with its name.
    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        self.one().sizes(visit);
    }

    /// Changes every length that is written in it, found by its name.
    pub fn sizes_mut(&mut self, visit: &mut dyn FnMut(SizeName, &mut WrittenLength)) {
        self.one_mut().sizes_mut(visit);
    }
}

impl Bend {
    /// Looks at every length that is written in it, with its name.
    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        use SizeName as N;
        match self {
            Self::Curve { angle: _, inside_radius, side: _ } => {
                inside_radius.iter().for_each(|size| visit(N::InsideRadius, size));
            }
            Self::Ring { inside_diameter, sweep: _, side: _ } => {
                inside_diameter.iter().for_each(|size| visit(N::InsideDiameter, size));
            }
            Self::Corner { angle: _, inside_radius, side: _ } => visit(N::InsideRadius, inside_radius),
            Self::Scroll { inner_radius, outer_radius, turns: _, run: _, eye: _, side: _ } => {
                inner_radius.iter().for_each(|size| visit(N::InnerRadius, size));
                outer_radius.iter().for_each(|size| visit(N::OuterRadius, size));
            }
            Self::Socket { mandrel, sweep: _, less, axis: _, side: _ } => {
                mandrel.iter().for_each(|size| visit(N::Mandrel, size));
                less.iter().for_each(|size| visit(N::Less, size));
            }
            Self::Twist { turns: _, shortening: _ } => {}
        }
    }

    /// Changes every length that is written in it.
    pub(crate) fn sizes_mut(&mut self, visit: Visiting<'_>) {
        use SizeName as N;
        match self {
            Self::Curve { angle: _, inside_radius, side: _ } => {
                inside_radius.iter_mut().for_each(|size| visit(N::InsideRadius, size));
            }
            Self::Ring { inside_diameter, sweep: _, side: _ } => {
                inside_diameter.iter_mut().for_each(|size| visit(N::InsideDiameter, size));
            }
            Self::Corner { angle: _, inside_radius, side: _ } => visit(N::InsideRadius, inside_radius),
            Self::Scroll { inner_radius, outer_radius, turns: _, run: _, eye: _, side: _ } => {
                inner_radius.iter_mut().for_each(|size| visit(N::InnerRadius, size));
                outer_radius.iter_mut().for_each(|size| visit(N::OuterRadius, size));
            }
            Self::Socket { mandrel, sweep: _, less, axis: _, side: _ } => {
                mandrel.iter_mut().for_each(|size| visit(N::Mandrel, size));
                less.iter_mut().for_each(|size| visit(N::Less, size));
            }
            Self::Twist { turns: _, shortening: _ } => {}
        }
    }
}

impl Repeat {
    /// Looks at every length that is written in it, with its name.
    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        let Self { what: _, from: _, step, width, count: _, margin } = self;
        step.iter().for_each(|size| visit(SizeName::RowStep, size));
        width.iter().for_each(|size| visit(SizeName::RowWidth, size));
        margin.iter().for_each(|size| visit(SizeName::RowMargin, size));
    }

    /// Changes every length that is written in it.
    pub(crate) fn sizes_mut(&mut self, visit: Visiting<'_>) {
        let Self { what: _, from: _, step, width, count: _, margin } = self;
        step.iter_mut().for_each(|size| visit(SizeName::RowStep, size));
        width.iter_mut().for_each(|size| visit(SizeName::RowWidth, size));
        margin.iter_mut().for_each(|size| visit(SizeName::RowMargin, size));
    }
}

impl Dressed {
    /// Looks at every length that is written in it, with its name.
    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        let Self { die, from, length, side: _, depth, lean: _ } = self;
        die.radius().iter().for_each(|size| visit(SizeName::DieRadius, size));
        from.iter().for_each(|size| visit(SizeName::DressedFrom, size));
        length.iter().for_each(|size| visit(SizeName::DressedLength, size));
        visit(SizeName::DressedDepth, depth);
    }

    /// Changes every length that is written in it.
    pub(crate) fn sizes_mut(&mut self, visit: Visiting<'_>) {
        let Self { die, from, length, side: _, depth, lean: _ } = self;
        die.radius_mut().into_iter().for_each(|size| visit(SizeName::DieRadius, size));
        from.iter_mut().for_each(|size| visit(SizeName::DressedFrom, size));
        length.iter_mut().for_each(|size| visit(SizeName::DressedLength, size));
        visit(SizeName::DressedDepth, depth);
    }
}

impl RootSpec {
    /// Looks at every length that is written in it, with its name.
    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        match self {
            Self::Radius(size) => visit(SizeName::RootRadius, size),
            Self::Hole(size) => visit(SizeName::RootHole, size),
        }
    }

    /// Changes every length that is written in it.
    pub(crate) fn sizes_mut(&mut self, visit: Visiting<'_>) {
        match self {
            Self::Radius(size) => visit(SizeName::RootRadius, size),
            Self::Hole(size) => visit(SizeName::RootHole, size),
        }
    }
}

impl HoleSpec {
    /// Looks at every length that is written in it, with its name.
    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        match self {
            Self::Round(size) => visit(SizeName::HoleDiameter, size),
            Self::Square(size) => visit(SizeName::HoleSide, size),
            Self::Slot { length, width } => {
                visit(SizeName::HoleLength, length);
                visit(SizeName::HoleWidth, width);
            }
        }
    }

    /// Changes every length that is written in it.
    pub(crate) fn sizes_mut(&mut self, visit: Visiting<'_>) {
        match self {
            Self::Round(size) => visit(SizeName::HoleDiameter, size),
            Self::Square(size) => visit(SizeName::HoleSide, size),
            Self::Slot { length, width } => {
                visit(SizeName::HoleLength, length);
                visit(SizeName::HoleWidth, width);
            }
        }
    }
}

impl SectionSpec {
    /// Looks at every length that is written in it, with its name.
    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        use SizeName as N;
        match self {
            Self::Stock | Self::Same | Self::Point => {}
            Self::Square(square) => {
                visit(N::Side, &square.side);
                square.edge_radius.iter().for_each(|size| visit(N::EdgeRadius, size));
            }
            Self::Flat { width, thickness, edge_radius } => {
                visit(N::Width, width);
                visit(N::Thickness, thickness);
                edge_radius.iter().for_each(|size| visit(N::EdgeRadius, size));
            }
            Self::Oval { width, thickness } => {
                visit(N::Width, width);
                visit(N::Thickness, thickness);
            }
            Self::HalfRound { width, height } => {
                visit(N::Width, width);
                visit(N::Height, height);
            }
            Self::Round(size) => visit(N::Diameter, size),
            Self::Hexagon(size) | Self::Octagon(size) => visit(N::AcrossFlats, size),
            Self::Diamond(size) => visit(N::Side, size),
            Self::Edge(size) => visit(N::Width, size),
            Self::Grown(grown) => {
                grown.thickness.iter().for_each(|size| visit(N::Thickness, size));
                grown.width.iter().for_each(|size| visit(N::Width, size));
                visit(N::Bite, &grown.bite);
                grown.of.sizes(visit);
            }
        }
    }

    /// Changes every length that is written in it.
    pub(crate) fn sizes_mut(&mut self, visit: Visiting<'_>) {
        use SizeName as N;
        match self {
            Self::Stock | Self::Same | Self::Point => {}
            Self::Square(square) => {
                visit(N::Side, &mut square.side);
                square.edge_radius.iter_mut().for_each(|size| visit(N::EdgeRadius, size));
            }
            Self::Flat { width, thickness, edge_radius } => {
                visit(N::Width, width);
                visit(N::Thickness, thickness);
                edge_radius.iter_mut().for_each(|size| visit(N::EdgeRadius, size));
            }
            Self::Oval { width, thickness } => {
                visit(N::Width, width);
                visit(N::Thickness, thickness);
            }
            Self::HalfRound { width, height } => {
                visit(N::Width, width);
                visit(N::Height, height);
            }
            Self::Round(size) => visit(N::Diameter, size),
            Self::Hexagon(size) | Self::Octagon(size) => visit(N::AcrossFlats, size),
            Self::Diamond(size) => visit(N::Side, size),
            Self::Edge(size) => visit(N::Width, size),
            Self::Grown(grown) => {
                grown.thickness.iter_mut().for_each(|size| visit(N::Thickness, size));
                grown.width.iter_mut().for_each(|size| visit(N::Width, size));
                visit(N::Bite, &mut grown.bite);
                grown.of.sizes_mut(visit);
            }
        }
    }
}

impl OutlineSpec {
    /// Looks at every length that is written in it, with its name.
    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        use SizeName as N;
        match self {
            Self::Rectangle { length, width } => {
                length.iter().for_each(|size| visit(N::Length, size));
                width.iter().for_each(|size| visit(N::Width, size));
            }
            Self::Trapezoid { length, root, tip } => {
                visit(N::Length, length);
                visit(N::RootWidth, root);
                visit(N::TipWidth, tip);
            }
            Self::Disc { diameter } => visit(N::Diameter, diameter),
            Self::Ellipse { length, width } | Self::Leaf { length, width } | Self::Stadium { length, width } => {
                visit(N::Length, length);
                visit(N::Width, width);
            }
            Self::Polygon(Corners(corners)) => {
                corners.iter().flat_map(|corner| &corner.at).for_each(|size| visit(N::Corner, size));
            }
        }
    }

    /// Changes every length that is written in it.
    pub(crate) fn sizes_mut(&mut self, visit: Visiting<'_>) {
        use SizeName as N;
        match self {
            Self::Rectangle { length, width } => {
                length.iter_mut().for_each(|size| visit(N::Length, size));
                width.iter_mut().for_each(|size| visit(N::Width, size));
            }
            Self::Trapezoid { length, root, tip } => {
                visit(N::Length, length);
                visit(N::RootWidth, root);
                visit(N::TipWidth, tip);
            }
            Self::Disc { diameter } => visit(N::Diameter, diameter),
            Self::Ellipse { length, width } | Self::Leaf { length, width } | Self::Stadium { length, width } => {
                visit(N::Length, length);
                visit(N::Width, width);
            }
            Self::Polygon(Corners(corners)) => {
                corners.iter_mut().flat_map(|corner| &mut corner.at).for_each(|size| visit(N::Corner, size));
            }
        }
    }
}

impl ThicknessSpec {
    /// Looks at every length that is written in it, with its name.
    pub(crate) fn sizes(&self, visit: Looking<'_>) {
        match self {
            Self::Even(thickness) => visit(SizeName::Thickness, thickness),
            Self::Tapered { root, tip } => {
                visit(SizeName::RootThickness, root);
                visit(SizeName::TipThickness, tip);
            }
        }
    }

    /// Changes every length that is written in it.
    pub(crate) fn sizes_mut(&mut self, visit: Visiting<'_>) {
        match self {
            Self::Even(thickness) => visit(SizeName::Thickness, thickness),
            Self::Tapered { root, tip } => {
                visit(SizeName::RootThickness, root);
                visit(SizeName::TipThickness, tip);
            }
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
pub(super) mod tests {
    use crate::plan::Segment;

    /// Lengths of 1 mm, 2 mm and so on, in every place a length may stand, and no other text with a unit.
    pub(crate) const SEGMENTS: &str = r#"[
      { "form": { "plain": { "length": "1 mm" } }, "bend": { "curve": { "angle": "9 deg", "inside_radius": "2 mm" } },
        "repeats": [{ "what": "dots", "step": "3 mm", "width": "4 mm", "margin": "5 mm" }] },
      { "form": { "drawn": { "length": "6 mm", "section": { "square": { "side": "7 mm", "edge_radius": "8 mm" } } } },
        "bend": { "ring": { "inside_diameter": "9 mm" } } },
      { "form": { "taper": { "length": "10 mm", "from": { "flat": { "width": "11 mm", "thickness": "12 mm",
        "edge_radius": "13 mm" } }, "to": { "half_round": { "width": "14 mm", "height": "15 mm" } } } } },
      { "form": { "shoulder": { "to": { "hexagon": "16 mm" }, "radius": "17 mm", "sides": "all" } } },
      { "form": { "flag": { "outline": { "trapezoid": { "length": "18 mm", "root": "19 mm", "tip": "20 mm" } },
        "thickness": { "root": "21 mm", "tip": "22 mm" } } } },
      { "form": { "peak": { "section": { "oval": { "width": "23 mm", "thickness": "24 mm" } } } },
        "bend": { "corner": { "angle": "90 deg", "inside_radius": "25 mm" } } },
      { "form": { "hole": { "outline": { "disc": { "diameter": "26 mm" } }, "thickness": "27 mm",
        "hole": { "slot": { "length": "28 mm", "width": "29 mm" } }, "made": "punched", "slug": "30 mm", "at": "31 mm" } } },
      { "form": { "split": { "root": { "hole": "32 mm" }, "opening": { "width": "33 mm" }, "branches": [
        { "segments": [{ "form": { "tenon": { "section": { "round": "34 mm" }, "grip": "35 mm", "allowance": "36 mm" } } }] },
        { "segments": [{ "form": { "rivet": { "diameter": "37 mm", "grip": "38 mm", "allowance": "39 mm" } } }] } ] } } },
      { "form": { "collar": { "section": { "diamond": "40 mm" }, "width": "41 mm", "height": "42 mm" } } },
      { "form": { "flag": { "outline": { "polygon": [["43 mm", "44 mm"], ["45 mm", "46 mm"], ["47 mm", "48 mm"]] },
        "thickness": "49 mm" } }, "bend": { "socket": { "mandrel": "50 mm", "less": "51 mm", "axis": "along" } } },
      { "form": { "plain": {} }, "bend": { "scroll": { "inner_radius": "52 mm", "outer_radius": "53 mm", "run": "even",
        "eye": "end" } } },
      { "form": { "plain": {} }, "bend": { "twist": { "turns": 1.5 } } },
      { "form": { "ball": { "diameter": "54 mm" } } }, { "form": { "cube": { "side": "55 mm" } } },
      { "form": { "weld": { "allowance": "56 mm" } } }, { "form": { "trim": { "length": "57 mm" } } },
      { "form": { "hold": { "length": "58 mm" } } },
      { "form": { "drawn": { "section": { "grown": { "thickness": "59 mm", "bite": "60 mm", "of": { "round": "61 mm" } } } } } },
      { "form": { "peak": { "section": { "grown": { "width": "62 mm", "bite": "63 mm" } },
        "left": { "near_edge": "64 mm", "far_edge": "65 mm", "base": "66 mm" } } } },
      { "form": { "split": { "cut": "67 mm", "slit": "68 mm", "kerf": "69 mm", "branches": [] } } },
      { "form": { "flag": { "outline": { "disc": { "diameter": "70 mm" } },
        "blank": { "rectangle": { "length": "71 mm", "width": "72 mm" } }, "base_line": { "outline": "73 mm", "blank": "74 mm" },
        "thickness": "75 mm" } } },
      { "form": { "flag": { "outline": { "disc": { "diameter": "76 mm" } },
        "blank": { "trapezoid": { "length": "77 mm", "root": "78 mm", "tip": "79 mm" } }, "thickness": "80 mm" } } },
      { "form": { "flag": { "outline": { "disc": { "diameter": "81 mm" } }, "blank": { "disc": { "diameter": "82 mm" } },
        "thickness": "83 mm" } } },
      { "form": { "flag": { "outline": { "disc": { "diameter": "84 mm" } },
        "blank": { "polygon": [["85 mm", "86 mm"], ["87 mm", "88 mm"], { "arc": "9 deg" }, ["89 mm", "90 mm"]] },
        "thickness": "91 mm" } } },
      { "form": { "cube": { "side": "92 mm" } }, "via": [
        { "form": { "drawn": { "length": "93 mm", "section": { "round": "94 mm" } } } },
        { "bend": { "curve": { "inside_radius": "95 mm" } } } ] },
      { "form": { "plain": { "length": "96 mm" } }, "dressed": [
        { "die": { "fuller": { "radius": "97 mm" } }, "from": "98 mm", "length": "99 mm", "depth": "100 mm" },
        { "die": { "swage": { "radius": "101 mm" } }, "depth": "102 mm" },
        { "die": { "v_block": { "angle": "9 deg" } }, "depth": "103 mm" } ] },
      { "form": { "flag": { "outline": { "disc": { "diameter": "104 mm" } }, "thickness": "105 mm", "holes": [
        { "hole": { "round": "106 mm" }, "made": "punched", "slug": "107 mm", "at": "108 mm", "across": "109 mm" } ] } } }
    ]"#;

    #[test]
    fn every_length_is_found_once_and_in_order() {
        let segments: Vec<Segment> = serde_json::from_str(SEGMENTS).unwrap();
        let mut found = Vec::new();
        segments.iter().for_each(|segment| segment.lengths(&mut |length| found.push(length.mm())));
        assert_eq!(found, (1..=109).map(f64::from).collect::<Vec<_>>());
    }

    #[test]
    fn what_is_looked_at_is_what_can_be_changed() {
        let mut segments: Vec<Segment> = serde_json::from_str(SEGMENTS).unwrap();
        let (mut looked, mut changed) = (Vec::new(), Vec::new());
        segments.iter().for_each(|segment| segment.sizes(&mut |name, length| looked.push((name, length.mm()))));
        segments.iter_mut().for_each(|segment| {
            segment.sizes_mut(&mut |name, length| changed.push((name, length.mm())));
        });
        assert_eq!(looked, changed);
    }

    #[test]
    fn every_length_can_be_changed() {
        let mut segments: Vec<Segment> = serde_json::from_str(SEGMENTS).unwrap();
        for segment in &mut segments {
            segment.lengths_mut(&mut |length| *length = length.scaled(2.0).unwrap());
        }
        let doubled = serde_json::to_string(&segments).unwrap();
        assert_eq!(doubled.matches(" mm\"").count(), 109);
        let mut found = Vec::new();
        segments.iter().for_each(|segment| segment.lengths(&mut |length| found.push(length.mm() / 2.0)));
        assert_eq!(found, (1..=109).map(f64::from).collect::<Vec<_>>());
    }
}

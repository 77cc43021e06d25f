//! Every length that is written in a segment, a section or a bar, to be looked at or changed.
//!
//! The lengths come in a fixed order. Both walks, the one that looks and the one that changes, are made of the same
//! lines, so that neither can miss what the other finds.

use super::{Bar, Bend, Form, HoleSpec, Opening, OutlineSpec, Repeat, RootSpec, SectionSpec, Segment, ThicknessSpec};
use fh_measure::WrittenLength;

macro_rules! walk {
    ($name:ident, $words:literal $(, $mutable:tt)?) => {
        impl Bar {
            #[doc = $words]
            /// Those of the stock and of the bar's own length come first, then those of the segments.
            pub fn $name(&$($mutable)? self, visit: &mut dyn FnMut(&$($mutable)? WrittenLength)) {
                self.stock.$name(visit);
                if let Some(length) = &$($mutable)? self.length {
                    visit(length);
                }
                for segment in &$($mutable)? self.segments {
                    segment.$name(visit);
                }
            }
        }

        impl Segment {
            #[doc = $words]
            /// Those of its branches count too.
            pub fn $name(&$($mutable)? self, visit: &mut dyn FnMut(&$($mutable)? WrittenLength)) {
                self.form.$name(visit);
                if let Some(bend) = &$($mutable)? self.bend {
                    bend.$name(visit);
                }
                for repeat in &$($mutable)? self.repeats {
                    repeat.$name(visit);
                }
            }
        }

        impl Form {
            #[doc = $words]
            pub fn $name(&$($mutable)? self, visit: &mut dyn FnMut(&$($mutable)? WrittenLength)) {
                match self {
                    Self::Plain { length } => length.into_iter().for_each(visit),
                    Self::Drawn { length, section } => {
                        length.into_iter().for_each(&mut *visit);
                        section.$name(visit);
                    }
                    Self::Taper { length, from, to, runout: _ } => {
                        length.into_iter().for_each(&mut *visit);
                        if let Some(from) = from {
                            from.$name(visit);
                        }
                        to.$name(visit);
                    }
                    Self::Shoulder { to, radius, sides: _ } => {
                        to.$name(visit);
                        visit(radius);
                    }
                    Self::Flag { outline, thickness, trim: _ } => {
                        outline.$name(visit);
                        thickness.$name(visit);
                    }
                    Self::Peak { section } => section.$name(visit),
                    Self::Hole { outline, thickness, hole, made: _, slug, at } => {
                        outline.$name(visit);
                        visit(thickness);
                        hole.$name(visit);
                        slug.into_iter().chain(at).for_each(visit);
                    }
                    Self::Tenon { section, grip, allowance } => {
                        section.$name(visit);
                        visit(grip);
                        visit(allowance);
                    }
                    Self::Rivet { diameter, grip, allowance } => [diameter, grip, allowance].into_iter().for_each(visit),
                    Self::Collar { section, width, height, rule: _ } => {
                        section.$name(visit);
                        visit(width);
                        visit(height);
                    }
                    Self::Split { branches, side: _, root, opening } => {
                        if let Some(root) = root {
                            root.$name(visit);
                        }
                        if let Some(Opening { width, turns: _ }) = opening {
                            visit(width);
                        }
                        for branch in branches {
                            for segment in &$($mutable)? branch.segments {
                                segment.$name(visit);
                            }
                        }
                    }
                    Self::Ball { diameter: size }
                    | Self::Cube { side: size }
                    | Self::Weld { allowance: size }
                    | Self::Trim { length: size }
                    | Self::Hold { length: size } => visit(size),
                }
            }
        }

        impl Bend {
            #[doc = $words]
            pub fn $name(&$($mutable)? self, visit: &mut dyn FnMut(&$($mutable)? WrittenLength)) {
                match self {
                    Self::Curve { angle: _, inside_radius, side: _ } => inside_radius.into_iter().for_each(visit),
                    Self::Ring { inside_diameter, sweep: _, side: _ } => inside_diameter.into_iter().for_each(visit),
                    Self::Corner { angle: _, inside_radius, side: _ } => visit(inside_radius),
                    Self::Scroll { inner_radius, outer_radius, turns: _, run: _, eye: _, side: _ } => {
                        inner_radius.into_iter().chain(outer_radius).for_each(visit);
                    }
                    Self::Socket { mandrel, sweep: _, less, axis: _, side: _ } => {
                        mandrel.into_iter().chain(less).for_each(visit);
                    }
                    Self::Twist { turns: _, shortening: _ } => {}
                }
            }
        }

        impl Repeat {
            #[doc = $words]
            pub fn $name(&$($mutable)? self, visit: &mut dyn FnMut(&$($mutable)? WrittenLength)) {
                let Self { what: _, from: _, step, width, count: _, margin } = self;
                step.into_iter().chain(width).chain(margin).for_each(visit);
            }
        }

        impl RootSpec {
            #[doc = $words]
            pub fn $name(&$($mutable)? self, visit: &mut dyn FnMut(&$($mutable)? WrittenLength)) {
                match self {
                    Self::Radius(size) | Self::Hole(size) => visit(size),
                }
            }
        }

        impl HoleSpec {
            #[doc = $words]
            pub fn $name(&$($mutable)? self, visit: &mut dyn FnMut(&$($mutable)? WrittenLength)) {
                match self {
                    Self::Round(size) | Self::Square(size) => visit(size),
                    Self::Slot { length, width } => [length, width].into_iter().for_each(visit),
                }
            }
        }

        impl SectionSpec {
            #[doc = $words]
            pub fn $name(&$($mutable)? self, visit: &mut dyn FnMut(&$($mutable)? WrittenLength)) {
                match self {
                    Self::Stock | Self::Same | Self::Point => {}
                    Self::Square(square) => {
                        visit(&$($mutable)? square.side);
                        (&$($mutable)? square.edge_radius).into_iter().for_each(visit);
                    }
                    Self::Flat { width, thickness, edge_radius } => {
                        visit(width);
                        visit(thickness);
                        edge_radius.into_iter().for_each(visit);
                    }
                    Self::Oval { width, thickness } => [width, thickness].into_iter().for_each(visit),
                    Self::HalfRound { width, height } => [width, height].into_iter().for_each(visit),
                    Self::Round(size)
                    | Self::Hexagon(size)
                    | Self::Octagon(size)
                    | Self::Diamond(size)
                    | Self::Edge(size) => visit(size),
                }
            }
        }

        impl OutlineSpec {
            #[doc = $words]
            pub fn $name(&$($mutable)? self, visit: &mut dyn FnMut(&$($mutable)? WrittenLength)) {
                match self {
                    Self::Rectangle { length, width } => length.into_iter().chain(width).for_each(visit),
                    Self::Trapezoid { length, root, tip } => [length, root, tip].into_iter().for_each(visit),
                    Self::Disc { diameter } => visit(diameter),
                    Self::Ellipse { length, width }
                    | Self::Leaf { length, width }
                    | Self::Stadium { length, width } => [length, width].into_iter().for_each(visit),
                    Self::Polygon(corners) => corners.into_iter().flatten().for_each(visit),
                }
            }
        }

        impl ThicknessSpec {
            #[doc = $words]
            pub fn $name(&$($mutable)? self, visit: &mut dyn FnMut(&$($mutable)? WrittenLength)) {
                match self {
                    Self::Even(thickness) => visit(thickness),
                    Self::Tapered { root, tip } => [root, tip].into_iter().for_each(visit),
                }
            }
        }
    };
}

walk!(lengths, "Looks at every length that is written in it.");
walk!(lengths_mut, "Changes every length that is written in it.", mut);

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use crate::plan::Segment;

    /// Lengths of 1 mm, 2 mm and so on, in every place a length may stand, and no other text with a unit.
    const SEGMENTS: &str = r#"[
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
      { "form": { "hold": { "length": "58 mm" } } }
    ]"#;

    #[test]
    fn every_length_is_found_once_and_in_order() {
        let segments: Vec<Segment> = serde_json::from_str(SEGMENTS).unwrap();
        let mut found = Vec::new();
        segments.iter().for_each(|segment| segment.lengths(&mut |length| found.push(length.mm())));
        assert_eq!(found, (1..=58).map(f64::from).collect::<Vec<_>>());
    }

    #[test]
    fn every_length_can_be_changed() {
        let mut segments: Vec<Segment> = serde_json::from_str(SEGMENTS).unwrap();
        for segment in &mut segments {
            segment.lengths_mut(&mut |length| *length = length.scaled(2.0).unwrap());
        }
        let doubled = serde_json::to_string(&segments).unwrap();
        assert_eq!(doubled.matches(" mm\"").count(), 58);
        let mut found = Vec::new();
        segments.iter().for_each(|segment| segment.lengths(&mut |length| found.push(length.mm() / 2.0)));
        assert_eq!(found, (1..=58).map(f64::from).collect::<Vec<_>>());
    }
}

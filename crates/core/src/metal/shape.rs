//! The settled shape of a segment, forged and still straight: its exact volume, length and section along the way.

use super::section::mixed_area_mm2;
use super::{
    Blank, CornerSize, HoleInPlate, HoleSize, Outline, Runout, SectionSize, SplitSize, View, in_mm, mm, mm2, mm3,
};
use crate::plan::{Gives, Sides};
use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};
use uom::si::f64::{Area, Length, Volume};

/// A segment's shape with every size settled.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// One section all along: plain, drawn, trim, hold.
    Prism {
        /// Its section.
        section: SectionSize,
        /// Its length.
        length: Length,
    },
    /// One section running into another.
    Taper {
        /// Where it starts.
        from: SectionSize,
        /// Where it ends.
        to: SectionSize,
        /// How it runs out, from `from` to `to`.
        runout: Runout,
        /// Its length.
        length: Length,
    },
    /// An abrupt step with an inside radius.
    Shoulder {
        /// The section before it.
        from: SectionSize,
        /// The section after it.
        to: SectionSize,
        /// The inside radius, which is its length.
        radius: Length,
        /// The sides that step.
        sides: Sides,
    },
    /// A spread block.
    Flag {
        /// Its outline.
        outline: Outline,
        /// Its thickness at the root.
        root: Length,
        /// Its thickness at the tip.
        tip: Length,
        /// What it is spread to before it is cut to its outline; none where it is forged to it.
        blank: Option<Box<Blank>>,
        /// The holes through it.
        holes: Vec<HoleInPlate>,
    },
    /// Metal left standing for a sharp corner.
    Peak {
        /// The section of the legs.
        section: SectionSize,
        /// The corner it is for.
        corner: CornerSize,
    },
    /// A boss with a hole.
    Hole {
        /// The outline of the boss.
        outline: Outline,
        /// Its thickness.
        thickness: Length,
        /// The hole.
        hole: HoleSize,
        /// Where the hole's middle lies, from the boss's root.
        at: Length,
    },
    /// A bar cut along its length.
    Split(Box<SplitSize>),
    /// A ball.
    Ball {
        /// Its diameter.
        diameter: Length,
    },
    /// A cube.
    Cube {
        /// Its side.
        side: Length,
    },
}

impl Shape {
    /// Its length, forged and still straight.
    pub fn length(&self) -> Length {
        match self {
            Self::Prism { length, .. } | Self::Taper { length, .. } => *length,
            Self::Shoulder { radius, .. } => *radius,
            Self::Flag { outline, .. } | Self::Hole { outline, .. } => outline.length(),
            Self::Peak { corner, .. } => corner.length(),
            Self::Split(split) => split.length,
            Self::Ball { diameter } => *diameter,
            Self::Cube { side } => *side,
        }
    }

    /// Its exact volume. Sources of the formulas: docs/sources.md.
    pub fn volume(&self) -> Volume {
        match self {
            Self::Prism { section, length } => section.area() * *length,
            Self::Taper { from, to, runout, length } => transition_area(from, to, runout.means()) * *length,
            Self::Shoulder { from, to, radius, sides } => shoulder_volume(from, to, *radius, sides),
            Self::Flag { outline, root, tip, .. } => {
                outline.area() * (*root + (*tip - *root) * outline.centroid_share()) - self.holes_volume()
            }
            Self::Peak { corner, .. } => corner.volume(),
            Self::Hole { outline, thickness, hole, .. } => (outline.area() - hole.area()) * *thickness,
            Self::Split(split) => split.volume,
            Self::Ball { diameter } => mm3(PI / 6.0 * in_mm(*diameter).powi(3)),
            Self::Cube { side } => mm3(in_mm(*side).powi(3)),
        }
    }

    /// The area of its section at a share (0 to 1) of its length.
    pub fn area_at(&self, share: f64) -> Area {
        match self {
            Self::Prism { section, .. } => section.area(),
            Self::Taper { from, to, runout, .. } => {
                let f = runout.share_at(share);
                transition_area(from, to, (f, f * f))
            }
            Self::Shoulder { from, to, .. } => smaller(from, to).area(),
            Self::Flag { outline, root, tip, holes, .. } => {
                let along = share * in_mm(outline.length());
                let open = holes.iter().map(|hole| hole.hole.width_at_mm(along - in_mm(hole.at))).sum::<f64>();
                let width = (outline.width_at(share) - open).max(0.0);
                mm2(width * (in_mm(*root) + (in_mm(*tip) - in_mm(*root)) * share))
            }
            Self::Hole { outline, thickness, hole, at } => {
                let from_middle = share * in_mm(outline.length()) - in_mm(*at);
                mm2((outline.width_at(share) - hole.width_at_mm(from_middle)).max(0.0) * in_mm(*thickness))
            }
            Self::Split(split) => mm2(split.area_at(share)),
            Self::Peak { section, corner } => {
                let height = corner.peak_height_mm() * (1.0 - (2.0 * share - 1.0).abs());
                section.area() + mm(height) * corner.width
            }
            Self::Ball { diameter } => {
                let radius = in_mm(*diameter) / 2.0;
                let along = radius * (2.0 * share - 1.0);
                mm2(PI * (radius * radius - along * along).max(0.0))
            }
            Self::Cube { side } => *side * *side,
        }
    }

    /// The section that the next segment finds: where this one ends, or starts where it is read from its other end.
    ///
    /// A finial, and a flag that runs out to nothing, leave the stock as it was.
    pub fn end(&self, reversed: bool, stock: SectionSize) -> SectionSize {
        match self {
            Self::Prism { section, .. } | Self::Peak { section, .. } => *section,
            Self::Taper { from, to, .. } => {
                if reversed {
                    *from
                } else {
                    *to
                }
            }
            Self::Shoulder { to, .. } => *to,
            Self::Flag { outline, root, tip, .. } => {
                let thickness = if reversed { *root } else { *tip };
                outline.end_width(!reversed).map_or(stock, |width| SectionSize::flat(width, thickness))
            }
            Self::Hole { outline, thickness, .. } => {
                outline.end_width(!reversed).map_or(stock, |width| SectionSize::flat(width, *thickness))
            }
            Self::Ball { .. } | Self::Cube { .. } | Self::Split(_) => stock,
        }
    }

    /// It with the size that gives multiplied; none where it has no such size.
    pub fn scaled(&self, gives: Gives, factor: f64) -> Option<Self> {
        let any = gives != Gives::Nothing;
        match self {
            Self::Prism { section, length } => Some(match gives {
                Gives::Length => Self::Prism { section: *section, length: *length * factor },
                _ => Self::Prism { section: section.scaled(gives, factor)?, length: *length },
            }),
            Self::Taper { from, to, runout, length } => Some(match gives {
                Gives::Length => Self::Taper { from: *from, to: *to, runout: *runout, length: *length * factor },
                _ => {
                    let to = to.scaled(gives, factor)?;
                    Self::Taper { from: *from, to, runout: *runout, length: *length }
                }
            }),
            Self::Flag { outline, root, tip, blank, holes } => {
                let (thicker, wider) = match gives {
                    Gives::Thickness => (factor, None),
                    _ => (1.0, Some(self.giving_outline()?.scaled(gives, factor)?)),
                };
                let (root, tip) = (*root * thicker, *tip * thicker);
                let plate = match (blank, wider) {
                    (None, wider) => Self::flag(wider.unwrap_or_else(|| outline.clone()), None, root, tip),
                    (Some(blank), wider) => {
                        let of_blank = wider.unwrap_or_else(|| blank.outline.clone());
                        Self::flag(outline.clone(), Some(of_blank), root, blank.tip * thicker)
                    }
                };
                // Where its holes are was said by the smith: what gives is the metal round them.
                Some(plate.with_holes(holes.clone()))
            }
            Self::Hole { outline, thickness, hole, at } => Some(match gives {
                Gives::Thickness => {
                    Self::Hole { outline: outline.clone(), thickness: *thickness * factor, hole: *hole, at: *at }
                }
                _ => {
                    let outline = outline.scaled(gives, factor)?;
                    let at = if gives == Gives::Length { *at * factor } else { *at };
                    Self::Hole { outline, thickness: *thickness, hole: *hole, at }
                }
            }),
            Self::Ball { diameter } => any.then(|| Self::Ball { diameter: *diameter * factor }),
            Self::Cube { side } => any.then(|| Self::Cube { side: *side * factor }),
            Self::Shoulder { .. } | Self::Peak { .. } | Self::Split(_) => None,
        }
    }

    /// The width that gives, where it has one.
    pub(crate) fn giving_width(&self) -> Option<Length> {
        match self {
            Self::Prism { section, .. } | Self::Taper { to: section, .. } => Some(mm(section.seen_mm(View::Top))),
            Self::Flag { .. } | Self::Hole { .. } => self.giving_outline().map(Outline::width),
            Self::Ball { diameter: size } | Self::Cube { side: size } => Some(*size),
            Self::Shoulder { .. } | Self::Peak { .. } | Self::Split(_) => None,
        }
    }

    /// The thickness that gives, where it has one; of a flag, at its root.
    pub(crate) fn giving_thickness(&self) -> Option<Length> {
        match self {
            Self::Prism { section, .. } | Self::Taper { to: section, .. } => Some(mm(section.seen_mm(View::Side))),
            Self::Flag { root, .. } => Some(*root),
            Self::Hole { thickness, .. } => Some(*thickness),
            Self::Ball { diameter: size } | Self::Cube { side: size } => Some(*size),
            Self::Shoulder { .. } | Self::Peak { .. } | Self::Split(_) => None,
        }
    }

    /// It with another length; none where its length is not its own to choose.
    pub(crate) fn with_length(&self, length: Length) -> Option<Self> {
        match self {
            Self::Prism { section, .. } => Some(Self::Prism { section: *section, length }),
            Self::Taper { from, to, runout, .. } => Some(Self::Taper { from: *from, to: *to, runout: *runout, length }),
            _ => None,
        }
    }

    /// From the inside face of a bend toward a side to the centroid of the section, at the start and at the end.
    pub fn inside_to_centroid(&self, side: f64) -> (f64, f64) {
        match self {
            Self::Prism { section, .. } | Self::Peak { section, .. } => {
                let depth = depth_to_centroid(section, side);
                (depth, depth)
            }
            Self::Taper { from, to, .. } | Self::Shoulder { from, to, .. } => {
                (depth_to_centroid(from, side), depth_to_centroid(to, side))
            }
            Self::Flag { outline, root, tip, .. } => {
                let depth = |thickness| depth_to_centroid(&SectionSize::flat(outline.width(), thickness), side);
                (depth(*root), depth(*tip))
            }
            Self::Hole { outline, thickness, .. } => {
                let depth = depth_to_centroid(&SectionSize::flat(outline.width(), *thickness), side);
                (depth, depth)
            }
            Self::Split(split) => {
                let depth = depth_to_centroid(&split.stock, side);
                (depth, depth)
            }
            Self::Ball { diameter: size } | Self::Cube { side: size } => (in_mm(*size) / 2.0, in_mm(*size) / 2.0),
        }
    }

    /// The length of the edge that runs farthest from the middle when it is twisted through an angle:
    /// `√(L² + (R θ)²)`, R the largest reach of its first section (plane geometry: a helix unrolled).
    pub(crate) fn edge_fibre(&self, angle: f64) -> Length {
        let reach = self.sections().next().map_or(0.0, |section| section.section().farthest_mm());
        mm(in_mm(self.length()).hypot(reach * angle))
    }

    /// The sections that the hammer gives it, in order; none where it is no bar any more.
    pub(crate) fn sections(&self) -> impl Iterator<Item = &SectionSize> {
        let (first, second) = match self {
            Self::Prism { section, .. } | Self::Peak { section, .. } | Self::Shoulder { to: section, .. } => {
                (Some(section), None)
            }
            Self::Taper { from, to, .. } => (Some(from), Some(to)),
            Self::Flag { .. } | Self::Hole { .. } | Self::Split(_) | Self::Ball { .. } | Self::Cube { .. } => {
                (None, None)
            }
        };
        first.into_iter().chain(second)
    }

    /// How the change from its start to its end runs along it.
    pub fn runout(&self) -> Runout {
        match self {
            Self::Taper { runout, .. } => *runout,
            _ => Runout::Straight,
        }
    }
}

/// `(1 - 2 m₁ + m₂) A₀ + 2 (m₁ - m₂) M + m₂ A₁`: the mean area of a transition, or with (f, f²) its area at one place.
fn transition_area(from: &SectionSize, to: &SectionSize, (m1, m2): (f64, f64)) -> Area {
    let mixed = mm2(mixed_area_mm2(&from.section(), &to.section()));
    (1.0 - 2.0 * m1 + m2) * from.area() + 2.0 * (m1 - m2) * mixed + m2 * to.area()
}

/// The smaller section's run, and for each side set down `r² (1 - π/4)` times the width of that side.
fn shoulder_volume(from: &SectionSize, to: &SectionSize, radius: Length, sides: &Sides) -> Volume {
    let section = smaller(from, to);
    let fillet = radius * radius * (1.0 - FRAC_PI_4);
    let width_of = |degrees: u16| mm(section.seen_mm(if degrees.is_multiple_of(180) { View::Top } else { View::Side }));
    let fillets = Sides::DEGREES.iter().filter(|side| sides.contains(**side)).map(|side| fillet * width_of(*side));
    section.area() * radius + fillets.fold(mm3(0.0), |sum, fillet| sum + fillet)
}

/// The one of two sections with less area.
pub(crate) fn smaller<'a>(first: &'a SectionSize, second: &'a SectionSize) -> &'a SectionSize {
    if second.area() < first.area() { second } else { first }
}

/// From the face on a side of the bar to the centroid, in mm. `side` runs from up by way of toward-you.
///
/// Most bends are upward; for those no outline is built.
fn depth_to_centroid(section: &SectionSize, side: f64) -> f64 {
    let rise = section.centroid_rise();
    if rise == mm(0.0) && side == 0.0 {
        return section.seen_mm(View::Side) / 2.0;
    }
    let outline = section.section();
    let toward = FRAC_PI_2 - side;
    let middle = (outline.reach_mm(toward) + outline.reach_mm(toward + PI)) / 2.0;
    if rise == mm(0.0) { middle } else { outline.reach_mm(toward) - in_mm(rise) * toward.sin() }
}

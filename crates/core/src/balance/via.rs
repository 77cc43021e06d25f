//! The shapes that a segment has on the way, each of the metal that it then has.

use super::draft::Draft;
use super::solve::solve;
use super::trouble::Trouble;
use super::{Derived, Follows, SegmentBalance, Settled, ViaBalance, Walk};
use crate::forms::{Pen, Rolled, Surroundings};
use crate::metal::{Bent, Moved, Shape, in_mm, mm3};
use crate::plan::{Form, Gives, PlanUnit, Segment, SizeName, Via};

/// Why a size of a shape on the way follows.
const BECAUSE: &str = "follows from its metal";

impl Walk<'_> {
    /// The shapes of a segment on the way.
    pub(super) fn on_the_way(&self, segment: &Segment, settled: &Settled, around: Surroundings) -> Vec<ViaBalance> {
        let Some(finished) = settled.before_dies() else { return Vec::new() };
        let metal = self.stock_length(segment, settled) * self.stock_area;
        let left = metal * (1.0 - self.scale_share(segment));
        let mut form: Option<(&Form, Option<Gives>)> = None;
        let of = |via: &Via, form: Option<(&Form, Option<Gives>)>| {
            let straight = match form {
                Some((form, gives)) => straight(form, gives, around, [left, metal]),
                None => Straight::written(finished.clone()),
            };
            let own = form.map_or(&segment.form, |(form, _)| form);
            let reversed = around.at_free_end && own.one().has_free_end();
            straight.bent(via, own, around, reversed, metal)
        };
        let mut all = Vec::with_capacity(segment.via.len());
        for via in &segment.via {
            form = via.form.as_ref().map(|form| (form, via.gives)).or(form);
            all.push(of(via, form));
        }
        all
    }
}

/// A shape on the way before it is bent.
struct Straight {
    shape: Option<Shape>,
    follows: Option<Follows>,
    trouble: Option<Trouble>,
}

impl Straight {
    fn written(shape: Shape) -> Self {
        Self { shape: Some(shape), follows: None, trouble: None }
    }

    fn failed(trouble: Trouble) -> Self {
        Self { shape: None, follows: None, trouble: Some(trouble) }
    }

    /// It with its bend.
    fn bent(self, via: &Via, form: &Form, around: Surroundings, reversed: bool, metal: f64) -> ViaBalance {
        let held = self.shape.as_ref().map_or(0.0, volume_mm3);
        let mut one = ViaBalance {
            shape: self.shape,
            bent: None,
            reversed,
            metal: mm3(metal),
            held: mm3(if self.follows.is_some() { metal } else { held }),
            follows: self.follows,
            derived: self.follows.iter().map(|it| Derived::length(it.name, it.size, BECAUSE)).collect(),
            trouble: self.trouble,
        };
        let (Some(bend), Some(shape)) = (&via.bend, &one.shape) else { return one };
        let mut segment = Segment::new("", form.clone());
        segment.bend = Some(bend.clone());
        // Its length is known: from the metal, or as it is written.
        let known = Draft::new(&segment, around);
        let draft = Draft { shape: shape.clone(), length_given: true, rolled: Rolled::Given, ..known };
        let settled = draft.settle();
        one.trouble = one.trouble.or(settled.trouble);
        one.bent = settled.bent;
        one.derived.extend(settled.derived);
        one
    }
}

/// A form with the size that follows from the metal, of which there are two: all scale lost, and none of it.
fn straight(form: &Form, gives: Option<Gives>, around: Surroundings, [left, metal]: [f64; 2]) -> Straight {
    let draft = Draft::new(&Segment::new("", form.clone()), around);
    let gives = match gives {
        None if !draft.length_given => Gives::Length,
        None | Some(Gives::Nothing) => {
            let settled = draft.settle();
            return Straight { shape: settled.shape, follows: None, trouble: settled.trouble };
        }
        Some(gives) => gives,
    };
    let (fitted, low) = match (fitted(&draft, gives, metal), fitted(&draft, gives, left)) {
        (Ok(fitted), Ok(low)) => (fitted, low),
        (Err(trouble), _) | (_, Err(trouble)) => return Straight::failed(trouble),
    };
    let size = |shape: &Shape| match gives {
        Gives::Width => shape.giving_width(),
        Gives::Thickness => shape.giving_thickness(),
        _ => Some(shape.length()),
    };
    let name = form.one().given_name(gives).unwrap_or(SizeName::Length);
    let follows = size(&fitted).zip(size(&low)).map(|(size, low)| Follows { name, gives, size, low });
    Straight { shape: Some(fitted), follows, trouble: None }
}

/// The shape with the size that gives as large as its metal, in mm³, makes it.
fn fitted(draft: &Draft, gives: Gives, metal: f64) -> Result<Shape, Trouble> {
    // Of what is left as the bar is, only the length gives.
    let scaled = |factor: f64| draft.scaled(gives, factor).ok().map(|draft| draft.shape);
    let one = draft.scaled(gives, 1.0)?.shape;
    let guess = metal / volume_mm3(&one).max(1e-12);
    let volume = |factor: f64| scaled(factor).map_or(0.0, |shape| volume_mm3(&shape));
    solve(volume, metal, guess).and_then(scaled).ok_or(Trouble::CannotFit)
}

fn volume_mm3(shape: &Shape) -> f64 {
    (shape.volume() / mm3(1.0)).value
}

/// A segment and its balance as they are once a shape on the way is made, as though that were the finished one.
///
/// None where there is no such shape.
pub fn as_by_then(
    segment: &Segment,
    balance: &SegmentBalance,
    to: usize,
    unit: PlanUnit,
) -> Option<(Segment, SegmentBalance)> {
    let (via, settled) = (segment.via.get(to)?, balance.via.get(to)?);
    let written = segment.via.iter().take(to + 1).rev().find_map(|via| via.form.as_ref());
    let mut form = written.unwrap_or(&segment.form).clone();
    if let (Some(follows), Some(shape)) = (settled.follows, &settled.shape) {
        let pen = Pen { unit: unit.length_unit(), finer: 0 };
        form.one_mut().rewrite(follows.gives, &rounded(shape, follows.gives), pen);
    }
    let own = Segment {
        name: segment.name.clone(),
        bend: via.bend.clone(),
        via: segment.via.iter().take(to).cloned().collect(),
        gives: via.gives,
        scale: segment.scale.clone(),
        ..Segment::new("", form)
    };
    let tied = settled.derived.iter().filter(|derived| settled.follows.is_none_or(|size| size.name != derived.name));
    // What gave of the finished form gave of it on the way too.
    let gave = balance.derived.iter().filter(|derived| derived.gave.is_some() && !derived.tied && written.is_none());
    let derived = gave.chain(tied).cloned().collect();
    let then = SegmentBalance {
        shape: settled.shape.clone(),
        bent: settled.bent,
        swell: 1.0,
        reversed: settled.reversed,
        finished_volume: settled.metal,
        trimmed_volume: mm3(0.0),
        missing_volume: mm3(0.0),
        scale_share: 0.0,
        forged_length: settled.shape.as_ref().map_or(balance.forged_length, Shape::length),
        derived,
        standing: None,
        grown: None,
        via: balance.via.iter().take(to).cloned().collect(),
        dressed: Vec::new(),
        moved: Moved::default(),
        ..balance.clone()
    };
    Some((own, then))
}

/// A shape whose size that follows is as fine as a smith forges it: to a tenth of a millimetre.
fn rounded(shape: &Shape, gives: Gives) -> Shape {
    let size = match gives {
        Gives::Width => shape.giving_width(),
        Gives::Thickness => shape.giving_thickness(),
        _ => Some(shape.length()),
    };
    let Some(size) = size.map(in_mm).filter(|size| *size > 0.1) else { return shape.clone() };
    shape.scaled(gives, (size * 10.0).round() / 10.0 / size).unwrap_or_else(|| shape.clone())
}

/// Whether a bend on the way is opened again: the shape after it is bent less far.
pub fn opens_again(balance: &SegmentBalance, to: usize) -> bool {
    let turned = |bent: Option<Bent>| match bent {
        Some(Bent::Curve { angle, .. }) => angle,
        Some(Bent::Ring { sweep, .. } | Bent::Socket { sweep, .. }) => sweep,
        Some(Bent::Scroll { spiral, .. }) => spiral.turns * std::f64::consts::TAU,
        Some(Bent::Corner { .. }) => std::f64::consts::PI,
        Some(Bent::Twist { .. }) | None => 0.0,
    };
    let after = balance.via.get(to + 1).map_or(balance.bent, |next| next.bent);
    balance.via.get(to).is_some_and(|via| turned(via.bent) > turned(after) + 1e-9)
}

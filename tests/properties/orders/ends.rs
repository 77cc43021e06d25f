//! How thin a part is at its ends, as a share of what it is forged from: of width and thickness the one that loses more counts.

use fh_core::balance::{BarBalance, SegmentBalance};
use fh_core::metal::{FreeEnd, SectionSize, Shape};
use fh_core::plan::{Chain, Flat, Form};
use tests::{mm, mm2};

/// An answer that is a matter of taste near its limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Answer {
    No,
    Either,
    Yes,
}

/// Whether a groove beside a part makes sense: something goes thin at one of its ends, and no shoulder stands there.
pub(crate) fn takes_a_groove(flat: &[Flat<'_>], balance: &BarBalance, at: usize) -> Answer {
    let (chain, place) = (flat[at].chain, flat[at].place);
    let is_beside = |other: &Flat<'_>| other.chain == chain && other.place.abs_diff(place) == 1;
    let is_set_down = |at: usize| matches!(flat[at].segment.form, Form::Shoulder(_) | Form::Tenon(_));
    let mut best = Answer::No;
    for beside in (0..flat.len()).filter(|other| is_beside(&flat[*other])) {
        if is_set_down(at) || is_set_down(beside) {
            continue;
        }
        let far = flat[beside].place > place;
        // Zones of one plate have no neck between them.
        let (before, after) = if far { (at, beside) } else { (beside, at) };
        let is_plate = |at: usize| matches!(flat[at].segment.form, Form::Flag(_));
        let is_joined = matches!(&flat[after].segment.form, Form::Flag(flag) if flag.joined);
        if is_joined && is_plate(before) {
            continue;
        }
        // Two plates that are as wide and as thick as each other where they meet are one; whether they are is a matter of a hair.
        let (own_end, other_end) = (plate_end(balance, at, far), plate_end(balance, beside, !far));
        if let Some((one, other)) = own_end.zip(other_end)
            && (0..2).all(|way| (one[way] - other[way]).abs() < 0.06)
        {
            best = best.max(if (0..2).all(|way| (one[way] - other[way]).abs() < 0.04) {
                Answer::No
            } else {
                Answer::Either
            });
            continue;
        }
        // Between two blocks one groove is enough: that of the block toward the datum; beside a block it is the block's.
        if is_block(&flat[beside].segment.form) && !(far && is_block(&flat[at].segment.form)) {
            continue;
        }
        // What tapers toward the rest of the bar is forged once that is off, from its free end; what is thin all along is so only
        // where the piece has a handle.
        let own = &balance.segments[at];
        let end = mm2(own.area_at(if far { 1.0 } else { 0.0 })) / raw_area(balance, at);
        if matches!(flat[beside].segment.form, Form::Hold(_)) && own.shape.is_some() && end < 0.5 {
            if !ends_in_nothing(own, far) && !matches!(own.shape, Some(Shape::Taper { .. })) {
                best = best.max(Answer::Either);
            }
            continue;
        }
        // Where what is cut off beside it frees an end that runs out, it is cut off first.
        if matches!(flat[beside].segment.form, Form::Trim(_)) && ends_in_nothing(own, far) {
            continue;
        }
        let least = least(balance, at, far).min(least(balance, beside, !far));
        // A groove is for what is thinned below nine tenths of the bar; two hundredths more or less is a matter of taste.
        best = best.max(match least {
            // What runs out to nothing leaves nothing for a groove, unless it is spread wide.
            least if least < 0.02 => Answer::Either,
            least if least < 0.88 => Answer::Yes,
            least if least > 0.92 => Answer::No,
            _ => Answer::Either,
        });
    }
    best
}

/// Whether a part ends in a point, an edge, a finial or free branches, away from the datum or toward it.
fn ends_in_nothing(own: &SegmentBalance, far: bool) -> bool {
    let at_tip = far != own.reversed;
    match &own.shape {
        Some(Shape::Taper { from, to, .. }) => if at_tip { to } else { from }.is_end(),
        Some(Shape::Ball { .. } | Shape::Cube { .. }) => true,
        Some(Shape::Flag { tip, outline, .. }) => at_tip && (mm(*tip) <= 0.0 || outline.end_width(true).is_none()),
        Some(Shape::Split(split)) => split.free == if far { FreeEnd::Far } else { FreeEnd::Datum },
        _ => false,
    }
}

/// How wide and how thick a plate or a boss is at its end away from the datum, or at the other one, in mm; none of other parts, and
/// of what ends in no width.
fn plate_end(balance: &BarBalance, at: usize, far: bool) -> Option<[f64; 2]> {
    let own = &balance.segments[at];
    let at_tip = far != own.reversed;
    match &own.shape {
        Some(Shape::Flag { outline, root, tip, .. }) => {
            Some([mm(outline.end_width(at_tip)?), mm(if at_tip { *tip } else { *root })])
        }
        Some(Shape::Hole { outline, thickness, .. }) => Some([mm(outline.end_width(at_tip)?), mm(*thickness)]),
        _ => None,
    }
}

fn is_block(form: &Form) -> bool {
    matches!(form, Form::Flag(_) | Form::Hole(_) | Form::Ball(_) | Form::Cube(_) | Form::Peak(_))
}

/// What is left of the width or of the thickness of a finished part at its end away from the datum, or at the other one: the
/// smaller of the two shares.
fn least(balance: &BarBalance, at: usize, far: bool) -> f64 {
    let own = &balance.segments[at];
    let at_tip = far != own.reversed;
    let raw = raw_sizes(balance, at);
    let share = |[width, thickness]: [f64; 2]| (width / raw[0]).min(thickness / raw[1]);
    let of_section = |size: &SectionSize| share([mm(size.section().width()), mm(size.section().thickness())]);
    match &own.shape {
        None | Some(Shape::Split(_)) => 1.0,
        Some(Shape::Prism { section, .. } | Shape::Peak { section, .. }) => of_section(section),
        Some(Shape::Taper { from, to, .. } | Shape::Shoulder { from, to, .. }) => {
            of_section(if at_tip { to } else { from })
        }
        Some(Shape::Flag { outline, root, tip, .. }) => {
            let thickness = mm(if at_tip { *tip } else { *root });
            share([outline.end_width(at_tip).map_or(raw[0], mm), thickness])
        }
        Some(Shape::Hole { outline, thickness, .. }) => share([mm(outline.width()), mm(*thickness)]),
        Some(Shape::Ball { diameter: size } | Shape::Cube { side: size }) => share([mm(*size); 2]),
    }
}

/// The smaller size in mm of what a part is forged from.
pub(crate) fn least_of_raw(balance: &BarBalance, at: usize) -> f64 {
    let [width, thickness] = raw_sizes(balance, at);
    width.min(thickness)
}

/// How wide and how thick the bar is that a part is forged from, in mm; a branch is a flat as wide as it is cut.
fn raw_sizes(balance: &BarBalance, at: usize) -> [f64; 2] {
    let bar = [mm(balance.stock_section.width()), mm(balance.stock_section.thickness())];
    let Chain::Branch { split, branch } = balance.segments[at].chain else { return bar };
    let Some(Shape::Split(size)) = &balance.segments[split].shape else { return raw_sizes(balance, split) };
    let cut = mm(size.branches[branch].raw_width);
    let other = raw_area(balance, at) / cut;
    if cut <= 0.0 || other <= 0.0 {
        return raw_sizes(balance, split);
    }
    let lies_beside = size.side.sin().abs() > size.side.cos().abs();
    if lies_beside { [cut, other] } else { [other, cut] }
}

/// The area of what a part is forged from, in mm²: of a branch, its share of what is cut.
pub(crate) fn raw_area(balance: &BarBalance, at: usize) -> f64 {
    match balance.segments[at].chain {
        Chain::Bar => mm2(balance.stock_area),
        Chain::Branch { split, branch } => match &balance.segments[split].shape {
            Some(Shape::Split(size)) => raw_area(balance, split) * size.branches[branch].share,
            _ => raw_area(balance, split),
        },
    }
}

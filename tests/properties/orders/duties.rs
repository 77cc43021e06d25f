//! What has to be done to each part, worked out slowly from the plan and its balance alone.

use super::did::Did;
use super::ends::{Answer, least_of_raw, takes_a_groove};
use fh_core::balance::{BarBalance, SegmentBalance};
use fh_core::forms;
use fh_core::metal::{Bent, Shape};
use fh_core::plan::{Bar, Chain, Flat, Form, Made, Operation, RootSpec};
use proptest::prelude::*;
use tests::{mm, mm2, mm3};
use uom::si::f64::Length;

use Operation as O;

/// Two sizes that differ by less are surely alike, by more surely not; between them it is a matter of taste.
const ALIKE: f64 = 0.01;
const UNLIKE: f64 = 0.03;
/// What makes a part thicker or thinner.
const SHAPING: [Operation; 6] = [O::Draw, O::Taper, O::Upset, O::Spread, O::Flatten, O::Scarf];

/// What must be done to a part once, and what may be.
#[derive(Debug, Default)]
struct Duty {
    must: Vec<Operation>,
    /// One of each list must be done, and no more than one.
    one_of: Vec<Vec<Operation>>,
    may: Vec<Operation>,
}

/// Checks that what is done to a bar is what it asks for, nothing forgotten and nothing twice.
///
/// `welds` is whether the metal welds in the fire: nothing is scarfed or welded where it does not.
pub(crate) fn check(
    bar: &Bar,
    balance: &BarBalance,
    (index, welds): (usize, bool),
    done: &[Did],
) -> Result<(), TestCaseError> {
    let flat = bar.flat();
    let own: Vec<Did> = done.iter().copied().filter(|did| did.bar == index && !did.is_of_piece()).collect();
    for at in 0..flat.len() {
        if !flat[at].segment.via.is_empty() {
            // What each shape on the way asks for is held in `tests/orders/on_the_way.rs`; here, that nothing is done to it twice.
            let own: Vec<&Did> = own.iter().filter(|did| did.part == Some(at)).collect();
            let twice = own.iter().enumerate().find(|(place, did)| own[..*place].contains(did));
            prop_assert!(twice.is_none() && own.iter().any(|did| did.to.is_some()), "part {}: {:?}", bar.path(at), own);
            continue;
        }
        let operations: Vec<Operation> =
            own.iter().filter(|did| did.part == Some(at)).map(|did| did.operation).collect();
        let duty = Asked { flat: &flat, balance, at, welds }.duty();
        fulfils(&duty, &operations).map_err(|fault| {
            TestCaseError::fail(format!("part {} of bar {index}: {fault}: {operations:?} for {duty:?}", bar.path(at)))
        })?;
    }
    whole_bar(&own)
}

fn fulfils(duty: &Duty, done: &[Operation]) -> Result<(), String> {
    for (place, operation) in done.iter().enumerate() {
        if done[..place].contains(operation) {
            return Err(format!("{} is done twice", operation.name()));
        }
        let known = duty.must.contains(operation) || duty.may.contains(operation);
        if !known && !duty.one_of.iter().any(|list| list.contains(operation)) {
            return Err(format!("nothing asks for {}", operation.name()));
        }
    }
    if let Some(missing) = duty.must.iter().find(|operation| !done.contains(operation)) {
        return Err(format!("{} is forgotten", missing.name()));
    }
    let once = |list: &&Vec<Operation>| done.iter().filter(|operation| list.contains(operation)).count() == 1;
    match duty.one_of.iter().find(|list| !once(list)) {
        Some(list) => Err(format!("one of {list:?} is asked for")),
        None => Ok(()),
    }
}

/// Marked and checked once where anything is done, and straightened once before the first bend.
fn whole_bar(own: &[Did]) -> Result<(), TestCaseError> {
    let on_parts: Vec<Operation> = own.iter().filter(|did| did.part.is_some()).map(|did| did.operation).collect();
    let whole: Vec<Operation> = own.iter().filter(|did| did.part.is_none()).map(|did| did.operation).collect();
    let count = |operation| whole.iter().filter(|other| **other == operation).count();
    let any = usize::from(!on_parts.is_empty());
    prop_assert_eq!((count(O::Mark), count(O::Check)), (any, any));
    let shaped = on_parts.iter().filter(|operation| SHAPING.contains(operation)).count();
    let bent = on_parts.iter().any(|operation| operation.is_bending() || *operation == O::Twist);
    prop_assert_eq!(count(O::Straighten), usize::from(shaped > 0 && (bent || shaped > 1)));
    prop_assert!(count(O::Normalise) <= 1);
    prop_assert_eq!(whole.len(), count(O::Mark) + count(O::Check) + count(O::Straighten) + count(O::Normalise));
    Ok(())
}

/// One part, asked what it needs.
struct Asked<'a> {
    flat: &'a [Flat<'a>],
    balance: &'a BarBalance,
    at: usize,
    welds: bool,
}

impl Asked<'_> {
    fn own(&self) -> &SegmentBalance {
        &self.balance.segments[self.at]
    }

    fn form(&self) -> &Form {
        &self.flat[self.at].segment.form
    }

    /// The parts before and behind it in its chain.
    fn beside(&self) -> [Option<usize>; 2] {
        let (chain, place) = (self.flat[self.at].chain, self.flat[self.at].place);
        let find =
            |wanted: Option<usize>| self.flat.iter().position(|flat| flat.chain == chain && Some(flat.place) == wanted);
        [find(place.checked_sub(1)), find(Some(place + 1))]
    }

    /// The area of the bar, or of its branch as it is cut, from what it takes.
    fn raw_area(&self) -> f64 {
        let own = self.own();
        let taken = (mm3(own.finished_volume) + mm3(own.trimmed_volume)) / (1.0 - own.scale_share);
        taken / mm(own.mark_end - own.mark_start)
    }

    /// Of its mean area to that of the bar, before it is twisted.
    fn fuller(&self, shape: &Shape) -> f64 {
        mm3(shape.volume()) / mm(shape.length()) / self.raw_area()
    }

    /// Its width and its thickness to those of the bar; none on a branch, whose cut is another matter.
    fn wider(&self, width: Length, thickness: Length) -> Option<[f64; 2]> {
        let raw = self.balance.stock.section();
        let on_bar = self.own().chain == Chain::Bar;
        on_bar.then(|| [mm(width) / mm(raw.width()), mm(thickness) / mm(raw.thickness())])
    }

    fn duty(&self) -> Duty {
        let mut duty = Duty::default();
        let Some(shape) = &self.own().shape else { return duty };
        self.forging(shape, &mut duty);
        if !self.flat[self.at].segment.dressed.is_empty() {
            duty.must.push(O::Dress);
        }
        if !self.flat[self.at].segment.repeats.is_empty() {
            duty.must.push(O::Stamp);
        }
        if matches!(self.form(), Form::Trim(_) | Form::Hold(_)) {
            // What is cut off may be bent or not: nobody looks at it again.
            duty.may.extend([O::Bend, O::Corner, O::Roll, O::Twist, O::Brush]);
        } else if let Some(bent) = self.own().bent {
            duty.must.push(match bent {
                Bent::Curve { .. } | Bent::Ring { .. } | Bent::Scroll { .. } => O::Bend,
                Bent::Corner { .. } => O::Corner,
                Bent::Socket { .. } => O::Roll,
                Bent::Twist { .. } => O::Twist,
            });
            let is_closed_in = match bent {
                Bent::Socket { .. } => true,
                Bent::Scroll { spiral, .. } => spiral.turns > 1.0,
                _ => false,
            };
            duty.must.extend(is_closed_in.then_some(O::Brush));
            // What goes so far round meets its neck, and its end is filed, unless a joint closes it.
            duty.may.extend(matches!(bent, Bent::Ring { .. }).then_some(O::Trim));
        }
        self.neck(shape, &mut duty);
        duty
    }

    fn forging(&self, shape: &Shape, duty: &mut Duty) {
        match self.form() {
            Form::Plain(_) | Form::Open(_) => {}
            Form::Drawn(_) => self.drawn(shape, duty),
            Form::Collar(_) => {
                self.drawn(shape, duty);
                duty.must.push(O::Bend);
            }
            Form::Taper(_) => self.taper(shape, duty),
            Form::Shoulder(_) => duty.must.push(O::SetDown),
            Form::Flag(forms::Flag { trim, blank, holes, .. }) => {
                // Spreading lengthens: what has to become shorter is upset first.
                self.gathered(shape, duty);
                duty.must.push(O::Spread);
                self.block(duty);
                // What a hole loses is no rim.
                let has_rim = trim.as_ref().is_some_and(|share| share.ratio() > 0.0) || blank.is_some();
                if has_rim && mm3(self.own().trimmed_volume) > 0.0 {
                    duty.must.push(O::Trim);
                }
                duty.may.extend(trim.is_some().then_some(O::Trim));
                // A slit is opened by its drift.
                for hole in holes {
                    duty.must.push(if hole.made == Made::Drilled { O::Drill } else { O::Punch });
                    duty.must.extend((hole.made == Made::Drifted).then_some(O::Drift));
                }
            }
            // What is left standing is set down on both sides, and nothing is done to it itself.
            Form::Peak(_) if self.own().standing.is_some() => duty.must.push(O::SetDown),
            Form::Peak(_) => match self.fuller(shape) {
                fuller if fuller > 1.0 + UNLIKE => duty.must.push(O::Upset),
                fuller if fuller < 1.0 + ALIKE => {
                    duty.must.push(O::Draw);
                    self.block(duty);
                }
                _ => {
                    duty.may.extend([O::Upset, O::Draw]);
                    self.perhaps_a_block(duty);
                }
            },
            Form::Hole(forms::Hole { made, .. }) => self.hole(*made, shape, duty),
            Form::Tenon(_) => duty.must.extend([O::SetDown, O::Draw]),
            Form::Rivet(_) => duty.must.push(O::Upset),
            Form::Weld(_) if !self.welds => {}
            Form::Weld(_) => {
                duty.must.push(O::Scarf);
                // Where a joint of the plan welds it, it is welded there.
                duty.may.push(O::Weld);
            }
            Form::Split(forms::Split { root, .. }) => self.split(root.as_ref(), shape, duty),
            Form::Ball(_) | Form::Cube(_) => self.finial(shape, duty),
            Form::Trim(_) => duty.must.push(O::Trim),
            Form::Hold(_) => duty.must.push(O::PartOff),
        }
    }

    /// A block is necked where metal goes thin beside it, or where it goes thin itself beside the bar.
    fn block(&self, duty: &mut Duty) {
        match self.groove() {
            Answer::Yes => duty.must.push(O::Isolate),
            Answer::Either => duty.may.push(O::Isolate),
            Answer::No => {}
        }
    }

    /// What may be a block or not is necked only where a block would be.
    fn perhaps_a_block(&self, duty: &mut Duty) {
        duty.may.extend((self.groove() != Answer::No).then_some(O::Isolate));
    }

    fn groove(&self) -> Answer {
        takes_a_groove(self.flat, self.balance, self.at)
    }

    /// What has to become shorter, or has more section somewhere than the bar, is gathered before it is spread: spreading
    /// lengthens, and makes no section larger.
    fn gathered(&self, shape: &Shape, duty: &mut Duty) {
        let own = self.own();
        let shorter = mm(own.forged_length) / mm(own.stock_length);
        let whole = mm3(own.finished_volume) + mm3(own.trimmed_volume);
        let widest = match shape {
            // The drift pushes its own width of metal aside.
            Shape::Hole { outline, thickness, hole, .. } => {
                let drifted = matches!(self.form(), Form::Hole(forms::Hole { made: Made::Drifted, .. }));
                (mm(outline.width()) - if drifted { mm(hole.width()) } else { 0.0 }) * mm(*thickness)
            }
            // The rim that is trimmed off is as wide all round.
            _ => {
                let (open, filled) = (mm3(shape.holes_volume()), shape.filled());
                let at = |place: i32| mm2(filled.area_at((f64::from(place) + 0.5) / 200.0));
                (0..200).map(at).fold(0.0, f64::max) * (whole / (mm3(own.finished_volume) + open)).sqrt()
            }
        };
        let fuller = widest / self.raw_area();
        // What the drift draws in is not upset; how much that is, is left to the school by which it is slit.
        let drawn_in = match (self.form(), shape) {
            (Form::Hole(forms::Hole { made: Made::Drifted, .. }), Shape::Hole { hole, .. }) => {
                (mm(hole.slit_half_perimeter()) - mm(hole.length())).max(0.0) / mm(own.stock_length)
            }
            _ => 0.0,
        };
        if shorter + drawn_in < 0.94 || fuller > 1.0 + UNLIKE {
            duty.must.push(O::Upset);
        } else if shorter < 0.96 || fuller > 1.0 - UNLIKE {
            duty.may.push(O::Upset);
        }
    }

    /// A ball or a cube that is more than the bar is thin has to be gathered first.
    fn finial(&self, shape: &Shape, duty: &mut Duty) {
        duty.must.push(O::Draw);
        self.block(duty);
        match mm(shape.length()) / least_of_raw(self.balance, self.at) {
            more if more > 1.0 + UNLIKE => duty.must.push(O::Upset),
            more if more > 1.0 + ALIKE => duty.may.push(O::Upset),
            _ => {}
        }
    }

    fn drawn(&self, shape: &Shape, duty: &mut Duty) {
        let Shape::Prism { section, .. } = shape else { return };
        let (fuller, outline) = (self.fuller(shape), section.section());
        let wider = self.wider(outline.width(), outline.thickness());
        let off = |share: f64| (share - 1.0).abs();
        let most = wider.map(|both| both.into_iter().map(off).fold(off(fuller), f64::max));
        // Of what one side loses, flat tools put 83 of 100 parts into the other at most; only more than that is spread.
        let asked = wider.map(|[wide, thick]| {
            let (most, least) = (wide.max(thick), wide.min(thick));
            if most > 1.0 && least < 1.0 { most.ln() / (1.0 / least).ln() } else { 0.0 }
        });
        if fuller > 1.0 + UNLIKE {
            duty.must.push(O::Upset);
        } else if most.is_some_and(|most| most < ALIKE) {
            // It is the bar.
        } else if fuller < 1.0 + ALIKE && asked.is_some_and(|asked| asked > 0.83 + UNLIKE) {
            duty.must.push(O::Spread);
        } else if fuller < 1.0 - UNLIKE && asked.is_some_and(|asked| asked < 0.83 - UNLIKE) {
            duty.must.push(O::Draw);
        } else if fuller < 1.0 - UNLIKE {
            duty.one_of.push(vec![O::Draw, O::Spread]);
        } else {
            duty.may.extend([O::Draw, O::Spread, O::Upset]);
        }
    }

    fn taper(&self, shape: &Shape, duty: &mut Duty) {
        let fuller = self.fuller(shape);
        let raw = self.raw_area();
        let off = |share: f64| (mm2(shape.area_at(share)) / raw - 1.0).abs();
        if fuller > 1.0 + UNLIKE {
            duty.must.push(O::Upset);
        } else if fuller < 1.0 - UNLIKE {
            duty.must.push(O::Taper);
        } else if off(0.0).max(off(1.0)) > UNLIKE {
            duty.one_of.push(vec![O::Taper, O::Upset]);
        } else {
            duty.may.extend([O::Taper, O::Upset]);
        }
    }

    fn hole(&self, made: Made, shape: &Shape, duty: &mut Duty) {
        duty.must.extend(match made {
            Made::Punched => vec![O::Punch],
            Made::Drifted => vec![O::Punch, O::Drift],
            Made::Drilled => vec![O::Drill],
        });
        let Shape::Hole { outline, thickness, hole, .. } = shape else { return };
        // The bar itself, opened by its drift or dressed back to its width, is not flattened.
        let opened = (made == Made::Drifted).then(|| outline.width() - hole.width());
        let off = |width| {
            let wider = self.wider(width, *thickness)?;
            Some(wider.into_iter().map(|share| (share - 1.0).abs()).fold(0.0, f64::max))
        };
        let Some(off) = [outline.width()]
            .into_iter()
            .chain(opened)
            .map(off)
            .try_fold(f64::INFINITY, |least, off| Some(least.min(off?)))
        else {
            duty.may.extend([O::Upset, O::Flatten]);
            self.perhaps_a_block(duty);
            return;
        };
        if off > UNLIKE {
            duty.must.push(O::Flatten);
            self.block(duty);
        } else if off > ALIKE {
            duty.may.push(O::Flatten);
            self.perhaps_a_block(duty);
        }
        if off > UNLIKE {
            self.gathered(shape, duty);
        } else if off > ALIKE {
            duty.may.push(O::Upset);
        }
    }

    /// Whether a branch that leaves the bar is longer than its slit and bent: in line it would lie on the bar.
    fn stays_off(&self, slit: f64) -> bool {
        let own = self.at;
        let is_of = |at: &usize, branch: usize| self.flat[*at].chain == Chain::Branch { split: own, branch };
        self.form().branches().iter().enumerate().filter(|(_, branch)| branch.free.is_some()).any(|(branch, _)| {
            let parts =
                || (0..self.flat.len()).filter(move |at| is_of(at, branch)).map(|at| &self.balance.segments[at]);
            parts().map(|part| mm(part.forged_length)).sum::<f64>() > slit && parts().any(|part| part.bent.is_some())
        })
    }

    fn split(&self, root: Option<&RootSpec>, shape: &Shape, duty: &mut Duty) {
        let Shape::Split(size) = shape else { return };
        duty.must.push(O::Split);
        duty.must.extend(matches!(root, Some(RootSpec::Hole(_))).then_some(O::Punch));
        duty.must.extend(size.opening.is_some().then_some(O::Open));
        // A slit that is closed at both ends is wedged open, and its rods are laid together again.
        let mut apart = vec![O::BendAside, O::Straighten];
        if self.stays_off(mm(size.slit)) {
            apart.pop();
        }
        let below = self.at + 1..self.at + self.flat[self.at].segment.count();
        let duties: Vec<Duty> = below.map(|at| Asked { at, ..*self }.duty()).collect();
        let is_shaping =
            |operation: &Operation| SHAPING.contains(operation) || matches!(operation, O::Isolate | O::SetDown);
        let surely = |duty: &Duty| duty.must.iter().any(is_shaping) || duty.one_of.iter().flatten().any(is_shaping);
        if duties.iter().any(surely) {
            duty.must.extend(apart);
        } else if duties.iter().any(|duty| duty.may.iter().any(is_shaping)) {
            duty.may.extend(apart);
        }
    }

    /// A neck at a mark that nothing else would keep: the part is thin right beside bar that stays as it is, and a groove
    /// makes sense.
    fn neck(&self, shape: &Shape, duty: &mut Duty) {
        let draws = [O::Draw, O::Taper, O::Spread, O::Flatten, O::Scarf];
        let drawn = |list: &[Operation]| list.iter().any(|operation| draws.contains(operation));
        if duty.must.contains(&O::Isolate) || duty.must.contains(&O::SetDown) || duty.must.contains(&O::Upset) {
            return;
        }
        let groove = self.groove();
        if groove == Answer::No {
            return;
        }
        let raw = self.raw_area();
        for (side, beside) in self.beside().into_iter().enumerate() {
            let Some(beside) = beside.filter(|at| self.flat[*at].segment.form.is_as_stock()) else { continue };
            let near = if (side == 1) == self.own().reversed { 0.0 } else { 1.0 };
            let share = mm2(shape.area_at(near)) / raw;
            let is_plain = matches!(self.flat[beside].segment.form, Form::Plain(_));
            if groove == Answer::Yes && is_plain && (0.01..0.78).contains(&share) && drawn(&duty.must) {
                duty.must.push(O::Isolate);
                return;
            }
            if share < 0.82 && (drawn(&duty.must) || drawn(&duty.may) || duty.one_of.iter().any(|list| drawn(list))) {
                duty.may.push(O::Isolate);
            }
        }
    }
}

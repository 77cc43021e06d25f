//! The bar as it is after a step: a mixture of stock, isolated, forged and bent, drawn and weighed like any other bar.

use crate::bar::progress::{Progress, Stage};
use crate::bar::rough::rough_outline;
use crate::job::along::leader;
use crate::job::site::{Part, Site, in_mm, in_mm2, in_mm3, mm};
use crate::job::task::operations;
use crate::job::upsets::upset_length_mm;
use fh_core::balance::{BarBalance, SegmentBalance};
use fh_core::metal::{Bent, BranchSize, FreeEnd, Moved, OpeningSize, Outline, SectionSize, Shape, SplitSize};
use fh_core::plan::{Chain, Form, Gives, Operation};
use uom::si::f64::Volume;
use uom::si::volume::cubic_millimeter;

/// The bar of a site as far as it has come.
pub(crate) fn state(site: &Site<'_>, progress: &Progress) -> BarBalance {
    let lengths = progress.lengths(site);
    let starts = progress.starts(site, &lengths);
    let mut bar = site.balance.clone();
    for part in site.parts() {
        let now = part_now(site, progress, part, &lengths);
        let slot = &mut bar.segments[part.at];
        slot.forged_length = mm(lengths[part.at]);
        slot.forged_start = mm(starts[part.at]);
        slot.derived.clear();
        slot.unwelded = matches!(part.segment.form, Form::Weld(_)) && !progress.stages[part.at].welded;
        now.put_in(slot);
    }
    mend_offsets(site, progress, &mut bar);
    bar.forged_length = mm(site.chains[0].1.iter().map(|at| lengths[*at]).sum());
    let whole = bar.segments.iter().filter(|segment| segment.chain == Chain::Bar);
    bar.finished_volume = whole.map(|segment| segment.finished_volume).fold(cubic(0.0), |sum, next| sum + next);
    bar
}

/// The shape of one part as far as it has come; none of what is not there.
pub(crate) fn shape_now(site: &Site<'_>, progress: &Progress, at: usize, lengths: &[f64]) -> Option<Shape> {
    part_now(site, progress, site.part(at)?, lengths).shape
}

/// What a part is now.
struct Now {
    shape: Option<Shape>,
    bent: bool,
    swell: f64,
    metal_mm3: f64,
    /// How many times longer its dressed lengths are than they will be; none where it is not dressed yet.
    dressed: Option<f64>,
    /// How a shape on the way is bent, and whether it is read from its other end; none of other shapes.
    via: Option<(Option<Bent>, bool)>,
}

impl Now {
    /// A shape with its metal in mm³, straight, undressed and as it swells by itself.
    fn straight(shape: Option<Shape>, metal_mm3: f64) -> Self {
        Self { shape, bent: false, swell: 1.0, metal_mm3, dressed: None, via: None }
    }

    fn put_in(self, slot: &mut SegmentBalance) {
        slot.shape = self.shape;
        slot.swell = self.swell;
        slot.finished_volume = cubic(self.metal_mm3);
        slot.trimmed_volume = cubic(0.0);
        match self.dressed {
            None => {
                slot.dressed.clear();
                slot.moved = Moved::default();
            }
            Some(longer) => slot.dressed.iter_mut().for_each(|one| *one = one.longer(longer)),
        }
        if !self.bent {
            slot.bent = None;
        }
        if let Some((bent, reversed)) = self.via {
            (slot.bent, slot.reversed) = (bent, reversed);
        }
    }
}

fn cubic(mm3: f64) -> Volume {
    Volume::new::<cubic_millimeter>(mm3)
}

fn part_now(site: &Site<'_>, progress: &Progress, part: Part<'_>, lengths: &[f64]) -> Now {
    let stage = progress.stages[part.at];
    let balance = part.balance;
    let (finished, trimmed) = (in_mm3(balance.finished_volume), in_mm3(balance.trimmed_volume));
    let whole = finished + trimmed;
    let missing = in_mm3(balance.missing_volume);
    let none = Now::straight(None, 0.0);
    let Some(shape) = &balance.shape else { return none };
    if stage.off || !progress.is_there(site, part.at) {
        return none;
    }
    if let Shape::Split(_) = shape {
        return split_now(site, progress, part, lengths);
    }
    if let Some(now) = on_the_way(part, stage) {
        return now;
    }
    if !stage.forged {
        let along = leader(site, part.at).filter(|_| stage.along);
        let raw = || raw_now(site, part, lengths[part.at], stage.upset);
        let section = along.map_or_else(raw, |leader| leader.section);
        let length = mm(lengths[part.at]);
        // What scale will take is still there.
        let metal_mm3 = (whole - missing) / (1.0 - balance.scale_share).max(1e-6);
        return Now { shape: Some(Shape::Prism { section, length }), metal_mm3, ..none };
    }
    let untwisted = progress.untwisted(site, part.at);
    let (shape, metal_mm3) = match (&part.segment.form, shape) {
        (Form::Flag(_), Shape::Flag { holes, .. }) if !holes.is_empty() => pierced_plate(part, shape, stage),
        (Form::Flag(_), Shape::Flag { blank: Some(_), .. }) if !stage.trimmed => {
            (shape.blank().unwrap_or_else(|| shape.clone()), whole - missing)
        }
        (Form::Flag(_), Shape::Flag { outline, root, tip, blank: Some(_), .. }) => {
            (Shape::plate(outline.clone(), *root, *tip), finished)
        }
        (Form::Flag(_), Shape::Flag { outline, root, tip, .. }) if !stage.trimmed && trimmed > 0.0 => {
            let larger = || wider(outline, whole / finished.max(1e-9));
            let outline = rough_outline(part, stage.trimmed).unwrap_or_else(larger);
            (Shape::plate(outline, *root, *tip), whole)
        }
        (Form::Hole(_), Shape::Hole { .. }) if !stage.pierced => (boss(shape, whole, lengths[part.at]), whole),
        // A strip that is not wrapped yet: read as a bar of even section, not as a collar.
        (Form::Collar(_), Shape::Prism { section, length }) if !stage.bent => {
            let (from, to) = (*section, *section);
            (Shape::Taper { from, to, runout: fh_core::metal::Runout::Straight, length: *length }, finished)
        }
        // What is cut off on purpose, or held, is metal as long as it is there.
        (Form::Trim(_) | Form::Hold(_), _) => (shape.clone(), whole),
        (form, Shape::Peak { section, .. }) if form.is_driven_up() && !stage.bent => {
            (Shape::Prism { section: *section, length: mm(lengths[part.at]) }, finished)
        }
        (_, _) if !balance.dressed.is_empty() && !stage.dressed => {
            let before = balance.shape_before_dies().unwrap_or_else(|| shape.clone());
            (before.scaled(Gives::Length, untwisted).unwrap_or(before), finished)
        }
        (_, shape) if untwisted > 1.0 => {
            (shape.scaled(Gives::Length, untwisted).unwrap_or_else(|| shape.clone()), finished)
        }
        (_, shape) => (shape.clone(), finished),
    };
    let swell = if untwisted > 1.0 { 1.0 } else { balance.swell };
    let dressed = stage.dressed.then_some(untwisted);
    Now { shape: Some(shape), bent: stage.bent, swell, metal_mm3, dressed, via: None }
}

/// A part as a shape on the way; none where it has none of them.
fn on_the_way(part: Part<'_>, stage: Stage) -> Option<Now> {
    let (made, is_straight) = stage.on_the_way()?;
    let via = part.balance.via.get(made)?;
    let bent = via.bent.filter(|_| !is_straight);
    let (shape, metal_mm3) = (via.shape.clone(), in_mm3(via.metal));
    Some(Now { via: Some((bent, via.reversed)), ..Now::straight(shape, metal_mm3) })
}

/// The section that an operation on a part begins with: the bar's, or that of the block to which the part was upset before.
pub(crate) fn begun_section(site: &Site<'_>, part: Part<'_>, operation: Operation) -> SectionSize {
    let mut before = operations(site, part).iter().take_while(|own| **own != operation);
    let is_upset = before.any(|own| *own == Operation::Upset);
    raw_now(site, part, upset_length_mm(site, part), is_upset)
}

/// The section of a part that has not got its own shape: the bar's, and as much thicker as it was upset shorter.
fn raw_now(site: &Site<'_>, part: Part<'_>, now_mm: f64, upset: bool) -> SectionSize {
    let (raw, laid_off) = (site.raw_section(part.at), site.raw_mm(part));
    if upset { thicker(raw, (laid_off / now_mm.max(1e-6)).sqrt()) } else { raw }
}

/// A section so many times as wide and as thick.
fn thicker(section: SectionSize, factor: f64) -> SectionSize {
    use SectionSize as S;
    match section {
        S::Square { side, edge_radius } => S::Square { side: side * factor, edge_radius: edge_radius * factor },
        S::Flat { width, thickness, edge_radius } => {
            let (width, thickness) = (width * factor, thickness * factor);
            S::Flat { width, thickness, edge_radius: edge_radius * factor }
        }
        S::Oval { width, thickness } => S::Oval { width: width * factor, thickness: thickness * factor },
        S::HalfRound { width, height } => S::HalfRound { width: width * factor, height: height * factor },
        // What has but one size.
        other => other.scaled(Gives::Width, factor).unwrap_or(other),
    }
}

/// A boss before its hole is made: the metal of hole and slug is still in it.
///
/// While the drift is still to come it is as long as it is then.
fn boss(shape: &Shape, whole_mm3: f64, now_mm: f64) -> Shape {
    let Shape::Hole { outline, thickness, .. } = shape else { return shape.clone() };
    let full = in_mm2(outline.area()) * in_mm(*thickness);
    let longer = now_mm / in_mm(outline.length()).max(1e-9);
    let outline = wider(outline, whole_mm3 / (full * longer).max(1e-9));
    let outline = outline.scaled(Gives::Length, longer).unwrap_or(outline);
    Shape::plate(outline, *thickness, *thickness)
}

/// A plate with holes as it is now, and its metal in mm³: what its holes lose is in it until they are made, what is cut off it until
/// that is done. It is so wide that it holds that.
fn pierced_plate(part: Part<'_>, shape: &Shape, stage: Stage) -> (Shape, f64) {
    let balance = part.balance;
    let whole = in_mm3(balance.finished_volume) + in_mm3(balance.trimmed_volume) - in_mm3(balance.missing_volume);
    let [open, lost] = [shape.holes_volume(), shape.lost_to_holes()].map(in_mm3);
    let cut = whole - in_mm3(balance.finished_volume) - lost;
    let metal = whole - if stage.trimmed { cut } else { 0.0 } - if stage.pierced { lost } else { 0.0 };
    let holes = if stage.pierced { shape.plate_holes().to_vec() } else { Vec::new() };
    let within = metal + if stage.pierced { open } else { 0.0 };
    let (rough, blank) = (rough_outline(part, stage.trimmed), shape.blank().filter(|_| !stage.trimmed));
    let plate = match (shape, blank, rough) {
        (_, Some(blank), _) => blank,
        (Shape::Flag { root, tip, .. }, None, Some(rough)) => Shape::plate(rough, *root, *tip),
        (Shape::Flag { outline, root, tip, .. }, ..) => Shape::plate(outline.clone(), *root, *tip),
        _ => return (shape.clone(), metal),
    };
    let factor = within / in_mm3(plate.volume()).max(1e-9);
    let plate = match &plate {
        Shape::Flag { outline, root, tip, .. } if (factor - 1.0).abs() > 1e-9 => {
            Shape::plate(wider(outline, factor), *root, *tip)
        }
        _ => plate,
    };
    (plate.with_holes(holes), metal)
}

/// An outline as long, and so many times as wide; a disc becomes an ellipse.
fn wider(outline: &Outline, factor: f64) -> Outline {
    match outline {
        Outline::Disc { diameter } => Outline::Ellipse { length: *diameter, width: *diameter * factor },
        other => other.scaled(Gives::Width, factor).unwrap_or_else(|| other.clone()),
    }
}

/// How far branches are bent out of line while they are forged, in radians: as far as a picture shows; no source.
const APART: f64 = std::f64::consts::FRAC_PI_4;

/// A slit that is closed at both ends, wedged open so that each branch has its own width free beside it.
fn wedged(size: &SplitSize) -> OpeningSize {
    let reach = |branch: &BranchSize| in_mm(branch.offset).abs() + in_mm(branch.raw_width) / 2.0;
    OpeningSize { radius: mm(size.branches.iter().map(reach).fold(0.0, f64::max)), turns: 0.0 }
}

/// A split: whole bar until it is cut, then branches of their own.
fn split_now(site: &Site<'_>, progress: &Progress, part: Part<'_>, lengths: &[f64]) -> Now {
    let stage: Stage = progress.stages[part.at];
    let Some(Shape::Split(size)) = &part.balance.shape else {
        return Now::straight(None, 0.0);
    };
    if !stage.cut {
        let (section, length) = (site.raw_section(part.at), mm(lengths[part.at]));
        let metal_mm3 = in_mm2(section.area()) * lengths[part.at];
        return Now::straight(Some(Shape::Prism { section, length }), metal_mm3);
    }
    let mut now = size.clone();
    now.length = mm(lengths[part.at]);
    if !progress.is_opened(site, part.at) {
        now.opening = (stage.aside && now.opens() == FreeEnd::Neither).then(|| wedged(size));
        now.apart = if stage.aside && now.opens() != FreeEnd::Neither { APART } else { 0.0 };
    }
    let mut metal_mm3 = 0.0;
    for (chain, members) in &site.chains {
        let Chain::Branch { split, branch } = chain else { continue };
        if *split != part.at {
            continue;
        }
        if let Some(slot) = now.branches.get_mut(*branch) {
            slot.forged_length = mm(members.iter().map(|at| lengths[*at]).sum());
        }
        metal_mm3 += members
            .iter()
            .filter_map(|at| site.part(*at))
            .map(|member| part_now(site, progress, member, lengths).metal_mm3)
            .sum::<f64>();
    }
    now.volume = cubic(metal_mm3);
    Now::straight(Some(Shape::Split(now)), metal_mm3)
}

/// Takes back the shifts of set-downs that are not made yet.
fn mend_offsets(site: &Site<'_>, progress: &Progress, bar: &mut BarBalance) {
    for (_, members) in &site.chains {
        let mut back = [0.0, 0.0];
        for at in members {
            let offset = &mut bar.segments[*at].offset_mm;
            *offset = [offset[0] - back[0], offset[1] - back[1]];
            let shape = site.part(*at).and_then(|part| part.balance.shape.as_ref());
            if let Some(shape @ Shape::Shoulder { .. }) = shape
                && !progress.stages[*at].forged
            {
                let [toward, up] = shape.middle_shift();
                back = [back[0] + toward, back[1] + up];
            }
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use fh_core::balance::balance;

    /// 36 mm of 20 × 6 mm upset to 23 mm are by the root of 36 / 23 thicker: from there it is flattened and cools.
    #[test]
    fn what_was_upset_is_flattened_from_its_block() {
        let text = r#"{ "firstheat": 1, "bars": [{ "stock": { "flat": { "width": "20 mm", "thickness": "6 mm" } }, "segments": [
            { "form": { "plain": { "length": "200 mm" } } },
            { "form": { "hole": { "outline": { "disc": { "diameter": "30 mm" } }, "thickness": "6 mm",
                "hole": { "round": "8.5 mm" }, "made": "punched" } } } ] }] }"#;
        let plan = fh_core::file::read(text.as_bytes()).unwrap();
        let balance = balance(&plan);
        let sites = Site::all(&plan, &balance);
        let part = sites[0].part(1).unwrap();
        let thick = |operation| crate::job::site::extents(&begun_section(&sites[0], part, operation))[1];
        let swell = (in_mm(part.balance.stock_length) / upset_length_mm(&sites[0], part)).sqrt();
        assert!((thick(Operation::Upset) - 6.0).abs() < 1e-9);
        assert!(swell > 1.2 && (thick(Operation::Flatten) - 6.0 * swell).abs() < 1e-6, "{swell}");
    }
}

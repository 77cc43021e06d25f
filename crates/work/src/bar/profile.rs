//! A bar as cooling sees it: area and girth along its length, of the bar as it is at a step.

use crate::job::site::{Site, in_mm, in_mm2};
use fh_core::balance::{BarBalance, SegmentBalance};
use fh_core::metal::{SectionSize, Shape};
use fh_core::plan::Chain;
use fh_heat::profile::{Profile, Run};
use std::f64::consts::PI;

/// Along so many mm of a part its section is looked at once, at least.
const STEP: f64 = 4.0;

/// The most places along one part.
const MOST: usize = 60;

/// The skin of a section that is neither round nor flat: see `section`.
const SKIN: f64 = 2.0 / 3.0;

/// The profile of a bar in a state; none where nothing is left of it.
pub(crate) fn profile(site: &Site<'_>, state: &BarBalance) -> Option<Profile> {
    let runs = site.chains.first()?.1.iter().filter_map(|at| run(site, state, *at)).collect();
    Profile::of_runs(runs)
}

/// One part of the bar itself; a split with all of its branches.
fn run(site: &Site<'_>, state: &BarBalance, at: usize) -> Option<Run> {
    let segment = state.segments.get(at)?;
    let (start, length) = (in_mm(segment.forged_start), in_mm(segment.forged_length));
    if length <= 1e-6 {
        return None;
    }
    let steps = ((length / STEP).ceil() as usize).clamp(1, MOST);
    let branches = match segment.shape {
        Some(Shape::Split(_)) => branches(site, at),
        _ => Vec::new(),
    };
    Run::sampled(start, start + length, steps, SKIN, |x| {
        if branches.is_empty() {
            return section_of(segment, ((x - start) / length).clamp(0.0, 1.0));
        }
        let each = branches.iter().map(|members| branch_section(state, members, x));
        each.fold((0.0, 0.0), |sum, next| (sum.0 + next.0, sum.1 + next.1))
    })
}

/// The branches of a split, each with its parts.
fn branches<'s>(site: &'s Site<'_>, split: usize) -> Vec<&'s [usize]> {
    let of_split = |chain: &Chain| matches!(chain, Chain::Branch { split: of, .. } if *of == split);
    site.chains.iter().filter(|(chain, _)| of_split(chain)).map(|(_, members)| members.as_slice()).collect()
}

/// The section of a branch at a place; what splits again is taken as whole.
fn branch_section(state: &BarBalance, members: &[usize], x: f64) -> (f64, f64) {
    let at = members.iter().filter_map(|at| state.segments.get(*at)).find(|segment| {
        let (start, length) = (in_mm(segment.forged_start), in_mm(segment.forged_length));
        length > 0.0 && (start..=start + length).contains(&x)
    });
    at.map_or((0.0, 0.0), |segment| {
        let share = (x - in_mm(segment.forged_start)) / in_mm(segment.forged_length);
        section_of(segment, share.clamp(0.0, 1.0))
    })
}

/// Area in mm² and girth in mm of a part at a share of its length from the datum side.
fn section_of(segment: &SegmentBalance, share: f64) -> (f64, f64) {
    let area = in_mm2(segment.area_at(share)) * segment.swell;
    let own = if segment.reversed { 1.0 - share } else { share };
    let girth = segment.shape.as_ref().map_or(0.0, |shape| girth(shape, own, area));
    // A girth can be no less than that of a round of the same area.
    (area, girth.max(2.0 * (PI * area).sqrt()))
}

/// The girth of a shape in its middle, in mm; `area` in mm² is that of its section there.
pub(crate) fn girth_in_the_middle(shape: &Shape, area: f64) -> f64 {
    girth(shape, 0.5, area).max(2.0 * (PI * area).sqrt())
}

/// The girth of a shape at a share of its own length, in mm.
fn girth(shape: &Shape, share: f64, area: f64) -> f64 {
    let round = |section: &SectionSize| in_mm(section.section().perimeter());
    let flat = |thickness: f64| if thickness > 0.0 { 2.0 * (area / thickness + thickness) } else { 0.0 };
    match shape {
        Shape::Prism { section, .. } | Shape::Peak { section, .. } => round(section),
        // Points of equal normal are joined by straight lines, so the girth runs as the share does.
        Shape::Taper { from, to, runout, .. } => {
            let f = runout.share_at(share);
            (1.0 - f) * round(from) + f * round(to)
        }
        Shape::Shoulder { from, to, .. } => round(from).min(round(to)),
        Shape::Flag { root, tip, .. } => flat(in_mm(*root) + (in_mm(*tip) - in_mm(*root)) * share),
        Shape::Hole { thickness, .. } => flat(in_mm(*thickness)),
        Shape::Cube { side } => 4.0 * in_mm(*side),
        // As round as its area makes it.
        _ => 0.0,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::bar::progress::Progress;
    use crate::bar::state::state;
    use fh_core::balance::balance;

    #[test]
    fn the_bar_of_the_rack_is_one_even_run() {
        let text = r#"{ "firstheat": 1, "bars": [{ "stock": { "square": "12 mm" }, "segments": [
            { "form": { "taper": { "length": "60 mm", "to": "point" } } },
            { "form": { "plain": { "length": "100 mm" } } } ] }] }"#;
        let plan = fh_core::file::read(text.as_bytes()).unwrap();
        let balance = balance(&plan);
        let sites = Site::all(&plan, &balance);
        let raw = profile(&sites[0], &state(&sites[0], &Progress::start(&sites[0]))).unwrap();
        assert!((raw.length_mm() - 120.0).abs() < 1e-9, "{}", raw.length_mm());
        for x in [1.0, 60.0, 119.0] {
            let (area, girth) = raw.at(x);
            assert!((area - 144.0).abs() < 1e-9 && (girth - 48.0).abs() < 1e-9, "{area} {girth}");
        }
        let forged = profile(&sites[0], &balance.bars[0]).unwrap();
        let (area, girth) = forged.at(30.0);
        // Half way along a square point the side is half.
        assert!((forged.length_mm() - 160.0).abs() < 1e-9 && (area - 36.0).abs() < 0.1 && (girth - 24.0).abs() < 0.1);
    }
}

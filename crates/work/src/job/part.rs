//! What a part is, by its form and its sizes: questions that rules, steps and words ask alike.

use crate::job::hung::closed_at;
use crate::job::site::{Part, Site, extents, in_mm, in_mm3, least, thickness_toward};
use fh_core::findings::is_over;
use fh_core::forms;
use fh_core::metal::{Bent, RootSize, Shape};
use fh_core::plan::{Form, JointKind, Limits, Made, Member, SocketAxis};
use fh_measure::WrittenLength;
use std::f64::consts::{FRAC_PI_2, PI};

/// Whether a flag is rolled up about an axis across the bar.
pub(crate) fn is_rolled_across(part: Part<'_>) -> bool {
    matches!(part.balance.bent, Some(Bent::Socket { axis: SocketAxis::Across, .. }))
}

/// Whether a part is thin once it is forged.
pub(crate) fn is_thin(site: &Site<'_>, at: usize) -> bool {
    let limits = &site.plan.limits;
    let thin = limits.thin.as_ref().map_or_else(|| Limits::THIN.in_unit(site.plan.units.length), WrittenLength::mm);
    let shape = site.part(at).and_then(|part| part.balance.shape.as_ref());
    let runs_out = matches!(shape, Some(Shape::Taper { from, to, .. }) if from.is_end() || to.is_end());
    runs_out || least_mm(site, at).is_some_and(|least| !is_over(least, thin))
}

/// How thick a part is where it is thinnest, in mm; none where it has no shape yet.
pub(crate) fn least_mm(site: &Site<'_>, at: usize) -> Option<f64> {
    site.part(at)?.balance.shape.as_ref().and_then(Shape::least_thickness_mm)
}

/// Whether a ring goes so far round that its end meets its neck: it is filed there, cold, before it is closed.
pub(crate) fn meets_its_neck(site: &Site<'_>, part: Part<'_>) -> bool {
    /// The end of a ring beside the bar's middle line meets its side by about so much, in radians: common practice, no source.
    const MEETS: f64 = 5.0;
    let at_an_end = site.beside(part.at).contains(&None) && site.beside(part.at) != [None, None];
    at_an_end && matches!(part.balance.bent, Some(Bent::Ring { sweep, .. }) if sweep > MEETS)
}

/// From where to where a size of a part may be, in mm, where the plan gives it as a range; none of other sizes.
pub(crate) fn written_between_mm(part: Part<'_>, size_mm: f64) -> Option<[f64; 2]> {
    let own = part.segment.form.length();
    let mut written = None;
    if part.segment.form.branches().is_empty() {
        part.segment.lengths(&mut |length: &WrittenLength| {
            let is_it = length.is_range() && own != Some(length) && (length.mm() - size_mm).abs() < 1e-6;
            written = written.or(is_it.then(|| [length.lowest_mm(), length.highest_mm()]));
        });
    }
    written
}

/// Whether the end of a ring is filed to lie on its neck, while it is straight: not of what a joint closes, and of what is cut to an
/// outline, or off, the outline says it.
pub(crate) fn is_filed_to_its_neck(site: &Site<'_>, part: Part<'_>) -> bool {
    let is_bar = !matches!(part.segment.form, Form::Flag(_) | Form::Trim(_) | Form::Hold(_));
    is_bar && meets_its_neck(site, part) && closed_at(site, part).is_none()
}

/// Whether a bend closes on itself.
pub(crate) fn is_closing(bent: Bent) -> bool {
    // Common practice, no source: a hook of three quarters of a turn still lets the next part in.
    const CLOSED: f64 = 1.5 * PI;
    match bent {
        Bent::Ring { sweep, .. } | Bent::Socket { sweep, .. } => sweep > CLOSED,
        _ => false,
    }
}

/// Whether a hole is so deep for its width that it is drilled, cold: a punch so thin bends and sticks. So is a small one at the root of a
/// slit, where the plan does not say how it is made.
pub(crate) fn is_drilled(site: &Site<'_>, part: Part<'_>) -> bool {
    /// Deeper than so many times its width: common practice, no source.
    const DEEP: f64 = 2.5;
    /// Narrower than this, in mm: common practice, no source.
    const SMALL: f64 = 10.0;
    match (&part.balance.shape, &part.segment.form) {
        (Some(Shape::Split(size)), _) => match size.root {
            Some(RootSize::Hole(diameter)) => {
                let raw = site.raw_section(part.at);
                let [width, thickness] = extents(&raw);
                let deep = if size.side.sin().abs() > size.side.cos().abs() { thickness } else { width };
                in_mm(diameter) < SMALL || deep > DEEP * in_mm(diameter)
            }
            _ => false,
        },
        (Some(Shape::Hole { hole, thickness, .. }), Form::Hole(forms::Hole { made: Made::Punched, .. })) => {
            in_mm(*thickness) > DEEP * in_mm(hole.width())
        }
        _ => false,
    }
}

/// What is so many times deeper in the plane of a bend than across it is bent on its edge: common practice, no source.
const ON_EDGE: f64 = 2.0;

/// Whether a bar is bent the hard way, on its edge.
pub(crate) fn is_on_edge(site: &Site<'_>, part: Part<'_>) -> bool {
    let side = match part.balance.bent {
        Some(Bent::Curve { side, .. } | Bent::Ring { side, .. } | Bent::Scroll { side, .. }) => side,
        _ => return false,
    };
    let section = match &part.balance.shape {
        Some(Shape::Prism { section, .. }) => *section,
        _ => site.raw_section(part.at),
    };
    thickness_toward(&section, side) > ON_EDGE * thickness_toward(&section, side + FRAC_PI_2)
}

/// Less than this beside the outline gives a hot chisel no hold, in mm: common practice, no source.
const LITTLE: f64 = 1.5;

/// Whether a boss is no thinner than the bar, so that it is drawn in on its edges and not flattened.
pub(crate) fn is_drawn_in(site: &Site<'_>, part: Part<'_>) -> bool {
    let [_, raw] = extents(&site.raw_section(part.at));
    matches!(&part.balance.shape, Some(Shape::Hole { thickness, .. }) if in_mm(*thickness) > 0.98 * raw)
        && part.balance.forged_length > part.balance.stock_length
}

/// The metal of a flag within its outline, its holes not made, and what is cut off outside that, in mm³.
pub(crate) fn cut_off_mm3(part: Part<'_>) -> (f64, f64) {
    let (finished, trimmed) = (in_mm3(part.balance.finished_volume), in_mm3(part.balance.trimmed_volume));
    let Some(shape) = &part.balance.shape else { return (finished, trimmed) };
    let [open, lost] = [shape.holes_volume(), shape.lost_to_holes()].map(in_mm3);
    (finished + open, trimmed - lost)
}

/// How far an outline reaches beyond the trimmed one on either side, in mm; of a blank, as wide a rim as what is cut off it.
pub(crate) fn left_to_trim_mm(part: Part<'_>) -> f64 {
    let (finished, trimmed) = cut_off_mm3(part);
    let wide = match &part.balance.shape {
        Some(Shape::Flag { outline, .. }) => in_mm(outline.width()),
        _ => 0.0,
    };
    wide * (((finished + trimmed) / finished.max(1e-9)).sqrt() - 1.0) / 2.0
}

/// Whether what is trimmed of a part is filed: a chisel finds no hold beside its outline, or it is the end of a ring.
pub(crate) fn is_filed(part: Part<'_>) -> bool {
    match part.segment.form {
        Form::Flag(_) => left_to_trim_mm(part) < LITTLE,
        Form::Trim(_) | Form::Hold(_) => false,
        _ => true,
    }
}

/// The segment that a scarf is welded to by a joint of the plan.
pub(crate) fn met<'a>(site: &Site<'a>, part: Part<'_>) -> Option<&'a str> {
    let mut welds = site.plan.joints.iter().filter(|joint| joint.kind == JointKind::Weld);
    let is_own = |member: &Member| member.bar == site.bar.name && member.segment == part.segment.name;
    let joint = welds.find(|joint| joint.members().any(is_own))?;
    joint.members().find(|member| !is_own(member)).map(|member| member.segment.as_str())
}

/// Whether what is cut off is so short that it is sawn, cold: a hot cut finds no hold on a sliver. Beside the rest of the bar it
/// falls with that.
pub(crate) fn is_sawn(site: &Site<'_>, part: Part<'_>) -> bool {
    /// The width of a saw's cut, in mm: common practice, no source.
    const KERF: f64 = 4.0;
    /// A sliver is shorter than such a share of the bar's thickness: common practice, no source.
    const SLIVER: f64 = 0.5;
    let thick = least(extents(&site.raw_section(part.at)));
    let is_waste = matches!(part.segment.form, Form::Trim(_));
    is_waste && in_mm(part.balance.stock_length) < KERF.max(SLIVER * thick) && !is_beside_a_hold(site, part)
}

/// Whether a part lies beside the rest of the bar.
pub(crate) fn is_beside_a_hold(site: &Site<'_>, part: Part<'_>) -> bool {
    let is_hold = |at: usize| matches!(site.flat[at].segment.form, Form::Hold(_));
    site.beside(part.at).into_iter().flatten().any(is_hold)
}

//! What is upset, to how short a block, in how many goes, and where it is struck.

use crate::job::part::cut_off_mm3;
use crate::job::site::{Part, Site, extents, in_mm, in_mm2, least};
use fh_core::forms;
use fh_core::metal::Shape;
use fh_core::plan::{Form, Limits, Made, SlitRule};

/// How long a block is once it is upset, in mm: as short as it will be, or as a ball or a cube needs it thick.
pub(crate) fn upset_length_mm(site: &Site<'_>, part: Part<'_>) -> f64 {
    let raw = extents(&site.raw_section(part.at));
    match &part.balance.shape {
        Some(shape @ (Shape::Ball { diameter: size } | Shape::Cube { side: size })) => {
            // As thick as it ends; and of a bar with corners to fill, as much section as a cube has.
            let thick = (least(raw) / in_mm(*size)).powi(2);
            let has = in_mm2(site.raw_section(part.at).area());
            let full = if matches!(shape, Shape::Cube { .. }) { has / in_mm(*size).powi(2) } else { thick };
            in_mm(part.balance.stock_length) * thick.min(full)
        }
        _ => {
            // A little in hand over the largest section that is spread from it.
            let whole = in_mm2(site.raw_section(part.at).area()) * in_mm(part.balance.stock_length);
            let needed = widest_mm2(part).map_or(f64::INFINITY, |widest| whole / (1.05 * widest.max(1e-6)));
            needed.min(in_mm(part.balance.forged_length))
        }
    }
}

/// A block that has to become shorter than this share of its length is upset: common practice, no source.
const SHORTER: f64 = 0.95;

/// A section larger than the bar's by less than this share is as good as the bar's: common practice, no source.
const AS_LARGE: f64 = 0.02;

/// Whether a block that is spread is upset before: spreading lengthens, and nowhere makes a section larger.
pub(crate) fn is_gathered(site: &Site<'_>, part: Part<'_>) -> bool {
    let long = in_mm(part.balance.forged_length) + drawn_in_mm(site, part);
    let is_shorter = long < in_mm(part.balance.stock_length) * SHORTER;
    let most = in_mm2(site.raw_section(part.at).area()) * (1.0 + AS_LARGE);
    is_shorter || widest_mm2(part).is_some_and(|widest| widest > most)
}

/// By how much a boss gets shorter while its slit is drifted, in mm: that length the drift takes, and no upsetting.
fn drawn_in_mm(site: &Site<'_>, part: Part<'_>) -> f64 {
    let Form::Hole(forms::Hole { made: Made::Drifted, .. }) = part.segment.form else { return 0.0 };
    let Some(Shape::Hole { hole, .. }) = &part.balance.shape else { return 0.0 };
    let slit = match site.plan.practice.slit {
        Some(SlitRule::HalfPerimeter) => hole.slit_half_perimeter(),
        _ => hole.slit_three_quarters(),
    };
    in_mm(slit - hole.length()).max(0.0)
}

/// The largest section of a flag or a boss before it is trimmed or pierced, in mm²; none of other parts.
pub(crate) fn widest_mm2(part: Part<'_>) -> Option<f64> {
    const PLACES: usize = 40;
    match part.balance.shape.as_ref()? {
        shape @ Shape::Flag { .. } => {
            let blank = shape.blank();
            if let Some(blank) = &blank {
                let section = |place: usize| in_mm2(blank.area_at((place as f64 + 0.5) / PLACES as f64));
                return Some((0..PLACES).map(section).fold(0.0, f64::max));
            }
            let (finished, trimmed) = cut_off_mm3(part);
            let shape = shape.filled();
            let rough = ((finished + trimmed) / finished.max(1e-9)).sqrt();
            let section = |place: usize| in_mm2(shape.area_at((place as f64 + 0.5) / PLACES as f64));
            Some((0..PLACES).map(section).fold(0.0, f64::max) * rough)
        }
        Shape::Hole { outline, thickness, hole, .. } => {
            let Form::Hole(form) = &part.segment.form else { return None };
            Some(in_mm(form.width_before(outline, hole)) * in_mm(*thickness))
        }
        _ => None,
    }
}

/// Where a part lies on the bar as it is cut: from its start and from its end to the ends of the bar, in mm.
pub(crate) fn from_the_ends(site: &Site<'_>, part: Part<'_>) -> [f64; 2] {
    let whole = in_mm(site.balance.stock_length);
    [in_mm(part.balance.mark_start), whole - in_mm(part.balance.mark_end)]
}

/// A bar that stands farther out of the heat than so many times its thickness whips under the blow: common
/// practice, no source.
const WHIPS: f64 = 20.0;

/// No length is upset in more goes than this: beyond it another way has to be found.
const MOST_STAGES: f64 = 20.0;

/// Whether a part is upset in the vice: on the anvil the bar would whip.
pub(crate) fn is_clamped(site: &Site<'_>, part: Part<'_>) -> bool {
    let [before, after] = from_the_ends(site, part);
    before.max(after) > WHIPS * least(extents(&site.raw_section(part.at)))
}

/// In how many goes a part is upset: what is longer than the plan's limits of thicknesses buckles in one.
pub(crate) fn stages(site: &Site<'_>, part: Part<'_>) -> usize {
    if let Form::Rivet(_) = part.segment.form {
        return 1;
    }
    let limits = &site.plan.limits;
    let likely = limits.upset_likely.unwrap_or(Limits::UPSET_LIKELY);
    let sure = limits.upset_sure.unwrap_or(Limits::UPSET_SURE).max(0.1);
    let free = in_mm(part.balance.stock_length) / least(extents(&site.raw_section(part.at))).max(1e-6);
    if free > likely { (free / sure).ceil().clamp(2.0, MOST_STAGES) as usize } else { 1 }
}

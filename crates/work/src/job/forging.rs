//! What the hammer does to a part while the bar is straight.

use crate::job::part::{ALIKE, alike};
use crate::job::site;
use crate::job::site::{Part, Site, extents, in_mm, in_mm2, in_mm3};
use crate::job::upsets::is_gathered;
use fh_core::forms;
use fh_core::metal::{SectionSize, Shape};
use fh_core::plan::{Form, Made, Operation, RootSpec};

/// What the hammer does to a segment while the bar is straight.
pub(crate) fn forging(site: &Site<'_>, part: Part<'_>, shape: &Shape) -> Vec<Operation> {
    use Operation as O;
    let raw = site.raw_section(part.at);
    match (&part.segment.form, shape) {
        (Form::Drawn(_) | Form::Collar(_), Shape::Prism { section, .. }) => draw(&raw, section),
        (Form::Taper(_), Shape::Taper { from, to, .. }) => {
            let mean = in_mm3(shape.volume()) / in_mm(shape.length()).max(1e-9);
            match () {
                () if alike(&raw, from) && alike(&raw, to) => Vec::new(),
                () if mean > in_mm2(raw.area()) * (1.0 + ALIKE) => vec![O::Upset],
                () => vec![O::Taper],
            }
        }
        (Form::Shoulder(_), _) => vec![O::SetDown],
        (Form::Flag(forms::Flag { trim, .. }), _) => {
            let trim = trim.is_some().then_some(O::Trim);
            // Spreading lengthens: what has to become shorter is upset first.
            let upset = is_gathered(site, part).then_some(O::Upset);
            upset.into_iter().chain([O::Isolate, O::Spread]).chain(trim).collect()
        }
        (Form::Peak(_), Shape::Peak { .. }) => {
            let mean = in_mm3(shape.volume()) / in_mm(shape.length()).max(1e-9);
            if mean > in_mm2(raw.area()) * (1.0 + ALIKE) { vec![O::Upset] } else { vec![O::Isolate, O::Draw] }
        }
        (Form::Hole(forms::Hole { made, .. }), Shape::Hole { outline, thickness, .. }) => {
            let [width, thick] = extents(&raw);
            let as_stock =
                (in_mm(outline.width()) / width - 1.0).abs() < ALIKE && (in_mm(*thickness) / thick - 1.0).abs() < ALIKE;
            let mut all = if as_stock { Vec::new() } else { vec![O::Isolate, O::Flatten] };
            if is_gathered(site, part) && !as_stock {
                all.insert(0, O::Upset);
            }
            match made {
                Made::Punched => all.push(O::Punch),
                Made::Drifted => all.extend([O::Punch, O::Drift]),
                Made::Drilled => all.push(O::Drill),
            }
            all
        }
        (Form::Tenon(_), _) => vec![O::SetDown, O::Draw],
        (Form::Rivet(_), _) => vec![O::Upset],
        (Form::Weld(_), _) if site.plan.material().weld.is_none() => Vec::new(),
        (Form::Weld(_), _) => vec![O::Scarf],
        (Form::Split(forms::Split { root, .. }), Shape::Split(_)) => split(site, part, root.as_ref()),
        (Form::Ball(_) | Form::Cube(_), Shape::Ball { diameter: size } | Shape::Cube { side: size }) => {
            let is_thicker = in_mm(*size) > site::least(extents(&raw)) * (1.0 + ALIKE);
            is_thicker.then_some(O::Upset).into_iter().chain([O::Isolate, O::Draw]).collect()
        }
        (Form::Trim(_), _) => vec![O::Trim],
        (Form::Hold(_), _) => vec![O::PartOff],
        _ => Vec::new(),
    }
}

/// How one section becomes another along an even length.
fn draw(raw: &SectionSize, section: &SectionSize) -> Vec<Operation> {
    let ([from_width, from_thick], [width, thick]) = (extents(raw), extents(section));
    match () {
        () if alike(raw, section) => Vec::new(),
        () if in_mm2(section.area()) > in_mm2(raw.area()) * (1.0 + ALIKE) => vec![Operation::Upset],
        // A flat that is drawn on edge grows thicker, but nowhere wider than the bar is: that is drawn, not spread.
        () if width.max(thick) > from_width.max(from_thick) * (1.0 + ALIKE) => vec![Operation::Spread],
        () => vec![Operation::Draw],
    }
}

fn split(site: &Site<'_>, part: Part<'_>, root: Option<&RootSpec>) -> Vec<Operation> {
    let mut all = Vec::new();
    if let Some(RootSpec::Hole(_)) = root {
        all.push(Operation::Punch);
    }
    all.push(Operation::Split);
    let Some(Shape::Split(size)) = &part.balance.shape else { return all };
    let below = part.at + 1..part.at + part.segment.count();
    let is_forged = below.filter_map(|at| site.part(at)).any(|below| {
        let shape = below.balance.shape.as_ref();
        let is_struck = |operation: &Operation| {
            operation.is_shaping() || matches!(operation, Operation::Isolate | Operation::SetDown)
        };
        shape.is_some_and(|shape| forging(site, below, shape).iter().any(is_struck))
    });
    if is_forged {
        all.extend([Operation::BendAside, Operation::Straighten]);
    }
    if size.opening.is_some() {
        all.push(Operation::Open);
    }
    all
}

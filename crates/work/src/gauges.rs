//! Gauges to make: a strip of sheet with the sizes cut out, each once as it must go in, and once as it must not.

use crate::hot::hot_mm;
use crate::sizes::Size;
use crate::words::length_words;
use fh_core::plan::Plan;

/// One notch of the go/no-go strip.
#[derive(Clone, Debug, PartialEq)]
pub struct Gauge {
    /// What it is for: `hook: square`.
    pub what: String,
    /// The cold size in mm.
    pub size_mm: f64,
    /// The notch that has to go over, in mm: the size and its tolerance.
    pub go_mm: f64,
    /// The notch that must not go over, in mm: the size less its tolerance.
    pub no_go_mm: f64,
    /// The notch as it has to be to go over the hot bar, in mm; none where the growth is not known.
    pub hot_mm: Option<f64>,
    /// The size in words.
    pub words: String,
    /// The steps that it checks, counted from 0.
    pub steps: Vec<usize>,
}

/// What is measured across the bar and can be gauged with a notch, with or without the place where it is measured.
const GAUGED: [&str; 7] = ["square", "diameter", "thickness", "across flats", "height", "side", "width"];
/// What begins like these and is measured in a hole, not across the bar.
const INSIDE: &str = "of the hole";
/// What is not worth a gauge.
const ROUGH: &str = ", about";
/// A notch wider than so many mm is no strip of sheet any more: common practice, no source.
const WIDEST: f64 = 60.0;

/// The notches that the sizes of a plan's steps ask for; sizes that are alike share one.
pub(crate) fn gauges(plan: &Plan, steps: &[(usize, String, Vec<Size>)]) -> Vec<Gauge> {
    let mut all: Vec<Gauge> = Vec::new();
    for (step, name, sizes) in steps {
        for size in sizes.iter().filter(|size| is_gauged(&size.what)) {
            let Some(mm) = size.mm.filter(|mm| (1.0..WIDEST).contains(mm)) else { continue };
            let alike = |gauge: &&mut Gauge| (gauge.size_mm - mm).abs() < 0.05;
            if let Some(gauge) = all.iter_mut().find(alike) {
                if gauge.steps.last() != Some(step) {
                    gauge.steps.push(*step);
                    let also = format!("{name}: {}", size.what);
                    if !gauge.what.split("; ").any(|what| what == also) {
                        gauge.what = format!("{}; {also}", gauge.what);
                    }
                }
                continue;
            }
            let hot = hot_mm(plan, mm).map(|hot| hot.likely);
            all.push(Gauge {
                what: format!("{name}: {}", size.what),
                size_mm: mm,
                go_mm: mm + size.tolerance_mm,
                no_go_mm: (mm - size.tolerance_mm).max(0.1),
                hot_mm: hot,
                words: length_words(plan, mm),
                steps: vec![*step],
            });
        }
    }
    all.sort_by(|one, other| one.size_mm.total_cmp(&other.size_mm));
    all
}

fn is_gauged(what: &str) -> bool {
    GAUGED.iter().any(|start| what.starts_with(start)) && !what.ends_with(INSIDE) && !what.ends_with(ROUGH)
}

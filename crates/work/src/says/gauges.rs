//! Gauges to make: a strip of sheet with the sizes cut out, each once as it must go in, and once as it must not.

use crate::fire::hot::hot_mm;
use crate::says::size::{Measure, Size};
use crate::says::words::length_words;
use fh_core::plan::Plan;

/// The notches of one size on the go/no-go strip.
#[derive(Clone, Debug, PartialEq)]
pub struct Gauge {
    /// What it is for: `hook: square`.
    pub what: String,
    /// The cold size in mm.
    pub size_mm: f64,
    /// The notch that has to go over, in mm: the size and its tolerance; none where the size is the least that may be.
    pub go_mm: Option<f64>,
    /// The notch that must not go over, in mm: the size less its tolerance, or the least that may be.
    pub no_go_mm: f64,
    /// The size as it stands on the hot bar, in mm; none where the growth is not known. Its notch goes over the hot bar;
    /// that of a least size must not.
    pub hot_mm: Option<f64>,
    /// Whether its notch is too narrow to be sawn and filed: such a size is measured with the caliper.
    pub caliper: bool,
    /// The size in words.
    pub words: String,
    /// The steps that it checks, counted from 0.
    pub steps: Vec<usize>,
}

/// A notch narrower than so many mm takes neither a saw nor a file: common practice, no source.
const NARROWEST: f64 = 2.0;

/// A notch wider than so many mm is no strip of sheet any more: common practice, no source.
const WIDEST: f64 = 60.0;

/// The notches that the sizes of a plan's steps ask for; sizes that are alike share one.
pub(crate) fn gauges(plan: &Plan, steps: &[(usize, String, Vec<Size>)]) -> Vec<Gauge> {
    let mut all: Vec<Gauge> = Vec::new();
    for (step, name, sizes) in steps {
        for size in sizes {
            let Some(Opening { mm, no_go_mm, go_mm }) = opening(size) else { continue };
            let alike = |gauge: &&mut Gauge| {
                (gauge.size_mm - mm).abs() < 0.05
                    && (gauge.no_go_mm - no_go_mm).abs() < 1e-6
                    && same(gauge.go_mm, go_mm)
            };
            // What is measured cold needs no hot notch.
            let hot = size.hot.as_ref().and_then(|_| hot_mm(plan, mm)).map(|hot| hot.likely);
            if let Some(gauge) = all.iter_mut().find(alike) {
                gauge.hot_mm = gauge.hot_mm.or(hot);
                if gauge.steps.last() != Some(step) {
                    gauge.steps.push(*step);
                    let also = format!("{name}: {}", size.what);
                    if !gauge.what.split("; ").any(|what| what == also) {
                        gauge.what = format!("{}; {also}", gauge.what);
                    }
                }
                continue;
            }
            all.push(Gauge {
                what: format!("{name}: {}", size.what),
                size_mm: mm,
                go_mm,
                no_go_mm,
                hot_mm: hot,
                caliper: is_for_caliper(no_go_mm),
                words: length_words(plan, mm),
                steps: vec![*step],
            });
        }
    }
    all.sort_by(|one, other| one.size_mm.total_cmp(&other.size_mm));
    all
}

/// How wide the notches of a size are, in mm.
struct Opening {
    mm: f64,
    no_go_mm: f64,
    /// None of a least size.
    go_mm: Option<f64>,
}

/// The notches that a size asks for; none where it is not measured across the bar.
fn opening(size: &Size) -> Option<Opening> {
    let mm = size.mm.filter(|mm| (1e-3..WIDEST).contains(mm))?;
    match size.measure {
        Measure::Length | Measure::Other => return None,
        // What spreads as the thickness lets it is held against its template.
        Measure::Width if size.follows.is_some() => return None,
        // What must not become thinner: the notch of its size must not go over it.
        Measure::Neck | Measure::Swelling => return Some(Opening { mm, no_go_mm: mm, go_mm: None }),
        Measure::Width | Measure::WidthThere | Measure::Thickness | Measure::Across => {}
    }
    size.between_mm.map(|[no_go_mm, go_mm]| Opening { mm, no_go_mm, go_mm: Some(go_mm) })
}

fn is_for_caliper(no_go_mm: f64) -> bool {
    no_go_mm < NARROWEST
}

/// What those of a step's sizes that are such a measure are measured with: `gauge` where the strip has a notch for one of
/// them, else `caliper`.
pub(crate) fn measured_with(sizes: &[Size], is_meant: impl Fn(Measure) -> bool) -> &'static str {
    let has_notch = |size: &Size| opening(size).is_some_and(|opening| !is_for_caliper(opening.no_go_mm));
    if sizes.iter().any(|size| is_meant(size.measure) && has_notch(size)) { "gauge" } else { "caliper" }
}

fn same(one: Option<f64>, other: Option<f64>) -> bool {
    match (one, other) {
        (Some(one), Some(other)) => (one - other).abs() < 1e-6,
        _ => one.is_none() && other.is_none(),
    }
}

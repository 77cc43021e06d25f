//! The marks of an axis: even steps and their figures.

use egui_plot::GridMark;

/// Even steps of 1, 2 or 5 times a power of ten, so many at most.
pub(crate) fn steps((from, to): (f64, f64), most: f64) -> Vec<GridMark> {
    let least = (to - from) / most;
    if !least.is_finite() || least <= 0.0 {
        return Vec::new();
    }
    let power = 10.0_f64.powf(least.log10().floor());
    let step_size =
        [1.0, 2.0, 5.0, 10.0].into_iter().map(|nice| nice * power).find(|step| *step >= least).unwrap_or(least);
    let first = (from / step_size).ceil();
    let mark = |index: i32| GridMark { value: (first + f64::from(index)) * step_size, step_size };
    (0..=most as i32).map(mark).take_while(|mark| mark.value <= to).collect()
}

/// A number without zeros at its end.
pub(crate) fn short(value: f64) -> String {
    let text = format!("{value:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

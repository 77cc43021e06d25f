//! The ruler along the top, in the plan's unit, from the datum end.

use crate::canvas::camera::Axis;
use crate::canvas::stage::Stage;
use crate::theme::{Text, space};
use egui::{Align2, Rect, Stroke, pos2};
use fh_core::plan::PlanUnit;
use fh_measure::Rounding;

/// A tick of the ruler.
#[derive(Clone, Debug, PartialEq)]
struct Tick {
    mm: f64,
    /// How much coarser it is than the finest ticks shown: 0 is finest.
    rank: usize,
    /// Its numeral, where it has one.
    numeral: Option<String>,
}

/// The steps of a ruler in mm, each a whole multiple of the one before; beyond the last they go on by 10.
fn steps(unit: PlanUnit) -> Vec<f64> {
    let (one, parts): (f64, &[f64]) = match unit {
        PlanUnit::Inch => {
            let inches = &[1.0 / 64.0, 1.0 / 32.0, 1.0 / 16.0, 0.125, 0.25, 0.5, 1.0, 2.0, 4.0, 12.0, 24.0, 120.0];
            (25.4, inches)
        }
        PlanUnit::Millimeter => (1.0, &[0.1, 0.5, 1.0, 5.0, 10.0, 50.0, 100.0, 500.0, 1000.0]),
    };
    let mut steps: Vec<f64> = parts.iter().map(|part| part * one).collect();
    while let Some(last) = steps.last().filter(|last| **last < 1e13) {
        steps.push(last * 10.0);
    }
    steps
}

/// The ticks between two places, none left of the datum end.
///
/// `tick` is the least distance of ticks in points, and `numeral` that of numerals such as this one.
fn ticks(unit: PlanUnit, axis: &Axis, width: f32, tick: f32, numeral: impl Fn(&str) -> f32) -> Vec<Tick> {
    let steps = steps(unit);
    let [from, to] = [axis.left_mm, axis.left_mm + f64::from(width) / axis.scale];
    let finest = steps.iter().position(|step| step * axis.scale >= f64::from(tick));
    let has_room = |step: &f64| step * axis.scale >= f64::from(numeral(&widest(unit, to, *step)));
    let (Some(finest), Some(numbered)) = (finest, steps.iter().position(has_room)) else { return Vec::new() };
    let Some(step) = steps.get(finest).copied() else { return Vec::new() };
    let (first, last) = ((from / step).floor().max(0.0), (to / step).ceil());
    let mut ticks = Vec::new();
    let mut number = first;
    while number <= last {
        let divides = |coarse: &&f64| {
            let ratio = (**coarse / step).round();
            number % ratio == 0.0
        };
        let rank = steps.iter().skip(finest + 1).take_while(divides).count();
        let numeral =
            (finest + rank >= numbered).then(|| numeral_words(unit, number * step, steps.get(numbered).copied()));
        ticks.push(Tick { mm: number * step, rank, numeral });
        number += 1.0;
    }
    ticks
}

/// About the widest numeral up to a place, where they go by a step.
fn widest(unit: PlanUnit, to: f64, step: f64) -> String {
    let one = unit.length_unit().mm();
    let whole = (to.max(0.0) / one).floor() * one;
    numeral_words(unit, if step < one { whole + one - step } else { whole }, Some(step))
}

fn numeral_words(unit: PlanUnit, mm: f64, step: Option<f64>) -> String {
    let whole = step.is_none_or(|step| step >= 1.0);
    let rounding = match unit {
        PlanUnit::Millimeter if whole => Rounding::MILLIMETER,
        unit => unit.finest(),
    };
    rounding.round(mm).bare_text()
}

impl Stage<'_> {
    /// Paints the ruler, and the stop at the datum end.
    pub(in crate::canvas) fn paint_ruler(&self) {
        let (theme, rect) = (self.theme, self.rect);
        let ruler = Rect::from_min_max(rect.left_top(), pos2(rect.right(), self.window.top()));
        self.outer.rect_filled(ruler, 0.0, theme.panel);
        let rule = Stroke::new(theme.hairline(), theme.rule);
        self.outer.hline(rect.x_range(), ruler.bottom(), rule);
        let unit = self.model.unit.length_unit().symbol();
        let corner = pos2(self.window.left() - space::GAP, ruler.center().y);
        self.outer.text(corner, Align2::RIGHT_CENTER, unit, theme.font(Text::Small), theme.ink_quiet);
        let beside = Rect::from_min_max(pos2(self.window.left(), ruler.top()), ruler.max);
        let painter = self.outer.with_clip_rect(beside.intersect(self.outer.clip_rect()));
        let room = ruler.height() - self.sizes.line;
        let numeral = |words: &str| self.text(words, Text::Small, theme.ink_quiet).size().x + space::GROUP;
        let ticks = ticks(self.model.unit, &self.axis, self.window.width(), self.sizes.tick, numeral);
        let stroke = Stroke::new(theme.hairline(), theme.ink_quiet);
        for tick in &ticks {
            let x = self.outer.round_to_pixel_center(self.axis.x(tick.mm));
            let length = (room * (0.35 + 0.2 * tick.rank as f32)).min(room);
            painter.vline(x, ruler.bottom() - length..=ruler.bottom(), stroke);
            if let Some(numeral) = &tick.numeral {
                let at = pos2(x, ruler.bottom() - room);
                painter.text(at, Align2::CENTER_BOTTOM, numeral, theme.font(Text::Small), theme.ink_quiet);
            }
        }
        self.paint_datum();
    }

    /// The datum end: a bench stop, hatched, that each bar is pushed against.
    fn paint_datum(&self) {
        let (x, width) = (self.axis.x(0.0), self.sizes.shape);
        for row in &self.layout.rows {
            let [top, bottom] = [row.stretch.top - space::GAP, row.stretch.bottom + space::GAP];
            let stop = Rect::from_min_max(pos2(x - width, top), pos2(x, bottom));
            self.painter.rect_filled(stop, 0.0, self.theme.panel_raised);
            self.paint_hatch(stop, self.theme.ink_quiet);
            self.painter.vline(x, top..=bottom, Stroke::new(space::HEAVY, self.theme.ink));
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::float_cmp, reason = "tests")]
mod tests {
    use super::*;

    fn numerals(unit: PlanUnit, scale: f64, width: f32) -> Vec<String> {
        let axis = Axis { left: 0.0, left_mm: 0.0, scale };
        ticks(unit, &axis, width, 4.0, |_| 36.0).into_iter().filter_map(|tick| tick.numeral).collect()
    }

    #[test]
    fn inches_are_numbered_and_divided_into_sixteenths() {
        let axis = Axis { left: 0.0, left_mm: 0.0, scale: 4.0 };
        let ticks = ticks(PlanUnit::Inch, &axis, 220.0, 4.0, |_| 36.0);
        assert!((ticks.get(1).unwrap().mm - 25.4 / 16.0).abs() < 1e-12);
        assert_eq!(numerals(PlanUnit::Inch, 4.0, 255.0), ["0", "1/2", "1", "1 1/2", "2", "2 1/2"]);
    }

    #[test]
    fn millimetres_are_numbered_by_tens_and_hundreds() {
        assert_eq!(numerals(PlanUnit::Millimeter, 4.0, 161.0), ["0", "10", "20", "30", "40"]);
        assert_eq!(numerals(PlanUnit::Millimeter, 0.4, 161.0), ["0", "100", "200", "300", "400"]);
    }

    #[test]
    fn long_numerals_stand_farther_apart() {
        let axis = Axis { left: 0.0, left_mm: 150.0, scale: 50.0 };
        let ticks = ticks(PlanUnit::Inch, &axis, 1000.0, 4.0, |words| 8.0 * words.len() as f32);
        let numbered: Vec<_> = ticks.iter().filter_map(|tick| Some((tick.mm, tick.numeral.as_ref()?))).collect();
        for pair in numbered.windows(2) {
            assert!((pair[1].0 - pair[0].0) * 50.0 >= 8.0 * pair[0].1.len() as f64, "{pair:?}");
        }
    }

    #[test]
    fn coarser_ticks_are_longer() {
        let axis = Axis { left: 0.0, left_mm: 0.0, scale: 4.0 };
        let ticks = ticks(PlanUnit::Millimeter, &axis, 60.0, 4.0, |_| 36.0);
        let rank = |mm: f64| ticks.iter().find(|tick| tick.mm == mm).unwrap().rank;
        assert!(rank(1.0) < rank(5.0) && rank(5.0) < rank(10.0) && rank(10.0) < rank(0.0));
    }

    #[test]
    fn nothing_lies_left_of_the_datum_end() {
        let axis = Axis { left: 0.0, left_mm: -50.0, scale: 4.0 };
        assert!(ticks(PlanUnit::Inch, &axis, 400.0, 4.0, |_| 36.0).iter().all(|tick| tick.mm >= 0.0));
    }

    #[test]
    fn absurd_scales_have_a_bounded_number_of_ticks() {
        for unit in [PlanUnit::Inch, PlanUnit::Millimeter] {
            for scale in [1e-12, 1e-6, 1.0, 1e4, 1e9] {
                for left_mm in [-10.0, 0.0, 1e9, 1e12] {
                    let axis = Axis { left: 0.0, left_mm, scale };
                    assert!(ticks(unit, &axis, 1000.0, 4.0, |_| 36.0).len() < 300, "{unit:?} {scale} {left_mm}");
                }
            }
        }
    }

    #[test]
    fn each_step_is_a_whole_multiple_of_the_one_before() {
        for unit in [PlanUnit::Inch, PlanUnit::Millimeter] {
            for pair in steps(unit).windows(2) {
                let ratio = pair[1] / pair[0];
                assert!((ratio - ratio.round()).abs() < 1e-9, "{pair:?}");
            }
        }
    }
}

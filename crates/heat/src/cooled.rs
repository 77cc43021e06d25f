//! A bar that has cooled: its temperatures by place and time, and what of it is still in range.

use super::estimate::Estimate;
use super::grid::Cell;
use super::hot_zone::between;
use super::steel;
use super::substance::Substance;

/// How far a time in still air can be trusted: the emissivity and the eye's guess at the starting heat each give 10 to 12 %.
pub const AIR_DOUBT: f64 = 0.20;
/// How many times longer or shorter it may be on the anvil: the contact is the weakest number of all.
pub const ANVIL_DOUBT: f64 = 1.5;

/// The temperatures of a bar while it cooled.
#[derive(Clone, Debug)]
pub struct Cooled {
    start_mm: f64,
    x_mm: Vec<f64>,
    half_mm: Vec<f64>,
    mass_kg: Vec<f64>,
    substance: Substance,
    seconds: Vec<f64>,
    /// One temperature for each cell, frame by frame.
    celsius: Vec<f64>,
}

/// How much of a bar is in a range of temperature at a moment.
#[derive(Clone, Debug, PartialEq)]
pub struct InRange {
    /// Seconds since the bar left the fire.
    pub seconds: f64,
    /// The length in range, in mm.
    pub length_mm: f64,
    /// Where it lies: from and to, in mm.
    pub spans_mm: Vec<(f64, f64)>,
}

/// For how long a length of bar can be worked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Workable {
    /// Part of it was never hot enough.
    NotHot,
    /// Its first place falls out of range after so many seconds.
    Until(Estimate),
    /// All of it is still in range after so many seconds, the end of what was worked out.
    Beyond(f64),
}

impl Cooled {
    pub(super) fn of(cells: &[Cell], substance: Substance, start_mm: f64) -> Self {
        let density = substance.density_kg_m3();
        Self {
            start_mm,
            x_mm: cells.iter().map(|cell| cell.x_mm).collect(),
            half_mm: cells.iter().map(|cell| cell.half_m * 1e3).collect(),
            mass_kg: cells.iter().map(|cell| cell.volume * density).collect(),
            substance,
            seconds: Vec::new(),
            celsius: Vec::new(),
        }
    }

    pub(super) fn keep(&mut self, seconds: f64, celsius: &[f64]) {
        self.seconds.push(seconds);
        self.celsius.extend_from_slice(celsius);
    }

    /// The moments that are kept, in seconds, from 0 on.
    pub fn moments(&self) -> &[f64] {
        &self.seconds
    }

    /// Temperatures along the bar at a moment: places in mm and °C.
    pub fn along(&self, seconds: f64) -> Vec<(f64, f64)> {
        self.x_mm.iter().copied().zip(self.frame_at(seconds)).collect()
    }

    /// The temperature at a place and a moment, in °C.
    pub fn celsius_at(&self, x_mm: f64, seconds: f64) -> f64 {
        between(&self.history(x_mm), seconds).unwrap_or(20.0)
    }

    /// The temperature of a place over time: seconds and °C.
    pub fn history(&self, x_mm: f64) -> Vec<(f64, f64)> {
        let next = self.x_mm.partition_point(|x| *x <= x_mm).min(self.x_mm.len().saturating_sub(1));
        let before = next.saturating_sub(1);
        let (Some(x0), Some(x1)) = (self.x_mm.get(before), self.x_mm.get(next)) else { return Vec::new() };
        let share = if x1 > x0 { ((x_mm - x0) / (x1 - x0)).clamp(0.0, 1.0) } else { 0.0 };
        let at = |frame: &[f64]| match (frame.get(before), frame.get(next)) {
            (Some(low), Some(high)) => low + (high - low) * share,
            _ => 20.0,
        };
        self.seconds.iter().copied().zip(self.frames().map(at)).collect()
    }

    /// Seconds until a place falls below a temperature; none where it never was above, or is so to the end.
    pub fn seconds_until(&self, x_mm: f64, celsius: f64) -> Option<f64> {
        let history = self.history(x_mm);
        history.windows(2).find_map(|pair| match pair {
            [(t0, v0), (t1, v1)] if *v0 >= celsius && *v1 < celsius => {
                Some(t0 + (t1 - t0) * (v0 - celsius) / (v0 - v1))
            }
            _ => None,
        })
    }

    /// How much of the bar is between two temperatures in °C, at each whole second.
    pub fn in_range(&self, low_celsius: f64, high_celsius: f64) -> Vec<InRange> {
        let last = self.seconds.last().copied().unwrap_or(0.0);
        (0..=last as usize)
            .map(|second| {
                let seconds = second as f64;
                let spans_mm = self.spans_in_range(seconds, low_celsius, high_celsius);
                let length_mm = spans_mm.iter().map(|(from, to)| to - from).sum();
                InRange { seconds, length_mm, spans_mm }
            })
            .collect()
    }

    /// Where the bar is between two temperatures in °C at a moment: from and to in mm.
    pub fn spans_in_range(&self, seconds: f64, low_celsius: f64, high_celsius: f64) -> Vec<(f64, f64)> {
        let mut spans: Vec<(f64, f64)> = Vec::new();
        let mut add = |from: f64, to: f64| match spans.last_mut() {
            Some(last) if from - last.1 < 1e-6 => last.1 = to,
            _ if to - from > 1e-9 => spans.push((from, to)),
            _ => {}
        };
        for pair in self.with_ends(seconds).windows(2) {
            if let [(x0, a), (x1, b)] = pair
                && let Some((from, to)) = share_within(*a, *b, low_celsius, high_celsius)
            {
                add(x0 + (x1 - x0) * from, x0 + (x1 - x0) * to);
            }
        }
        spans
    }

    /// For how long all of a length between two places in mm stays above a temperature in °C, with its doubt.
    pub fn workable(&self, from_mm: f64, to_mm: f64, finish_celsius: f64, hammered: bool) -> Workable {
        let inside = self.x_mm.iter().copied().filter(|x| *x > from_mm && *x < to_mm);
        let mut first = f64::INFINITY;
        for x_mm in inside.chain([from_mm, to_mm]) {
            if self.celsius_at(x_mm, 0.0) < finish_celsius {
                return Workable::NotHot;
            }
            first = first.min(self.seconds_until(x_mm, finish_celsius).unwrap_or(f64::INFINITY));
        }
        if first.is_finite() {
            Workable::Until(doubted(first, hammered))
        } else {
            Workable::Beyond(self.seconds.last().copied().unwrap_or(0.0))
        }
    }

    /// How much longer a bar of carbon steel stands at a moment than cold, in mm.
    pub fn growth_mm(&self, seconds: f64) -> f64 {
        let cells = self.half_mm.iter().zip(self.frame_at(seconds));
        cells.map(|(half, celsius)| 2.0 * half * steel::elongation(celsius)).sum()
    }

    /// The heat in the bar at a moment over that at 20 °C, in J.
    pub fn heat_joules(&self, seconds: f64) -> f64 {
        let cells = self.mass_kg.iter().zip(self.frame_at(seconds));
        cells.map(|(mass, celsius)| mass * self.substance.enthalpy_j_kg(celsius)).sum()
    }

    fn frames(&self) -> impl Iterator<Item = &[f64]> {
        self.celsius.chunks(self.x_mm.len().max(1))
    }

    fn frame(&self, index: usize) -> &[f64] {
        let count = self.x_mm.len();
        self.celsius.get(index * count..(index + 1) * count).unwrap_or(&[])
    }

    /// The temperatures at a moment, between the frames in proportion.
    fn frame_at(&self, seconds: f64) -> Vec<f64> {
        let next = self.seconds.partition_point(|kept| *kept <= seconds).min(self.seconds.len().saturating_sub(1));
        let before = next.saturating_sub(1);
        let (Some(t0), Some(t1)) = (self.seconds.get(before), self.seconds.get(next)) else { return Vec::new() };
        let share = if t1 > t0 { ((seconds - t0) / (t1 - t0)).clamp(0.0, 1.0) } else { 0.0 };
        let pairs = self.frame(before).iter().zip(self.frame(next));
        pairs.map(|(low, high)| low + (high - low) * share).collect()
    }

    /// The temperatures at a moment with those at the two ends, which are those of the end cells.
    fn with_ends(&self, seconds: f64) -> Vec<(f64, f64)> {
        let mut along = self.along(seconds);
        let end_mm = self.start_mm + self.half_mm.iter().sum::<f64>() * 2.0;
        if let (Some(first), Some(last)) = (along.first().copied(), along.last().copied()) {
            along.insert(0, (self.start_mm, first.1));
            along.push((end_mm, last.1));
        }
        along
    }
}

/// A time with its doubt: ±20 % in air, 1.5 times either way on the anvil.
pub fn doubted(seconds: f64, hammered: bool) -> Estimate {
    if hammered { Estimate::times_or_over(seconds, ANVIL_DOUBT) } else { Estimate::within_share(seconds, AIR_DOUBT) }
}

/// The share of a straight way from one value to another that lies between two limits.
fn share_within(a: f64, b: f64, low: f64, high: f64) -> Option<(f64, f64)> {
    if (b - a).abs() < 1e-12 {
        return (low <= a && a <= high).then_some((0.0, 1.0));
    }
    let (at_low, at_high) = ((low - a) / (b - a), (high - a) / (b - a));
    let (from, to) = (at_low.min(at_high).max(0.0), at_low.max(at_high).min(1.0));
    (from < to).then_some((from, to))
}

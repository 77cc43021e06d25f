//! How many heats a drawing takes: what each heat lets the hammer do before the bar is too cold.

use super::blows::strained_mm3;
use super::drawing::Drawn;
use super::estimate::Estimate;
use super::flow_stress::hammered_mpa;
use super::hammer::Hammer;
use super::loss::Loss;
use super::lumped::LongBar;
use super::section::BarSection;
use super::spread::Pass;
use super::substance::Substance;

/// How many times more or fewer heats it may be.
const DOUBT: f64 = 2.0;
/// The most heats that are counted.
const MOST_HEATS: usize = 1000;
/// Steps of temperature in one heat.
const BANDS: usize = 25;
/// Steps within one of them.
const STEPS: usize = 4;

/// What a heat is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatRange {
    /// The heat out of the fire, in °C.
    pub start_celsius: f64,
    /// Where hammering stops, in °C.
    pub finish_celsius: f64,
    /// Seconds from the fire to the first blow.
    pub handling_seconds: f64,
    /// Carbon of the steel in percent.
    pub carbon_percent: f64,
}

/// Heats of a drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Heats {
    /// How many; `x/: 2`.
    pub count: Estimate,
    /// The likely blows in each of them.
    pub blows: Vec<f64>,
}

/// Counts the heats of passes over a volume: every section cools by itself, every blow meets the stress of its moment.
///
/// None where a heat allows no blow at all, or the count runs out of all sense.
pub fn heats(drawn: &Drawn, volume_mm3: f64, hammer: &Hammer, loss: &Loss, range: HeatRange) -> Option<Heats> {
    if !(0.0..1e12).contains(&volume_mm3) || !hammer.blows_per_second.is_finite() {
        return None;
    }
    let mut counted: Vec<f64> = Vec::new();
    // What is left of the heat in hand, as a share of it.
    let mut left = 0.0_f64;
    for pass in &drawn.passes {
        let mut asked = strained_mm3(pass, volume_mm3);
        let budget = Budget::of(pass, hammer, loss, range);
        if budget.strained_mm3 <= 0.0 {
            return None;
        }
        while asked > 0.0 {
            if left <= 1e-9 {
                counted.push(0.0);
                left = 1.0;
            }
            if counted.len() > MOST_HEATS {
                return None;
            }
            let share = (asked / budget.strained_mm3).min(left);
            asked = if share < left { 0.0 } else { asked - share * budget.strained_mm3 };
            left -= share;
            if let Some(blows) = counted.last_mut() {
                *blows += share * budget.blows;
            }
        }
    }
    let count = Estimate::times_or_over(counted.len() as f64, DOUBT).whole();
    Some(Heats { count, blows: counted })
}

/// What one whole heat allows on a section.
struct Budget {
    blows: f64,
    strained_mm3: f64,
}

impl Budget {
    fn of(pass: &Pass, hammer: &Hammer, loss: &Loss, range: HeatRange) -> Self {
        let section = BarSection::Flat { width_mm: pass.width_before_mm, thickness_mm: pass.height_before_mm };
        let mut budget = Self { blows: 0.0, strained_mm3: 0.0 };
        let falls = range.start_celsius > range.finish_celsius && range.start_celsius < 2000.0;
        let Some(bar) = LongBar::of(section, Substance::Steel, loss).filter(|_| falls) else { return budget };
        let band = (range.start_celsius - range.finish_celsius) / BANDS as f64;
        let mut handling = if range.handling_seconds.is_finite() { range.handling_seconds.max(0.0) } else { 0.0 };
        for index in 0..BANDS {
            let high = range.start_celsius - band * index as f64;
            let seconds = bar.seconds(high, high - band, STEPS);
            let worked = (seconds - handling).clamp(0.0, 1e5);
            handling = (handling - seconds).max(0.0);
            let blows = worked * hammer.blows_per_second.clamp(0.0, 100.0);
            let stress = hammered_mpa(range.carbon_percent, high - band / 2.0).likely;
            budget.blows += blows;
            budget.strained_mm3 += blows * hammer.delivered_joules() * 1e3 / stress;
        }
        budget
    }
}

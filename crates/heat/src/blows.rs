//! Work in a pass, and blows for it.

use super::estimate::Estimate;
use super::hammer::Hammer;
use super::spread::Pass;

/// Friction of hot scaled steel on a tool, from memory.
const FRICTION: f64 = 0.3;
/// 5 and 95 % of what blows came out at when speed, efficiency, heat, bite, spread and stress were varied, over their median.
const UNLEARNT: (f64, f64) = (0.48, 2.14);
/// What is left of it once a smith's own factor takes out speed and efficiency: heat, bite and stress (our estimate).
const LEARNT: (f64, f64) = (0.7, 1.45);

/// How many times the flow stress the tool has to press: friction where the bite is long, indentation where it is short.
///
/// `1 + mu l / (3 h)` (Siebel, for discs) and `0.8 + 0.2 h / l` (between slip-line results at h/l 1 and 8.7, from memory), the
/// larger; l is the lesser of bite and width.
pub fn resistance_factor(pass: &Pass) -> f64 {
    let contact = pass.bite_mm.min(pass.width_before_mm);
    let height = pass.height_before_mm;
    (1.0 + FRICTION * contact / (3.0 * height)).max(0.8 + 0.2 * height / contact)
}

/// What a pass asks of a volume before its resistance is known: effective strain times volume times factor, in mm³.
pub fn strained_mm3(pass: &Pass, volume_mm3: f64) -> f64 {
    volume_mm3 * resistance_factor(pass) * pass.effective_strain()
}

/// The work of passes over a volume at one flow stress, in J.
pub fn work_joules(passes: &[Pass], volume_mm3: f64, stress_mpa: f64) -> f64 {
    // A N/mm² on a mm³ is a thousandth of a J.
    passes.iter().map(|pass| strained_mm3(pass, volume_mm3)).sum::<f64>() * stress_mpa / 1e3
}

/// Blows for so much work; `learnt` is the smith's own factor from logged jobs, real blows over likely ones.
///
/// Show it to one figure: [`Estimate::one_figure`].
pub fn blows(work_joules: f64, hammer: &Hammer, learnt: Option<f64>) -> Estimate {
    let sound = if work_joules.is_finite() { work_joules.clamp(0.0, 1e15) } else { 0.0 };
    let likely = sound / hammer.delivered_joules();
    let factor = learnt.filter(|factor| (0.05..=20.0).contains(factor));
    let (low, high) = if factor.is_some() { LEARNT } else { UNLEARNT };
    let likely = likely * factor.unwrap_or(1.0);
    Estimate { low: likely * low, likely, high: likely * high }
}

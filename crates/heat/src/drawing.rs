//! A bar drawn down pass by pass: sizes after each, what became of the length, and the bite that draws best.

use super::blows::resistance_factor;
use super::spread::Pass;

/// The most passes that are counted; more means that the bite spreads as much as it draws.
const MOST_PASSES: usize = 300;
/// How near the wanted size counts as there: alternate passes spread back what they took, so exactness never comes.
const CLOSE_ENOUGH: f64 = 1.02;
/// The share of the height that one pass takes, 20 % (common practice, no source).
pub const USUAL_REDUCTION: f64 = 0.20;

/// A section by its two sides in mm; the first lies along the blow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sides {
    /// Height in mm.
    pub height_mm: f64,
    /// Width in mm.
    pub width_mm: f64,
}

/// The passes that lead from one section to another.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// Each pass in its order.
    pub passes: Vec<Pass>,
    /// How many times longer the bar became.
    pub longer: f64,
    /// Whether the wanted size was reached; a wide bite on a thin bar may never draw it.
    pub reached: bool,
}

impl Drawn {
    fn of(passes: Vec<Pass>, reached: bool) -> Self {
        let longer = passes.iter().map(|pass| pass.longer).product();
        Self { passes, longer, reached }
    }

    /// The effective strains of all passes together.
    pub fn effective_strain(&self) -> f64 {
        self.passes.iter().map(Pass::effective_strain).sum()
    }
}

/// Draws a section down to another with a quarter turn after each pass; `bite_mm` along the bar, `reduction` a share of the height.
///
/// Sizes to within 2 %. Figures that are no sizes lead to no passes.
pub fn draw(from: Sides, to: Sides, bite_mm: f64, reduction: f64) -> Drawn {
    let left = 1.0 - if (0.01..0.9).contains(&reduction) { reduction } else { USUAL_REDUCTION };
    let (mut now, mut wanted) = (from, to);
    let mut passes = Vec::new();
    for _ in 0..2 * MOST_PASSES {
        let is_there =
            now.height_mm <= wanted.height_mm * CLOSE_ENOUGH && now.width_mm <= wanted.width_mm * CLOSE_ENOUGH;
        if is_there || passes.len() >= MOST_PASSES {
            return Drawn::of(passes, is_there);
        }
        if now.height_mm > wanted.height_mm {
            let after = (now.height_mm * left).max(wanted.height_mm);
            let Some(pass) = Pass::of(now.height_mm, now.width_mm, after, bite_mm) else { break };
            now = Sides { height_mm: pass.height_after_mm, width_mm: pass.width_after_mm };
            passes.push(pass);
        }
        now = turned(now);
        wanted = turned(wanted);
    }
    Drawn::of(passes, false)
}

fn turned(sides: Sides) -> Sides {
    Sides { height_mm: sides.width_mm, width_mm: sides.height_mm }
}

/// Sets one side down without turning, letting the width spread: how the bar grows under a one-sided set-down.
pub fn set_down(from: Sides, height_mm: f64, bite_mm: f64, reduction: f64) -> Drawn {
    let left = 1.0 - if (0.01..0.9).contains(&reduction) { reduction } else { USUAL_REDUCTION };
    let mut now = from;
    let mut passes = Vec::new();
    while now.height_mm > height_mm * (1.0 + 1e-9) && passes.len() < MOST_PASSES {
        let after = (now.height_mm * left).max(height_mm);
        let Some(pass) = Pass::of(now.height_mm, now.width_mm, after, bite_mm) else {
            return Drawn::of(passes, false);
        };
        now = Sides { height_mm: pass.height_after_mm, width_mm: pass.width_after_mm };
        passes.push(pass);
    }
    Drawn::of(passes, true)
}

/// The bite in mm that lengthens a section with the least work: narrow bites draw more but indent, wide ones spread.
///
/// About 0.5 to 0.7 of the height; none where the sides are no sizes.
pub fn best_bite_mm(sides: Sides) -> Option<f64> {
    let work_of = |bite_mm: f64| {
        let after = sides.height_mm * (1.0 - USUAL_REDUCTION);
        let pass = Pass::of(sides.height_mm, sides.width_mm, after, bite_mm)?;
        Some(resistance_factor(&pass) * pass.effective_strain() / pass.longer.ln())
    };
    let tried = (15..=150).map(|hundredths| sides.height_mm * f64::from(hundredths) / 100.0);
    let costs = tried.filter_map(|bite| work_of(bite).map(|work| (bite, work)));
    costs.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(bite, _)| bite)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    fn square(side: f64) -> Sides {
        Sides { height_mm: side, width_mm: side }
    }

    #[test]
    fn the_best_bite_is_over_half_of_the_height() {
        let bite = best_bite_mm(square(20.0)).unwrap();
        assert!((10.0..=14.0).contains(&bite), "{bite}");
        assert!(best_bite_mm(square(f64::NAN)).is_none());
    }

    #[test]
    fn volume_is_kept_from_pass_to_pass() {
        let drawn = draw(square(20.0), Sides { height_mm: 6.0, width_mm: 25.0 }, 15.0, 0.2);
        let last = drawn.passes.last().unwrap();
        let area = last.height_after_mm * last.width_after_mm;
        assert!((area * drawn.longer - 400.0).abs() < 1e-6);
    }

    #[test]
    fn a_bite_that_only_spreads_is_told_so() {
        assert!(!draw(square(20.0), square(1.0), 500.0, 0.05).reached);
    }

    #[test]
    fn a_set_down_grows_longer_and_wider() {
        let down = set_down(square(12.0), 6.0, 12.0, 0.2);
        let last = down.passes.last().unwrap();
        assert!((last.height_after_mm - 6.0).abs() < 1e-9 && last.width_after_mm > 14.0 && down.longer > 1.3);
    }
}

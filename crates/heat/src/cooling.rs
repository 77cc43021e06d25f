//! How a bar cools along its length: enthalpy in finite volumes, by the trapezoidal rule.
//!
//! One temperature for each section; conduction along the bar only. Two steps of backward Euler damp the start, then the
//! trapezoidal rule; one step of Newton's for each step of time. Sizes are those of the cold bar throughout.

use super::cooled::Cooled;
use super::grid::{self, Cell};
use super::hot_zone::Start;
use super::loss::{End, Loss, Surface};
use super::profile::Profile;
use super::substance::Substance;
use super::tridiagonal::Rows;

/// The longest time that is worked out, in seconds.
pub const LONGEST_SECONDS: f64 = 1800.0;
/// The longest step of time in seconds, and its share for each mm of the thinnest side.
const LONGEST_STEP: f64 = 0.5;
const STEP_PER_MM: f64 = 0.05;
/// The shortest step of time that is chosen, in seconds: a tip of nothing must not stop the clock.
const SHORTEST_STEP: f64 = 0.125;

/// For how long, and how finely.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Seconds to work out, up to [`LONGEST_SECONDS`].
    pub seconds: f64,
    /// The longest step in seconds; by itself the lesser of 0.5 s and 0.05 s for each mm of the thinnest side.
    pub step_seconds: Option<f64>,
    /// The length of a cell in mm; 1.5 by itself.
    pub cell_mm: Option<f64>,
}

impl Span {
    /// So many seconds, as finely as is right.
    pub fn of(seconds: f64) -> Self {
        Self { seconds, step_seconds: None, cell_mm: None }
    }
}

/// Lets a bar cool from a start; figures that make no sense are taken as the usual ones.
pub fn cool(profile: &Profile, substance: Substance, loss: &Loss, start: &Start, span: Span) -> Cooled {
    let surface = Surface::new(loss);
    let cells = grid::cells(profile, loss, &surface, span.cell_mm.unwrap_or(grid::CELL_MM));
    let seconds = if span.seconds.is_finite() { span.seconds.clamp(0.0, LONGEST_SECONDS) } else { 0.0 };
    let longest = span.step_seconds.filter(|step| *step > 1e-3).unwrap_or_else(|| step_for(&cells));
    let steps = (seconds / longest - 1e-9).ceil().max(0.0) as usize;
    let step = if steps == 0 { 0.0 } else { seconds / steps as f64 };
    let mut bar = Bar::new(&cells, substance, loss, &surface, start);
    let every = ((LONGEST_STEP / step) as usize).max(1);
    let mut cooled = Cooled::of(&cells, substance, profile.start_mm());
    cooled.keep(0.0, &bar.celsius);
    for index in 1..=steps {
        bar.advance(step, if index <= 2 { 1.0 } else { 0.5 });
        if index % every == 0 || index == steps {
            cooled.keep(step * index as f64, &bar.celsius);
        }
    }
    cooled
}

/// The step for the thinnest part that is more than a tip.
fn step_for(cells: &[Cell]) -> f64 {
    let side_mm = |cell: &Cell| if cell.lateral > 0.0 { 4e3 * cell.volume / cell.lateral } else { f64::INFINITY };
    let thinnest = cells.iter().map(side_mm).fold(f64::INFINITY, f64::min);
    (thinnest * STEP_PER_MM).clamp(SHORTEST_STEP, LONGEST_STEP)
}

/// The bar on its way.
struct Bar<'a> {
    cells: &'a [Cell],
    substance: Substance,
    surface: &'a Surface,
    ends: [End; 2],
    celsius: Vec<f64>,
    /// Enthalpy of each cell over that at 20 °C, in J/kg.
    enthalpy: Vec<f64>,
    /// Specific heat of each cell in J/(kg K).
    specific: Vec<f64>,
    conductivity: Vec<f64>,
    rows: Rows,
}

impl<'a> Bar<'a> {
    fn new(cells: &'a [Cell], substance: Substance, loss: &Loss, surface: &'a Surface, start: &Start) -> Self {
        let celsius: Vec<f64> = cells.iter().map(|cell| start.celsius_at(cell.x_mm, surface.ambient_celsius)).collect();
        let enthalpy = celsius.iter().map(|celsius| substance.enthalpy_j_kg(*celsius)).collect();
        Self {
            cells,
            substance,
            surface,
            ends: [loss.start, loss.end],
            celsius,
            enthalpy,
            specific: vec![0.0; cells.len()],
            conductivity: vec![0.0; cells.len()],
            rows: Rows::of(cells.len()),
        }
    }

    /// One step of time; `share` is how much of the new state counts: 1 is backward Euler, 0.5 the trapezoidal rule.
    fn advance(&mut self, seconds: f64, share: f64) {
        for ((celsius, specific), conductivity) in
            self.celsius.iter().zip(&mut self.specific).zip(&mut self.conductivity)
        {
            *specific = self.substance.specific_heat_j_kgk(*celsius);
            *conductivity = self.substance.conductivity_w_mk(*celsius);
        }
        self.lose(seconds, share);
        self.conduct(share);
        self.hold_ends(share);
        self.rows.solve();
        let cells = self.celsius.iter_mut().zip(&mut self.enthalpy).zip(self.specific.iter().zip(&self.rows.right));
        for ((celsius, enthalpy), (specific, change)) in cells {
            *enthalpy += specific * change;
            *celsius = self.substance.celsius_of_enthalpy(*enthalpy);
        }
    }

    /// Starts the rows with each cell's own heat and what its skin loses.
    fn lose(&mut self, seconds: f64, share: f64) {
        let rate = self.substance.density_kg_m3() / seconds;
        for (index, cell) in self.cells.iter().enumerate() {
            let (celsius, conductivity) = (self.celsius[index], self.conductivity[index]);
            let (mut watts, mut slope) = self.surface.at_mean(celsius, cell.patch, conductivity);
            watts *= cell.lateral;
            slope *= cell.lateral;
            if cell.ends > 0.0 {
                let (flux, flux_slope) = self.surface.at_mean(celsius, cell.end_patch, conductivity);
                watts += flux * cell.ends;
                slope += flux_slope * cell.ends;
            }
            self.rows.below[index] = 0.0;
            self.rows.above[index] = 0.0;
            self.rows.diagonal[index] = rate * cell.volume * self.specific[index] + share * slope;
            self.rows.right[index] = -watts;
        }
    }

    /// Adds what flows from cell to cell: two halves in series, which is the harmonic mean, also across a shoulder.
    fn conduct(&mut self, share: f64) {
        for index in 1..self.cells.len() {
            let (left, right) = (&self.cells[index - 1], &self.cells[index]);
            let near = self.conductivity[index - 1] * left.right_path;
            let far = self.conductivity[index] * right.left_path;
            let both = near + far;
            let conductance = if both > 0.0 { near * far / both } else { 0.0 };
            let watts = conductance * (self.celsius[index - 1] - self.celsius[index]);
            self.rows.right[index - 1] -= watts;
            self.rows.right[index] += watts;
            let weight = share * conductance;
            self.rows.diagonal[index - 1] += weight;
            self.rows.diagonal[index] += weight;
            self.rows.above[index - 1] -= weight;
            self.rows.below[index] -= weight;
        }
    }

    fn hold_ends(&mut self, share: f64) {
        let last = self.cells.len().saturating_sub(1);
        for (end, index) in self.ends.into_iter().zip([0, last]) {
            let (End::Held { celsius }, Some(cell)) = (end, self.cells.get(index)) else { continue };
            let path = if index == 0 { cell.left_path } else { cell.right_path };
            let conductance = self.conductivity[index] * path;
            self.rows.right[index] += conductance * (sound(celsius) - self.celsius[index]);
            self.rows.diagonal[index] += share * conductance;
        }
    }
}

fn sound(celsius: f64) -> f64 {
    if celsius.is_finite() { celsius.clamp(super::steel::LOWEST_CELSIUS, super::steel::HIGHEST_CELSIUS) } else { 20.0 }
}

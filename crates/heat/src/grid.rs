//! The bar cut into cells: volumes and skins by Simpson's rule, the faces between them from the profile itself.

use super::air::Thickness;
use super::loss::{End, Loss, Patch, Surface, Touch};
use super::profile::{Profile, Run};
use std::f64::consts::PI;

/// Length of a cell where none is asked for, in mm: errors under 0.4 % in time against cells a quarter as long.
pub(super) const CELL_MM: f64 = 1.5;
/// The most cells of one bar; a longer bar gets longer cells.
const MOST_CELLS: f64 = 3000.0;
/// The least volume of a cell in m³, so that a bar drawn to nothing keeps its equations solvable.
const LEAST_VOLUME: f64 = 1e-13;

/// A piece of the bar with one temperature. All in SI units but its place.
pub(super) struct Cell {
    pub(super) x_mm: f64,
    pub(super) half_m: f64,
    pub(super) left_area: f64,
    pub(super) right_area: f64,
    /// Area over half the length on either side: times the conductivity, what half a cell conducts.
    pub(super) left_path: f64,
    pub(super) right_path: f64,
    pub(super) volume: f64,
    /// Its skin along the bar and the patch that it loses heat by.
    pub(super) lateral: f64,
    pub(super) patch: Patch,
    /// Open end faces and rings of shoulders, behind half a cell of metal.
    pub(super) ends: f64,
    pub(super) end_patch: Patch,
}

/// The cells of a bar from its start to its end.
pub(super) fn cells(profile: &Profile, loss: &Loss, surface: &Surface, cell_mm: f64) -> Vec<Cell> {
    let wanted = if cell_mm.is_finite() { cell_mm.max(1e-3) } else { CELL_MM };
    let long = wanted.max(profile.length_mm() / MOST_CELLS);
    let mut cells: Vec<Cell> = Vec::new();
    for run in profile.runs() {
        let first = cells.len();
        add_run(&mut cells, run, surface, long);
        if loss.shoulder_rings {
            open_ring(&mut cells, first);
        }
    }
    if let (Some(cell), End::Open) = (cells.first_mut(), loss.start) {
        cell.ends += cell.left_area;
    }
    if let (Some(cell), End::Open) = (cells.last_mut(), loss.end) {
        cell.ends += cell.right_area;
    }
    cells
}

fn add_run(cells: &mut Vec<Cell>, run: &Run, surface: &Surface, long_mm: f64) {
    let length = run.end_mm() - run.start_mm();
    let count = (length / long_mm - 1e-9).ceil().clamp(1.0, MOST_CELLS);
    let step = length / count;
    cells.extend((0..count as usize).map(|index| {
        let start = run.start_mm() + step * index as f64;
        cell(run, surface, start, step)
    }));
}

fn cell(run: &Run, surface: &Surface, start_mm: f64, step_mm: f64) -> Cell {
    let x_mm = start_mm + step_mm / 2.0;
    let [left, middle, right] = [start_mm, x_mm, start_mm + step_mm].map(|x| run.at(x));
    let half_m = step_mm / 2e3;
    let volume = (simpson(left.0, middle.0, right.0) * 1e-6 * 2.0 * half_m).max(LEAST_VOLUME);
    let girth = simpson(left.1, middle.1, right.1) * 1e-3;
    let lateral = girth * 2.0 * half_m;
    let thickness = Thickness::of(girth / PI);
    let depth_m = if surface.skin && lateral > 0.0 { (run.skin() * volume / lateral).min(1.0) } else { 0.0 };
    Cell {
        x_mm,
        half_m,
        left_area: left.0 * 1e-6,
        right_area: right.0 * 1e-6,
        left_path: left.0 * 1e-6 / half_m,
        right_path: right.0 * 1e-6 / half_m,
        volume,
        lateral,
        patch: Patch { thickness, depth_m, touch: surface.touch_at(x_mm) },
        ends: 0.0,
        // Behind an end lies half a cell, and its skin is as much cooler as that of the sides.
        end_patch: Patch { thickness, depth_m: half_m + depth_m, touch: Touch::default() },
    }
}

fn simpson(left: f64, middle: f64, right: f64) -> f64 {
    (left + 4.0 * middle + right) / 6.0
}

/// Where a run joins the one before it, the ring of the thicker one lies open.
fn open_ring(cells: &mut [Cell], joint: usize) {
    let (before, after) = cells.split_at_mut(joint);
    if let (Some(before), Some(after)) = (before.last_mut(), after.first_mut()) {
        let step = before.right_area - after.left_area;
        if step > 0.0 {
            before.ends += step;
        } else {
            after.ends -= step;
        }
    }
}

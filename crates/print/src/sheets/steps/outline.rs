//! Both faces of a segment as one outline.

use crate::sheets::templates::faces::{Sample, turning};

/// The faces of a segment, around it; the outside of a sharp corner runs to its apex.
pub(super) fn outline(samples: &[Sample], apex: Option<[f64; 2]>) -> Vec<[f64; 2]> {
    let left: Vec<[f64; 2]> = samples.iter().map(|sample| sample.aside(sample.left)).collect();
    let right: Vec<[f64; 2]> = samples.iter().rev().map(|sample| sample.aside(-sample.right)).collect();
    let Some(apex) = apex else { return [left, right].concat() };
    // The left face runs with the samples, the right one back.
    let (outside, inside) = if turning(samples) > 0.0 { (right, left) } else { (left, right) };
    let ends = outside.first().copied().zip(outside.last().copied());
    let outside = ends.map_or(outside, |(start, end)| vec![start, apex, end]);
    [outside, inside].concat()
}

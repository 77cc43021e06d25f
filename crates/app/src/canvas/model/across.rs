//! Where an outline lies at a place along it.

/// The lower and the upper edge of an outline at a place along it, in mm; none where it does not reach.
pub(in crate::canvas) fn across_at(outline: &[[f64; 2]], place: f64) -> Option<[f64; 2]> {
    /// A place at the very end still counts, whatever rounding made of it.
    const HAIR_MM: f64 = 1e-6;
    let next = outline.iter().cycle().skip(1);
    let mut found: Option<[f64; 2]> = None;
    for ([x0, y0], [x1, y1]) in outline.iter().zip(next) {
        if place < x0.min(*x1) - HAIR_MM || place > x0.max(*x1) + HAIR_MM {
            continue;
        }
        let ups = if (x1 - x0).abs() < HAIR_MM { [*y0, *y1] } else { [y0 + (y1 - y0) * (place - x0) / (x1 - x0); 2] };
        for up in ups {
            found = Some(found.map_or([up, up], |[lower, upper]| [lower.min(up), upper.max(up)]));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_lies_between_the_edges_of_the_metal() {
        let taper = [[10.0, 0.0], [70.0, 6.0], [70.0, -6.0]];
        assert_eq!(across_at(&taper, 40.0), Some([-3.0, 3.0]));
        assert_eq!(across_at(&taper, 70.0), Some([-6.0, 6.0]));
        assert_eq!(across_at(&taper, 71.0), None);
        assert_eq!(across_at(&[], 0.0), None);
    }
}

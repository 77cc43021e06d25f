//! Hatching between outlines: slanting lines over what lies in one and not in the other.

use egui::{Pos2, Rect};

/// More lines than this are no hatching.
const MOST_LINES: usize = 2_000;

/// The slanting lines over what lies in an odd number of closed outlines, within a window. They hang on a place, so that they
/// do not swim while what they are over grows.
pub(crate) fn between(outlines: &[Vec<Pos2>], anchor: f32, step: f32, window: Rect) -> Vec<[Pos2; 2]> {
    let sums = outlines.iter().flatten().map(|point| point.x + point.y);
    let [low, high] = sums.fold([f32::INFINITY, f32::NEG_INFINITY], |[low, high], sum| [low.min(sum), high.max(sum)]);
    let low = low.max(window.left() + window.top());
    let high = high.min(window.right() + window.bottom());
    if !(high - low).is_finite() || step <= 0.0 {
        return Vec::new();
    }
    let first = anchor + ((low - anchor) / step).ceil() * step;
    let lines = (0..MOST_LINES).map(|line| first + line as f32 * step).take_while(|sum| *sum < high);
    lines
        .flat_map(|sum| {
            let mut crossings: Vec<Pos2> = outlines.iter().flat_map(|outline| crossings(outline, sum)).collect();
            crossings.sort_by(|a, b| a.x.total_cmp(&b.x));
            let pairs = crossings.chunks_exact(2).filter_map(|pair| Some([*pair.first()?, *pair.get(1)?]));
            pairs.collect::<Vec<_>>()
        })
        .collect()
}

/// Where a closed outline is crossed by the slanting line on which x and y have a sum.
fn crossings(outline: &[Pos2], sum: f32) -> Vec<Pos2> {
    let next = outline.iter().cycle().skip(1);
    let crossing = |(a, b): (&Pos2, &Pos2)| {
        let (start, end) = (a.x + a.y, b.x + b.y);
        ((start < sum) != (end < sum)).then(|| *a + (*b - *a) * ((sum - start) / (end - start)))
    };
    outline.iter().zip(next).filter_map(crossing).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;

    #[test]
    fn what_lies_in_both_is_left_blank() {
        let square = |half: f32| vec![pos2(-half, -half), pos2(half, -half), pos2(half, half), pos2(-half, half)];
        let window = Rect::EVERYTHING;
        let length = |lines: Vec<[Pos2; 2]>| lines.iter().map(|[a, b]| a.distance(*b)).sum::<f32>();
        let [outer, both] = [vec![square(20.0)], vec![square(20.0), square(10.0)]]
            .map(|outlines| length(between(&outlines, 0.0, 0.5, window)));
        // As long as the area is large: 40² against 40² - 20².
        assert!((both / outer - 0.75).abs() < 0.02, "{both} {outer}");
    }
}

//! The flat outlines as SVG, in true millimetres.

use crate::Flat;
use crate::svg_text::{SvgText, escaped, figure};

/// Bare paper around the outlines, in mm.
const MARGIN: f64 = 5.0;

/// The text of the file.
pub(super) fn write(flats: &[Flat]) -> String {
    let [low, high] =
        flats.iter().map(Flat::bounds).fold([[f64::INFINITY; 2], [f64::NEG_INFINITY; 2]], |[low, high], [l, h]| {
            [[low[0].min(l[0]), low[1].min(l[1])], [high[0].max(h[0]), high[1].max(h[1])]]
        });
    let (width, height) = (high[0] - low[0] + 2.0 * MARGIN, high[1] - low[1] + 2.0 * MARGIN);
    let mut svg = SvgText::new([width, height], "Flat outlines");
    for flat in flats {
        let path: String = flat.loops.iter().map(|points| path(points, low[0] - MARGIN, high[1] + MARGIN)).collect();
        svg.put(format_args!(
            "<g><title>{}</title><path fill=\"none\" stroke=\"black\" stroke-width=\"0.25\" d=\"{path}\"/></g>\n",
            escaped(&flat.name)
        ));
    }
    svg.finish()
}

/// A closed line through some places; down the page is toward you.
fn path(points: &[[f64; 2]], left: f64, top: f64) -> String {
    let place = |(index, [x, y]): (usize, &[f64; 2])| {
        format!("{}{} {} ", if index == 0 { "M" } else { "L" }, figure(x - left), figure(top - y))
    };
    points.iter().enumerate().map(place).collect::<String>() + "Z "
}

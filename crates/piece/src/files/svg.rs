//! The flat outlines as SVG, in true millimetres.

use crate::Flat;
use std::fmt::Write;

/// Bare paper around the outlines, in mm.
const MARGIN: f64 = 5.0;

/// The text of the file.
pub(super) fn write(flats: &[Flat]) -> String {
    let [low, high] =
        flats.iter().map(Flat::bounds).fold([[f64::INFINITY; 2], [f64::NEG_INFINITY; 2]], |[low, high], [l, h]| {
            [[low[0].min(l[0]), low[1].min(l[1])], [high[0].max(h[0]), high[1].max(h[1])]]
        });
    let (width, height) = (high[0] - low[0] + 2.0 * MARGIN, high[1] - low[1] + 2.0 * MARGIN);
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width:.3}mm\" height=\"{height:.3}mm\" \
         viewBox=\"0 0 {width:.3} {height:.3}\">\n"
    );
    for flat in flats {
        let _ = write!(text, "<g><title>{}</title>", escaped(&flat.name));
        let _ = write!(text, "<path fill=\"none\" stroke=\"black\" stroke-width=\"0.25\" d=\"");
        for points in &flat.loops {
            for (index, [x, y]) in points.iter().enumerate() {
                // Down the page is toward you.
                let (x, y) = (x - low[0] + MARGIN, high[1] - y + MARGIN);
                let _ = write!(text, "{}{x:.4} {y:.4} ", if index == 0 { "M" } else { "L" });
            }
            text.push_str("Z ");
        }
        text.push_str("\"/></g>\n");
    }
    text.push_str("</svg>\n");
    text
}

/// The words with the characters that mean something to XML replaced, and a space for those that it does not allow
/// (XML 1.0, production 2).
fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => safe.push(' '),
            c => safe.push(c),
        }
    }
    safe
}

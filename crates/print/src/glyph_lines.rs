//! Words as the outlines of their letters, for files that carry no font.

use crate::fonts::Weight;
use crate::shaping::glyphs;
use skrifa::instance::{LocationRef, Size};
use skrifa::outline::{DrawSettings, OutlinePen};
use skrifa::{FontRef, GlyphId, MetadataProvider, OutlineGlyphCollection};
use std::fmt::Write;
use std::sync::LazyLock;

/// A font's outlines and the units of its em.
struct Outlines {
    of: OutlineGlyphCollection<'static>,
    units: f64,
}

static REGULAR: LazyLock<Option<Outlines>> = LazyLock::new(|| Outlines::read(Weight::Regular));
static SEMI_BOLD: LazyLock<Option<Outlines>> = LazyLock::new(|| Outlines::read(Weight::SemiBold));

/// The outlines of a line of words.
pub(crate) struct WordLines {
    /// The data of an SVG path from the start of the baseline, x along it and y down, in units of the font.
    pub(crate) path: String,
    /// The units of the em.
    pub(crate) units_per_em: f64,
}

/// The outlines of a line of words; none where there is nothing to see, as of spaces.
pub(crate) fn word_lines(words: &str, weight: Weight) -> Option<WordLines> {
    let font = match weight {
        Weight::Regular => REGULAR.as_ref()?,
        Weight::SemiBold => SEMI_BOLD.as_ref()?,
    };
    let mut pen = PathPen::default();
    let mut start = [0.0, 0.0];
    for glyph in glyphs(words, weight) {
        pen.origin = [0, 1].map(|axis| start[axis] + glyph.offset[axis] * font.units);
        if let Some(outline) = font.of.get(GlyphId::new(glyph.id)) {
            let plain = DrawSettings::unhinted(Size::unscaled(), LocationRef::default());
            // A letter that the font cannot draw stays blank, as on paper.
            let _ = outline.draw(plain, &mut pen);
        }
        start = [0, 1].map(|axis| start[axis] + glyph.advance[axis] * font.units);
    }
    (!pen.path.is_empty()).then_some(WordLines { path: pen.path, units_per_em: font.units })
}

impl Outlines {
    fn read(weight: Weight) -> Option<Self> {
        let font = FontRef::new(weight.bytes()).ok()?;
        let units = f64::from(font.metrics(Size::unscaled(), LocationRef::default()).units_per_em);
        (units > 0.0).then(|| Self { of: font.outline_glyphs(), units })
    }
}

/// Writes a letter's outline as path data: each part starts at a place, and goes on by steps.
#[derive(Default)]
struct PathPen {
    path: String,
    /// Where the letter stands, y up.
    origin: [f64; 2],
    /// Where the pen is, y down, as it was written.
    at: [f64; 2],
}

impl PathPen {
    fn placed(&self, x: f32, y: f32) -> [f64; 2] {
        [self.origin[0] + f64::from(x), -self.origin[1] - f64::from(y)].map(in_hundredths)
    }

    /// Draws on through some places to the last of them.
    fn onward(&mut self, command: char, places: &[[f64; 2]]) {
        self.path.push(command);
        for (index, place) in places.iter().enumerate() {
            let step = [0, 1].map(|axis| in_hundredths(place[axis] - self.at[axis]));
            let space = if index > 0 && step[0] >= 0.0 { " " } else { "" };
            let between = if step[1] >= 0.0 { " " } else { "" };
            let _ = write!(self.path, "{space}{}{between}{}", step[0], step[1]);
        }
        self.at = places.last().copied().unwrap_or(self.at);
    }
}

/// To two decimals, and never `-0`.
fn in_hundredths(units: f64) -> f64 {
    (units * 100.0).round() / 100.0 + 0.0
}

impl OutlinePen for PathPen {
    fn move_to(&mut self, x: f32, y: f32) {
        let at = self.placed(x, y);
        let _ = write!(self.path, "M{} {}", at[0], at[1]);
        self.at = at;
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.onward('l', &[self.placed(x, y)]);
    }

    fn quad_to(&mut self, bow_x: f32, bow_y: f32, x: f32, y: f32) {
        self.onward('q', &[self.placed(bow_x, bow_y), self.placed(x, y)]);
    }

    fn curve_to(&mut self, first_x: f32, first_y: f32, second_x: f32, second_y: f32, x: f32, y: f32) {
        self.onward('c', &[self.placed(first_x, first_y), self.placed(second_x, second_y), self.placed(x, y)]);
    }

    fn close(&mut self) {
        self.path.push('z');
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn a_capital_is_as_high_as_the_font_says() {
        // The regular font's I: a bar of 83 by 656 units that stands on the baseline (read from the font's own table).
        let lines = word_lines("I", Weight::Regular).unwrap();
        assert_eq!((lines.units_per_em, lines.path.as_str()), (1000.0, "M90 0l0-656l83 0l0 656z"));
    }

    #[test]
    fn spaces_have_no_lines() {
        assert!(word_lines(" ", Weight::Regular).is_none() && word_lines("", Weight::SemiBold).is_none());
    }
}

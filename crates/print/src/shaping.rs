//! From words to the glyphs of the built-in fonts, with fractions set and letters kerned.
//!
//! The same glyphs are measured and drawn, so that words are exactly as long on paper as the layout took them to be.

use crate::fonts::Weight;
use harfrust::{Direction, FontRef, GlyphBuffer, ShapeOptions, ShapePlan, ShaperData, UnicodeBuffer, script};
use skrifa::MetadataProvider;
use skrifa::charmap::Charmap;
use std::ops::Range;
use std::sync::LazyLock;

/// One glyph of a line of words. Lengths are shares of the em, x along the line and y up.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Glyph {
    /// Its number in the font.
    pub(crate) id: u32,
    /// How far the next glyph is from this one.
    pub(crate) advance: [f64; 2],
    /// How far it is drawn from its place.
    pub(crate) offset: [f64; 2],
    /// The bytes of the words that it stands for.
    pub(crate) letters: Range<usize>,
}

/// A font made ready for shaping.
struct Face {
    font: FontRef<'static>,
    shaper: ShaperData,
    /// The plan for Latin letters and figures; making one takes far longer than using it.
    latin: ShapePlan,
    /// The glyph of each letter.
    letters: Charmap<'static>,
}

static REGULAR: LazyLock<Option<Face>> = LazyLock::new(|| Face::read(Weight::Regular));
static SEMI_BOLD: LazyLock<Option<Face>> = LazyLock::new(|| Face::read(Weight::SemiBold));

/// The glyphs of a line of words; none where the font cannot be read.
pub(crate) fn glyphs(words: &str, weight: Weight) -> Vec<Glyph> {
    let face = match weight {
        Weight::Regular => REGULAR.as_ref(),
        Weight::SemiBold => SEMI_BOLD.as_ref(),
    };
    face.map_or_else(Vec::new, |face| face.glyphs(words))
}

/// Whether the fonts have a letter or a sign.
pub(crate) fn has_letter(letter: char) -> bool {
    letter.is_ascii() || REGULAR.as_ref().is_some_and(|face| face.letters.map(letter).is_some())
}

impl Face {
    fn read(weight: Weight) -> Option<Self> {
        let font = FontRef::new(weight.bytes()).ok()?;
        let shaper = ShaperData::new(&font);
        let latin =
            ShapePlan::new(&shaper.shaper(&font).build(), Direction::LeftToRight, Some(script::LATIN), None, &[]);
        let letters = skrifa::FontRef::new(weight.bytes()).ok()?.charmap();
        Some(Self { font, shaper, latin, letters })
    }

    fn glyphs(&self, words: &str) -> Vec<Glyph> {
        let shaper = self.shaper.shaper(&self.font).build();
        let mut buffer = UnicodeBuffer::new();
        buffer.push_str(words);
        let shaped = if words.chars().all(is_latin_or_common) {
            buffer.set_direction(Direction::LeftToRight);
            buffer.set_script(script::LATIN);
            shaper.shape(buffer, ShapeOptions::new().plan(Some(&self.latin)))
        } else {
            buffer.guess_segment_properties();
            shaper.shape(buffer, ShapeOptions::new())
        };
        read_glyphs(&shaped, words.len(), f64::from(shaper.units_per_em()))
    }
}

/// Whether a character is set from left to right with the rules for Latin letters: those letters, punctuation, arrows,
/// signs and figures.
fn is_latin_or_common(letter: char) -> bool {
    matches!(letter, '\u{20}'..='\u{24f}' | '\u{2010}'..='\u{2027}' | '\u{202f}'..='\u{205e}' | '\u{20a0}'..='\u{20bf}' | '\u{2100}'..='\u{27bf}')
}

fn read_glyphs(shaped: &GlyphBuffer, length: usize, em: f64) -> Vec<Glyph> {
    let mut starts: Vec<usize> = shaped.glyph_infos().iter().map(|info| info.cluster as usize).collect();
    starts.sort_unstable();
    let end_after = |start: usize| {
        let next = starts.partition_point(|other| *other <= start);
        starts.get(next).copied().unwrap_or(length)
    };
    let share = |units: i32| f64::from(units) / em;
    let both = shaped.glyph_infos().iter().zip(shaped.glyph_positions());
    both.map(|(info, place)| Glyph {
        id: info.glyph_id,
        advance: [share(place.x_advance), share(place.y_advance)],
        offset: [share(place.x_offset), share(place.y_offset)],
        letters: info.cluster as usize..end_after(info.cluster as usize),
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_stored_plan_shapes_as_a_fresh_one_does() {
        let latin = glyphs("1 13⁄16 in office AV", Weight::Regular);
        // A letter of another script at the end takes the words off the stored plan.
        let fresh = glyphs("1 13⁄16 in office AVя", Weight::Regular);
        assert_eq!(latin[..latin.len() - 1], fresh[..latin.len() - 1]);
    }

    #[test]
    fn every_letter_belongs_to_a_glyph() {
        for words in ["1 13⁄16 in", "office", "שלום", "e\u{301}a"] {
            let mut ends: Vec<_> = glyphs(words, Weight::SemiBold).into_iter().map(|glyph| glyph.letters).collect();
            ends.sort_by_key(|letters| letters.start);
            ends.dedup();
            assert_eq!(ends.first().map(|letters| letters.start), Some(0), "{words}");
            assert_eq!(ends.last().map(|letters| letters.end), Some(words.len()), "{words}");
            assert!(ends.windows(2).all(|pair| pair[0].end == pair[1].start), "{words}");
        }
    }
}

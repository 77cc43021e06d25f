//! What could be made of a block, in the smith's words.

use super::fine_length;
use crate::contents::Answer;
use crate::forms::Pen;
use crate::metal::SectionSize;
use crate::plan::PlanUnit;

/// What it is, and how large it comes out: `10 mm square` and `36.0 mm long`.
pub fn answer_words(answer: &Answer, unit: PlanUnit) -> [String; 2] {
    let words = |length| fine_length(length, unit);
    match *answer {
        Answer::Drawn { section, length } => [section_words(section, unit), format!("{} long", words(length))],
        Answer::Leaf { thickness, length, width } => {
            [format!("leaf {} thick", words(thickness)), format!("{} long, {} wide", words(length), words(width))]
        }
        Answer::Disc { thickness, diameter } => {
            [format!("disc {} thick", words(thickness)), format!("{} across", words(diameter))]
        }
    }
}

/// A section as it would be written.
pub fn section_words(section: SectionSize, unit: PlanUnit) -> String {
    let pen = Pen { unit: unit.length_unit(), finer: 0 };
    pen.section(section).map_or_else(String::new, |section| section.describe())
}

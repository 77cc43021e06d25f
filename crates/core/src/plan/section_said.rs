//! A section as the smith says it: `1/2 in square`, `30 x 8 mm flat`, `12 round`, `a point`.

use super::{SectionSpec, SquareSpec};
use fh_measure::{LengthRange, LengthUnit, WrittenLength};

/// What may be said.
const EXAMPLES: &str = "say it as \"1/2 in square\", \"12 mm round\", \"30 x 8 mm flat\", \"30 x 12 mm oval\", \
                        \"20 x 10 mm half-round\", \"16 mm hexagon\", \"3/4 in octagon\" or \"12 mm diamond\"";

/// The shapes and the words that end or begin with them; a longer word stands before a shorter one that ends alike.
const SHAPES: [(&str, Shape); 13] = [
    ("half-round", Shape::Two(|width, height| SectionSpec::HalfRound { width, height })),
    ("half round", Shape::Two(|width, height| SectionSpec::HalfRound { width, height })),
    ("flat", Shape::Two(|width, thickness| SectionSpec::Flat { width, thickness, edge_radius: None })),
    ("oval", Shape::Two(|width, thickness| SectionSpec::Oval { width, thickness })),
    ("square", Shape::One(square)),
    ("sq", Shape::One(square)),
    ("round", Shape::One(SectionSpec::Round)),
    ("hexagon", Shape::One(SectionSpec::Hexagon)),
    ("hex", Shape::One(SectionSpec::Hexagon)),
    ("octagon", Shape::One(SectionSpec::Octagon)),
    ("oct", Shape::One(SectionSpec::Octagon)),
    ("diamond", Shape::One(SectionSpec::Diamond)),
    ("edge", Shape::One(SectionSpec::Edge)),
];

/// The sections without sizes of their own; the first words of each are those that it is shown by.
const NAMED: [(SectionSpec, [&str; 4]); 3] = [
    (SectionSpec::Stock, ["as the stock", "as the bar", "stock", "bar"]),
    (SectionSpec::Same, ["as before it", "as before", "before", "same"]),
    (SectionSpec::Point, ["to a point", "a point", "point", "sharp"]),
];

/// What stands before how far edges are eased.
const EASED: &str = ", edges eased ";

/// How a section is made of the sizes that were said.
#[derive(Clone, Copy)]
enum Shape {
    /// Of one size.
    One(fn(WrittenLength) -> SectionSpec),
    /// Of two, the larger first.
    Two(fn(WrittenLength, WrittenLength) -> SectionSpec),
}

fn square(side: WrittenLength) -> SectionSpec {
    SectionSpec::Square(SquareSpec { side, edge_radius: None })
}

impl SectionSpec {
    /// The section that was said. A size without a unit is in `unit`, and two sizes without a word are a flat; where there is no
    /// such unit both are refused.
    ///
    /// # Errors
    /// Where it is none: what was said, and what may be.
    pub fn said(said: &str, unit: Option<LengthUnit>) -> Result<Self, String> {
        Self::said_with(said, unit, unit.is_some())
    }

    /// The section of a bar that was said, with its shape in a word, for `2 x 12 mm` could be two bars. A size without a unit is
    /// in `unit`.
    ///
    /// # Errors
    /// Where it is none: what was said, and what may be.
    pub fn bar_said(said: &str, unit: Option<LengthUnit>) -> Result<Self, String> {
        match Self::said_with(said, unit, false)? {
            Self::Edge(_) => Err(format!("\"{said}\": no bar is bought as an edge")),
            section => Ok(section),
        }
    }

    fn said_with(said: &str, unit: Option<LengthUnit>, may_be_named: bool) -> Result<Self, String> {
        let (body, eased) = said.split_once(EASED).map_or((said, None), |(body, eased)| (body, Some(eased)));
        let mut section = body_said(body, unit, may_be_named)?;
        let Some(eased) = eased else { return Ok(section) };
        let radius = WrittenLength::parse(eased, unit, LengthRange::ZeroOrMore).map_err(|error| error.to_string())?;
        match &mut section {
            Self::Square(SquareSpec { edge_radius, .. }) | Self::Flat { edge_radius, .. } => {
                *edge_radius = Some(radius);
                Ok(section)
            }
            _ => Err(format!("\"{said}\": only the edges of squares and flats are eased")),
        }
    }

    /// The words that [`Self::said`] reads as this section; for one that grows, what it is.
    pub fn words(&self) -> String {
        let named = NAMED.iter().find(|(section, _)| section == self);
        named.map_or_else(|| self.describe(), |(_, [first, ..])| (*first).to_owned())
    }
}

/// What was said before its edges; `may_be_named` where a section of the plan may be meant, or one that needs no word.
fn body_said(said: &str, unit: Option<LengthUnit>, may_be_named: bool) -> Result<SectionSpec, String> {
    let trimmed = said.trim();
    let is_named = |words: &[&str]| words.iter().any(|word| word.eq_ignore_ascii_case(trimmed));
    if let Some((section, _)) = NAMED.iter().find(|(_, words)| may_be_named && is_named(words)) {
        return Ok(section.clone());
    }
    let no_shape = || format!("\"{said}\" is not a bar shape; {EXAMPLES}");
    let Some((sizes, word, shape)) = split(trimmed) else {
        let unit = unit.filter(|_| may_be_named);
        return unit.and_then(|unit| without_a_word(trimmed, unit)).ok_or_else(no_shape);
    };
    let sizes = WrittenLength::crossed(sizes, unit).map_err(|why| format!("the stock \"{said}\": {why}"))?;
    match (shape, sizes.as_slice()) {
        (Shape::One(build), [size]) => Ok(build(size.clone())),
        (Shape::Two(build), [first, second]) if first.mm() < second.mm() => Ok(build(second.clone(), first.clone())),
        (Shape::Two(build), [first, second]) => Ok(build(first.clone(), second.clone())),
        (Shape::One(_), _) => Err(format!("\"{said}\": one size makes a {word} bar; {EXAMPLES}")),
        (Shape::Two(_), _) => Err(format!("\"{said}\": two sizes make a {word} bar; {EXAMPLES}")),
    }
}

/// Two sizes alone: a flat, or a square where they are alike.
fn without_a_word(said: &str, unit: LengthUnit) -> Option<SectionSpec> {
    let sizes = WrittenLength::crossed(said, Some(unit)).ok()?;
    match sizes.as_slice() {
        [first, second] if first.mm().to_bits() == second.mm().to_bits() => Some(square(first.clone())),
        [first, second] => {
            let (width, thickness) = if first.mm() < second.mm() { (second, first) } else { (first, second) };
            Some(SectionSpec::Flat { width: width.clone(), thickness: thickness.clone(), edge_radius: None })
        }
        _ => None,
    }
}

/// Takes the shape off the end of what was said, or off its beginning.
fn split(said: &str) -> Option<(&str, &'static str, Shape)> {
    let at_end = SHAPES.iter().find_map(|&(word, shape)| {
        let start = said.len().checked_sub(word.len())?;
        let (sizes, end) = (said.get(..start)?, said.get(start..)?);
        end.eq_ignore_ascii_case(word).then_some((sizes, word, shape))
    });
    at_end.or_else(|| {
        SHAPES.iter().find_map(|&(word, shape)| {
            let (begin, sizes) = (said.get(..word.len())?, said.get(word.len()..)?);
            (begin.eq_ignore_ascii_case(word) && sizes.starts_with(' ')).then_some((sizes, word, shape))
        })
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn said(text: &str, unit: LengthUnit) -> Result<String, String> {
        SectionSpec::said(text, Some(unit)).map(|section| section.words())
    }

    #[test]
    fn a_whole_section_is_said_in_one_go() {
        for (text, words) in [
            ("3/8 square", "3/8 in square"),
            ("square 3/8", "3/8 in square"),
            ("1 x 1/8", "1 in × 1/8 in flat"),
            ("1/8 x 1", "1 in × 1/8 in flat"),
            ("1/2 x 1/2", "1/2 in square"),
            ("12 mm round", "12 mm round"),
            ("round 12 mm", "12 mm round"),
            ("5/8 - 1/8 round", "1/2 in round"),
            ("3/4 x 3/8 half-round", "3/4 in × 3/8 in half-round"),
            ("5/8 hex", "5/8 in hexagon"),
            ("As the bar", "as the stock"),
            ("same", "as before it"),
            ("point", "to a point"),
            ("1/2 edge", "1/2 in edge"),
            ("1/2 square, edges eased 1/16", "1/2 in square, edges eased 1/16 in"),
        ] {
            assert_eq!(said(text, LengthUnit::Inch).as_deref(), Ok(words), "{text}");
        }
    }

    #[test]
    fn what_is_no_section_says_what_would_be() {
        for (text, why) in [
            ("", "is not a bar shape"),
            ("12", "is not a bar shape"),
            ("12 square x", "is not a bar shape"),
            ("12 x 6 round", "one size makes a round bar"),
            ("12 flat", "two sizes make a flat bar"),
            ("12 round, edges eased 1", "only the edges of squares and flats"),
            ("-3 round", "a size is not below 0"),
        ] {
            let told = said(text, LengthUnit::Millimeter).unwrap_err();
            assert!(told.contains(why), "{text}: {told}");
        }
    }

    fn size() -> impl Strategy<Value = WrittenLength> {
        (1_i32..640, prop_oneof![Just(LengthUnit::Inch), Just(LengthUnit::Millimeter)]).prop_map(|(parts, unit)| {
            WrittenLength::from_mm(f64::from(parts) * unit.mm() / 64.0, unit, LengthRange::AboveZero).unwrap()
        })
    }

    proptest! {
        #[test]
        fn the_words_of_a_section_say_that_section(a in size(), b in size(), eased: bool) {
            let (width, thickness) = if a.mm() < b.mm() { (b, a) } else { (a, b) };
            let edge_radius = eased.then(|| thickness.clone());
            for section in [
                SectionSpec::Stock,
                SectionSpec::Same,
                SectionSpec::Point,
                SectionSpec::Square(SquareSpec { side: width.clone(), edge_radius: edge_radius.clone() }),
                SectionSpec::Round(width.clone()),
                SectionSpec::Flat { width: width.clone(), thickness: thickness.clone(), edge_radius },
                SectionSpec::Oval { width: width.clone(), thickness: thickness.clone() },
                SectionSpec::Hexagon(width.clone()),
                SectionSpec::Octagon(width.clone()),
                SectionSpec::Diamond(width.clone()),
                SectionSpec::HalfRound { width: width.clone(), height: thickness.clone() },
                SectionSpec::Edge(width.clone()),
            ] {
                prop_assert_eq!(SectionSpec::said(&section.words(), Some(LengthUnit::Inch)), Ok(section));
            }
        }
    }
}

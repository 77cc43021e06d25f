//! A section as the smith says it: `1/2 in square`, `30 x 8 mm flat`.

use super::written::Said;
use fh_core::material;

use fh_core::plan::{SectionKind, SectionSpec, SquareSpec};
use fh_measure::{LengthRange, WrittenLength};

/// A section with the words that it was said in.
#[derive(Clone, Debug, PartialEq)]
pub struct SaidSection {
    text: String,
    /// The section.
    pub section: SectionSpec,
}

impl SaidSection {
    /// A section in the words of a plan.
    pub fn of(section: &SectionSpec) -> Self {
        Self { text: section.describe(), section: section.clone() }
    }
}

impl Said for SaidSection {
    const WHAT: &'static str = "a section";
    const EXAMPLE: &'static str = "12 mm square";

    fn parse(text: &str) -> Result<Self, String> {
        Ok(Self { text: text.trim().to_owned(), section: parse(text)? })
    }

    fn text(&self) -> &str {
        &self.text
    }
}

/// What two bars have alike that can take each other's place: the metal and the section, however they are written.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Alike {
    /// The material, as the table calls it.
    pub material: String,
    /// Its kind.
    pub kind: &'static str,
    /// Its sizes in nm.
    pub sizes_nm: Vec<i64>,
}

/// What a bar of a material and a section has alike with others. How far edges are eased, and which way a bar lies, makes no
/// other bar of it.
pub fn alike(material: Option<&str>, section: &SectionSpec) -> Alike {
    let named = material.unwrap_or(material::DEFAULT.name);
    let material = material::find(named).map_or(named, |known| known.name).to_owned();
    let nm = |length: &WrittenLength| (length.mm() * 1e6).round() as i64;
    let (kind, mut sizes_nm) = match section {
        SectionSpec::Square(square) => (SectionKind::Square, vec![nm(&square.side)]),
        SectionSpec::Diamond(side) => (SectionKind::Square, vec![nm(side)]),
        SectionSpec::Round(size)
        | SectionSpec::Hexagon(size)
        | SectionSpec::Octagon(size)
        | SectionSpec::Edge(size) => (section.kind(), vec![nm(size)]),
        SectionSpec::Flat { width, thickness, .. } | SectionSpec::Oval { width, thickness } => {
            (section.kind(), vec![nm(width), nm(thickness)])
        }
        SectionSpec::HalfRound { width, height } => (section.kind(), vec![nm(width), nm(height)]),
        SectionSpec::Stock | SectionSpec::Same | SectionSpec::Point | SectionSpec::Grown(_) => {
            (section.kind(), Vec::new())
        }
    };
    sizes_nm.sort_unstable_by(|a, b| b.cmp(a));
    Alike { material, kind: kind.name(), sizes_nm }
}

/// What may be said.
const EXAMPLES: &str = "say it as \"1/2 in square\", \"12 mm round\", \"30 x 8 mm flat\", \"30 x 12 mm oval\", \
                        \"20 x 10 mm half-round\", \"16 mm hexagon\", \"3/4 in octagon\" or \"12 mm diamond\"";

/// The shapes and the words that end with them; a longer word stands before a shorter one that ends alike.
const SHAPES: [(&str, Shape); 12] = [
    ("half-round", Shape::Two(|width, height| SectionSpec::HalfRound { width, height })),
    ("half round", Shape::Two(|width, height| SectionSpec::HalfRound { width, height })),
    ("flat", Shape::Two(|width, thickness| SectionSpec::Flat { width, thickness, edge_radius: None })),
    ("oval", Shape::Two(|width, thickness| SectionSpec::Oval { width, thickness })),
    ("square", Shape::One(|side| SectionSpec::Square(SquareSpec { side, edge_radius: None }))),
    ("sq", Shape::One(|side| SectionSpec::Square(SquareSpec { side, edge_radius: None }))),
    ("round", Shape::One(SectionSpec::Round)),
    ("hexagon", Shape::One(SectionSpec::Hexagon)),
    ("hex", Shape::One(SectionSpec::Hexagon)),
    ("octagon", Shape::One(SectionSpec::Octagon)),
    ("oct", Shape::One(SectionSpec::Octagon)),
    ("diamond", Shape::One(SectionSpec::Diamond)),
];

/// How a section is made of the sizes that were said.
#[derive(Clone, Copy)]
enum Shape {
    /// Of one size.
    One(fn(WrittenLength) -> SectionSpec),
    /// Of two, the larger first.
    Two(fn(WrittenLength, WrittenLength) -> SectionSpec),
}

/// The section of a bar as it was said.
///
/// # Errors
/// Where it is none: what was said, and what may be.
pub fn parse(said: &str) -> Result<SectionSpec, String> {
    let (sizes, word, shape) = split(said).ok_or_else(|| format!("\"{said}\" is not a bar shape; {EXAMPLES}"))?;
    let sizes = lengths(sizes).map_err(|why| format!("the stock \"{said}\": {why}"))?;
    match (shape, sizes.as_slice()) {
        (Shape::One(build), [size]) => Ok(build(size.clone())),
        (Shape::Two(build), [first, second]) if first.mm() < second.mm() => Ok(build(second.clone(), first.clone())),
        (Shape::Two(build), [first, second]) => Ok(build(first.clone(), second.clone())),
        (Shape::One(_), _) => Err(format!("\"{said}\": one size makes a {word} bar; {EXAMPLES}")),
        (Shape::Two(_), _) => Err(format!("\"{said}\": two sizes make a {word} bar; {EXAMPLES}")),
    }
}

/// Whether the sizes were said in inches or feet.
pub fn is_in_inches(said: &str) -> bool {
    said.contains(['"', '\'', '″', '′'])
        || said.split(|c: char| !c.is_alphabetic()).any(|word| matches!(word, "in" | "ft"))
}

/// Takes the shape off the end of what was said.
fn split(said: &str) -> Option<(&str, &'static str, Shape)> {
    let said = said.trim();
    SHAPES.iter().find_map(|&(word, shape)| {
        let start = said.len().checked_sub(word.len())?;
        let (sizes, end) = (said.get(..start)?, said.get(start..)?);
        end.eq_ignore_ascii_case(word).then_some((sizes, word, shape))
    })
}

/// The sizes, with a cross between them. The unit of the last one also stands for those that have none.
fn lengths(sizes: &str) -> Result<Vec<WrittenLength>, String> {
    let parts: Vec<&str> = sizes.split(['x', 'X', '×']).map(str::trim).collect();
    let unit = parts.last().map_or("", |last| unit_of(last));
    let with_unit = |part: &&str| match unit_of(part) {
        "" if !part.is_empty() => format!("{part} {unit}"),
        _ => (*part).to_owned(),
    };
    let read = |part| WrittenLength::parse(&with_unit(part), None, LengthRange::AboveZero);
    parts.iter().map(|part| read(part).map_err(|error| error.to_string())).collect()
}

/// What stands behind the last figure of a size.
fn unit_of(size: &str) -> &str {
    let end_of_number =
        size.rfind(char::is_numeric).and_then(|at| size[at..].chars().next().map(|c| at + c.len_utf8()));
    size[end_of_number.unwrap_or(0)..].trim()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn bars_are_understood_as_they_are_said() {
        for (said, section) in [
            ("1/2 in square", "1/2 in square"),
            ("12mm round", "12mm round"),
            ("30 x 8 mm flat", "30 mm × 8 mm flat"),
            ("8 × 30 mm Flat", "30 mm × 8 mm flat"),
            ("1\" x 1/4\" flat", "1\" × 1/4\" flat"),
            ("1 1/4 x 3/8 in flat", "1 1/4 in × 3/8 in flat"),
            ("½ in square", "½ in square"),
            ("20 mm x 10 mm half round", "20 mm × 10 mm half-round"),
            ("5/8 in hex", "5/8 in hexagon"),
            ("3/4 in octagon", "3/4 in octagon"),
            ("30 x 12 mm oval", "30 mm × 12 mm oval"),
            ("14 mm diamond", "14 mm diamond"),
        ] {
            assert_eq!(parse(said).unwrap().describe(), section, "{said}");
        }
    }

    #[test]
    fn what_is_not_understood_is_told() {
        for (said, why) in [
            ("", "is not a bar shape"),
            ("12 mm", "is not a bar shape"),
            ("square", "the stock \"square\""),
            ("12 square", "the stock \"12 square\""),
            ("-3 mm round", "the stock \"-3 mm round\""),
            ("30 mm flat", "two sizes make a flat bar"),
            ("30 x 8 mm square", "one size makes a square bar"),
            ("é", "is not a bar shape"),
        ] {
            let words = parse(said).unwrap_err();
            assert!(words.contains(why), "{said}: {words}");
        }
    }

    #[test]
    fn the_unit_of_the_plan_is_the_unit_of_the_bar() {
        for said in ["1/2 in square", "1\" x 1/4\" flat", "0.5in round", "1 ft round"] {
            assert!(is_in_inches(said), "{said}");
        }
        for said in ["12 mm round", "3 cm square", "30x8mm flat"] {
            assert!(!is_in_inches(said), "{said}");
        }
    }
}

//! A section as the smith says it: `1/2 in square`, `30 x 8 mm flat`.

use super::written::Said;
use fh_core::material;
use fh_core::plan::SectionSpec;
use fh_measure::LengthUnit;

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
    let (kind, sizes_nm) = section.bar_sizes_nm();
    Alike { material, kind: kind.name(), sizes_nm }
}

/// The section of a bar as it was said.
///
/// # Errors
/// Where it is none: what was said, and what may be.
pub fn parse(said: &str) -> Result<SectionSpec, String> {
    parse_in(said, None)
}

/// The same; a size without a unit is in `unit`.
///
/// # Errors
/// As [`parse`].
pub fn parse_in(said: &str, unit: Option<LengthUnit>) -> Result<SectionSpec, String> {
    SectionSpec::bar_said(said, unit)
}

/// The unit that a size has where only its bar's other words tell it: a fraction is of an inch.
pub fn unit_of(said: &str) -> Option<LengthUnit> {
    if is_in_inches(said) {
        return Some(LengthUnit::Inch);
    }
    let mut words = said.split(|c: char| !c.is_alphabetic());
    if words.any(|word| matches!(word, "mm" | "cm" | "m")) {
        return Some(LengthUnit::Millimeter);
    }
    let is_fraction = |c: char| c == '/' || (c.is_numeric() && !c.is_ascii_digit());
    said.contains(is_fraction).then_some(LengthUnit::Inch)
}

/// Whether the sizes were said in inches or feet.
pub fn is_in_inches(said: &str) -> bool {
    said.contains(['"', '\'', '″', '′'])
        || said.split(|c: char| !c.is_alphabetic()).any(|word| matches!(word, "in" | "ft"))
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
    fn a_size_without_a_unit_has_that_of_the_rest() {
        for (said, unit) in
            [("5/16 round", Some(LengthUnit::Inch)), ("½ square", Some(LengthUnit::Inch)), ("12 round", None)]
        {
            assert_eq!(unit_of(said), unit, "{said}");
        }
        for said in ["12 mm", "12 1/2 mm round"] {
            assert_eq!(unit_of(said), Some(LengthUnit::Millimeter), "{said}");
        }
        assert_eq!(parse_in("5/16 round", unit_of("5/16 round")).unwrap().describe(), "5/16 in round");
        // A bar has a word for its shape even so, and is none of the plan's own sections.
        assert!(parse_in("stock", Some(LengthUnit::Millimeter)).is_err());
        assert!(parse_in("2 x 12", Some(LengthUnit::Millimeter)).is_err());
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

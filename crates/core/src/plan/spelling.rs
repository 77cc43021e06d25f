//! Words of a plan that are spelled two ways: both are read, and the British one is kept and written.

use serde::{Deserialize, Deserializer};

/// Names of materials as they are spelled in America, and as the table has them.
const MATERIALS: [(&str, &str); 1] = [("aluminum", "aluminium")];

/// Reads the name of a material in either spelling.
pub(super) fn material<'de, D: Deserializer<'de>>(reader: D) -> Result<Option<String>, D::Error> {
    let name = Option::<String>::deserialize(reader)?;
    Ok(name.map(|name| {
        let other = MATERIALS.iter().find(|(american, _)| *american == name);
        other.map_or(name, |(_, british)| (*british).to_owned())
    }))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use super::MATERIALS;
    use crate::{file, material};

    const PLAN: &str = r#"{ "firstheat": 1, "material": "METAL", "coating": "COATED",
      "bars": [{ "stock": { "square": "12 mm" }, "segments": [{ "form": { "plain": { "length": "50 mm" } } }] }],
      "work": { "steps": [{ "place": "GRIPPED", "work": [{ "operation": "bend", "parts": ["1"] }] }] } }"#;

    fn plan(words: [&str; 3]) -> String {
        PLAN.replace("METAL", words[0]).replace("COATED", words[1]).replace("GRIPPED", words[2])
    }

    #[test]
    fn both_spellings_are_read_and_one_is_written() {
        let british = file::read(plan(["aluminium", "galvanised", "vice"]).as_bytes()).unwrap();
        let american = file::read(plan(["aluminum", "galvanized", "vise"]).as_bytes()).unwrap();
        assert_eq!(american, british);
        let text = file::write(&american);
        assert!(["aluminium", "galvanised", "vice"].iter().all(|word| text.contains(word)), "{text}");
    }

    #[test]
    fn what_a_wrong_word_is_answered_with_is_in_one_spelling() {
        for (wrong, right) in [("galvanise", "galvanised"), ("vices", "vice"), ("alu", "aluminium")] {
            let words = match right {
                "galvanised" => ["copper", wrong, "vice"],
                "vice" => ["copper", "none", wrong],
                _ => [wrong, "none", "vice"],
            };
            let error = file::read(plan(words).as_bytes()).unwrap_err().to_string();
            assert!(error.contains(right), "{error}");
            assert!(!["galvanized", "vise", "aluminum"].iter().any(|word| error.contains(word)), "{error}");
        }
    }

    #[test]
    fn every_other_spelling_leads_to_a_material() {
        for (american, british) in MATERIALS {
            assert!(material::find(british).is_some() && material::find(american).is_none(), "{american}");
        }
    }
}

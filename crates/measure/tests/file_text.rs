//! Written quantities in files: strings with a unit, and nothing else.

#![allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]

use fh_measure::{Rounding, WrittenAngle, WrittenLength, WrittenShare};
use schemars::schema_for;
use serde::{Deserialize, Serialize, de::DeserializeOwned};
use std::fmt::Debug;

#[derive(Debug, Deserialize)]
struct Corner {
    #[serde(deserialize_with = "fh_measure::signed::deserialize")]
    across: WrittenLength,
    #[serde(deserialize_with = "fh_measure::zero_allowed::deserialize")]
    radius: WrittenLength,
    #[serde(default, deserialize_with = "fh_measure::zero_allowed::option")]
    gap: Option<WrittenLength>,
}

fn survives<T: Serialize + DeserializeOwned + PartialEq + Debug>(json: &str) {
    let read: T = serde_json::from_str(json).unwrap();
    assert_eq!(serde_json::to_string(&read).unwrap(), json);
}

fn refusal<T: DeserializeOwned + Debug>(json: &str) -> String {
    serde_json::from_str::<T>(json).unwrap_err().to_string()
}

#[test]
fn a_quantity_goes_back_into_the_file_as_it_was_typed() {
    survives::<WrittenLength>(r#""3-1/4\"""#);
    survives::<WrittenLength>(r#""12,50  mm""#);
    survives::<WrittenAngle>(r#""90°""#);
    survives::<WrittenShare>(r#""2,5 %""#);
    survives::<Rounding>(r#""1/16 in""#);
}

#[test]
fn a_number_without_a_unit_is_refused_in_words() {
    let words = "the number 12 has no unit; write it in quotes with its unit, for example \"82.5 mm\"";
    assert!(refusal::<WrittenLength>("12").contains(words));
    assert!(refusal::<WrittenLength>("-12").contains("the number -12 has no unit"));
    assert!(refusal::<WrittenAngle>("1.50").contains("the number 1.5 has no unit"));
    assert!(refusal::<WrittenShare>("1e300").contains("the number 1e300 has no unit"));
    assert!(refusal::<Rounding>("1").contains("for example \"1/16 in\""));
    assert!(refusal::<WrittenLength>(r#""12""#).contains("the unit is missing"));
}

#[test]
fn what_is_no_text_at_all_is_refused() {
    for json in ["null", "true", "[\"12 mm\"]", "{\"mm\": 12}"] {
        let refusal = refusal::<WrittenLength>(json);
        assert!(refusal.contains("expected a length with its unit in quotes"), "{refusal}");
    }
}

#[test]
fn a_length_is_above_0_unless_its_key_says_otherwise() {
    assert!(refusal::<WrittenLength>(r#""0 mm""#).contains("greater than 0"));
    let corner: Corner = serde_json::from_str(r#"{"across": "-6 mm", "radius": "0 mm", "gap": "0 in"}"#).unwrap();
    assert_eq!((corner.across.mm(), corner.radius.mm()), (-6.0, 0.0));
    assert_eq!(corner.gap.map(|gap| gap.text().to_owned()), Some("0 in".to_owned()));
    let corner: Corner = serde_json::from_str(r#"{"across": "0 mm", "radius": "1 mm"}"#).unwrap();
    assert!(corner.gap.is_none());
    assert!(refusal::<Corner>(r#"{"across": "1 mm", "radius": "-1 mm"}"#).contains("not below 0"));
    assert!(refusal::<Corner>(r#"{"across": 1, "radius": "1 mm"}"#).contains("has no unit"));
}

#[test]
fn the_schema_says_text_and_its_examples_are_right() {
    fn examples(schema: &schemars::Schema) -> Vec<String> {
        assert_eq!(schema.get("type").and_then(|kind| kind.as_str()), Some("string"));
        assert!(schema.get("description").is_some());
        serde_json::from_value(schema.get("examples").unwrap().clone()).unwrap()
    }
    for example in examples(&schema_for!(WrittenLength)) {
        survives::<WrittenLength>(&serde_json::to_string(&example).unwrap());
    }
    for example in examples(&schema_for!(WrittenAngle)) {
        survives::<WrittenAngle>(&serde_json::to_string(&example).unwrap());
    }
    for example in examples(&schema_for!(WrittenShare)) {
        survives::<WrittenShare>(&serde_json::to_string(&example).unwrap());
    }
    for example in examples(&schema_for!(Rounding)) {
        survives::<Rounding>(&serde_json::to_string(&example).unwrap());
    }
}

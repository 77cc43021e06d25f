//! Reading the reference cases.

use crate::reference::skipped;
use serde_json::Value;

const GEOMETRY: &str = include_str!("../data/geometry.json");

/// One case: what goes in, what is to come out, and how close.
pub(crate) struct Case {
    /// Its name.
    pub(crate) id: String,
    /// What goes in.
    pub(crate) inputs: Value,
    expected: Value,
    tolerance: f64,
}

impl Case {
    /// A number that goes in.
    pub(crate) fn input(&self, key: &str) -> f64 {
        number(&self.inputs[key])
    }

    /// The value to be reached under a key.
    pub(crate) fn expected(&self, key: &str) -> f64 {
        number(&self.expected[key])
    }

    /// The values to be reached under a key.
    pub(crate) fn expected_list(&self, key: &str) -> Vec<Value> {
        self.expected[key].as_array().unwrap().clone()
    }

    /// Whether the case has a value to be reached under this key.
    pub(crate) fn expects(&self, key: &str) -> bool {
        self.expected.get(key).is_some()
    }

    /// Compares a value with the expected one under a key.
    pub(crate) fn check(&self, key: &str, got: f64) {
        let want = self.expected(key);
        // Below this the reference has its own rounding: an edge's area of 3e-14 mm² for 0.
        let small = 1e-9;
        let off = (got - want).abs();
        assert!(
            off <= (self.tolerance * want.abs()).max(small),
            "{} {key}: {got} where {want} is right (off by {:e})",
            self.id,
            off / want
        );
    }

    /// How far a leg's outside is to run to the apex of its corner.
    pub(crate) fn apex(&self, leg: usize) -> f64 {
        number(&self.expected["outside_legs_to_apex"][leg])
    }

    /// The list of parts that a whole piece is to have.
    pub(crate) fn expected_segments(&self) -> Vec<Value> {
        self.expected["segments"].as_array().unwrap().clone()
    }

    /// A case of one part of it, under its own name.
    pub(crate) fn part(&self, name: &str, expected: Value) -> Self {
        Self { id: format!("{} {name}", self.id), inputs: self.inputs.clone(), expected, tolerance: self.tolerance }
    }
}

/// A number of a case.
pub(crate) fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("a number belongs where {value} stands"))
}

/// Every topic with the names of its cases.
pub(crate) fn topics() -> Vec<(String, Vec<String>)> {
    let all: Value = serde_json::from_str(GEOMETRY).unwrap();
    let topics = all["topics"].as_object().unwrap();
    topics.iter().map(|(topic, cases)| (topic.clone(), cases_of(cases).map(|case| case.id).collect())).collect()
}

/// The cases of a topic that are not skipped and whose name begins so; at least one.
pub(crate) fn cases(topic: &str, beginning: &str) -> Vec<Case> {
    let all: Value = serde_json::from_str(GEOMETRY).unwrap();
    let wanted = |case: &Case| case.id.starts_with(beginning) && skipped::reason(&case.id).is_none();
    let cases: Vec<Case> = cases_of(&all["topics"][topic]).filter(wanted).collect();
    assert!(!cases.is_empty(), "no case of {topic} begins with {beginning}");
    cases
}

fn cases_of(topic: &Value) -> impl Iterator<Item = Case> {
    topic["cases"].as_array().unwrap().iter().map(|case| Case {
        id: case["id"].as_str().unwrap().to_owned(),
        inputs: case["inputs"].clone(),
        expected: case["expected"].clone(),
        tolerance: number(&case["rel_tol"]),
    })
}

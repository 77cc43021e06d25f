//! What random files are made from: the demo plans and the demo job, and files that have every key.

use fh_core::file;
use fh_core::plan::Plan;
use fh_store::demos::DEMOS;
use serde_json::Value;
use std::collections::BTreeMap;

const EVERY_KEY: &str = include_str!("../../core/tests/every_key.plan.json");

/// What no demo has: plates with holes of every shape, and lengths dressed in each die.
const PLATES_AND_DIES: &str = include_str!("../seeds/plates-and-dies.plan.json");

/// The files of a rack, a merchant, a shop and a job, with every key each.
const STEEL: [&str; 4] = [
    include_str!("../seeds/every-key.rack.json"),
    include_str!("../seeds/every-key.merchant.json"),
    include_str!("../seeds/every-key.shop.json"),
    include_str!("../seeds/every-key.job.json"),
];
/// The demo job's.
const THREE_BEDS: [&str; 4] = [
    include_str!("../../../demo-plans/jobs/three-beds.rack.json"),
    include_str!("../../../demo-plans/jobs/three-beds.merchant.json"),
    include_str!("../../../demo-plans/jobs/three-beds.shop.json"),
    include_str!("../../../demo-plans/jobs/three-beds.job.json"),
];

/// The values that stand behind each key.
pub(crate) type Values = BTreeMap<String, Vec<Value>>;

/// Plans, and the values that stand in them behind each key.
pub struct Corpus {
    pub(crate) trees: Vec<Value>,
    pub(crate) plans: Vec<Plan>,
    pub(crate) values: Values,
    /// The same of racks, merchants' lists, shops' figures and jobs.
    pub(crate) steel: Vec<Value>,
    pub(crate) steel_values: Values,
    /// One of each in the words of its file.
    pub(crate) steel_texts: [&'static str; 4],
}

impl Default for Corpus {
    fn default() -> Self {
        Self::new()
    }
}

impl Corpus {
    /// Reads the plans that the program carries.
    pub fn new() -> Self {
        let texts = DEMOS.iter().map(|demo| demo.text).chain([EVERY_KEY, PLATES_AND_DIES]);
        let mut corpus = Self {
            trees: Vec::new(),
            plans: Vec::new(),
            values: Values::new(),
            steel: Vec::new(),
            steel_values: Values::new(),
            steel_texts: THREE_BEDS,
        };
        for text in STEEL.into_iter().chain(THREE_BEDS) {
            let tree = serde_json::from_str::<Value>(text).unwrap_or_default();
            gather(&mut corpus.steel_values, &tree);
            corpus.steel.push(tree);
        }
        for text in texts {
            let tree = serde_json::from_str::<Value>(text).unwrap_or_default();
            gather(&mut corpus.values, &tree);
            corpus.plans.extend(file::read(text.as_bytes()));
            corpus.trees.push(tree);
        }
        corpus
    }
}

fn gather(values: &mut Values, value: &Value) {
    match value {
        Value::Object(members) => {
            for (key, value) in members {
                add(values, key, value);
                gather(values, value);
                if let Value::Array(items) = value {
                    items.iter().for_each(|item| add(values, &format!("{key}[]"), item));
                }
            }
        }
        Value::Array(items) => items.iter().for_each(|item| gather(values, item)),
        _ => {}
    }
}

fn add(values: &mut Values, key: &str, value: &Value) {
    values.entry(key.to_owned()).or_default().push(value.clone());
}

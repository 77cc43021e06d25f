//! What random plans are made from: the demo plans, and one that has every key.

use fh_core::file;
use fh_core::plan::Plan;
use fh_store::demos::DEMOS;
use serde_json::Value;
use std::collections::BTreeMap;

const EVERY_KEY: &str = include_str!("../../core/tests/every_key.plan.json");

/// Plans, and the values that stand in them behind each key.
pub struct Corpus {
    pub(crate) trees: Vec<Value>,
    pub(crate) plans: Vec<Plan>,
    pub(crate) values: BTreeMap<String, Vec<Value>>,
}

impl Default for Corpus {
    fn default() -> Self {
        Self::new()
    }
}

impl Corpus {
    /// Reads the plans that the program carries.
    pub fn new() -> Self {
        let texts = DEMOS.iter().map(|demo| demo.text).chain([EVERY_KEY]);
        let mut corpus = Self { trees: Vec::new(), plans: Vec::new(), values: BTreeMap::new() };
        for text in texts {
            let tree = serde_json::from_str::<Value>(text).unwrap_or_default();
            corpus.gather(&tree);
            corpus.plans.extend(file::read(text.as_bytes()));
            corpus.trees.push(tree);
        }
        corpus
    }

    fn gather(&mut self, value: &Value) {
        match value {
            Value::Object(members) => {
                for (key, value) in members {
                    self.add(key, value);
                    self.gather(value);
                    if let Value::Array(items) = value {
                        items.iter().for_each(|item| self.add(&format!("{key}[]"), item));
                    }
                }
            }
            Value::Array(items) => items.iter().for_each(|item| self.gather(item)),
            _ => {}
        }
    }

    fn add(&mut self, key: &str, value: &Value) {
        self.values.entry(key.to_owned()).or_default().push(value.clone());
    }
}

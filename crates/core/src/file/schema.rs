//! The JSON Schema of the plan file, made from the types.

use crate::plan::Plan;
use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use schemars::transform::{RecursiveTransform, Transform};
use serde_json::Value;

/// The JSON Schema (draft 2020-12) of the plan file.
pub fn schema() -> Value {
    schema_of::<Plan>()
}

/// The JSON Schema (draft 2020-12) of a file of another sort.
pub fn schema_of<T: JsonSchema>() -> Value {
    let mut schema = SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<T>();
    RecursiveTransform(without_null).transform(&mut schema);
    schema.to_value()
}

/// A key that may be left out may not be `null` instead: the reader refuses it.
fn without_null(schema: &mut schemars::Schema) {
    let Some(members) = schema.as_object_mut() else { return };
    if let Some(Value::Array(types)) = members.get_mut("type") {
        types.retain(|kind| kind != "null");
        if let [only] = types.as_slice() {
            let only = only.clone();
            members.insert("type".to_owned(), only);
        }
    }
    if let Some(Value::Array(choices)) = members.get_mut("anyOf") {
        choices.retain(|choice| choice.get("type").is_none_or(|kind| kind != "null"));
        if let [Value::Object(only)] = choices.as_slice() {
            let only = only.clone();
            members.remove("anyOf");
            members.extend(only);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_may_be_null() {
        let text = schema().to_string();
        assert!(!text.contains("\"null\""));
        assert!(text.contains(r##""$ref":"#/$defs/Coating""##));
    }
}

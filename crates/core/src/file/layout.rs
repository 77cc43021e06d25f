//! The layout of a plan file: what fits on a line stays on it, the rest is broken up and indented.

use serde_json::{Map, Number, Value};

/// The most characters on a line.
const COLUMNS: usize = 100;

/// Lays a whole file out; it ends with a newline.
pub(super) fn lay_out(value: &Value) -> String {
    let mut page = Page { text: String::new(), indent: 0 };
    page.put(value, 0);
    page.text.push('\n');
    page.text
}

struct Page {
    text: String,
    indent: usize,
}

impl Page {
    /// Puts a value; `used` characters of its line are taken by its indent, its key and the comma behind it.
    fn put(&mut self, value: &Value, used: usize) {
        let line = one_line(value);
        if used + line.chars().count() <= COLUMNS {
            self.text.push_str(&line);
            return;
        }
        match value {
            Value::Object(members) => self.put_group(members),
            Value::Array(items) => self.put_list(items),
            _ => self.text.push_str(&line),
        }
    }

    fn put_group(&mut self, members: &Map<String, Value>) {
        self.text.push('{');
        self.indent += 2;
        for (position, (key, value)) in members.iter().enumerate() {
            self.new_line(position);
            let key = format!("{}: ", quoted(key));
            self.text.push_str(&key);
            self.put(value, self.used(key.chars().count(), position, members.len()));
        }
        self.close('}');
    }

    fn put_list(&mut self, items: &[Value]) {
        self.text.push('[');
        self.indent += 2;
        for (position, item) in items.iter().enumerate() {
            self.new_line(position);
            self.put(item, self.used(0, position, items.len()));
        }
        self.close(']');
    }

    fn used(&self, key: usize, position: usize, count: usize) -> usize {
        let comma = usize::from(position + 1 < count);
        self.indent + key + comma
    }

    fn new_line(&mut self, position: usize) {
        self.text.push_str(if position == 0 { "\n" } else { ",\n" });
        self.text.push_str(&" ".repeat(self.indent));
    }

    fn close(&mut self, bracket: char) {
        self.indent -= 2;
        self.text.push('\n');
        self.text.push_str(&" ".repeat(self.indent));
        self.text.push(bracket);
    }
}

fn one_line(value: &Value) -> String {
    match value {
        Value::Object(members) if members.is_empty() => "{}".to_owned(),
        Value::Object(members) => {
            let inside: Vec<_> =
                members.iter().map(|(key, value)| format!("{}: {}", quoted(key), one_line(value))).collect();
            format!("{{ {} }}", inside.join(", "))
        }
        Value::Array(items) => format!("[{}]", items.iter().map(one_line).collect::<Vec<_>>().join(", ")),
        Value::String(text) => quoted(text),
        Value::Number(number) => plain_number(number),
        Value::Bool(_) | Value::Null => value.to_string(),
    }
}

fn quoted(text: &str) -> String {
    Value::from(text).to_string()
}

/// A whole number is written without a point, as it was typed.
fn plain_number(number: &Number) -> String {
    let text = number.to_string();
    text.strip_suffix(".0").map(str::to_owned).unwrap_or(text)
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn what_fits_stays_on_one_line() {
        let value = json!({ "square": { "side": "12 mm", "power": 2.0 }, "none": [], "nothing": {}, "sides": [0, 90] });
        let text = "{ \"square\": { \"side\": \"12 mm\", \"power\": 2 }, \"none\": [], \"nothing\": {}, \"sides\": [0, 90] }\n";
        assert_eq!(lay_out(&value), text);
    }

    #[test]
    fn a_line_has_a_hundred_characters_at_most() {
        let list = json!({ "long": ["é".repeat(45), "é".repeat(36)], "last": 1 });
        assert_eq!(lay_out(&list).lines().map(|line| line.chars().count()).max(), Some(100));
        let longer = json!({ "long": ["é".repeat(45), "é".repeat(37)], "last": 1 });
        assert_eq!(lay_out(&longer).lines().count(), 7);
    }
}

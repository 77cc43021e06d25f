//! Changing a plan's file at random: mostly to another plan, now and then to nonsense.

use crate::corpus::Values;
use crate::random::Random;
use serde_json::{Value, json};

/// Sizes and words that trip things up.
const HOSTILE: [&str; 29] = [
    "0 mm",
    "-5 mm",
    "0.001 mm",
    "0.0000001 mm",
    "1000000 m",
    "999999999 m",
    "39370078740 in",
    "1/64 in",
    "3 1/4 in",
    "12 ± 0.5 mm",
    "5 mm to 6 mm",
    "0 %",
    "99.99 %",
    "360 deg",
    "0.001 deg",
    "100000 turn",
    "1/0 in",
    "same",
    "stock",
    "point",
    "",
    "Ø½″ 🔨",
    "\u{202e}עברית",
    "a\u{1}b\u{1b}[31m\r\n",
    "\u{fffe}",
    "</svg><script>",
    "../../x",
    "1e308",
    "a\u{301}\u{301}",
];

/// Numbers that trip things up.
const NUMBERS: [f64; 10] = [0.0, -1.0, 1e-9, 0.5, 1.0, 2.0, 1e9, 4_294_967_295.0, 1e300, 0.999_999];

/// Changes something, so many times.
pub(crate) fn mutate(tree: &mut Value, values: &Values, random: &mut Random, times: usize) {
    for _ in 0..times {
        let count = count(tree);
        let mut at = random.below(count);
        change_at(tree, "", &mut at, values, random);
    }
}

/// How many values there are in a tree.
fn count(value: &Value) -> usize {
    1 + match value {
        Value::Object(members) => members.values().map(count).sum::<usize>(),
        Value::Array(items) => items.iter().map(count).sum(),
        _ => 0,
    }
}

/// Goes to the value that is so many on, and changes it; whether it came there.
fn change_at(value: &mut Value, key: &str, left: &mut usize, values: &Values, random: &mut Random) -> bool {
    if *left == 0 {
        change(value, key, values, random);
        return true;
    }
    *left -= 1;
    match value {
        Value::Object(members) => members.iter_mut().any(|(key, value)| change_at(value, key, left, values, random)),
        Value::Array(items) => {
            let key = format!("{key}[]");
            items.iter_mut().any(|item| change_at(item, &key, left, values, random))
        }
        _ => false,
    }
}

fn change(value: &mut Value, key: &str, values: &Values, random: &mut Random) {
    // Mostly by what stands behind the same key elsewhere.
    if !random.one_in(3)
        && let Some(other) = values.get(key).and_then(|values| random.of(values))
    {
        *value = other.clone();
        return;
    }
    match value {
        Value::Array(items) => change_list(items, random),
        Value::Object(members) => {
            let keys: Vec<String> = members.keys().cloned().collect();
            let Some(gone) = random.of(&keys) else { return };
            if random.one_in(8) {
                members.insert(gone.to_uppercase(), json!(1));
            } else {
                members.shift_remove(gone);
            }
        }
        Value::Number(_) => *value = random.of(&NUMBERS).map_or(Value::Null, |number| json!(number)),
        Value::String(text) => *text = changed_text(text, random),
        _ => *value = json!(random.one_in(2)),
    }
}

fn change_list(items: &mut Vec<Value>, random: &mut Random) {
    let at = random.below(items.len());
    match random.below(4) {
        0 if !items.is_empty() => drop(items.remove(at)),
        1 if !items.is_empty() => {
            let other = random.below(items.len());
            items.swap(at, other);
        }
        2 => items.extend(items.clone().into_iter().take(8)),
        _ => {
            let again = items.get(at).cloned();
            items.extend(again);
        }
    }
}

/// Other figures in a size, or something else altogether.
fn changed_text(text: &str, random: &mut Random) -> String {
    let number = text.split(' ').next().and_then(|number| number.parse::<f64>().ok());
    match (number, random.below(4)) {
        (Some(number), 1..) => {
            let unit = text.split_once(' ').map_or("", |(_, unit)| unit);
            let factor = *random.of(&[0.01, 0.3, 0.9, 1.1, 3.0, 20.0]).unwrap_or(&1.0);
            format!("{:.4} {unit}", number * factor)
        }
        (None, 3) => text.repeat(1 + random.below(30)),
        _ => (*random.of(&HOSTILE).unwrap_or(&"")).to_owned(),
    }
}

/// Changes the bytes of a text, so that it is mostly no plan any more.
pub(crate) fn mutate_bytes(bytes: &mut Vec<u8>, random: &mut Random) {
    for _ in 0..=random.below(4) {
        let at = random.below(bytes.len());
        match random.below(4) {
            0 => bytes.truncate(at),
            1 => bytes.insert(at.min(bytes.len()), random.below(256) as u8),
            2 if at < bytes.len() => drop(bytes.remove(at)),
            _ => {
                if let Some(byte) = bytes.get_mut(at) {
                    *byte ^= 1 << random.below(8);
                }
            }
        }
    }
}

//! The repeats of a segment: what they must say, and what they must not say together.

use super::{Checked, refuse};
use crate::file::key_path::KeyPath;
use crate::file::wording::shortened;
use crate::plan::Repeat;

/// Checks the list of repeats.
pub(super) fn check_repeats(repeats: &[Repeat], at: &KeyPath) -> Checked {
    repeats.iter().enumerate().try_for_each(|(index, repeat)| check_repeat(repeat, &at.index(index)))
}

fn check_repeat(repeat: &Repeat, at: &KeyPath) -> Checked {
    let what = shortened(repeat.what_name());
    if repeat.step.is_some() && repeat.width.is_some() {
        let message = format!(
            "\"{what}\" has both a step and a width, but tools set side by side step by their width; leave one of them out"
        );
        return refuse(at.key("width"), message);
    }
    match repeat.count {
        Some(count) if count == 0 || count > Repeat::MOST => {
            let message = format!("{count} of \"{what}\" were read; there is at least 1, and at most {}", Repeat::MOST);
            refuse(at.key("count"), message)
        }
        None if repeat.step.is_none() && repeat.width.is_none() => {
            let message =
                format!("nothing says how many of \"{what}\" there are; give a \"step\", a \"width\" or a \"count\"");
            refuse(at.clone(), message)
        }
        _ => Ok(()),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use crate::file::read;

    fn refusal(repeat: &str) -> String {
        let text = format!(
            r#"{{ "firstheat": 1, "bars": [{{ "stock": {{ "square": "12 mm" }}, "segments": [
              {{ "form": {{ "plain": {{ "length": "60 mm" }} }}, "repeats": [{repeat}] }} ] }}] }}"#
        );
        read(text.as_bytes()).map(|_| String::new()).unwrap_or_else(|error| error.to_string())
    }

    #[test]
    fn a_row_says_how_many_there_are_in_one_way() {
        for right in [
            r#"{ "what": "lines", "step": "6 mm" }"#,
            r#"{ "what": "lines", "width": "6 mm", "margin": "0 mm" }"#,
            r#"{ "what": "", "count": 1000, "from": "middle" }"#,
            r#"{ "what": "lines", "step": "6 mm", "count": 7, "from": "end" }"#,
        ] {
            assert_eq!(refusal(right), "", "{right}");
        }
        for (wrong, words) in [
            (r#"{ "what": "lines" }"#, "repeats[0]: nothing says how many of \"lines\" there are; give a \"step\""),
            (
                r#"{ "what": "lines", "step": "6 mm", "width": "6 mm" }"#,
                "repeats[0].width: \"lines\" has both a step and",
            ),
            (r#"{ "what": "lines", "count": 0 }"#, "repeats[0].count: 0 of \"lines\" were read; there is at least 1"),
            (r#"{ "what": "lines", "count": 1001 }"#, "1001 of \"lines\" were read"),
            (r#"{ "what": "lines", "step": "0 mm" }"#, "a size greater than 0 belongs here"),
            (r#"{ "what": "lines", "step": "6 mm", "from": "left" }"#, "there is no \"left\" here"),
            (r#"{ "step": "6 mm" }"#, "the key \"what\" is missing"),
        ] {
            let said = refusal(wrong);
            assert!(said.contains(words), "{said}");
        }
    }
}

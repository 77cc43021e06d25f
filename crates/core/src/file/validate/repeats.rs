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

//! Asked sizes: what they must say. Whether what they name is there is told by the findings.

use super::{Checked, refuse};
use crate::file::key_path::KeyPath;
use crate::plan::AskedSize;

/// Checks the list of asked sizes.
pub(super) fn check_sizes(sizes: &[AskedSize], at: &KeyPath) -> Checked {
    sizes.iter().enumerate().try_for_each(|(index, size)| check_size(size, &at.index(index)))
}

fn check_size(size: &AskedSize, at: &KeyPath) -> Checked {
    match (&size.overall, &size.from, &size.to) {
        (Some(_), None, None) if size.taken.is_some() => {
            refuse(at.key("taken"), "an overall size says its direction in \"overall\"; leave \"taken\" out")
        }
        (Some(_), None, None) if size.size.highest_mm() <= 0.0 => {
            refuse(at.key("size"), "an overall size is above 0; only between two places it may be 0")
        }
        (Some(_), None, None) | (None, Some(_), Some(_)) => Ok(()),
        (Some(_), ..) => {
            refuse(at.key("overall"), "a size is taken \"from\" one place \"to\" another, or \"overall\", not both")
        }
        (None, Some(_), None) => refuse(at.key("from"), "the place that the size is taken \"to\" is missing"),
        (None, None, Some(_)) => refuse(at.key("to"), "the place that the size is taken \"from\" is missing"),
        (None, None, None) => {
            refuse(at.clone(), "a size is taken \"from\" one place \"to\" another, or \"overall\"; neither was found")
        }
    }
}

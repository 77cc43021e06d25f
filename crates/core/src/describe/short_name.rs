//! Names as they are shown: as long as anyone says, no longer.

/// The most letters that a name is shown with; no field takes a longer one.
pub const LONGEST_NAME: usize = 200;

/// A name as it is shown. A file may hold one of any length; what is longer than [`LONGEST_NAME`] is cut short with `…`, so that
/// nothing has to set a megabyte of it.
pub fn short_name(name: &str) -> String {
    match name.char_indices().nth(LONGEST_NAME) {
        Some((end, _)) => format!("{}…", &name[..end]),
        None => name.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::{LONGEST_NAME, short_name};

    #[test]
    fn only_what_is_longer_than_anyone_says_is_cut_short() {
        let long = "é".repeat(LONGEST_NAME);
        assert_eq!(short_name(&long), long);
        assert_eq!(short_name(&format!("{long}z")), format!("{long}…"));
    }
}

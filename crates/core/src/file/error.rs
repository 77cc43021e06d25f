//! Why a plan file cannot be read, and where.

use crate::describe::plain_line;
use std::fmt;

/// Why a plan file cannot be read. Lines and columns are counted from 1, columns in characters.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FileError {
    /// The line, where one can be named.
    pub line: Option<usize>,
    /// The column, where one can be named.
    pub column: Option<usize>,
    /// The key, for example `bars[0].segments[2].form.taper.length`, counted from 0; empty where the whole file is meant.
    pub path: String,
    /// What was read, and what would be right.
    pub message: String,
}

impl FileError {
    /// An error about the file as a whole.
    pub(super) fn whole(message: impl Into<String>) -> Self {
        Self { line: None, column: None, path: String::new(), message: message.into() }
    }

    /// An error at an offset in the text.
    pub(super) fn at(text: &str, offset: usize, path: String, message: impl Into<String>) -> Self {
        let (line, column) = line_and_column(text, offset);
        Self { line: Some(line), column: Some(column), path, message: message.into() }
    }

    /// Whether it stands before another in the file.
    pub(super) fn is_before(&self, other: &Self) -> bool {
        (self.line, self.column) < (other.line, other.column)
    }
}

/// The line and the column of a byte of the text, from 1.
fn line_and_column(text: &str, offset: usize) -> (usize, usize) {
    let bytes = text.as_bytes();
    let before = &bytes[..offset.min(bytes.len())];
    let line_start = before.iter().rposition(|byte| *byte == b'\n').map_or(0, |newline| newline + 1);
    let line = before.iter().filter(|byte| **byte == b'\n').count() + 1;
    // A character's first byte is any that does not continue one (continuing bytes are 10xx xxxx).
    let column = before[line_start..].iter().filter(|byte| (**byte & 0xC0) != 0x80).count() + 1;
    (line, column)
}

impl fmt::Display for FileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut place = Vec::new();
        if let (Some(line), Some(column)) = (self.line, self.column) {
            place.push(format!("line {line}, column {column}"));
        }
        if !self.path.is_empty() {
            place.push(format!("at {}", plain_line(&self.path)));
        }
        if !place.is_empty() {
            write!(f, "{}: ", place.join(", "))?;
        }
        f.write_str(&plain_line(&self.message))
    }
}

impl std::error::Error for FileError {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_count_characters_not_bytes() {
        assert_eq!(line_and_column("Ø 12\nñ½ x", "Ø 12\nñ½ ".len()), (2, 4));
        assert_eq!(line_and_column("", 99), (1, 1));
    }

    #[test]
    fn the_place_comes_before_the_message() {
        let error = FileError::at("{\n  \"bars\": 5 }", 12, "bars".to_owned(), "a list was expected");
        assert_eq!(error.to_string(), "line 2, column 11, at bars: a list was expected");
        assert_eq!(FileError::whole("too big").to_string(), "too big");
        let sly =
            FileError { path: "\u{1b}[31mbars\n".to_owned(), ..FileError::whole("there is no “\r\u{202e}x” here") };
        assert_eq!(sly.to_string(), "at  [31mbars : there is no “  x” here");
    }
}

//! How deep and how long a plan's file would be, without laying it out.

use serde::Serialize;
use serde_json::Serializer;
use serde_json::ser::Formatter;
use std::io::{self, Write};

/// The extent of a file that is not written yet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Extent {
    /// How many groups and lists its deepest value lies in.
    pub(super) deepest: usize,
    /// No more bytes than this, whatever is broken into lines.
    pub(super) most_bytes: usize,
}

impl Extent {
    /// The extent of what a value is written as.
    pub(super) fn of(value: &impl Serialize) -> Self {
        let (mut count, mut ruler) = (Count(0), Ruler::default());
        // Counting cannot fail, and neither plan nor motif has keys that are no text.
        let _ = value.serialize(&mut Serializer::with_formatter(&mut count, &mut ruler));
        Self { deepest: ruler.deepest, most_bytes: count.0.saturating_add(ruler.spaces) }
    }
}

/// Counts what is written and keeps nothing.
struct Count(usize);

impl Write for Count {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0 = self.0.saturating_add(bytes.len());
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

/// Follows the brackets.
#[derive(Default)]
struct Ruler {
    open: usize,
    deepest: usize,
    /// The line breaks, the indents and the spaces if every value stood on a line of its own.
    spaces: usize,
}

impl Ruler {
    fn line(&mut self) {
        self.deepest = self.deepest.max(self.open);
        self.spaces += 2 * self.open + 3;
    }

    fn close<W: ?Sized + Write>(&mut self, writer: &mut W, bracket: &[u8]) -> io::Result<()> {
        self.open = self.open.saturating_sub(1);
        self.spaces += 2 * self.open + 3;
        writer.write_all(bracket)
    }

    fn begin<W: ?Sized + Write>(&mut self, writer: &mut W, bracket: &[u8]) -> io::Result<()> {
        self.open += 1;
        writer.write_all(bracket)
    }

    fn value<W: ?Sized + Write>(&mut self, writer: &mut W, first: bool) -> io::Result<()> {
        self.line();
        if first { Ok(()) } else { writer.write_all(b",") }
    }
}

impl Formatter for &mut Ruler {
    fn begin_array<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.begin(writer, b"[")
    }

    fn end_array<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.close(writer, b"]")
    }

    fn begin_array_value<W: ?Sized + Write>(&mut self, writer: &mut W, first: bool) -> io::Result<()> {
        self.value(writer, first)
    }

    fn begin_object<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.begin(writer, b"{")
    }

    fn end_object<W: ?Sized + Write>(&mut self, writer: &mut W) -> io::Result<()> {
        self.close(writer, b"}")
    }

    fn begin_object_key<W: ?Sized + Write>(&mut self, writer: &mut W, first: bool) -> io::Result<()> {
        self.value(writer, first)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::file::layout;
    use serde_json::json;

    #[test]
    fn a_value_is_as_deep_as_the_brackets_round_it() {
        assert_eq!(Extent::of(&json!({ "a": [], "b": 1 })).deepest, 1);
        assert_eq!(Extent::of(&json!({ "a": [{ "b": ["c"] }] })).deepest, 4);
    }

    #[test]
    fn no_layout_is_longer_than_is_said() {
        let mut value = json!({ "words": "an é and a \n".repeat(4), "list": [1, 2, 3], "none": {} });
        for _ in 0..12 {
            value = json!({ "of": [value.clone(), value], "and so on": "x".repeat(60) });
            let laid_out = layout::lay_out(&value).len();
            assert!(Extent::of(&value).most_bytes >= laid_out, "{laid_out}");
        }
    }
}

//! Where each value of a plan file stands in its text.
//!
//! The text must already be known to be JSON. Where it is not, the scan gives up; it never panics.

use super::key_path::{KeyPath, Step};

/// How deep groups and lists may lie in one another; a plan needs about ten levels, and six more for each
/// split inside another.
pub(super) const DEEPEST: usize = 64;

/// A value's place and what it holds.
#[derive(Debug)]
pub(super) struct Place {
    /// The offset of its first byte.
    pub(super) start: usize,
    /// What kind of value it is.
    pub(super) kind: Kind,
}

/// What kind of value it is, in the words of JSON's punctuation.
#[derive(Debug)]
pub(super) enum Kind {
    /// `{ … }`
    Group(Vec<Member>),
    /// `[ … ]`
    List(Vec<Place>),
    /// `"…"`
    Text,
    /// A bare number.
    Number,
    /// `true` or `false`.
    TrueOrFalse,
    /// `null`
    Null,
}

impl Kind {
    /// The words for it.
    pub(super) fn words(&self) -> &'static str {
        match self {
            Self::Group(_) => "a group in { }",
            Self::List(_) => "a list in [ ]",
            Self::Text => "text in quotes",
            Self::Number => "a bare number",
            Self::TrueOrFalse => "true or false",
            Self::Null => "null",
        }
    }
}

/// A key of a group and its value.
#[derive(Debug)]
pub(super) struct Member {
    /// The key, its escapes resolved.
    pub(super) key: String,
    /// The offset of the key's quote.
    pub(super) start: usize,
    /// Its value.
    pub(super) value: Place,
}

/// Where a path led.
#[derive(Debug)]
pub(super) struct Found<'a> {
    /// The last place on the path.
    pub(super) place: &'a Place,
    /// The offset of its key; of its first byte where it has none.
    pub(super) key_start: usize,
    /// How many steps of the path led there.
    pub(super) steps: usize,
}

/// Why a text could not be gone through.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Stopped {
    /// Nested deeper than [`DEEPEST`], at this offset.
    TooDeep(usize),
    /// Not JSON.
    NotJson,
}

/// Finds the place of every value.
pub(super) fn places(text: &str) -> Result<Place, Stopped> {
    let mut scanner = Scanner { text, at: 0 };
    scanner.value(0)
}

impl Place {
    /// The value of a key, where this is a group that has it.
    pub(super) fn get(&self, key: &str) -> Option<&Member> {
        match &self.kind {
            Kind::Group(members) => members.iter().find(|member| member.key == key),
            _ => None,
        }
    }

    /// Follows a path as far as it goes.
    pub(super) fn follow(&self, path: &KeyPath) -> Found<'_> {
        let mut found = Found { place: self, key_start: self.start, steps: 0 };
        for step in path.steps() {
            let next = match (step, &found.place.kind) {
                (Step::Key(key), _) => found.place.get(key).map(|member| (&member.value, member.start)),
                (Step::Index(index), Kind::List(items)) => items.get(*index).map(|item| (item, item.start)),
                (Step::Index(_), _) => None,
            };
            let Some((place, key_start)) = next else { break };
            found = Found { place, key_start, steps: found.steps + 1 };
        }
        found
    }
}

struct Scanner<'a> {
    text: &'a str,
    at: usize,
}

impl Scanner<'_> {
    fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    fn skip_space(&mut self) {
        while matches!(self.peek(), Some(b' ' | b'\t' | b'\n' | b'\r')) {
            self.at += 1;
        }
    }

    /// Steps over this byte if it comes next.
    fn take(&mut self, wanted: u8) -> bool {
        self.skip_space();
        let found = self.peek() == Some(wanted);
        self.at += usize::from(found);
        found
    }

    fn value(&mut self, depth: usize) -> Result<Place, Stopped> {
        self.skip_space();
        let start = self.at;
        if depth > DEEPEST {
            return Err(Stopped::TooDeep(start));
        }
        let kind = match self.peek().ok_or(Stopped::NotJson)? {
            b'{' => self.group(depth)?,
            b'[' => self.list(depth)?,
            b'"' => {
                self.quoted()?;
                Kind::Text
            }
            b't' | b'f' => self.word(Kind::TrueOrFalse),
            b'n' => self.word(Kind::Null),
            b'-' | b'0'..=b'9' => self.word(Kind::Number),
            _ => return Err(Stopped::NotJson),
        };
        Ok(Place { start, kind })
    }

    fn group(&mut self, depth: usize) -> Result<Kind, Stopped> {
        self.at += 1;
        let mut members = Vec::new();
        if self.take(b'}') {
            return Ok(Kind::Group(members));
        }
        loop {
            self.skip_space();
            let start = self.at;
            let key = self.quoted()?;
            if !self.take(b':') {
                return Err(Stopped::NotJson);
            }
            let value = self.value(depth + 1)?;
            members.push(Member { key, start, value });
            if self.take(b'}') {
                return Ok(Kind::Group(members));
            }
            if !self.take(b',') {
                return Err(Stopped::NotJson);
            }
        }
    }

    fn list(&mut self, depth: usize) -> Result<Kind, Stopped> {
        self.at += 1;
        let mut items = Vec::new();
        if self.take(b']') {
            return Ok(Kind::List(items));
        }
        loop {
            items.push(self.value(depth + 1)?);
            if self.take(b']') {
                return Ok(Kind::List(items));
            }
            if !self.take(b',') {
                return Err(Stopped::NotJson);
            }
        }
    }

    /// A text in quotes, its escapes resolved.
    fn quoted(&mut self) -> Result<String, Stopped> {
        let start = self.at;
        if self.peek() != Some(b'"') {
            return Err(Stopped::NotJson);
        }
        loop {
            self.at += 1;
            match self.peek().ok_or(Stopped::NotJson)? {
                b'"' => break,
                b'\\' => self.at += 1,
                _ => {}
            }
        }
        self.at += 1;
        let quoted = self.text.get(start..self.at).ok_or(Stopped::NotJson)?;
        serde_json::from_str(quoted).map_err(|_| Stopped::NotJson)
    }

    /// A number, or one of JSON's three words.
    fn word(&mut self, kind: Kind) -> Kind {
        while matches!(self.peek(), Some(b'-' | b'+' | b'.' | b'0'..=b'9' | b'a'..=b'z' | b'E')) {
            self.at += 1;
        }
        kind
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    #[test]
    fn a_path_leads_to_the_value() {
        let text = r#" { "a\u0062": [1, {"c": "\"]}"}, null], "d": -1e-5 } "#;
        let top = places(text).unwrap();
        let found = top.follow(&KeyPath::default().key("ab").index(1).key("c"));
        assert!(matches!(found.place.kind, Kind::Text));
        assert_eq!((found.place.start, found.steps), (text.find(r#""\"]}""#).unwrap(), 3));
        assert_eq!(found.key_start, text.find("\"c\"").unwrap());
        assert_eq!(top.follow(&KeyPath::default().key("d").key("x")).steps, 1);
    }

    #[test]
    fn a_well_without_bottom_is_refused() {
        let text = "[".repeat(1_000_000);
        assert_eq!(places(&text).unwrap_err(), Stopped::TooDeep(DEEPEST + 1));
    }

    #[test]
    fn broken_text_is_given_up() {
        for text in ["", "{", "{\"a", "{\"a\\", "[1 2]", "{\"a\" 1}", "x", "[1,", "\"\\"] {
            assert_eq!(places(text).unwrap_err(), Stopped::NotJson, "{text}");
        }
    }
}

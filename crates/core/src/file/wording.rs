//! The readers' own messages, turned into words that a smith can act on.

/// What a reader's message says, in plain words. A message that a size or another check worded itself stays as it is.
pub(super) fn plain(message: &str) -> String {
    let message = without_place(message);
    unknown_name(message)
        .or_else(|| wrong_value(message))
        .or_else(|| quoted_after(message, "missing field ").map(|(key, _)| format!("the key \"{key}\" is missing")))
        .or_else(|| {
            quoted_after(message, "duplicate field ").map(|(key, _)| format!("the key \"{key}\" is here twice"))
        })
        .or_else(|| not_json(message).map(str::to_owned))
        .unwrap_or_else(|| message.to_owned())
}

/// A name or a text from the file, cut short where it would drown the message.
pub(super) fn shortened(text: &str) -> String {
    const MOST: usize = 40;
    match text.char_indices().nth(MOST) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

/// Whether a message speaks of the name that a choice is made by, as `taper` in `{ "taper": … }`.
pub(super) fn is_about_a_name(message: &str) -> bool {
    message.starts_with("unknown variant ")
}

/// Whether a message speaks of a key itself, not of its value.
pub(super) fn is_about_a_key(message: &str) -> bool {
    message.starts_with("unknown field ")
}

/// Whether a message speaks of JSON's brackets.
pub(super) fn is_about_brackets(message: &str) -> bool {
    matches!(without_place(message), "expected value" | "key must be a string")
}

/// What is said of a text that is no JSON at an offset; a stray word there, such as `NaN`, is quoted.
pub(super) fn not_json_at(message: &str, text: &str, offset: usize) -> String {
    if has_comma_before_bracket(text, offset) {
        return "the , before this has nothing behind it; leave it out".to_owned();
    }
    let words = plain(message);
    match without_place(message) {
        "expected value" | "expected ident" | "key must be a string" | "invalid number" => {
            stray_word(text, offset).map_or(words.clone(), |word| format!("\"{word}\" was found; {words}"))
        }
        _ => words,
    }
}

/// Whether a bracket closes right behind a comma.
fn has_comma_before_bracket(text: &str, offset: usize) -> bool {
    let parts = text.get(..offset).zip(text.get(offset..));
    parts.is_some_and(|(before, after)| after.starts_with(['}', ']']) && before.trim_end().ends_with(','))
}

/// The word at an offset where none belongs.
fn stray_word(text: &str, offset: usize) -> Option<&str> {
    let rest = text.get(offset..)?;
    let end = rest.find(|c: char| !c.is_alphanumeric()).unwrap_or(rest.len());
    let word = &rest[..end];
    (word.starts_with(char::is_alphabetic) && word.len() <= 20).then_some(word)
}

/// The message without the place that `serde_json` puts behind it.
fn without_place(message: &str) -> &str {
    match message.rfind(" at line ") {
        Some(end) if message[end..].contains(" column ") => &message[..end],
        _ => message,
    }
}

/// The name in backquotes after a prefix, and the rest.
fn quoted_after<'a>(message: &'a str, prefix: &str) -> Option<(&'a str, &'a str)> {
    message.strip_prefix(prefix)?.strip_prefix('`')?.split_once('`')
}

fn unknown_name(message: &str) -> Option<String> {
    if let Some((name, rest)) = quoted_after(message, "unknown variant ") {
        return Some(format!(
            "there is no \"{}\" here; {}",
            shortened(name),
            instead(name, rest, "what may be here is")
        ));
    }
    let (name, rest) = quoted_after(message, "unknown field ")?;
    Some(format!("there is no key \"{}\" here; {}", shortened(name), instead(name, rest, "the keys are")))
}

/// Names what could have been meant: the nearest name, or all of them.
fn instead(name: &str, rest: &str, lead: &str) -> String {
    let known: Vec<&str> = rest.split('`').skip(1).step_by(2).collect();
    let near = known.iter().map(|known| (distance(name, known), known)).min();
    match near {
        None => "nothing may be here".to_owned(),
        Some((distance, near)) if distance <= 2 => format!("was \"{near}\" meant?"),
        Some(_) => format!("{lead} {}", list(&known)),
    }
}

fn list(names: &[&str]) -> String {
    names.iter().map(|name| format!("\"{name}\"")).collect::<Vec<_>>().join(", ")
}

/// How many letters must be put in, left out or changed to get from one word to the other.
fn distance(from: &str, to: &str) -> usize {
    // A key of the wrong kind may be megabytes long; beyond this it is near to nothing.
    let end = from.char_indices().nth(40).map_or(from.len(), |(end, _)| end);
    strsim::levenshtein(&from[..end], to)
}

fn wrong_value(message: &str) -> Option<String> {
    let rest =
        ["invalid type: ", "invalid value: ", "invalid length "].iter().find_map(|lead| message.strip_prefix(lead))?;
    let (read, expected) = rest.rsplit_once(", expected ")?;
    if read == "unit variant" {
        return Some("its sizes are missing; they belong behind the name, as in { \"round\": \"12 mm\" }".to_owned());
    }
    Some(format!("{} was found; wanted here: {}", what_was_read(read), what_belongs(expected)))
}

fn what_was_read(read: &str) -> String {
    let in_backquotes = |kind: &str| read.strip_prefix(kind)?.strip_prefix('`')?.strip_suffix('`');
    if let Some(number) = in_backquotes("integer ").or_else(|| in_backquotes("floating point ")) {
        return format!("the number {number}");
    }
    if let Some(word) = in_backquotes("boolean ") {
        return word.to_owned();
    }
    match read {
        "map" => "a group in { }".to_owned(),
        "sequence" => "a list in [ ]".to_owned(),
        "null" | "unit value" => "null".to_owned(),
        _ => match read.strip_prefix("string ") {
            Some(text) => format!("the text {}", shortened(text)),
            None if read.chars().all(|c| c.is_ascii_digit()) => format!("a list of {read}"),
            None => read.to_owned(),
        },
    }
}

fn what_belongs(expected: &str) -> &str {
    match expected {
        "a string" | "string" => "text in quotes",
        "u32" | "u16" => "a whole number, not below 0",
        "f64" => "a number",
        "a sequence" => "a list in [ ]",
        "an array of length 2" => "a pair, along and across",
        "unit" | "unit variant" => "the name alone, in quotes",
        _ if expected.starts_with("struct ") || expected.starts_with("map") => "a group in { }",
        _ => expected,
    }
}

/// What `serde_json` says of a text that is no JSON.
fn not_json(message: &str) -> Option<&'static str> {
    Some(match message {
        "EOF while parsing a list" => "the file ends in the middle of a list; a ] is missing",
        "EOF while parsing an object" => "the file ends in the middle of a group; a } is missing",
        "EOF while parsing a string" => "the file ends in the middle of a text; a \" is missing",
        "EOF while parsing a value" => "the file ends where a value belongs",
        "expected `:`" => "a : belongs between a key and its value",
        "expected `,` or `]`" => "a , or the ] that ends the list belongs here",
        "expected `,` or `}`" => "a , or the } that ends the group belongs here",
        "expected ident" | "expected value" => "a value belongs here: text in quotes, a group in { } or a list in [ ]",
        "key must be a string" => "a key in quotes belongs here",
        "control character (\\u0000-\\u001F) found while parsing a string" => {
            "a text in quotes may not run over the end of a line, nor hold a tab; a \" may be missing"
        }
        "invalid escape" => "a \\ in a text must be written twice",
        "lone leading surrogate in hex escape" | "unexpected end of hex escape" | "invalid unicode code point" => {
            "this \\u is not a character"
        }
        "invalid number" => "this isn't a number",
        "number out of range" => "this number is too large",
        "trailing comma" => "a , has nothing after it here",
        "trailing characters" => "the plan is closed before this; nothing may follow its last }",
        "recursion limit exceeded" => "groups and lists are nested too deeply here",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn messages_are_put_in_plain_words() {
        for (message, plain_words) in [
            (
                "unknown field `lenght`, expected `length` or `section`",
                "there is no key \"lenght\" here; was \"length\" meant?",
            ),
            ("unknown field `colour`, expected `length`", "there is no key \"colour\" here; the keys are \"length\""),
            ("missing field `bars` at line 3 column 9", "the key \"bars\" is missing"),
            ("invalid type: integer `5`, expected a string", "the number 5 was found; wanted here: text in quotes"),
            (
                "invalid length 3, expected an array of length 2",
                "a list of 3 was found; wanted here: a pair, along and across",
            ),
            ("the length is 0", "the length is 0"),
        ] {
            assert_eq!(plain(message), plain_words);
        }
    }

    #[test]
    fn words_are_near_when_few_letters_differ() {
        assert_eq!(distance("lenght", "length"), 2);
        assert_eq!(distance("", "edge"), 4);
        assert!(distance(&"x".repeat(1_000_000), "edge") > 30);
    }
}

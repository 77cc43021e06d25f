//! The text of an SVG in true millimetres: its head, its figures and its words. The flat outlines and the sheets are both written
//! with it.

use std::fmt::{Arguments, Write};

/// An SVG as it is written.
#[derive(Debug)]
pub struct SvgText {
    out: String,
}

impl SvgText {
    /// One of a width and a height in mm, with a title; nothing is drawn yet.
    pub fn new([width, height]: [f64; 2], title: &str) -> Self {
        let (width, height, title) = (figure(width), figure(height), escaped(title));
        let out = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" \
             viewBox=\"0 0 {width} {height}\" xml:lang=\"en\">\n<title>{title}</title>\n"
        );
        Self { out }
    }

    /// Adds an element, whose words are [`escaped`] and whose lengths are [`figure`]s.
    pub fn put(&mut self, element: Arguments<'_>) {
        // Writing to a text cannot fail.
        let _ = self.out.write_fmt(element);
    }

    /// The whole text.
    pub fn finish(mut self) -> String {
        self.out.push_str("</svg>\n");
        self.out
    }
}

/// A length in mm to a tenth of a micrometre, without needless zeros; what is not a number is drawn at 0.
pub fn figure(mm: f64) -> String {
    if !mm.is_finite() {
        return "0".to_owned();
    }
    let text = format!("{mm:.4}");
    match text.trim_end_matches('0').trim_end_matches('.') {
        "-0" => "0".to_owned(),
        short => short.to_owned(),
    }
}

/// The words with the characters that mean something to XML, or that it does not allow, replaced (XML 1.0, production 2).
pub fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => safe.push(' '),
            c => safe.push(c),
        }
    }
    safe
}

//! A page of the handbook as it is shown: headings, paragraphs, lists, tables, code.

/// A run of words.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Span {
    pub(crate) words: String,
    pub(crate) is_strong: bool,
    pub(crate) is_code: bool,
    /// Where it leads, if it does.
    pub(crate) link: Option<String>,
}

/// A part of a page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Block {
    /// A heading, 1 for the page's own.
    Heading(usize, String),
    /// A paragraph.
    Words(Vec<Span>),
    /// A line of a list.
    Item(Vec<Span>),
    /// Rows of cells, the heads first.
    Table(Vec<Vec<Vec<Span>>>),
    /// Text as it is typed.
    Code(String),
}

/// Reads a page.
pub(crate) fn blocks(text: &str) -> Vec<Block> {
    let mut all = Vec::new();
    let mut lines = text.lines().peekable();
    while let Some(line) = lines.next() {
        let line = line.trim_end();
        if line.starts_with("```") {
            let code: Vec<&str> = lines.by_ref().take_while(|line| !line.starts_with("```")).collect();
            all.push(Block::Code(code.join("\n")));
        } else if let Some(head) = line.strip_prefix('#') {
            let more = head.chars().take_while(|letter| *letter == '#').count();
            all.push(Block::Heading(more + 1, plain(head.trim_start_matches('#').trim())));
        } else if line.starts_with('|') {
            let mut rows = vec![cells(line)];
            while let Some(row) = lines.next_if(|line| line.starts_with('|')) {
                let is_rule = row.chars().all(|letter| matches!(letter, '|' | '-' | ':' | ' '));
                if !is_rule {
                    rows.push(cells(row));
                }
            }
            all.push(Block::Table(rows));
        } else if let Some(item) = item(line) {
            all.push(Block::Item(spans(item)));
        } else if !line.is_empty() && !line.starts_with("![") {
            let mut words = line.trim().to_owned();
            while let Some(next) = lines.next_if(|next| is_running_on(next)) {
                words.push(' ');
                words.push_str(next.trim());
            }
            all.push(Block::Words(spans(&words)));
        }
    }
    all
}

fn item(line: &str) -> Option<&str> {
    let line = line.trim_start();
    let numbered = line.split_once(". ").filter(|(number, _)| number.parse::<u8>().is_ok()).map(|(_, rest)| rest);
    line.strip_prefix("- ").or_else(|| line.strip_prefix("* ")).or(numbered)
}

fn is_running_on(line: &str) -> bool {
    let line = line.trim_end();
    let begins_anew = ["#", "|", "![", "```"].iter().any(|sign| line.starts_with(sign));
    !line.is_empty() && !begins_anew && item(line).is_none()
}

fn cells(line: &str) -> Vec<Vec<Span>> {
    // A stroke within a cell is written with a backslash before it.
    let line = line.trim().trim_start_matches('|').trim_end_matches('|').replace("\\|", "\u{1}");
    line.split('|').map(|cell| spans(&cell.trim().replace('\u{1}', "|"))).collect()
}

/// The words without their signs.
pub(crate) fn plain(text: &str) -> String {
    spans(text).into_iter().map(|span| span.words).collect()
}

/// Reads the runs of a line: `**strong**`, `*words*`, `` `code` ``, `[words](where)`.
pub(crate) fn spans(text: &str) -> Vec<Span> {
    let mut all: Vec<Span> = Vec::new();
    let mut rest = text;
    let mut is_strong = false;
    while let Some(at) = rest.find(['*', '`', '[']) {
        let (before, sign) = rest.split_at(at);
        push(&mut all, Span { words: before.to_owned(), is_strong, ..Span::default() });
        rest = if let Some(code) = sign.strip_prefix('`') {
            let (code, after) = code.split_once('`').unwrap_or((code, ""));
            push(&mut all, Span { words: code.to_owned(), is_code: true, is_strong, link: None });
            after
        } else if let Some((words, link, after)) = link(sign) {
            push(&mut all, Span { words: plain(words), is_strong, is_code: false, link: Some(link.to_owned()) });
            after
        } else if sign.starts_with('*') {
            let signs = sign.len() - sign.trim_start_matches('*').len();
            is_strong = !is_strong;
            &sign[signs..]
        } else {
            push(&mut all, Span { words: "[".to_owned(), is_strong, ..Span::default() });
            &sign[1..]
        };
    }
    push(&mut all, Span { words: rest.to_owned(), is_strong, ..Span::default() });
    all
}

fn push(all: &mut Vec<Span>, span: Span) {
    if !span.words.is_empty() {
        all.push(span);
    }
}

fn link(text: &str) -> Option<(&str, &str, &str)> {
    let (words, rest) = text.strip_prefix('[')?.split_once("](")?;
    let (link, after) = rest.split_once(')')?;
    (!words.contains('[')).then_some((words, link, after))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_is_read_into_its_parts() {
        let text = "# Head\n\nOne line.\nIts *next*, `code`, [page](a.md).\n\n- item\n\n| a | b \\| c |\n|---|---|\n| 1 | 2 |\n\n```\nx\n```\n![p](p.png)\n";
        let all = blocks(text);
        assert_eq!(all.len(), 5, "{all:?}");
        assert_eq!(all[0], Block::Heading(1, "Head".to_owned()));
        let Block::Words(words) = &all[1] else { panic!("{all:?}") };
        assert_eq!(words.iter().map(|span| span.words.as_str()).collect::<String>(), "One line. Its next, code, page.");
        assert!(words.iter().any(|span| span.link.as_deref() == Some("a.md")));
        let Block::Table(rows) = &all[3] else { panic!("{all:?}") };
        assert_eq!((rows.len(), plain("b \\| c").len(), rows[0][1][0].words.as_str()), (2, 6, "b | c"));
        assert_eq!(all[4], Block::Code("x".to_owned()));
    }
}

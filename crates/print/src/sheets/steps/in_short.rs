//! From where a place is measured, in short.

/// From where a place is measured, in short: the part of the step is not named again, and of a mark that has moved only where it is
/// now.
pub(in crate::sheets) fn in_short(line: &str, title: &str) -> String {
    let (head, rest) = line.split_once(": ").unwrap_or(("", line));
    let head = match (head.find('“'), title.matches('“').count()) {
        (Some(at), 1) if title.contains(&head[at..]) => {
            let head = head[..at].trim_end();
            head.strip_suffix(" of").or(head.strip_suffix(" in")).unwrap_or(head)
        }
        _ => head,
    };
    let head = head.strip_prefix("the ").unwrap_or(head);
    let rest = match rest.split_once(", struck at ") {
        Some((mark, at)) => match at.split_once(", now ") {
            Some((_, now)) => format!("{mark}, now {now}"),
            None => format!("{mark} at {at}"),
        },
        None => rest.to_owned(),
    };
    if head.is_empty() { rest } else { format!("{head}: {rest}") }
}

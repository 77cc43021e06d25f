//! The pages of the handbook, as they are built into the program.

/// A page: its file from the handbook's folder on, and its text.
pub(crate) struct Page {
    pub(crate) file: &'static str,
    pub(crate) text: &'static str,
}

/// Every page, in the order in which they are listed.
pub(crate) const PAGES: [Page; 53] = [
    Page { file: "README.md", text: include_str!("../../../../../docs/handbook/README.md") },
    Page { file: "first-plan.md", text: include_str!("../../../../../docs/handbook/first-plan.md") },
    Page { file: "window.md", text: include_str!("../../../../../docs/handbook/window.md") },
    Page { file: "marks-first.md", text: include_str!("../../../../../docs/handbook/marks-first.md") },
    Page { file: "in-your-own-way.md", text: include_str!("../../../../../docs/handbook/in-your-own-way.md") },
    Page { file: "bars.md", text: include_str!("../../../../../docs/handbook/bars.md") },
    Page { file: "forms.md", text: include_str!("../../../../../docs/handbook/forms.md") },
    Page { file: "forms/ball-and-cube.md", text: include_str!("../../../../../docs/handbook/forms/ball-and-cube.md") },
    Page { file: "forms/collar.md", text: include_str!("../../../../../docs/handbook/forms/collar.md") },
    Page { file: "forms/drawn.md", text: include_str!("../../../../../docs/handbook/forms/drawn.md") },
    Page { file: "forms/flag.md", text: include_str!("../../../../../docs/handbook/forms/flag.md") },
    Page { file: "forms/hole.md", text: include_str!("../../../../../docs/handbook/forms/hole.md") },
    Page { file: "forms/open.md", text: include_str!("../../../../../docs/handbook/forms/open.md") },
    Page { file: "forms/peak.md", text: include_str!("../../../../../docs/handbook/forms/peak.md") },
    Page { file: "forms/plain.md", text: include_str!("../../../../../docs/handbook/forms/plain.md") },
    Page { file: "forms/rivet.md", text: include_str!("../../../../../docs/handbook/forms/rivet.md") },
    Page { file: "forms/shoulder.md", text: include_str!("../../../../../docs/handbook/forms/shoulder.md") },
    Page { file: "forms/split.md", text: include_str!("../../../../../docs/handbook/forms/split.md") },
    Page { file: "forms/taper.md", text: include_str!("../../../../../docs/handbook/forms/taper.md") },
    Page { file: "forms/tenon.md", text: include_str!("../../../../../docs/handbook/forms/tenon.md") },
    Page { file: "forms/trim-and-hold.md", text: include_str!("../../../../../docs/handbook/forms/trim-and-hold.md") },
    Page { file: "forms/weld.md", text: include_str!("../../../../../docs/handbook/forms/weld.md") },
    Page { file: "cut-to-shape.md", text: include_str!("../../../../../docs/handbook/cut-to-shape.md") },
    Page { file: "bends.md", text: include_str!("../../../../../docs/handbook/bends.md") },
    Page { file: "bends/corner.md", text: include_str!("../../../../../docs/handbook/bends/corner.md") },
    Page { file: "bends/curve.md", text: include_str!("../../../../../docs/handbook/bends/curve.md") },
    Page { file: "bends/ring.md", text: include_str!("../../../../../docs/handbook/bends/ring.md") },
    Page { file: "bends/scroll.md", text: include_str!("../../../../../docs/handbook/bends/scroll.md") },
    Page { file: "bends/socket.md", text: include_str!("../../../../../docs/handbook/bends/socket.md") },
    Page { file: "bends/twist.md", text: include_str!("../../../../../docs/handbook/bends/twist.md") },
    Page { file: "on-the-way.md", text: include_str!("../../../../../docs/handbook/on-the-way.md") },
    Page { file: "dies.md", text: include_str!("../../../../../docs/handbook/dies.md") },
    Page { file: "repeats.md", text: include_str!("../../../../../docs/handbook/repeats.md") },
    Page { file: "tolerances.md", text: include_str!("../../../../../docs/handbook/tolerances.md") },
    Page { file: "asked-sizes.md", text: include_str!("../../../../../docs/handbook/asked-sizes.md") },
    Page { file: "motifs.md", text: include_str!("../../../../../docs/handbook/motifs.md") },
    Page { file: "joints.md", text: include_str!("../../../../../docs/handbook/joints.md") },
    Page { file: "tracing.md", text: include_str!("../../../../../docs/handbook/tracing.md") },
    Page { file: "findings.md", text: include_str!("../../../../../docs/handbook/findings.md") },
    Page { file: "cautions.md", text: include_str!("../../../../../docs/handbook/cautions.md") },
    Page { file: "order-of-work.md", text: include_str!("../../../../../docs/handbook/order-of-work.md") },
    Page { file: "order-in-the-window.md", text: include_str!("../../../../../docs/handbook/order-in-the-window.md") },
    Page { file: "heat-model.md", text: include_str!("../../../../../docs/handbook/heat-model.md") },
    Page { file: "heats-beside-books.md", text: include_str!("../../../../../docs/handbook/heats-beside-books.md") },
    Page { file: "log.md", text: include_str!("../../../../../docs/handbook/log.md") },
    Page { file: "mark-sheet.md", text: include_str!("../../../../../docs/handbook/mark-sheet.md") },
    Page { file: "bench-sheet.md", text: include_str!("../../../../../docs/handbook/bench-sheet.md") },
    Page { file: "step-sheets.md", text: include_str!("../../../../../docs/handbook/step-sheets.md") },
    Page { file: "templates.md", text: include_str!("../../../../../docs/handbook/templates.md") },
    Page { file: "rack.md", text: include_str!("../../../../../docs/handbook/rack.md") },
    Page { file: "cut-list.md", text: include_str!("../../../../../docs/handbook/cut-list.md") },
    Page { file: "quote.md", text: include_str!("../../../../../docs/handbook/quote.md") },
    Page { file: "words.md", text: include_str!("../../../../../docs/handbook/words.md") },
];

/// What a page is called: its first heading.
pub(crate) fn title(at: usize) -> &'static str {
    let text = PAGES.get(at).map_or("", |page| page.text);
    text.lines().find_map(|line| line.strip_prefix("# ")).unwrap_or("The handbook")
}

/// The pages that have all of these words, in small letters; those that have one in their title first.
pub(crate) fn with(words: &[&str]) -> Vec<usize> {
    let has = |text: &str, word: &&str| text.to_lowercase().contains(*word);
    let has_all = |at: &usize| {
        let text = PAGES.get(*at).map_or("", |page| page.text).to_lowercase();
        words.iter().all(|word| text.contains(*word))
    };
    let mut found: Vec<usize> = (0..PAGES.len()).filter(has_all).collect();
    found.sort_by_key(|at| !words.iter().any(|word| has(title(*at), word)));
    found
}

/// The page that a link on another one leads to; none where it leads out of the handbook.
pub(crate) fn linked(from: usize, link: &str) -> Option<usize> {
    let link = link.split('#').next().filter(|link| !link.is_empty())?;
    let mut parts: Vec<&str> = PAGES.get(from)?.file.split('/').collect();
    parts.pop();
    for part in link.split('/') {
        match part {
            ".." => {
                parts.pop()?;
            }
            part => parts.push(part),
        }
    }
    let file = parts.join("/");
    PAGES.iter().position(|page| page.file == file)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use std::path::Path;

    fn count(folder: &Path) -> usize {
        let files = std::fs::read_dir(folder).unwrap().flatten().map(|file| file.path());
        files
            .map(|path| match path.is_dir() {
                true => count(&path),
                false => usize::from(path.extension().is_some_and(|ending| ending == "md")),
            })
            .sum()
    }

    #[test]
    fn every_page_of_the_handbook_is_built_in() {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/handbook");
        assert_eq!(count(&folder), PAGES.len());
        assert!((0..PAGES.len()).all(|at| !title(at).is_empty()));
    }

    #[test]
    fn pages_are_found_by_any_word_and_by_their_links() {
        let at = |file: &str| PAGES.iter().position(|page| page.file == file);
        assert_eq!(with(&["cut", "list"]).first().copied(), at("cut-list.md"));
        assert!(with(&["quenchless"]).is_empty());
        assert_eq!(linked(at("forms.md").unwrap(), "forms/taper.md#x"), at("forms/taper.md"));
        assert_eq!(linked(at("forms/taper.md").unwrap(), "../bends.md"), at("bends.md"));
        assert_eq!(linked(at("rack.md").unwrap(), "../rack-files.md"), None);
    }
}

//! The words on the sheet can be taken out again: title, totals, the number of the page.

use crate::paper::{Printed, run};
use fh_print::paper::{Orientation, Paper};
use fh_store::demos::DEMOS;
use tests::mm;

/// The words of one page, counted from 1, or of all.
pub(crate) fn words(printed: &Printed, page: Option<usize>) -> String {
    let pdf = printed.pdf().to_string_lossy().into_owned();
    match page {
        Some(page) => {
            let page = page.to_string();
            run("pdftotext", &["-layout", "-f", &page, "-l", &page, &pdf, "-"])
        }
        None => run("pdftotext", &["-layout", &pdf, "-"]),
    }
}

/// Without spaces, and with every fraction bar as people type it: a stacked fraction falls apart when it is taken out.
pub(crate) fn joined(words: &str) -> String {
    words.chars().filter(|c| !c.is_whitespace()).map(|c| if c == '\u{2044}' { '/' } else { c }).collect()
}

#[test]
fn every_sheet_tells_its_title_its_marks_and_its_pages() {
    for demo in DEMOS {
        for paper in Paper::ALL {
            let printed = Printed::new(demo.file_name, paper, Orientation::Landscape);
            let all = joined(&words(&printed, None));
            assert!(all.contains(&joined(&printed.plan.title)), "{}: {all}", demo.file_name);
            let of_bar = |bar: &fh_core::balance::BarBalance| {
                let ends =
                    (0..bar.segments.len()).map(|at| (bar.block_shop(at).unwrap()[1], bar.block_exact(at).unwrap()[1]));
                ends.collect::<Vec<_>>()
            };
            for (shop, exact) in printed.balance.bars.iter().flat_map(of_bar) {
                let total = joined(&shop.text());
                let exact = format!("{:.2}", mm(exact));
                assert!(all.contains(&total), "{}: {total} in {all}", demo.file_name);
                assert!(all.contains(&exact), "{}: {exact} in {all}", demo.file_name);
            }
            let count = printed.drawing.pages.len();
            for number in 1..=count {
                let page = words(&printed, Some(number));
                assert!(page.contains(&format!("page {number} of {count}")), "{}: {page}", demo.file_name);
                assert!(page.contains("100 mm") && page.contains("4 in"), "{}: {page}", demo.file_name);
            }
        }
    }
}

#[test]
fn the_document_is_called_by_its_title() {
    let printed = Printed::new("gate-hook.plan.json", Paper::A4, Orientation::Landscape);
    let told = run("pdfinfo", &[&printed.pdf().to_string_lossy()]);
    let title = told.lines().find(|line| line.starts_with("Title:")).unwrap();
    assert!(title.contains(&printed.plan.title), "{title}");
}

//! The bench sheet as it comes out of the printer.

use crate::paper::words::{joined, words};
use crate::paper::{Printed, run};
use fh_core::file;
use fh_print::paper::Paper;
use fh_print::sheets::{Sheet, document, usual_orientation};
use fh_store::demos::DEMOS;
use fh_work::{Shop, work_out};

fn printed(text: &str, paper: Paper) -> Printed {
    Printed::of(file::read(text.as_bytes()).unwrap(), |plan, balance| {
        document(plan, balance, &[Sheet::Bench], paper, usual_orientation(&[Sheet::Bench]))
    })
}

/// Whether what a step is of is named in a line that tells steps of one kind together: “a”, “b” and “c” × 3.
fn is_in_a_joined_line(all: &str, title: &str) -> bool {
    let Some(name) = title.split_inclusive('”').next().and_then(|begun| begun.find('“').map(|at| joined(&begun[at..])))
    else {
        return false;
    };
    [format!("{name},“"), format!("{name}and“"), format!("and{name}×")].iter().any(|place| all.contains(place))
}

#[test]
fn every_demo_prints_its_steps_and_marks_on_its_bench_sheet() {
    for (index, demo) in DEMOS.iter().enumerate() {
        let printed = printed(demo.text, Paper::ALL[index % 2]);
        let all = joined(&words(&printed, None));
        let worked = work_out(&printed.plan, &printed.balance, &Shop::default());
        for step in &worked.steps {
            // A title may be broken over two lines.
            let title: String = joined(&step.title).chars().take(12).collect();
            assert!(
                all.contains(&title) || is_in_a_joined_line(&all, &step.title),
                "{}: {title} in {all}",
                demo.file_name
            );
        }
        for bar in &printed.balance.bars {
            for at in 0..bar.segments.len() {
                let total = joined(&bar.block_shop(at).unwrap()[1].text());
                assert!(all.contains(&total), "{}: {total} in {all}", demo.file_name);
            }
        }
        let info = run("pdfinfo", &[&printed.pdf().to_string_lossy()]);
        let pages = info.lines().find_map(|line| line.strip_prefix("Pages:")).unwrap().trim().parse::<usize>().unwrap();
        let is_one_leaf = printed.plan.bars.len() == 1 && printed.plan.bars[0].flat().len() <= 20;
        assert!(!is_one_leaf || pages <= 2, "{}: {pages} pages", demo.file_name);
    }
}

#[test]
fn it_is_black_and_white() {
    let demo = DEMOS.iter().find(|demo| demo.file_name == "gate-hook.plan.json").unwrap();
    let printed = printed(demo.text, Paper::A4);
    let (pdf, target) = (printed.pdf(), printed.folder.path().join("colors"));
    run("pdftoppm", &["-r", "50", "-singlefile", &pdf.to_string_lossy(), &target.to_string_lossy()]);
    let dots = std::fs::read(target.with_extension("ppm")).unwrap();
    // After a head of three lines, three bytes a dot.
    let start = dots.iter().enumerate().filter(|(_, byte)| **byte == b'\n').map(|(at, _)| at).nth(2).unwrap() + 1;
    let colored = dots[start..].chunks_exact(3).filter(|dot| dot.iter().any(|part| *part != dot[0])).count();
    assert_eq!(colored, 0);
    assert!(dots[start..].iter().any(|part| *part < 40), "it is no blank page");
}

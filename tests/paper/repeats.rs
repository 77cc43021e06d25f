//! A row of marks along a part is told on paper with its step, its first and every place.

use crate::paper::{Printed, run};
use fh_print::paper::{Orientation, Paper};

#[test]
fn a_row_of_chisel_lines_is_told_with_every_place() {
    for paper in Paper::ALL {
        for orientation in [Orientation::Landscape, Orientation::Portrait] {
            let printed = Printed::new("dibber.plan.json", paper, orientation);
            let words = run("pdftotext", &["-raw", &printed.pdf().to_string_lossy(), "-"]);
            let joined: String =
                words.chars().filter(|c| !c.is_whitespace()).collect::<String>().replace('\u{2044}', "/");
            // Worked by hand: 4 in less 2 × 1/4 in are 9 steps of 3/8 in and 1/8 in over, 1/16 in at each end.
            let told = "chisellines:10at3/8in,first5/16infromtheshoulder";
            assert!(joined.contains(told), "{} {orientation:?}: {words}", paper.name());
            let places = "at5/16,11/16,11/16,17/16,113/16,23/16,29/16,215/16,35/16,311/16infromtheshoulder,forged";
            assert!(joined.contains(places), "{} {orientation:?}: {words}", paper.name());
        }
    }
}

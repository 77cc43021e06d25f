//! How the piece hangs: turned once, and kept so.

use super::Editor;
use crate::state::{Command, Standard};
use fh_core::edit::{Edit, PlanHeader};
use fh_core::plan::Hangs;

impl Editor {
    pub(super) fn run_hang(&mut self, command: Command) {
        let now = &self.document.plan().hangs;
        let next = match command {
            Command::QuarterTurn => now.turned_by(quarter_about(self.piece_view.seen_rows()[1])),
            Command::HangAsSeen => now.turned_by(self.piece_view.seen_rows()),
            _ => Ok(Hangs::default()),
        };
        let Ok(hangs) = next else { return };
        let header = PlanHeader { hangs, ..PlanHeader::from(self.document.plan()) };
        if self.edit(&Edit::SetPlan(Box::new(header))) {
            if command != Command::QuarterTurn {
                self.piece_view.look_from(Standard::Front);
            }
            self.piece_view.fit();
            self.say("It hangs so from now on, here and on paper. Undo takes it back.");
        }
    }
}

/// A quarter turn as the hands of a clock go the other way, seen against the direction away from whoever looks: about the
/// nearest of the three directions, so that quarter turns stay quarter turns.
fn quarter_about(away: [f64; 3]) -> [[f64; 3]; 3] {
    let axis = (0..3).fold(0, |best: usize, axis| if away[axis].abs() > away[best].abs() { axis } else { best });
    let mut a = [0.0; 3];
    a[axis] = -away[axis].signum();
    let [x, y, z] = a;
    let cross = [[0.0, -z, y], [z, 0.0, -x], [-y, x, 0.0]];
    [0, 1, 2].map(|row| [0, 1, 2].map(|column| a[row] * a[column] + cross[row][column]))
}

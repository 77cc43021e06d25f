//! One step of an order with everything that follows for it.

use crate::bar::held::Hold;
use crate::bar::lengths::Lengths;
use crate::bar::progress::{Progress, Stage};
use crate::job::site::Site;
use crate::job::task::Task;
use crate::job::why::Why;
use crate::says::marks::{LaidLine, MarkLine};
use crate::says::size::Size;
use fh_core::metal::View;
use fh_core::plan::{AnvilPlace, Step};

/// One step with everything that follows for it.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkedStep {
    /// The step as it stands in the plan, or as it is proposed.
    pub step: Step,
    /// The bar it works on, counted from 0; none where the whole piece is meant.
    pub bar: Option<usize>,
    /// What it does.
    pub tasks: Vec<Task>,
    /// What it is called.
    pub title: String,
    /// What its parts become, in the plan's words.
    pub becomes: Vec<String>,
    /// Why it stands where it does.
    pub because: Vec<String>,
    /// The later steps that it has to come before, counted from 0, and why; of each reason the first.
    pub before: Vec<(usize, Why)>,
    /// What it is done with; empty where nothing is said.
    pub tool: String,
    /// Where it is done.
    pub place: AnvilPlace,
    /// How the bar is laid there; none where it does not matter.
    pub lay: Option<String>,
    /// The radius of the edge it is worked over, in words.
    pub edge: Option<String>,
    /// The side of the bar that is up, in words.
    pub up: Option<String>,
    /// The sizes to reach.
    pub sizes: Vec<Size>,
    /// Where the tool goes, in a few words: on which side of the mark, on which face.
    pub aim: Option<String>,
    /// From where its places are measured, in words.
    pub measure: Vec<String>,
    /// The marks that it lays off.
    pub marks: Vec<MarkLine>,
    /// The holes and slits that it lays off with them.
    pub laid: Vec<LaidLine>,
    /// How the bar is seen, the side that is marked in sight; none where it lays nothing off.
    pub marked_view: Option<View>,
    /// From where to where slits stand open after it, in mm along the bar as it is then.
    pub slits_mm: Vec<[f64; 2]>,
    /// Where the bar is necked and not forged yet, in mm along the bar as it is after the step.
    pub necks_mm: Vec<f64>,
    /// What has to be heated along with it, because the next step follows in the same heat; after the last heat of a steel that
    /// hardens, how it is normalised.
    pub heat_with: Option<String>,
    /// What the plan notes on the parts that it is the first to work.
    pub part_notes: Vec<String>,
    /// What must not be corrected yet.
    pub leave: Option<String>,
    /// What to check, and with which gauge.
    pub check: Option<String>,
    /// What to beware of.
    pub caution: Option<String>,
    /// Its first heat, counted from 1; 0 before the first.
    pub heat: usize,
    /// How many heats it needs; 0 where it is done cold.
    pub needs: usize,
    /// The heat of the next step, where that closes in what is brushed here; none of other steps.
    pub brushed_in: Option<usize>,
    /// How many minutes it takes.
    pub minutes: f64,
    /// How many minutes of work one heat gives it; none where it is done cold.
    pub heat_minutes: Option<f64>,
    /// How hot it comes out of the fire, and how cold it may get, in °C; none where it is done cold, or not worked out.
    pub heat_celsius: Option<[f64; 2]>,
    /// What has to be hot, in mm along the bar as it is before the step, for it and, where it is done in one heat, for the steps
    /// that follow in that heat; none where it is done cold.
    pub zone_mm: Option<[f64; 2]>,
    /// Where that lies on the bar as it is after the step, in mm; beyond its end where it is cut off.
    pub hot_mm: Option<[f64; 2]>,
    /// How long that is with what the steps need that follow in the same heat, in mm; of more heats than one it is so in the last.
    /// None where none follows.
    pub(crate) with_next_mm: Option<f64>,
    /// What is held; none where it is done cold, or where nothing is there.
    pub hold: Option<Hold>,
    /// The bar that is held at a joint, counted from 0; none of a step on a bar, which is held itself.
    pub held_bar: Option<usize>,
    /// How far each part of its bar has come when it is done.
    pub stages: Vec<Stage>,
}

impl WorkedStep {
    /// Whether it is done hot.
    pub fn is_hot(&self) -> bool {
        self.needs > 0
    }

    /// Where a part of its bar lies after it, in mm.
    pub(crate) fn extent_after(&self, site: &Site<'_>, at: usize) -> [f64; 2] {
        self.lengths_after(site).extent([at].iter())
    }

    /// Where all parts of its bar lie after it.
    pub(crate) fn lengths_after(&self, site: &Site<'_>) -> Lengths {
        Lengths::new(site, &self.progress())
    }

    /// How far its bar is after it.
    pub(crate) fn progress(&self) -> Progress {
        Progress { stages: self.stages.clone(), marked: true }
    }

    /// The parts that it works on, counted through the bar.
    pub fn parts(&self) -> Vec<usize> {
        let mut parts: Vec<usize> = self.tasks.iter().filter_map(|task| task.part).collect();
        parts.dedup();
        parts
    }
}

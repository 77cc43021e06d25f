//! The bars after a step: drawn in place of the finished ones, with what the step changes lit and what is hot.

use crate::figures;
use fh_core::balance::{Balance, BarBalance};
use fh_core::metal::View;
use fh_core::plan::Plan;
use fh_work::{Worked, after, joined_after};

/// What is hot in a step.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Hot {
    /// The bar.
    pub(crate) bar: usize,
    /// From where to where, in mm on the bar as it is after the step.
    pub(crate) mm: [f64; 2],
    /// How long it is before the step, in words.
    pub(crate) words: String,
    /// The same with its head, as it stands over the bar after the step.
    pub(crate) label: String,
}

/// The bars after a step.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Shown {
    /// After how many steps.
    pub(crate) after: usize,
    /// Of how many.
    pub(crate) of: usize,
    /// A number that no other state has.
    pub(crate) shot: u64,
    /// The plan with those joints only that are made by then.
    pub(crate) plan: Plan,
    /// The bars.
    pub(crate) balance: Balance,
    /// The bar that the step works on; none where it is the whole piece.
    pub(crate) bar: Option<usize>,
    /// The segments that it changes.
    pub(crate) lit: Vec<usize>,
    /// What is hot.
    pub(crate) hot: Option<Hot>,
    /// The length of the longest bar at any time, in mm: what grows is drawn to one scale.
    pub(crate) longest_mm: f64,
    /// How thick each bar is once it is forged, from the side and from above, in mm.
    pub(crate) thickest_mm: Vec<[f64; 2]>,
}

impl Shown {
    /// After the step at a place.
    pub(crate) fn new(plan: &Plan, balance: &Balance, worked: &Worked, at: usize, shot: u64) -> Self {
        let now = after(plan, balance, worked, at + 1);
        let step = worked.steps.get(at);
        let bar = step.and_then(|step| step.bar);
        let longest = balance.bars.iter().map(|bar| figures::mm(bar.forged_length).max(figures::mm(bar.stock_length)));
        Self {
            after: at + 1,
            of: worked.steps.len(),
            shot,
            plan: joined_after(plan, worked, at + 1),
            bar,
            lit: step.map(fh_work::WorkedStep::parts).unwrap_or_default(),
            hot: hot(plan, worked, at),
            balance: now,
            longest_mm: longest.fold(0.0, f64::max),
            thickest_mm: balance
                .bars
                .iter()
                .map(|bar| [View::Side, View::Top].map(|view| thickness(bar, view)))
                .collect(),
        }
    }

    /// The segments that the step changes on a bar.
    pub(crate) fn lit_on(&self, bar: usize) -> &[usize] {
        if self.bar == Some(bar) { &self.lit } else { &[] }
    }

    /// What is hot on a bar.
    pub(crate) fn hot_on(&self, bar: usize) -> Option<&Hot> {
        self.hot.as_ref().filter(|hot| hot.bar == bar)
    }
}

/// How thick a forged bar is, seen from a side, in mm.
fn thickness(bar: &BarBalance, view: View) -> f64 {
    let ups = bar.segments.iter().flat_map(|segment| segment.silhouette_mm(view)).map(|[_, up]| up);
    let [low, high] = ups.fold([0.0_f64; 2], |[low, high], up| [low.min(up), high.max(up)]);
    high - low
}

fn hot(plan: &Plan, worked: &Worked, at: usize) -> Option<Hot> {
    let step = worked.steps.get(at)?;
    let (bar, mm, (head, words)) = (step.bar?, step.hot_mm?, step.hot_length(plan)?);
    let label = format!("{head}: {words}");
    (mm[1] > mm[0]).then_some(Hot { bar, mm, words, label })
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use fh_core::balance::balance;
    use fh_core::file;
    use fh_print::drawing::Item;
    use fh_print::paper::Paper;
    use fh_print::sheets::{Sheet, document, usual_orientation};
    use fh_store::demos::DEMOS;
    use fh_work::{Shop, work_out};

    /// What a drawing says to be hot, one after the other, without the number of heats.
    fn on_paper(plan: &Plan, balance: &Balance) -> Vec<String> {
        let sheets = [Sheet::Steps];
        let drawing = document(plan, balance, &sheets, Paper::A4, usual_orientation(&sheets));
        let items = drawing.pages.iter().flat_map(|page| &page.items);
        let words = items.filter_map(|item| if let Item::Text(text) = item { Some(text.content()) } else { None });
        let hot = words.filter(|words| words.starts_with("Hot: ") || words.starts_with("Hot at first: "));
        // On paper it begins a line with how warm it is, and a fraction has a bar of its own.
        hot.map(|words| words.split([',', '·']).next().unwrap().trim().replace("Hot", "hot").replace('⁄', "/"))
            .collect()
    }

    #[test]
    fn screen_and_paper_say_the_same_to_be_hot_at_every_step_of_every_demo() {
        let mut most = 0;
        for demo in DEMOS {
            let plan = file::read(demo.text.as_bytes()).unwrap();
            let balance = balance(&plan);
            let worked = work_out(&plan, &balance, &Shop::default());
            let shown = (0..worked.steps.len()).filter_map(|at| Shown::new(&plan, &balance, &worked, at, 0).hot);
            let on_screen: Vec<Hot> = shown.collect();
            for hot in &on_screen {
                assert!(worked.steps.iter().any(|step| step.hot_mm == Some(hot.mm)), "{}", demo.file_name);
            }
            let labels: Vec<&str> = on_screen.iter().map(|hot| hot.label.as_str()).collect();
            assert_eq!(labels, on_paper(&plan, &balance), "{}", demo.file_name);
            most = most.max(labels.len());
        }
        assert!(most > 10, "{most} steps at the most say what is hot");
    }
}

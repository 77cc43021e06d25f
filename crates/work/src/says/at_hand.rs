//! What has to be hot and what holds the bar, in words.

use crate::bar::held::Hold;
use crate::says::usual::{self, Fit};
use crate::says::words::hot_length;
use crate::step::WorkedStep;
use fh_core::describe::segment_name;
use fh_core::plan::{AnvilPlace, Form, Plan};

impl Hold {
    /// How what is held is cooled first, after its name: `, cooled and tested`; empty where it is cold.
    pub fn cool_words(&self, plan: &Plan) -> &'static str {
        match (self.cool_first, self.by_hand, plan.material().quench.may) {
            (false, _, _) => "",
            (true, false, true) => ", cooled",
            (true, false, false) => ", cooled in air, never in water",
            (true, true, true) => ", cooled and tested",
            (true, true, false) => ", cooled in air, never in water, and tested",
        }
    }
}

impl WorkedStep {
    /// What holds the bar, in words: that nothing stays cold where that is so; none where it is done cold or in the vice.
    pub fn held_words(&self, plan: &Plan) -> Option<String> {
        let hold = self.hold.filter(|_| self.place != AnvilPlace::Vice)?;
        let bar = plan.bars.get(self.bar.or(self.held_bar)?)?;
        if hold.length_mm <= 0.0 {
            // A rivet stands in its header.
            let in_header = |at: &usize| matches!(bar.segment(*at).map(|part| &part.form), Some(Form::Rivet(_)));
            return (!self.parts().iter().any(in_header)).then(|| "nothing stays cold to hold".to_owned());
        }
        let [wide, thick] = hold.jaw_mm.map(|mm| usual::words(plan, usual::whole_mm(plan, mm, Fit::Near)));
        let jaw = match hold.jaw_mm {
            [width, _] if width > Hold::WIDE => format!("flat tongs, jaw {thick}"),
            _ if wide == thick => format!("tongs, jaw {thick}"),
            _ => format!("tongs, jaw {wide} × {thick}"),
        };
        let side = if hold.from_the_side { " from the side" } else { "" };
        let poor = if hold.is_poor { "; with care, nothing better stays cold" } else { "" };
        let cool = hold.cool_words(plan);
        let name = format!("“{}”", segment_name(bar, hold.part));
        // Where all of the bar is meant, another part is cold in each heat.
        let is_whole = self.bar.is_some() && self.parts().is_empty();
        let at = if is_whole { format!("it where it is cold, as at {name},") } else { name };
        Some(match (hold.by_hand, hold.is_propped()) {
            (true, true) => format!("hold {at} by hand, the bar on a stand or with a helper{cool}"),
            (true, false) => format!("hold {at} by hand{cool}"),
            _ => format!("hold {}{side}: {jaw}{cool}{poor}", at.trim_end_matches(',')),
        })
    }

    /// What has to be hot, in words with their head: `hot: 40 mm`; none where it is done cold or the whole bar is meant.
    pub fn hot_words(&self, plan: &Plan) -> Option<String> {
        self.hot_length(plan).map(|(head, length)| format!("{head}: {length}"))
    }

    /// How long the last of several heats is with what the steps need that follow in it; none where none follows.
    pub fn with_next_length(&self, plan: &Plan) -> Option<String> {
        self.with_next_mm.filter(|_| self.needs > 1).map(|mm| hot_length(plan, mm))
    }

    /// The head and the length of what has to be hot, `hot` and `40 mm`; none where it is done cold or the whole bar is meant.
    ///
    /// The length is that before the step; where the step makes it much longer, the head is `hot at first`.
    pub fn hot_length(&self, plan: &Plan) -> Option<(&'static str, String)> {
        let [from, to] = self.zone_mm?;
        let [now_from, now_to] = self.hot_mm?;
        let head = if now_to - now_from > 1.05 * (to - from) { "hot at first" } else { "hot" };
        Some((head, hot_length(plan, to - from)))
    }
}

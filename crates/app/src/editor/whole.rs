//! What happens to the whole piece: its other hand, another bar, another size; and the plan beside another one.

use super::Editor;
use crate::dialogs::{ComparePlans, Dialog, OtherBar, ScalePiece};
use crate::state::{Against, Command, Focus, WholeAsk, joint_to_open};
use egui::Context;
use fh_core::balance::balance;
use fh_core::edit::{Edit, WholeChange};
use fh_core::plan::{Joint, Plan};
use fh_piece::{Quality, hung};
use fh_store::demos::DEMOS;
use fh_work::{Version, compare, work_out};
use std::path::Path;

impl Editor {
    pub(super) fn run_whole(&mut self, command: Command) {
        match command {
            Command::OtherHand => self.whole(WholeChange::OtherHand),
            Command::OtherBar => self.ask_other_bar(),
            Command::ScalePiece => self.ask_scale_piece(),
            _ => self.ask_compare(),
        }
    }

    pub(super) fn whole_ask(&mut self, ask: WholeAsk, ctx: &Context) {
        match ask {
            WholeAsk::Change(change) => self.whole(change),
            WholeAsk::Compare(against) => self.compare_with(against),
            WholeAsk::Join(joint) => self.join(*joint, ctx),
        }
    }

    /// Joins two parts, and opens the joint on the plan's page.
    fn join(&mut self, joint: Joint, ctx: &Context) {
        let mut joints = self.document.plan().joints.clone();
        let index = joints.len();
        joints.push(joint);
        if self.edit(&Edit::SetJoints(joints)) {
            self.selection.focus = Focus::Plan;
            ctx.data_mut(|data| data.insert_temp(joint_to_open(), index));
            self.say("Joined. Say how, and on which sides, on the plan's page.");
        }
    }

    /// Changes the whole piece, as one step that can be undone.
    fn whole(&mut self, change: WholeChange) {
        let words = match &change {
            WholeChange::OtherHand => "Now the other hand. Words that you wrote stay as they are.".to_owned(),
            WholeChange::OtherBar { section, .. } => format!("Now from {}.", section.describe()),
            WholeChange::Scaled(factor) => format!("Now {} times as large.", crate::figures::three_digits(*factor)),
        };
        let before = self.document.revision();
        self.dialog = None;
        if !self.edit(&Edit::Whole(change)) {
            return;
        }
        if self.document.revision() == before {
            self.say("The other hand of it is the same piece: nothing has changed.");
        } else {
            self.canvas.fit();
            self.say(format!("{words} Undo takes it back."));
        }
    }

    /// Asks for another bar of the selected one.
    fn ask_other_bar(&mut self) {
        let bar = self.selection.bar;
        let Some(section) = self.document.plan().bars.get(bar).map(|bar| bar.stock.clone()) else { return };
        let rack = self.steel.sections_on_rack(self.services.home.as_ref());
        self.dialog = Some(Dialog::OtherBar(OtherBar::new(bar, section, rack, self.order.shop().clone())));
    }

    /// Asks how large the piece is to be.
    fn ask_scale_piece(&mut self) {
        let made = hung(self.document.plan(), self.document.balance(), Quality::Screen);
        let sizes = made.bounds().map(|bounds| bounds.size());
        self.dialog = Some(Dialog::ScalePiece(ScalePiece::new(sizes, self.order.shop().clone())));
    }

    /// Asks for the plan that this one is held against.
    fn ask_compare(&mut self) {
        let has_saved = self.document.is_changed() && self.document.saved_plan().is_some();
        self.dialog = Some(Dialog::Compare(ComparePlans::new(&self.folder(), has_saved)));
    }

    /// Holds the plan against another one.
    fn compare_with(&mut self, against: Against) {
        let found = match &against {
            Against::Saved => self.document.saved_plan().cloned().ok_or_else(|| "It was never saved.".to_owned()),
            Against::File(path) => fh_store::load(path).map(|loaded| loaded.plan).map_err(|error| error.to_string()),
            Against::Demo(index) => demo(*index),
        };
        let name = match &against {
            Against::Saved => "as it was saved".to_owned(),
            Against::File(path) => file_name(path),
            Against::Demo(index) => DEMOS.get(*index).map_or_else(String::new, |demo| demo.title.to_owned()),
        };
        let groups = found.map(|other| self.beside(&other));
        let Some(Dialog::Compare(dialog)) = &mut self.dialog else { return };
        match groups {
            Ok(groups) => dialog.found(name, groups),
            Err(why) => dialog.entry.say(why),
        }
    }

    fn beside(&self, other: &Plan) -> Vec<fh_work::ComparedGroup> {
        let (plan, now, shop) = (self.document.plan(), self.document.balance(), self.order.shop());
        let then = balance(other);
        let [worked, was] = [(plan, now), (other, &then)].map(|(plan, balance)| work_out(plan, balance, shop));
        let first = Version { plan: other, balance: &then, worked: &was };
        compare(first, Version { plan, balance: now, worked: &worked })
    }
}

fn demo(index: usize) -> Result<Plan, String> {
    let demo = DEMOS.get(index).ok_or_else(|| "There is no such demo.".to_owned())?;
    fh_core::file::read(demo.text.as_bytes()).map_err(|error| error.to_string())
}

fn file_name(path: &Path) -> String {
    path.file_name().map_or_else(|| path.display().to_string(), |name| name.to_string_lossy().into_owned())
}

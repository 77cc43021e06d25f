//! What a change of the whole piece comes to, before it is made: metal, heats and findings then.

use crate::state::Desk;
use crate::theme::{Text, space};
use crate::widgets::compared;
use egui::{RichText, Ui};
use fh_core::balance::balance;
use fh_core::edit::{Edit, WholeChange};
use fh_work::{ComparedGroup, Shop, Version, compare, work_out};

/// The change that was looked at last, and what comes of it.
pub(super) struct WholePreview {
    shop: Shop,
    known: Option<(WholeChange, Result<Vec<ComparedGroup>, String>)>,
}

impl WholePreview {
    /// With the smith's own shop, by which heats are reckoned.
    pub(super) fn new(shop: Shop) -> Self {
        Self { shop, known: None }
    }

    /// Shows what a change comes to; whether it can be made.
    pub(super) fn show(&mut self, ui: &mut Ui, desk: &Desk<'_>, change: &WholeChange) -> bool {
        if self.known.as_ref().is_none_or(|(known, _)| known != change) {
            self.known = Some((change.clone(), self.of(desk, change)));
        }
        let Some((_, found)) = &self.known else { return false };
        ui.add_space(space::GAP);
        match found {
            Ok(groups) => compared::show(ui, desk.theme, ["as it is", "then"], groups, true),
            Err(why) => {
                ui.label(RichText::new(format!("■ {why}")).text_style(Text::Small.style()).color(desk.theme.stop));
            }
        }
        found.is_ok()
    }

    fn of(&self, desk: &Desk<'_>, change: &WholeChange) -> Result<Vec<ComparedGroup>, String> {
        let (plan, now) = (desk.document.plan(), desk.document.balance());
        let (then, _) = Edit::Whole(change.clone()).applied(plan).map_err(|refusal| refusal.to_string())?;
        let changed = balance(&then);
        let [worked, other] =
            [(plan, now), (&then, &changed)].map(|(plan, balance)| work_out(plan, balance, &self.shop));
        let first = Version { plan, balance: now, worked: &worked };
        let second = Version { plan: &then, balance: &changed, worked: &other };
        // Its parts and marks all change; what counts here is what it takes and what cannot be made.
        let all = compare(first, second).into_iter();
        Ok(all.filter(|group| !matches!(group.title.as_str(), "Parts" | "Marks")).collect())
    }
}

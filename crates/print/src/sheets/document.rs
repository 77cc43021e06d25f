//! Several kinds of sheet in one document, its pages counted through.

use super::flow::Flow;
use super::names::title;
use super::{ladder, mark_sheet as marks, templates};
use crate::drawing::Drawing;
use crate::paper::{Orientation, Paper};
use fh_core::balance::Balance;
use fh_core::plan::Plan;

/// A kind of sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sheet {
    /// The bar at full scale with its marks.
    Marks,
    /// What the hot iron is laid on, at full scale.
    Templates,
    /// How long each segment is where it is left fat or goes thin.
    Ladder,
}

impl Sheet {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Marks, Self::Templates, Self::Ladder];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Marks => "mark sheet",
            Self::Templates => "templates",
            Self::Ladder => "ladder",
        }
    }
}

/// The sheets of a plan in one document, in this order.
pub fn document(plan: &Plan, balance: &Balance, sheets: &[Sheet], paper: Paper, orientation: Orientation) -> Drawing {
    let mut flow = Flow::new(paper, orientation);
    for sheet in sheets {
        match sheet {
            Sheet::Marks => marks::put(&mut flow, plan, balance),
            Sheet::Templates => templates::put(&mut flow, plan, balance),
            Sheet::Ladder => ladder::put(&mut flow, plan, balance),
        }
    }
    let names: Vec<&str> = sheets.iter().map(|sheet| sheet.name()).collect();
    let title = format!("{}: {}", title(plan), names.join(", "));
    Drawing { title, paper, orientation, pages: flow.finish() }
}

/// The mark sheet of a plan, with a part for each of its bars.
pub fn mark_sheet(plan: &Plan, balance: &Balance, paper: Paper, orientation: Orientation) -> Drawing {
    document(plan, balance, &[Sheet::Marks], paper, orientation)
}

/// The ladder sheet of a plan: how long each segment is where it is left fat or goes thin.
pub fn ladder_sheet(plan: &Plan, balance: &Balance, paper: Paper, orientation: Orientation) -> Drawing {
    document(plan, balance, &[Sheet::Ladder], paper, orientation)
}

/// The templates of a plan: what the hot iron is laid on, at full scale.
pub fn template_sheet(plan: &Plan, balance: &Balance, paper: Paper, orientation: Orientation) -> Drawing {
    document(plan, balance, &[Sheet::Templates], paper, orientation)
}

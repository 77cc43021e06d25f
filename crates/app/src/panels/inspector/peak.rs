//! How the metal of a peak is made: upset, or left between two set-downs, with the edges they are made over.

use super::sizes::{BODIES, length_or_usual, optional_length, section};
use crate::widgets::{Sizing, chooser};
use egui::Ui;
use fh_core::balance::SegmentBalance;
use fh_core::forms::LeftPeak;
use fh_core::plan::{SectionSpec, SizeName};
use fh_measure::LengthRange;

/// Shows how it is made, and the sizes of a peak that is left.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, left: &mut Option<LeftPeak>, balance: Option<&SegmentBalance>) {
    let ways = [(false, "upset".to_owned()), (true, "left between set-downs".to_owned())];
    if let Some(is_left) =
        chooser::show(ui, sizing.theme, "Its metal is", "How the peak is made", left.is_some(), &ways)
    {
        *left = is_left.then(LeftPeak::default);
    }
    let Some(left) = left else { return };
    let mut of = left.of.clone().unwrap_or(SectionSpec::Stock);
    section(ui, sizing, "Bar before it is set down", "bar before it is set down", &mut of, &BODIES);
    left.of = (of != SectionSpec::Stock).then_some(of);
    let edges = balance.and_then(|balance| balance.standing).map(|standing| standing.edges);
    length_or_usual(ui, sizing, SizeName::NearEdge, &mut left.near_edge, edges.map(|edges| edges[0]));
    length_or_usual(ui, sizing, SizeName::FarEdge, &mut left.far_edge, edges.map(|edges| edges[1]));
    optional_length(ui, sizing, SizeName::Base, &mut left.base, LengthRange::AboveZero, balance);
}

//! How the metal of a peak is made: upset, left between two set-downs, with the edges they are made over, or driven up.

use super::sizes::{BODIES, length_or_usual, optional_length, section};
use crate::widgets::{Sizing, chooser};
use egui::Ui;
use fh_core::balance::SegmentBalance;
use fh_core::forms::{LeftPeak, Peak};
use fh_core::plan::{SectionSpec, SizeName};
use fh_measure::LengthRange;

/// How its metal comes into the corner.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Upset,
    Left,
    Driven,
}

/// Shows how it is made, and the sizes of a peak that is left.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, peak: &mut Peak, balance: Option<&SegmentBalance>) {
    let ways = [
        (Way::Upset, "upset".to_owned()),
        (Way::Left, "left between set-downs".to_owned()),
        (Way::Driven, "driven up once it is bent".to_owned()),
    ];
    let now = match (&peak.left, peak.driven) {
        (Some(_), _) => Way::Left,
        (None, true) => Way::Driven,
        (None, false) => Way::Upset,
    };
    if let Some(way) = chooser::show(ui, sizing.theme, "Its metal is", "How the peak is made", now, &ways) {
        peak.left = (way == Way::Left).then(LeftPeak::default);
        peak.driven = way == Way::Driven;
    }
    let Some(left) = &mut peak.left else { return };
    let mut of = left.of.clone().unwrap_or(SectionSpec::Stock);
    section(ui, sizing, "Bar before it is set down", "bar before it is set down", &mut of, &BODIES);
    left.of = (of != SectionSpec::Stock).then_some(of);
    let edges = balance.and_then(|balance| balance.standing).map(|standing| standing.edges);
    length_or_usual(ui, sizing, SizeName::NearEdge, &mut left.near_edge, edges.map(|edges| edges[0]));
    length_or_usual(ui, sizing, SizeName::FarEdge, &mut left.far_edge, edges.map(|edges| edges[1]));
    optional_length(ui, sizing, SizeName::Base, &mut left.base, LengthRange::AboveZero, balance);
}

//! What is checked of the sections and outlines of forms.

use super::fault::{Checked, refuse};
use super::key_path::KeyPath;
use super::polygon;
use crate::plan::{ArcSpec, Corners, OutlineSpec, SectionSpec};
use std::f64::consts::TAU;

/// Where in a form a section stands.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum SectionPlace {
    /// Along the bar, where there has to be metal.
    Along,
    /// At an end of a taper, which may run out to nothing.
    EndOfTaper,
}

/// Makes sure that a section may stand where it does.
pub(crate) fn check_section(section: &SectionSpec, first: bool, place: SectionPlace, at: &KeyPath) -> Checked {
    match section {
        SectionSpec::Same if first => refuse(
            at.clone(),
            "\"same\" is as the part before ends, and before the first there is none; \"stock\" may be meant",
        ),
        SectionSpec::Grown(grown) => {
            if grown.thickness.is_some() == grown.width.is_some() {
                return refuse(
                    at.key("grown"),
                    "a section that grows has a \"thickness\" or a \"width\" that it is struck to, one of the two",
                );
            }
            check_section(&grown.of, first, SectionPlace::Along, &at.key("grown").key("of"))
        }
        SectionSpec::Point | SectionSpec::Edge(_) if place != SectionPlace::EndOfTaper => {
            let message = format!("the section \"{}\" may only be the end of a taper", section.kind().name());
            refuse(at.clone(), message)
        }
        _ => Ok(()),
    }
}

/// Makes sure that an outline can be one.
pub(crate) fn check_outline(outline: &OutlineSpec, at: &KeyPath) -> Checked {
    match outline {
        OutlineSpec::Polygon(corners) => check_polygon(corners, &at.key("polygon")),
        _ => Ok(()),
    }
}

fn check_polygon(corners: &Corners, at: &KeyPath) -> Checked {
    for (index, corner) in corners.0.iter().enumerate() {
        let Some(ArcSpec { arc, .. }) = &corner.arc else { continue };
        if arc.radians() <= 0.0 || arc.radians() >= TAU {
            let message =
                format!("{} was found, but an arc goes round by more than 0 and less than a turn", arc.text());
            return refuse(at.index(corners.entry_of(index) + 1).key("arc"), message);
        }
    }
    match polygon::fault(&corners.0) {
        Some(fault) => refuse(at.clone(), fault),
        None => Ok(()),
    }
}

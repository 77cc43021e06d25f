//! The editor without a window, driven by the names that screen readers hear.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod absurd;
mod adding;
mod anvil;
mod asked;
mod branches;
mod branches_strip;
mod building;
mod desk;
mod dies;
mod dragging;
mod figures;
mod files;
mod findings;
mod heat;
mod help;
mod jobs;
mod joints;
mod keeping;
mod keyboard;
mod log;
mod marks;
mod motifs;
mod on_the_way;
mod order;
mod piece;
mod plates;
mod printing;
mod repeats;
mod room;
mod several;
mod steel;
mod steel_hands;
mod totals;
mod typing;
mod underlay;
mod vocabulary;
mod whole;

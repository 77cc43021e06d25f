//! Keeping runs of segments as motifs, and putting motifs into the bar.

use super::Editor;
use super::segments::free_name;
use crate::dialogs::{Dialog, InsertMotif, SaveMotif};
use crate::state::Side;
use fh_core::describe::segment_name;
use fh_core::edit::Edit;
use fh_core::motif::Motif;
use fh_core::plan::Segment;
use fh_store::{Home, StoreError, motifs};
use std::path::Path;

impl Editor {
    /// Asks under which name the selected segment, and those after it, are kept.
    pub(crate) fn ask_save_motif(&mut self) {
        if self.motif_home().is_none() {
            return;
        }
        let bar = self.selection.bar;
        let Some((at, written)) = self.selection.segment().zip(self.document.plan().bars.get(bar)) else { return };
        if let Some((chain, place)) = written.place_of(at) {
            let name = segment_name(written, at);
            let places = self.chosen().into_iter().filter_map(|at| Some(written.place_of(at)?.1));
            let (first, last) = places.fold((place, place), |(first, last), at| (first.min(at), last.max(at)));
            self.dialog = Some(Dialog::SaveMotif(SaveMotif::new(bar, chain, [first, last], &name)));
        }
    }

    /// Keeps a motif; where another has its name, the dialog asks first.
    pub(super) fn save_motif(&mut self, motif: &Motif, overwrite: bool) {
        let Some(home) = self.motif_home() else { return };
        let saved = motifs::save(home, motif, overwrite);
        match (saved, &mut self.dialog) {
            (Ok(path), _) => {
                self.dialog = None;
                self.say(format!("“{}” is kept in {}.", motif.name, path.display()));
            }
            (Err(StoreError::AlreadyThere { .. }), Some(Dialog::SaveMotif(dialog))) => dialog.found(),
            (Err(error), Some(Dialog::SaveMotif(dialog))) => dialog.say(error.to_string()),
            (Err(error), _) => self.say(format!("The part was not kept: {error}")),
        }
    }

    /// Asks which motif to put in.
    pub(crate) fn ask_insert_motif(&mut self) {
        if let Some(home) = self.motif_home() {
            self.dialog = Some(Dialog::InsertMotif(InsertMotif::new(motifs::list(home))));
        }
    }

    /// Puts the segments of a motif beside the selected one, as one step; the first of them is selected.
    pub(super) fn insert_motif(&mut self, mut segments: Vec<Segment>, side: Side) {
        let at = self.selection.bar;
        let Some(bar) = self.document.plan().bars.get(at) else { return };
        let Some((chain, place)) = self.place_beside(side) else { return };
        let mut taken: Vec<Segment> = bar.flat().into_iter().map(|flat| flat.segment.clone()).collect();
        for segment in &mut segments {
            segment.name = free_name(&taken, &segment.name);
            taken.push(segment.clone());
        }
        let first = bar.number_of(chain, place);
        match self.document.edit(&Edit::InsertSegments { bar: at, chain, place, segments }) {
            Ok(_) => {
                self.dialog = None;
                self.said.clear();
                self.after_change();
                if let Some(first) = first {
                    self.select_segment(first);
                }
            }
            Err(refusal) => self.say_in_insert(refusal.to_string()),
        }
    }

    /// Takes a motif's file away, and offers the others.
    pub(super) fn remove_motif(&mut self, path: &Path) {
        match motifs::remove(path) {
            Ok(()) => self.ask_insert_motif(),
            Err(error) => self.say_in_insert(error.to_string()),
        }
    }

    fn say_in_insert(&mut self, words: String) {
        match &mut self.dialog {
            Some(Dialog::InsertMotif(dialog)) => dialog.say(words),
            _ => self.say(format!("■ Not done: {words}")),
        }
    }

    /// The folder that motifs are kept in; says so where there is none.
    fn motif_home(&mut self) -> Option<&Home> {
        if self.services.home.is_none() {
            self.said = format!("■ {}", StoreError::NoHome);
        }
        self.services.home.as_ref()
    }
}

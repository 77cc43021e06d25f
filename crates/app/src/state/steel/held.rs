//! One of the smith's own files, held: read, watched, and changed so that nothing is lost that another program wrote meanwhile.

use fh_store::Stamp;
use fh_store::document::{self, Sort};
use std::error::Error;
use std::path::PathBuf;

/// The most changes that can be taken back.
const MOST_STEPS: usize = 100;

/// A change that can be taken back.
struct Step<T> {
    before: T,
    after: T,
}

/// A file and what it holds.
pub(crate) struct Held<T> {
    path: Option<PathBuf>,
    sort: Sort<T>,
    /// What it holds now; while a slider is dragged, more than lies on the disk.
    pub(crate) now: T,
    /// What was last read or written.
    base: T,
    stamp: Option<Stamp>,
    /// Why it cannot be read; it is not changed then.
    pub(crate) broken: Option<String>,
    steps: Vec<Step<T>>,
}

impl<T: Clone + PartialEq> Held<T> {
    /// Reads the file; without one, what stands in its place is held and nothing is kept.
    pub(crate) fn read(path: Option<PathBuf>, sort: Sort<T>) -> Self {
        let instead = (sort.instead)();
        let mut held =
            Self { path, sort, now: instead.clone(), base: instead, stamp: None, broken: None, steps: Vec::new() };
        held.read_again();
        held
    }

    /// Reads it again; whether it holds something else now.
    fn read_again(&mut self) -> bool {
        let Some(path) = &self.path else { return false };
        match document::load_or(path, self.sort.read, self.sort.instead) {
            Ok(read) => {
                let was_broken = self.broken.take().is_some();
                self.stamp = read.stamp;
                let is_other = was_broken || read.value != self.base;
                if is_other {
                    self.base = read.value;
                    self.now = self.base.clone();
                }
                is_other
            }
            Err(error) => {
                let words = error.to_string();
                let is_news = self.broken.as_ref() != Some(&words);
                self.broken = Some(words);
                is_news
            }
        }
    }

    /// Reads it again where somebody else changed it; whether it holds something else now.
    pub(crate) fn look(&mut self) -> bool {
        let Some(path) = &self.path else { return false };
        let is_same = match &self.stamp {
            Some(stamp) => stamp.looks_unchanged(path),
            None => self.broken.is_none() && !path.exists(),
        };
        !is_same && self.read_again()
    }

    /// Holds something that is not kept yet.
    ///
    /// # Errors
    /// Where it makes no sense.
    pub(crate) fn lay(&mut self, next: &T) -> Result<(), String> {
        self.now = checked(self.sort, next)?;
        Ok(())
    }

    /// Changes what lies on the disk, and saves it.
    ///
    /// # Errors
    /// Where the change is refused, or the file cannot be read or written; everything is then as it was.
    pub(crate) fn change(&mut self, change: impl FnOnce(&T) -> Result<T, String>) -> Result<(), String> {
        let sort = self.sort;
        let checked = |held: &T| -> Result<(T, Step<T>), Box<dyn Error>> {
            let after = checked(sort, &change(held)?)?;
            Ok((after.clone(), Step { before: held.clone(), after }))
        };
        let step = match &self.path {
            Some(path) => document::change(path, sort, checked),
            None => checked(&self.base).map(|(_, step)| step),
        };
        let step = match step {
            Ok(step) => step,
            Err(error) => {
                self.now = self.base.clone();
                self.read_again();
                return Err(error.to_string());
            }
        };
        (self.base, self.now) = (step.after.clone(), step.after.clone());
        self.read_again();
        if self.steps.len() == MOST_STEPS {
            self.steps.remove(0);
        }
        self.steps.push(step);
        Ok(())
    }

    /// Puts another in the place of what was last read, and saves it.
    ///
    /// # Errors
    /// Where somebody else changed it meanwhile, it makes no sense, or it cannot be written.
    pub(crate) fn put(&mut self, next: &T) -> Result<(), String> {
        let base = self.base.clone();
        self.change(move |held| {
            if *held == base {
                Ok(next.clone())
            } else {
                Err("it was changed elsewhere, and is read again: look at it, and change it once more".to_owned())
            }
        })
    }

    /// Whether a change can be taken back.
    pub(crate) fn can_undo(&self) -> bool {
        self.steps.last().is_some_and(|step| step.after == self.base)
    }

    /// Takes the last change of this window back.
    ///
    /// # Errors
    /// Where it was changed elsewhere since, or cannot be written.
    pub(crate) fn undo(&mut self) -> Result<(), String> {
        let Some(step) = self.steps.pop() else { return Ok(()) };
        let Step { before, after } = step;
        let kept = std::mem::take(&mut self.steps);
        let done = self.change(|held| {
            if *held == after { Ok(before) } else { Err("it was changed elsewhere since then".to_owned()) }
        });
        self.steps = kept;
        done
    }
}

/// What is written can be read again, or it is not written.
fn checked<T>(sort: Sort<T>, next: &T) -> Result<T, String> {
    (sort.read)((sort.write)(next).as_bytes()).map_err(|error| error.to_string())
}

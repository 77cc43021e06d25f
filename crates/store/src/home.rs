//! The folders that the program keeps its own files in.

use crate::StoreError;
use etcetera::BaseStrategy;
use std::path::{Path, PathBuf};

/// The folders for settings and for what is remembered between runs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Home {
    config: PathBuf,
    state: PathBuf,
}

impl Home {
    /// The user's own folders, or all in the folder that the environment variable `FIRSTHEAT_HOME` names.
    ///
    /// # Errors
    /// When the system knows no home folder.
    pub fn find() -> Result<Self, StoreError> {
        if let Some(folder) = std::env::var_os("FIRSTHEAT_HOME").filter(|folder| !folder.is_empty()) {
            return Ok(Self::at(Path::new(&folder)));
        }
        let base = etcetera::choose_base_strategy().map_err(|_| StoreError::NoHome)?;
        let state = base.state_dir().unwrap_or_else(|| base.data_dir());
        Ok(Self { config: base.config_dir().join("firstheat"), state: state.join("firstheat") })
    }

    /// Everything in one folder.
    pub fn at(folder: &Path) -> Self {
        Self { config: folder.to_owned(), state: folder.to_owned() }
    }

    /// The settings file.
    pub fn settings_file(&self) -> PathBuf {
        self.config.join("settings.json")
    }

    /// The list of the smith's own tools.
    pub fn tools_file(&self) -> PathBuf {
        self.config.join("tools.json")
    }

    /// The bars on hand.
    pub fn rack_file(&self) -> PathBuf {
        self.config.join("rack.json")
    }

    /// The merchant's list.
    pub fn merchant_file(&self) -> PathBuf {
        self.config.join("merchant.json")
    }

    /// The shop's figures: what an hour costs, ways of cutting, profit, tax.
    pub fn shop_file(&self) -> PathBuf {
        self.config.join("shop.json")
    }

    /// The folder of the parts that the smith keeps.
    pub fn parts_folder(&self) -> PathBuf {
        self.config.join("parts")
    }

    /// Where they were kept before: it is still read.
    pub fn old_parts_folder(&self) -> PathBuf {
        self.config.join("motifs")
    }

    /// The list of recent plans.
    pub fn recent_file(&self) -> PathBuf {
        self.state.join("recent.json")
    }

    /// The folder of unsaved work.
    pub fn journal_folder(&self) -> PathBuf {
        self.state.join("journal")
    }
}

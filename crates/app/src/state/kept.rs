//! The settings and the smith's tools in their files.

use super::Settings;
use fh_store::{Home, Own, StoreError};
use fh_work::Shop;

/// The files of settings and tools, where there is a folder for them.
#[derive(Default)]
pub(crate) struct Kept {
    settings: Option<Own>,
    tools: Option<Own>,
    /// What of them could not be read, and where it is kept; empty where all was.
    pub(crate) told: String,
}

impl Kept {
    /// Reads both, as far as they are understood.
    pub(crate) fn read(home: Option<&Home>) -> (Self, Settings, Shop) {
        let Some(home) = home else { return (Self::default(), Settings::default(), Shop::default()) };
        let (settings_file, settings) = fh_store::settings::read::<Settings>(home);
        let (tools_file, tools) = fh_store::tools::read::<Shop>(home);
        let told: Vec<String> = tools.told.into_iter().chain(settings.told).collect();
        let kept = Self { settings: Some(settings_file), tools: Some(tools_file), told: told.join(" ") };
        (kept, settings.value, tools.value)
    }

    /// Writes the settings. What another window chose meanwhile is kept in the file, and does not change this one.
    pub(crate) fn keep_settings(&mut self, settings: &Settings) -> Result<(), StoreError> {
        self.settings.as_mut().map_or(Ok(()), |file| file.write(settings).map(|_| ()))
    }

    /// Writes the tools, and takes over what another window put in or took out meanwhile.
    pub(crate) fn keep_tools(&mut self, shop: &mut Shop) -> Result<(), StoreError> {
        let Some(file) = &mut self.tools else { return Ok(()) };
        if let Some(all) = file.write(shop)? {
            file.knows(&all);
            *shop = all;
        }
        Ok(())
    }
}

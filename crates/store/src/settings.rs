//! The user's settings. What is in them is the editor's affair; any type that serde knows will do.

use crate::Home;
use crate::own::{Own, Read};
use serde::Serialize;
use serde::de::DeserializeOwned;

/// Reads the settings, as far as they are understood.
pub fn read<T: DeserializeOwned + Serialize + Default>(home: &Home) -> (Own, Read<T>) {
    Own::read(&home.settings_file(), "the settings")
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use serde::Deserialize;
    use std::fs;

    #[derive(Debug, Default, PartialEq, Serialize, Deserialize)]
    #[serde(default)]
    struct Look {
        dark: bool,
        scale: f32,
    }

    #[test]
    fn settings_come_back() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(&folder.path().join("not yet there"));
        let (mut own, was) = read::<Look>(&home);
        assert_eq!((was.value, was.told), (Look::default(), None));
        own.write(&Look { dark: true, scale: 1.5 }).unwrap();
        assert_eq!(read::<Look>(&home).1.value, Look { dark: true, scale: 1.5 });
    }

    #[test]
    fn one_wrong_setting_does_not_take_the_others_along() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        fs::write(home.settings_file(), r#"{ "scale": "large", "dark": true }"#).unwrap();
        let (_, was) = read::<Look>(&home);
        assert_eq!(was.value, Look { dark: true, scale: 0.0 });
        assert!(was.told.unwrap().contains("Part of the settings was not read: “scale” was not understood."));
    }
}

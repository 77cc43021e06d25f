//! The tools that the smith owns, in the user's own profile. What is in the list is the editor's affair.

use crate::Home;
use crate::own::{Own, Read};
use serde::Serialize;
use serde::de::DeserializeOwned;

/// Reads the tools, as far as they are understood.
pub fn read<T: DeserializeOwned + Serialize + Default>(home: &Home) -> (Own, Read<T>) {
    Own::read(&home.tools_file(), "your tools")
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use std::collections::BTreeMap;

    #[test]
    fn tools_come_back_and_leave_the_settings_alone() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        let (mut own, was) = read::<BTreeMap<String, u32>>(&home);
        assert!(was.value.is_empty());
        let tools = BTreeMap::from([("drift".to_owned(), 2), ("fuller".to_owned(), 1)]);
        own.write(&tools).unwrap();
        assert_eq!(read::<BTreeMap<String, u32>>(&home).1.value, tools);
        assert!(!home.settings_file().exists());
    }
}

//! A file of the program's own: read as far as it is understood, and written without losing what another window wrote.

use crate::StoreError;
use crate::aside::keep_aside;
use crate::reading::read_file;
use crate::replace::{make_folder_of, replace};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};
use std::fs::{File, TryLockError};
use std::io;
use std::path::{Path, PathBuf};
use std::thread::sleep;
use std::time::Duration;

/// How often, and how far apart, a file is asked for that another window is writing.
const TRIES: usize = 500;
const PAUSE: Duration = Duration::from_millis(10);

/// A file of the program's own, and what this window knows to be in it.
#[derive(Debug)]
pub struct Own {
    path: PathBuf,
    /// What this window read, or last wrote: what differs from it is this window's own change.
    known: Value,
}

/// What was read of a file of the program's own.
#[derive(Debug)]
pub struct Read<T> {
    /// What was understood; what was not is as it is where there is no file.
    pub value: T,
    /// What has to be told: that not all of it was understood, and where the file is kept as it was.
    pub told: Option<String>,
}

impl Own {
    /// Reads a file of the program's own. What it is, is told where it cannot be read whole: `your tools`.
    ///
    /// Keys and members of lists that this version does not know are left out, and the file is kept aside as it was, before
    /// anything can take its place.
    pub(crate) fn read<T: DeserializeOwned + Serialize + Default>(path: &Path, what: &str) -> (Self, Read<T>) {
        let (value, trouble) = match read_file(path) {
            Ok(bytes) => understood(&bytes),
            Err(StoreError::Read { source, .. }) if source.kind() == io::ErrorKind::NotFound => (T::default(), None),
            Err(error) => (T::default(), Some(error.to_string())),
        };
        let told = trouble.map(|why| match keep_aside(path) {
            Ok(kept) => format!("Part of {what} was not read: {why}. The file as it was: {}", kept.display()),
            Err(_) => format!("Part of {what} was not read: {why} ({})", path.display()),
        });
        let own = Self { path: path.to_owned(), known: as_json(&value) };
        (own, Read { value, told })
    }

    /// Writes what this window changed, and keeps what another one wrote meanwhile; what the file has now.
    ///
    /// # Errors
    /// When it cannot be written.
    pub fn write<T: DeserializeOwned + Serialize>(&mut self, value: &T) -> Result<Option<T>, StoreError> {
        make_folder_of(&self.path)?;
        let _lock = lock(&self.path);
        let mine = as_json(value);
        let theirs = read_file(&self.path).ok().and_then(|bytes| serde_json::from_slice(&bytes).ok());
        let merged = theirs.map_or_else(|| mine.clone(), |theirs| merged(&self.known, &mine, &theirs));
        // What the other wrote may be of a version that this one does not understand.
        let (merged, all) = match serde_json::from_value(merged.clone()) {
            Ok(all) => (merged, Some(all)),
            Err(_) => {
                keep_aside(&self.path)?;
                (mine.clone(), None)
            }
        };
        let text =
            serde_json::to_string_pretty(&merged).map_err(|error| StoreError::write(&self.path, error.into()))?;
        replace(&self.path, text.as_bytes())?;
        self.known = mine;
        Ok(all)
    }

    /// This window took over what the file has now.
    pub fn knows(&mut self, value: &impl Serialize) {
        self.known = as_json(value);
    }
}

fn as_json(value: &impl Serialize) -> Value {
    serde_json::to_value(value).unwrap_or_default()
}

/// Holds a file against other windows while it is read and written. Where it cannot be held the write goes on: waiting for
/// ever would be worse.
fn lock(path: &Path) -> Option<File> {
    let mut name = path.as_os_str().to_owned();
    name.push(".lock");
    let file = File::options().create(true).truncate(false).write(true).open(name).ok()?;
    for _ in 0..TRIES {
        match file.try_lock() {
            Ok(()) => return Some(file),
            Err(TryLockError::WouldBlock) => sleep(PAUSE),
            Err(TryLockError::Error(_)) => return None,
        }
    }
    None
}

/// What is understood of a file, key by key, and why not all of it.
fn understood<T: DeserializeOwned + Serialize + Default>(bytes: &[u8]) -> (T, Option<String>) {
    let whole = match serde_json::from_slice::<Value>(bytes) {
        Ok(Value::Object(whole)) => whole,
        Ok(_) => return (T::default(), Some("it isn't a group in { }".to_owned())),
        Err(error) => return (T::default(), Some(format!("it is no JSON, {error}"))),
    };
    if let Ok(value) = serde_json::from_value(Value::Object(whole.clone())) {
        return (value, None);
    }
    let mut so_far = Map::new();
    let mut left_out = Vec::new();
    for (key, value) in whole {
        if reads::<T>(&so_far, &key, &value) {
            so_far.insert(key, value);
            continue;
        }
        // A list is taken member by member.
        if let Value::Array(members) = value {
            let known = |member: &Value| reads::<T>(&so_far, &key, &Value::Array(vec![member.clone()]));
            let known: Vec<Value> = members.into_iter().filter(known).collect();
            if !known.is_empty() {
                so_far.insert(key.clone(), Value::Array(known));
            }
        }
        left_out.push(format!("“{key}”"));
    }
    let value = serde_json::from_value(Value::Object(so_far)).unwrap_or_default();
    (value, Some(format!("{} was not understood", left_out.join(", "))))
}

/// Whether a key with its value is understood along with those before it.
fn reads<T: DeserializeOwned>(so_far: &Map<String, Value>, key: &str, value: &Value) -> bool {
    let mut next = so_far.clone();
    next.insert(key.to_owned(), value.clone());
    serde_json::from_value::<T>(Value::Object(next)).is_ok()
}

/// Theirs, with what changed from what was known to mine. Groups go key by key, lists member by member.
fn merged(known: &Value, mine: &Value, theirs: &Value) -> Value {
    match (known, mine, theirs) {
        _ if theirs == known => mine.clone(),
        _ if mine == known => theirs.clone(),
        (_, Value::Object(mine), Value::Object(theirs)) => {
            let none = Value::Null;
            let known = |key: &str| known.get(key).unwrap_or(&none);
            let mut all = theirs.clone();
            for (key, value) in mine {
                let their = theirs.get(key).unwrap_or(known(key));
                all.insert(key.clone(), merged(known(key), value, their));
            }
            // What is gone here since it was known was taken out here.
            all.retain(|key, _| mine.contains_key(key) || known(key).is_null());
            Value::Object(all)
        }
        (_, Value::Array(mine), Value::Array(theirs)) => {
            let known = known.as_array().map_or(&[][..], Vec::as_slice);
            let kept = theirs.iter().filter(|member| mine.contains(member) || !known.contains(member));
            let new = mine.iter().filter(|member| !known.contains(member) && !theirs.contains(member));
            Value::Array(kept.chain(new).cloned().collect())
        }
        _ => mine.clone(),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use serde::Deserialize;
    use std::fs;

    #[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
    #[serde(default, deny_unknown_fields)]
    struct Shelf {
        tools: Vec<Tool>,
        learnt: Vec<u32>,
        #[serde(skip_serializing_if = "Option::is_none")]
        bench: Option<String>,
    }

    #[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
    #[serde(rename_all = "snake_case")]
    enum Tool {
        Drift,
        Fuller,
        Swage,
    }

    fn shelf(tools: &[Tool], learnt: &[u32]) -> Shelf {
        Shelf { tools: tools.to_vec(), learnt: learnt.to_vec(), bench: None }
    }

    fn read(path: &Path) -> (Own, Read<Shelf>) {
        Own::read(path, "your shelf")
    }

    #[test]
    fn what_is_not_understood_is_left_out_and_kept_aside() {
        let folder = tempfile::tempdir().unwrap();
        for (at, (text, value, word)) in [
            (r#"{ "tools": ["drift"], "future": [1] }"#, shelf(&[Tool::Drift], &[]), "“future”"),
            (
                r#"{ "learnt": [3], "tools": ["drift", "laser", "fuller"] }"#,
                shelf(&[Tool::Drift, Tool::Fuller], &[3]),
                "“tools”",
            ),
            (r#"{ "tools": 5, "learnt": [1, 2] }"#, shelf(&[], &[1, 2]), "“tools”"),
            ("{ \"tools\": [", shelf(&[], &[]), "no JSON"),
            ("[[[[", shelf(&[], &[]), "no JSON"),
            ("7", shelf(&[], &[]), "it isn't a group"),
        ]
        .into_iter()
        .enumerate()
        {
            let path = folder.path().join(format!("{at}.json"));
            fs::write(&path, text).unwrap();
            let (mut own, was) = read(&path);
            assert_eq!(was.value, value, "{text}");
            let told = was.told.unwrap();
            assert!(told.starts_with("Part of your shelf was not read: ") && told.contains(word), "{told}");
            own.write(&shelf(&[Tool::Swage], &[])).unwrap();
            let kept = folder.path().join(format!("{at}.json.broken"));
            assert_eq!(fs::read_to_string(&kept).unwrap(), text);
            assert!(told.ends_with(kept.to_str().unwrap()), "{told}");
            assert_eq!(read(&path).1.told, None, "said once");
        }
    }

    #[test]
    fn a_file_that_is_not_there_or_sound_says_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("none yet/a.json");
        let (mut own, was) = read(&path);
        assert_eq!((was.value, was.told), (Shelf::default(), None));
        own.write(&shelf(&[Tool::Drift], &[7])).unwrap();
        assert_eq!(read(&path).1.value, shelf(&[Tool::Drift], &[7]));
    }

    #[test]
    fn two_windows_keep_what_the_other_wrote() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.json");
        fs::write(&path, r#"{ "tools": ["drift"], "learnt": [1] }"#).unwrap();
        let ((mut one, mut ones), (mut two, _)) = (read(&path), read(&path));
        one.write(&shelf(&[Tool::Drift, Tool::Fuller], &[1])).unwrap();
        // The other window takes one out, puts one in, and learns.
        let all = two.write(&shelf(&[Tool::Swage], &[1, 2])).unwrap().unwrap();
        assert_eq!(all, shelf(&[Tool::Fuller, Tool::Swage], &[1, 2]));
        two.knows(&all);
        ones.value = Shelf { bench: Some("left".to_owned()), ..shelf(&[Tool::Drift, Tool::Fuller], &[1]) };
        let all = one.write(&ones.value).unwrap().unwrap();
        assert_eq!(all, Shelf { bench: Some("left".to_owned()), ..shelf(&[Tool::Fuller, Tool::Swage], &[1, 2]) });
        one.knows(&all);
        // What was taken over and is taken out then is gone.
        one.write(&shelf(&[Tool::Swage], &[1, 2])).unwrap();
        let all = two.write(&shelf(&[Tool::Fuller, Tool::Swage], &[1, 2, 3])).unwrap().unwrap();
        assert_eq!(all, shelf(&[Tool::Swage], &[1, 2, 3]));
    }

    #[test]
    fn many_windows_at_once_lose_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.json");
        std::thread::scope(|scope| {
            for window in 0..8 {
                let path = &path;
                scope.spawn(move || {
                    let (mut own, mut was) = read(path);
                    for number in 0..10 {
                        was.value.learnt.push(window * 100 + number);
                        if let Some(all) = own.write(&was.value).unwrap() {
                            own.knows(&all);
                            was.value = all;
                        }
                    }
                });
            }
        });
        assert_eq!(read(&path).1.value.learnt.len(), 80);
    }
}

//! Paths of plans in a job: whole while it is in hand, from its folder on in its file.

use std::path::{Component, Path, PathBuf};

/// A path from a folder on, as a whole one without steps back.
pub(super) fn resolved(folder: &Path, path: &str) -> String {
    let raw = folder.join(path);
    let mut plain = PathBuf::new();
    for part in raw.components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir => {
                plain.pop();
            }
            other => plain.push(other),
        }
    }
    // Behind a linked folder a step back may lead elsewhere.
    let best = if plain.exists() || !raw.exists() { plain } else { raw };
    best.to_string_lossy().into_owned()
}

/// A whole path from a folder on, with `/` between its parts.
pub(super) fn between(folder: &Path, path: &Path) -> String {
    let (from, to): (Vec<Component<'_>>, Vec<Component<'_>>) =
        (folder.components().collect(), path.components().collect());
    let same = from.iter().zip(&to).take_while(|(one, other)| one == other).count();
    if same == 0 || !path.is_absolute() {
        return path.to_string_lossy().into_owned();
    }
    let back = from[same..].iter().map(|_| "..".to_owned());
    let on = to[same..].iter().map(|part| part.as_os_str().to_string_lossy().into_owned());
    back.chain(on).collect::<Vec<_>>().join("/")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plan_is_named_from_the_folder_of_its_job_on() {
        let folder = Path::new("/garden/beds");
        for (whole, short) in [
            ("/garden/beds/a.json", "a.json"),
            ("/garden/plans/a.json", "../plans/a.json"),
            ("/other/a.json", "../../other/a.json"),
        ] {
            assert_eq!(between(folder, Path::new(whole)), short);
            assert_eq!(resolved(folder, short), whole);
        }
    }
}

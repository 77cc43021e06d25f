//! The floors of the window's crate, from the ground up. A file uses what is on its own floor and below it.

use crate::house::assert_none;
use crate::house::modules::crates;

/// Each floor with the modules on it, and what it may do.
const FLOORS: [&[&str]; 8] = [
    // Colors and sizes; figures in words.
    &["theme", "figures"],
    // What the editor remembers, as data: it knows no view.
    &["state"],
    // The table of commands: words, keys, and when each may be used.
    &["commands"],
    // Fields, lists and small drawings.
    &["widgets"],
    // What the window shows: it reads the state and asks by requests.
    &["canvas", "piece_view", "panels", "order", "heat", "log", "anvil", "steel"],
    // What stands in front of the window, and the system's own dialogs.
    &["dialogs", "services"],
    // The only one that holds the state to change it.
    &["editor"],
    // The window around it.
    &["app"],
];

/// The floor of a file, counted from the ground.
fn of(file: &str) -> Option<usize> {
    let module = file.split('/').next().unwrap_or_default();
    FLOORS.iter().position(|floor| floor.contains(&module))
}

#[test]
fn no_file_of_the_window_uses_one_of_a_floor_above_it() {
    let app = crates().into_iter().find(|all| all.name == "app").unwrap();
    let homeless = app.files().filter(|file| of(file).is_none()).map(|file| format!("{file} is on no floor"));
    let upward = app.arrows().filter(|arrow| of(arrow.from) < of(arrow.to));
    let upward = upward.map(|arrow| format!("{} uses {} of {}, above it", arrow.from, arrow.names, arrow.to));
    let faults: Vec<String> = homeless.chain(upward).collect();
    assert_none("the floors of the window", &faults);
}

//! Panics, caught and told with their place.

use std::cell::RefCell;
use std::panic::{self, AssertUnwindSafe};

thread_local! {
    static LAST: RefCell<String> = const { RefCell::new(String::new()) };
}

/// From now on a panic is not printed: whoever catches it tells it.
pub fn quiet() {
    panic::set_hook(Box::new(|info| LAST.with_borrow_mut(|last| *last = info.to_string())));
}

/// Does some work; the words of the panic that it ended in.
pub(crate) fn caught<T>(work: impl FnOnce() -> T) -> Result<T, String> {
    LAST.with_borrow_mut(String::clear);
    panic::catch_unwind(AssertUnwindSafe(work)).map_err(|_| LAST.with_borrow(String::clone))
}

/// A panic's words without its figures, so that panics of one place are one fault.
pub(crate) fn without_figures(words: &str) -> String {
    words.lines().next().unwrap_or_default().to_owned()
}

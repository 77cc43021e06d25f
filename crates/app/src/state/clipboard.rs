//! Segments on their way from one place to another, as the text of their JSON so that other windows can take them.

use fh_core::plan::Segment;

/// How many frames a paste waits for the system's clipboard before our own copy is taken.
const FRAMES_TO_WAIT: u8 = 3;

/// The last segment that was cut or copied, and a paste that waits for the system's clipboard.
#[derive(Default)]
pub(crate) struct Clipboard {
    own: Option<String>,
    waiting: Option<u8>,
}

impl Clipboard {
    /// The text of some segments, kept here as well.
    pub(crate) fn take(&mut self, segments: &[Segment]) -> String {
        let text = match segments {
            [one] => serde_json::to_string_pretty(one),
            all => serde_json::to_string_pretty(all),
        };
        let text = text.unwrap_or_default();
        self.own = Some(text.clone());
        text
    }

    /// Begins a paste: the system's clipboard was asked for.
    pub(crate) fn wait(&mut self) {
        self.waiting = Some(FRAMES_TO_WAIT);
    }

    /// Whether a paste waits.
    pub(crate) fn is_waiting(&self) -> bool {
        self.waiting.is_some()
    }

    /// The system's clipboard answered.
    pub(crate) fn answered(&mut self) {
        self.waiting = None;
    }

    /// Counts a frame; our own copy where the system's clipboard did not answer in time.
    pub(crate) fn tick(&mut self) -> Option<String> {
        let left = self.waiting?;
        self.waiting = left.checked_sub(1);
        if self.waiting.is_none() { self.own.clone() } else { None }
    }

    /// The segments in a text.
    ///
    /// # Errors
    /// When the text is none, in words.
    pub(crate) fn segments(text: &str) -> Result<Vec<Segment>, String> {
        let one = serde_json::from_str(text).map(|one| vec![one]);
        let all = one.or_else(|_| serde_json::from_str::<Vec<Segment>>(text)).ok();
        all.filter(|all| !all.is_empty()).ok_or_else(|| "the clipboard holds no part".to_owned())
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use fh_core::forms;
    use fh_core::plan::Form;

    #[test]
    fn a_segment_comes_back_from_its_text() {
        let segment = Segment::new("shank", Form::Plain(forms::Plain { length: None }));
        for all in [vec![segment.clone()], vec![segment.clone(), segment]] {
            let text = Clipboard::default().take(&all);
            assert_eq!(Clipboard::segments(&text), Ok(all));
        }
        assert!(Clipboard::segments("three and a quarter").is_err() && Clipboard::segments("[]").is_err());
    }

    #[test]
    fn our_own_copy_is_taken_where_the_system_is_silent() {
        let mut clipboard = Clipboard::default();
        let text = clipboard.take(&[Segment::new("shank", Form::Plain(forms::Plain { length: None }))]);
        clipboard.wait();
        let pasted = (0..=FRAMES_TO_WAIT).find_map(|_| clipboard.tick());
        assert_eq!(pasted, Some(text));
        assert!(!clipboard.is_waiting());
    }
}

//! Doubts about a value that was taken: it stands, but it may be a slip of the fingers.

use egui::{Context, Id, Order, Ui};
use fh_core::describe::upper_first;
use fh_measure::WrittenLength;

/// From how many times as large or as small on a new value is doubted.
const JUMP: f64 = 10.0;

/// A doubt that is shown until the value changes, another one is taken, or something else is done.
#[derive(Clone)]
struct Doubt {
    field: Id,
    /// What stood in the field before.
    before: String,
    /// What stands in it since; not known in the frame in which it is taken.
    since: Option<String>,
    words: String,
}

/// What a jump from one size to another is doubted with.
pub(crate) fn of_jump(before: f64, now: f64, before_text: &str) -> Option<String> {
    let ratio = (now / before).abs();
    if before == 0.0 || now == 0.0 || !ratio.is_finite() {
        return None;
    }
    // Half a thousandth, so that ten times is ten times however it was worked out.
    let (times, word) = if ratio > 1.0 { (ratio, "larger") } else { (1.0 / ratio, "smaller") };
    // Not broken between a number and its unit.
    let before = before_text.replace(' ', "\u{a0}");
    (times > JUMP - 0.0005).then(|| format!("{times:.0} times {word} than before ({before})"))
}

/// Why a new length may be a slip: no rule shows it, or it is far from what was there, in mm and as it was written.
pub(crate) fn of_length(before: Option<(f64, &str)>, now: &WrittenLength) -> Option<String> {
    let odd = now.odd_fraction().map(|fraction| format!("no rule shows {fraction}"));
    odd.or_else(|| before.and_then(|(mm, text)| of_jump(mm, now.mm(), text)))
}

/// Keeps what was said of the value that a field just gave, or forgets the last doubt where there is none.
pub(super) fn keep(ui: &Ui, field: Id, before: &str, words: Option<String>) {
    ui.data_mut(|data| {
        data.remove::<Doubt>(slot());
        if let Some(words) = words {
            data.insert_temp(slot(), Doubt { field, before: before.to_owned(), since: None, words });
        }
    });
}

/// The doubt about what stands in a field now.
pub(super) fn of(ui: &Ui, field: Id, now: &str) -> Option<String> {
    let mut doubt = ui.data(|data| data.get_temp::<Doubt>(slot())).filter(|doubt| doubt.field == field)?;
    let since = match &doubt.since {
        Some(since) => since.clone(),
        None if now == doubt.before => return None,
        None => {
            doubt.since = Some(now.to_owned());
            ui.data_mut(|data| data.insert_temp(slot(), doubt.clone()));
            now.to_owned()
        }
    };
    if since != now {
        ui.data_mut(|data| data.remove::<Doubt>(slot()));
        return None;
    }
    Some(sentence(&doubt.words, is_in_plan(ui)))
}

/// A doubt in a sentence. What stands in a dialog is not in the plan yet, and no Undo reaches it.
pub(crate) fn sentence(words: &str, in_plan: bool) -> String {
    let rest = if in_plan { "It is taken; Undo takes it back." } else { "It is taken as typed." };
    format!("Did you mean this? {}. {rest}", upper_first(words))
}

/// Whether a field stands in a panel, and not in a dialog.
fn is_in_plan(ui: &Ui) -> bool {
    ui.layer_id().order == Order::Background
}

/// Forgets the doubt: something else was done since.
pub(crate) fn forget(ctx: &Context) {
    ctx.data_mut(|data| data.remove::<Doubt>(slot()));
}

fn slot() -> Id {
    Id::unique("the doubt about the value that was taken last")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_jump_of_ten_times_or_more_is_doubted() {
        for (before, now) in [(100.0, 1000.0), (100.0, 10.0), (76.2, 850.0), (25.4, 254.0)] {
            assert!(of_jump(before, now, "").is_some(), "{before} {now}");
        }
        for (before, now) in [(100.0, 990.0), (100.0, 11.0), (0.0, 10.0), (10.0, 0.0), (3.0, 3.0)] {
            assert_eq!(of_jump(before, now, ""), None, "{before} {now}");
        }
    }
}

//! The fields for lengths, angles, shares, numbers and words.

use super::Sizing;
use super::entry::{self, Entry, Reading, doubt_of_length, of_jump};
use egui::Ui;
use fh_core::describe::LONGEST_NAME;
use fh_measure::{LengthRange, WrittenAngle, WrittenLength, WrittenShare};

/// How far one step of an angle goes.
const ANGLE_STEP_DEGREES: f64 = 5.0;
/// How far one step of a count of turns goes.
const TURNS_STEP: f64 = 0.25;

/// A length as it is typed; `it` is the one that was there.
fn read_length(
    sizing: &Sizing<'_>,
    text: &str,
    range: LengthRange,
    it: Option<&WrittenLength>,
) -> Result<WrittenLength, String> {
    WrittenLength::typed(text, sizing.first.units.length.length_unit(), range, it).map_err(|error| error.to_string())
}

/// The length so many steps of the marks' rounding away from a length in mm.
fn step_length(sizing: &Sizing<'_>, from_mm: f64, steps: i32, range: LengthRange) -> Option<WrittenLength> {
    let step = sizing.first.units.marks.step_mm();
    let on_a_step = (from_mm / step).round() * step;
    WrittenLength::from_mm(on_a_step + f64::from(steps) * step, sizing.first.units.marks.unit(), range).ok()
}

/// A written length so many steps on. A range is moved as it is, and keeps its tolerance.
fn step_written(sizing: &Sizing<'_>, now: &WrittenLength, steps: i32, range: LengthRange) -> Option<WrittenLength> {
    if !now.is_range() {
        return step_length(sizing, now.mm(), steps, range);
    }
    now.longer_by(f64::from(steps) * sizing.first.units.marks.step_mm(), range).ok()
}

/// A length that must be there.
pub(crate) fn length(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    entry: &Entry<'_>,
    now: &WrittenLength,
    range: LengthRange,
) -> Option<WrittenLength> {
    let read = |text: &str| read_length(sizing, text, range, Some(now));
    let step = |steps| step_written(sizing, now, steps, range);
    let doubt = |typed: &WrittenLength| doubt_of_length(Some((now.mm(), now.text())), typed);
    entry::show(ui, sizing.theme, entry, now.text(), &Reading { read: &read, step: Some(&step), doubt: Some(&doubt) })
}

/// A length that may be left out. `follows_mm` is what it then is.
pub(crate) fn optional_length(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    entry: &Entry<'_>,
    now: Option<&WrittenLength>,
    range: LengthRange,
    follows_mm: Option<f64>,
) -> Option<Option<WrittenLength>> {
    let unit = sizing.first.units.length.length_unit();
    let it = now.cloned().or_else(|| WrittenLength::from_mm(follows_mm?, unit, range).ok());
    let read = |text: &str| optional(text, |text| read_length(sizing, text, range, it.as_ref()));
    let step = |steps| match now {
        Some(now) => step_written(sizing, now, steps, range).map(Some),
        None => step_length(sizing, follows_mm?, steps, range).map(Some),
    };
    let text = now.map_or("", WrittenLength::text);
    // Where it followed, what it was then is in the field as the hint.
    let before = now.map(|now| (now.mm(), text)).or(follows_mm.map(|mm| (mm, entry.hint)));
    let doubt = |typed: &Option<WrittenLength>| doubt_of_length(before, typed.as_ref()?);
    entry::show(ui, sizing.theme, entry, text, &Reading { read: &read, step: Some(&step), doubt: Some(&doubt) })
}

fn read_angle(text: &str) -> Result<WrittenAngle, String> {
    WrittenAngle::parse(text, true).map_err(|error| error.to_string())
}

fn step_angle(from: f64, steps: i32) -> Option<WrittenAngle> {
    let on_a_step = (from.to_degrees() / ANGLE_STEP_DEGREES).round() * ANGLE_STEP_DEGREES;
    WrittenAngle::from_degrees(on_a_step + f64::from(steps) * ANGLE_STEP_DEGREES).ok()
}

/// An angle that must be there.
pub(crate) fn angle(ui: &mut Ui, sizing: &Sizing<'_>, entry: &Entry<'_>, now: &WrittenAngle) -> Option<WrittenAngle> {
    let step = |steps| step_angle(now.radians(), steps);
    let doubt = |typed: &WrittenAngle| of_jump(now.radians(), typed.radians(), now.text());
    let reading = Reading { read: &read_angle, step: Some(&step), doubt: Some(&doubt) };
    entry::show(ui, sizing.theme, entry, now.text(), &reading)
}

/// An angle that may be left out. `follows` is what it then is, in radians.
pub(crate) fn optional_angle(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    entry: &Entry<'_>,
    now: Option<&WrittenAngle>,
    follows: Option<f64>,
) -> Option<Option<WrittenAngle>> {
    let read = |text: &str| optional(text, read_angle);
    let step = |steps| step_angle(now.map(WrittenAngle::radians).or(follows)?, steps).map(Some);
    let text = now.map_or("", WrittenAngle::text);
    let doubt = |typed: &Option<WrittenAngle>| of_jump(now?.radians(), typed.as_ref()?.radians(), text);
    entry::show(ui, sizing.theme, entry, text, &Reading { read: &read, step: Some(&step), doubt: Some(&doubt) })
}

/// A share that may be left out.
pub(crate) fn optional_share(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    entry: &Entry<'_>,
    now: Option<&WrittenShare>,
) -> Option<Option<WrittenShare>> {
    let read_share = |text: &str| WrittenShare::parse(text, true).map_err(|error| error.to_string());
    let read = |text: &str| optional(text, read_share);
    let text = now.map_or("", WrittenShare::text);
    let doubt = |typed: &Option<WrittenShare>| of_jump(now?.ratio(), typed.as_ref()?.ratio(), text);
    entry::show(ui, sizing.theme, entry, text, &Reading { read: &read, step: None, doubt: Some(&doubt) })
}

/// A number above 0 that may be left out.
pub(crate) fn optional_number(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    entry: &Entry<'_>,
    now: Option<f64>,
) -> Option<Option<f64>> {
    let read = |text: &str| optional(text, read_number);
    let text = now.map_or_else(String::new, |number| number.to_string());
    let doubt = |typed: &Option<f64>| of_jump(now?, (*typed)?, &text);
    entry::show(ui, sizing.theme, entry, &text, &Reading { read: &read, step: None, doubt: Some(&doubt) })
}

fn read_number(text: &str) -> Result<f64, String> {
    let number = text.trim().replace(',', ".").parse::<f64>().ok();
    number
        .filter(|number| number.is_finite() && *number > 0.0)
        .ok_or_else(|| format!("“{}” isn't a number above 0. Try 2.5.", text.trim()))
}

/// A count of turns that may be left out; parts of a turn may be written as a fraction. `follows` is what it then is.
pub(crate) fn optional_turns(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    entry: &Entry<'_>,
    now: Option<f64>,
    follows: Option<f64>,
) -> Option<Option<f64>> {
    let read = |text: &str| optional(text, read_turns);
    let step = |steps| step_turns(now.or(follows)?, steps).map(Some);
    let text = now.map_or_else(String::new, |turns| turns.to_string());
    entry::show(ui, sizing.theme, entry, &text, &Reading { read: &read, step: Some(&step), doubt: None })
}

/// A count of turns above 0.
pub(crate) fn turns(ui: &mut Ui, sizing: &Sizing<'_>, entry: &Entry<'_>, now: f64) -> Option<f64> {
    let step = |steps| step_turns(now, steps);
    entry::show(
        ui,
        sizing.theme,
        entry,
        &now.to_string(),
        &Reading { read: &read_turns, step: Some(&step), doubt: None },
    )
}

fn step_turns(from: f64, steps: i32) -> Option<f64> {
    let turns = (from / TURNS_STEP).round() * TURNS_STEP + f64::from(steps) * TURNS_STEP;
    (turns > 0.0).then_some(turns)
}

/// Turns as a smith writes them: `1.5`, `1 1/2`, `540 deg`.
fn read_turns(text: &str) -> Result<f64, String> {
    let trimmed = text.trim();
    let is_bare = !trimmed.chars().any(|c| c.is_alphabetic() || c == '°');
    let angle = if is_bare { format!("{trimmed} turn") } else { trimmed.to_owned() };
    let turns = WrittenAngle::parse(&angle, false).ok().map(|angle| angle.radians() / std::f64::consts::TAU);
    // An angle is kept in radians: what that rounds off is far below what anyone writes.
    let turns = turns.map(|turns| (turns * 1e9).round() / 1e9).filter(|turns| *turns > 0.0);
    turns.ok_or_else(|| format!("“{trimmed}” isn't a count of turns. Try 1 1/2."))
}

/// How many pieces are made; 1 where it is left out.
pub(crate) fn count(ui: &mut Ui, sizing: &Sizing<'_>, entry: &Entry<'_>, now: Option<u32>) -> Option<Option<u32>> {
    let read = |text: &str| {
        optional(text, |text| {
            let count = text.trim().parse::<u32>().ok().filter(|count| *count > 0);
            count.ok_or_else(|| format!("“{}” isn't a count of pieces. Write a whole number from 1.", text.trim()))
        })
    };
    let step = |steps| now.unwrap_or(1).checked_add_signed(steps).filter(|count| *count > 0).map(Some);
    let text = now.map_or_else(String::new, |count| count.to_string());
    entry::show(ui, sizing.theme, entry, &text, &Reading { read: &read, step: Some(&step), doubt: None })
}

/// Words.
pub(crate) fn words(ui: &mut Ui, sizing: &Sizing<'_>, entry: &Entry<'_>, now: &str) -> Option<String> {
    let read = |text: &str| of_name_length(text.trim()).map(str::to_owned);
    entry::show(ui, sizing.theme, entry, now, &Reading { read: &read, step: None, doubt: None })
}

/// Words no longer than a name.
fn of_name_length(words: &str) -> Result<&str, String> {
    if words.chars().nth(LONGEST_NAME).is_none() {
        return Ok(words);
    }
    Err(format!("{LONGEST_NAME} letters are the most"))
}

/// Words that may be left out.
pub(crate) fn optional_words(
    ui: &mut Ui,
    sizing: &Sizing<'_>,
    entry: &Entry<'_>,
    now: Option<&str>,
) -> Option<Option<String>> {
    let read = |text: &str| optional(text, |text| Ok(text.trim().to_owned()));
    entry::show(ui, sizing.theme, entry, now.unwrap_or(""), &Reading { read: &read, step: None, doubt: None })
}

/// Reads a text that may be empty.
fn optional<T>(text: &str, read: impl Fn(&str) -> Result<T, String>) -> Result<Option<T>, String> {
    if text.trim().is_empty() { Ok(None) } else { read(text).map(Some) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turns_are_read_as_smiths_write_them() {
        for (text, turns) in
            [("1.5", 1.5), ("1 1/2", 1.5), ("2", 2.0), ("540 deg", 1.5), ("1,25", 1.25), ("3 turn", 3.0)]
        {
            assert_eq!(read_turns(text), Ok(turns), "{text}");
        }
        for text in ["", "0", "-1", "some"] {
            assert!(read_turns(text).is_err(), "{text}");
        }
    }
}

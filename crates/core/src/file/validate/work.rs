//! The order of work: what it must say. A step that names a part that is not there is a finding, not a fault of the file.

use super::{Checked, refuse};
use crate::file::key_path::KeyPath;
use crate::plan::{Accepted, HeatRules, Logged, Step, Work};

/// What may be written as the heat out of the fire, in °C: from warm to the melting of iron.
const FIRE: std::ops::RangeInclusive<f64> = 100.0..=1500.0;

/// Checks the order of work.
pub(super) fn check_work(work: &Work, at: &KeyPath) -> Checked {
    check_heats(&work.heats, &at.key("heats"))?;
    let log = at.key("log");
    let mut each = work.log.iter().enumerate();
    each.try_for_each(|(index, logged)| check_logged(logged, &log.index(index)))?;
    let steps = at.key("steps");
    let mut each = work.steps.iter().flatten().enumerate();
    each.try_for_each(|(index, step)| check_step(step, &steps.index(index)))
}

fn check_heats(rules: &HeatRules, at: &KeyPath) -> Checked {
    check_above_zero(rules.minutes, "minutes", at)?;
    check_above_zero(rules.pace, "pace", at)?;
    check_above_zero(rules.hammer.map(|hammer| hammer.kg), "hammer", at)?;
    match rules.fire_celsius.filter(|celsius| !FIRE.contains(celsius)) {
        Some(celsius) => {
            let message = format!("{celsius} was found; a forging fire gives {} to {} °C", FIRE.start(), FIRE.end());
            refuse(at.key("fire_celsius"), message)
        }
        None => Ok(()),
    }
}

fn check_above_zero(value: Option<f64>, key: &str, at: &KeyPath) -> Checked {
    match value.filter(|value| !value.is_finite() || *value <= 0.0) {
        Some(value) => refuse(at.key(key), format!("{value} was found, but a number above 0 belongs here")),
        None => Ok(()),
    }
}

fn check_logged(logged: &Logged, at: &KeyPath) -> Checked {
    if logged.bar == Some(0) {
        return refuse(at.key("bar"), "0 was found, but bars are counted from 1");
    }
    check_above_zero(logged.minutes, "minutes", at)?;
    check_above_zero(logged.kg, "kg", at)
}

fn check_step(step: &Step, at: &KeyPath) -> Checked {
    if step.bar == Some(0) {
        return refuse(at.key("bar"), "0 was found, but bars are counted from 1");
    }
    if let Some(index) = step.work.iter().position(|deed| deed.joint == Some(0)) {
        return refuse(at.key("work").index(index).key("joint"), "0 was found, but joints are counted from 1");
    }
    if let Some(index) = step.work.iter().position(|deed| deed.to == Some(0)) {
        return refuse(at.key("work").index(index).key("to"), "0 was found, but shapes on the way are counted from 1");
    }
    let is_blank = |accepted: &Accepted| accepted.finding.trim().is_empty() || accepted.because.trim().is_empty();
    if let Some(index) = step.accepted.iter().position(is_blank) {
        let message = "what is accepted names a finding, and says why it may be so".to_owned();
        return refuse(at.key("accepted").index(index), message);
    }
    check_above_zero(step.minutes, "minutes", at)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use crate::file::{read, write};

    fn with_work(work: &str) -> String {
        format!(
            r#"{{ "firstheat": 1, "bars": [{{ "stock": {{ "square": "12 mm" }}, "segments": [
              {{ "form": {{ "plain": {{ "length": "60 mm" }} }} }} ] }}], "work": {work} }}"#
        )
    }

    fn refusal(work: &str) -> String {
        read(with_work(work).as_bytes()).map(|_| String::new()).unwrap_or_else(|error| error.to_string())
    }

    #[test]
    fn an_order_of_work_is_read_and_written_back() {
        let work = r#"{ "heats": { "zone": "6 in", "minutes": 1.5, "hammer": { "kg": 1.2, "by": "striker" }, "fire_celsius": 1150 }, "steps": [
            { "work": [ { "operation": "set_down", "parts": ["1"] }, { "operation": "draw", "parts": ["1", "7"] } ],
              "tool": "cross peen", "place": "far_edge", "edge": "0 mm", "up": "90 deg",
              "reach": [ { "what": "thickness", "size": "6 mm", "tolerance": "0.5 mm" } ], "heat": "new" },
            { "title": "my own way", "note": "slowly", "accepted": [ { "finding": "thin-too-soon", "because": "the leaf is my handle" } ] } ],
            "log": [ { "operation": "draw", "parts": ["1"], "day": "a wet Tuesday", "heats": 3, "minutes": 2.5, "blows": 140,
              "sizes": [ { "what": "thickness", "size": "6.2 mm" } ] } ] }"#;
        let plan = read(with_work(work).as_bytes()).unwrap();
        let steps = plan.work.steps.as_ref().unwrap();
        assert_eq!((steps.len(), steps[0].work[1].parts.len()), (2, 2));
        assert_eq!(read(write(&plan).as_bytes()).unwrap(), plan);
    }

    #[test]
    fn what_cannot_be_a_step_is_refused_with_its_place() {
        for (wrong, words) in [
            (r#"{ "heats": { "minutes": 0 } }"#, "work.heats.minutes: 0 was found"),
            (r#"{ "heats": { "hammer": { "kg": 0 } } }"#, "work.heats.hammer: 0 was found"),
            (r#"{ "heats": { "fire_celsius": 3000 } }"#, "a forging fire gives 100 to 1500 °C"),
            (r#"{ "heats": { "pace": -1 } }"#, "work.heats.pace: -1 was found"),
            (r#"{ "steps": [ { "bar": 0 } ] }"#, "work.steps[0].bar: 0 was found, but bars are counted from 1"),
            (r#"{ "steps": [ { "work": [ { "operation": "drawn" } ] } ] }"#, "was \"draw\" meant?"),
            (r#"{ "steps": [ { "work": [ { "operation": "fit", "joint": 0 } ] } ] }"#, "work[0].joint: 0 was found"),
            (
                r#"{ "steps": [ { "work": [ { "operation": "draw", "parts": ["1"], "to": 0 } ] } ] }"#,
                "work[0].to: 0 was found",
            ),
            (r#"{ "steps": [ { "minutes": 0 } ] }"#, "work.steps[0].minutes: 0 was found"),
            (r#"{ "log": [ { "operation": "draw", "minutes": 0 } ] }"#, "work.log[0].minutes: 0 was found"),
            (
                r#"{ "steps": [ { "accepted": [ { "finding": "thin-too-soon", "because": " " } ] } ] }"#,
                "work.steps[0].accepted[0]: what is accepted",
            ),
            (r#"{ "log": [ { "operation": "draw", "bar": 0 } ] }"#, "work.log[0].bar: 0 was found"),
            (r#"[]"#, "a list in [ ] was found"),
            (r#"{ "steps": [ { "too": "hammer" } ] }"#, "there is no key \"too\" here"),
        ] {
            let said = refusal(wrong);
            assert!(said.contains(words), "{said}");
        }
    }
}

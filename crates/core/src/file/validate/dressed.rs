//! The dressed lengths of a part: which forms a die dresses, and what each die asks for.

use super::super::fault::{Checked, refuse};
use super::super::key_path::KeyPath;
use crate::plan::{DieKind, DieSpec, Dressed, FormKind, Segment, V_DEGREES};

/// Checks the list of what is dressed in dies.
pub(super) fn check_dressed(segment: &Segment, at: &KeyPath) -> Checked {
    let kind = segment.form.kind();
    if !segment.dressed.is_empty() && !FormKind::DRESSED.contains(&kind) {
        let names: Vec<_> = FormKind::DRESSED.iter().map(|kind| format!("\"{}\"", kind.name())).collect();
        let message = format!("\"{}\" isn't dressed in a die; what is dressed is {}", kind.name(), names.join(", "));
        return refuse(at.clone(), message);
    }
    if segment.dressed.len() > Dressed::MOST {
        let (count, most) = (segment.dressed.len(), Dressed::MOST);
        return refuse(at.clone(), format!("{count} dressed lengths were read; a part has {most} at most"));
    }
    segment.dressed.iter().enumerate().try_for_each(|(index, dressed)| check_one(dressed, &at.index(index)))
}

fn check_one(dressed: &Dressed, at: &KeyPath) -> Checked {
    if dressed.die.kind() == DieKind::FullerAcross && dressed.length.is_some() {
        let message = "a groove across the bar is as long as the fuller is wide; leave the length out";
        return refuse(at.key("length"), message);
    }
    let DieSpec::VBlock { angle: Some(angle) } = &dressed.die else { return Ok(()) };
    if DieSpec::is_v(angle) {
        return Ok(());
    }
    let [least, most] = V_DEGREES;
    let message = format!("{} was read; the V of a block is {least} to {most} deg", angle.text());
    refuse(at.key("die").key("v_block").key("angle"), message)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests stop where something is wrong")]
mod tests {
    use crate::file::read;

    fn refusal(form: &str, dressed: &str) -> String {
        let text = format!(
            r#"{{ "firstheat": 1, "bars": [{{ "stock": {{ "square": "12 mm" }}, "segments": [
              {{ "form": {form}, "dressed": [{dressed}] }} ] }}] }}"#
        );
        read(text.as_bytes()).map(|_| String::new()).unwrap_or_else(|error| error.to_string())
    }

    #[test]
    fn a_dressed_length_names_its_die_with_its_size() {
        let plain = r#"{ "plain": { "length": "60 mm" } }"#;
        for right in [
            r#"{ "die": { "fuller": { "radius": "3 mm" } }, "depth": "2 mm" }"#,
            r#"{ "die": { "fuller": { "radius": "3 mm", "across": true } }, "from": "30 mm", "depth": "2 mm" }"#,
            r#"{ "die": { "swage": { "radius": "8 mm" } }, "from": "0 mm", "side": "outside", "depth": "2 mm" }"#,
            r#"{ "die": { "v_block": {} }, "length": "20 mm", "side": "180 deg", "depth": "1 to 2 mm" }"#,
            r#"{ "die": { "v_block": { "angle": "60 deg" } }, "side": "inside", "depth": "2 mm" }"#,
        ] {
            assert_eq!(refusal(plain, right), "", "{right}");
        }
        for (wrong, words) in [
            (r#"{ "die": { "fuller": { "radius": "3 mm" } } }"#, "the key \"depth\" is missing"),
            (r#"{ "die": { "fuller": {} }, "depth": "2 mm" }"#, "the key \"radius\" is missing"),
            (r#"{ "die": { "fuler": {} }, "depth": "2 mm" }"#, "there is no \"fuler\" here"),
            (
                r#"{ "die": { "v_block": { "angle": "5 deg" } }, "depth": "2 mm" }"#,
                "dressed[0].die.v_block.angle: 5 deg",
            ),
            (r#"{ "die": { "swage": { "radius": "0 mm" } }, "depth": "2 mm" }"#, "a size greater than 0 belongs here"),
            (r#"{ "die": { "v_block": {} }, "depth": "2 mm", "side": "left" }"#, "dressed[0].side"),
            (
                r#"{ "die": { "fuller": { "radius": "3 mm", "across": true } }, "length": "9 mm", "depth": "2 mm" }"#,
                "dressed[0].length: a groove across the bar",
            ),
        ] {
            let said = refusal(plain, wrong);
            assert!(said.contains(words), "{said}");
        }
        let ball = r#"{ "ball": { "diameter": "20 mm" } }"#;
        let said = refusal(ball, r#"{ "die": { "v_block": {} }, "depth": "2 mm" }"#);
        assert!(
            said.contains("\"ball\" isn't dressed in a die; what is dressed is \"plain\", \"drawn\", \"taper\""),
            "{said}"
        );
    }
}

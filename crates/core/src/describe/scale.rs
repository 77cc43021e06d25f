//! The scale that the marks of a bar allow for, in words.

use super::part_name;
use crate::plan::{Bar, Form, Plan};
use fh_measure::WrittenShare;

/// What the marks of a bar allow for scale, each part with its own: `3 %; “blade” 5 %`.
///
/// What is left as stock has no scale, and a split that of its branches' parts.
pub fn scale_words(plan: &Plan, bar: &Bar) -> String {
    let of_bar = bar.scale.as_ref().or(plan.scale.as_ref());
    let text = |share: Option<&WrittenShare>| match share {
        Some(share) if share.ratio() > 0.0 => share.text().to_owned(),
        _ => "none".to_owned(),
    };
    let mut words = vec![text(of_bar)];
    for (at, flat) in bar.flat().iter().enumerate() {
        let form = &flat.segment.form;
        let own = flat.segment.scale.as_ref().filter(|_| !form.is_as_stock() && !matches!(form, Form::Split(_)));
        let differs = |own: &&WrittenShare| (own.ratio() - of_bar.map_or(0.0, WrittenShare::ratio)).abs() > 1e-9;
        words.extend(own.filter(differs).map(|own| format!("“{}” {}", part_name(bar, at), text(Some(own)))));
    }
    words.join("; ")
}

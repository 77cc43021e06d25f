//! The cautions of a plan, for screen, paper and command line alike: what stops it, what it must not be used for, what its
//! metal, its coating and its hammer ask for, and what holds at every fire.
//!
//! Common practice, no source.

use crate::balance::Balance;
use crate::describe::segment_name;
use crate::findings::{Finding, NONE_FOUND, Severity};
use crate::plan::{Coating, Duty, Plan, SwungBy};

/// What is said of coated stock, wherever it is said.
pub const BARE_STOCK: &str = "Use bare stock. Don't heat coated stock, and don't rely on burning it off.";
/// What is said of painted stock.
pub const STRIPPED: &str =
    "Use bare stock, or strip it cold to bare metal, with a mask: old paint may hold lead. Don't burn it off.";

/// What holds at every fire, whatever the piece.
const GENERAL: [&str; 6] = [
    "Eye protection on, for you and for everyone near you; ear protection at the anvil.",
    "Black steel can still be hot. Test it before you touch it.",
    "Use bare stock. Never heat galvanised or plated metal, nor rely on burning it off: its fumes are poisonous.",
    "Keep the shop aired, and water or an extinguisher at hand; never water on burning oil or wax.",
    "Not to lift, tow or hold people, unless a competent person has rated and tested the part.",
    "Local codes and licensed practice come before this sheet.",
];

const POWER_HAMMER: &str = "Power hammer: hands and fingers out from under it, the tongs beside the body and in line with the bar, nothing cold or burnt under it.";

/// The stops that are told one by one; of more, how many there are.
const MOST_STOPS: usize = 3;

/// The cautions of a plan.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cautions {
    /// Why it cannot be forged as it stands, each with its remedy.
    pub stops: Vec<String>,
    /// What it must not be used for before somebody has rated it; none where it carries no more than light goods.
    pub rating: Option<&'static str>,
    /// What its coating, its metal and its hammer ask for, each a sentence or two.
    pub own: Vec<&'static str>,
    /// What holds at every fire.
    pub general: Vec<&'static str>,
}

impl Cautions {
    /// Whether the plan itself asks for any.
    pub fn has_own(&self) -> bool {
        !self.stops.is_empty() || self.rating.is_some() || !self.own.is_empty()
    }

    /// What holds at every fire in one line, where there is no room for more.
    pub fn in_short(&self) -> String {
        let strength = self.general.last().copied().unwrap_or_default();
        format!(
            "Caution: eyes and ears; black steel may be hot; nothing coated; air; not rated; local codes first. {strength}"
        )
    }
}

/// The cautions of a plan with its balance.
pub fn cautions(plan: &Plan, balance: &Balance) -> Cautions {
    let found = if balance.findings.is_empty() { NONE_FOUND } else { "Strength is not checked." };
    Cautions {
        stops: stops(plan, balance),
        rating: rating(plan.duty),
        own: own(plan),
        general: GENERAL.into_iter().chain([found]).collect(),
    }
}

/// Every stop but that of the rating, which has a place of its own.
fn stops(plan: &Plan, balance: &Balance) -> Vec<String> {
    let is_rating = |finding: &Finding| finding.id == "rated-part";
    let all = balance.findings.iter().filter(|finding| finding.severity == Severity::Stop && !is_rating(finding));
    let mut told: Vec<String> = all.map(|finding| stop_words(plan, finding)).collect();
    told.dedup();
    if let Some(more @ 1..) = told.len().checked_sub(MOST_STOPS) {
        told.truncate(MOST_STOPS);
        told.push(format!("And {more} more: see the findings."));
    }
    told
}

fn stop_words(plan: &Plan, finding: &Finding) -> String {
    let part = finding.place.bar.zip(finding.place.segment);
    let name = part.and_then(|(bar, at)| Some(segment_name(plan.bars.get(bar)?, at)));
    let named = name.filter(|name| !finding.message.contains(name.as_str())).map(|name| format!("{name}: "));
    format!("{}{} {}", named.unwrap_or_default(), finding.message, finding.remedy)
}

fn rating(duty: Option<Duty>) -> Option<&'static str> {
    match duty? {
        Duty::Light => None,
        Duty::HoldsPeople => Some(
            "Not rated: it must hold nobody, up or back, before a competent person has designed, rated and proof-tested it.",
        ),
        Duty::Lifts => Some(
            "Not rated: it must lift or hang no load before a competent person has designed, rated and proof-tested it.",
        ),
        Duty::Tows => Some(
            "Not rated: it must tow or carry nothing before a competent person has designed, rated and proof-tested it.",
        ),
    }
}

fn own(plan: &Plan) -> Vec<&'static str> {
    named_own(plan).into_iter().map(|(_, words)| words).collect()
}

/// What coating, metal and hammer ask for, each with its id.
fn named_own(plan: &Plan) -> Vec<(&'static str, &'static str)> {
    let metal = plan.material();
    let paint = (plan.coating == Some(Coating::Painted)).then_some(("painted", STRIPPED));
    let never = metal.never.iter().map(|words| ("metal", *words));
    let fume = metal.fume.map(|words| ("fume", words));
    let is_power = plan.work.heats.hammer.is_some_and(|hammer| hammer.by == SwungBy::Power);
    let hammer = is_power.then_some(("power-hammer", POWER_HAMMER));
    paint.into_iter().chain(never).chain(fume).chain(hammer).collect()
}

/// One thing to beware of, for other programs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caution {
    /// What it is about: the id of a stop or a warning, `rated-part`, `painted`, `metal`, `fume` or `power-hammer`. It stays the
    /// same when the words change.
    pub id: &'static str,
    /// What to beware of, and what to do.
    pub words: String,
}

/// What a plan with its balance asks to beware of, one by one: every stop and warning, its rating, then what coating, metal and
/// hammer ask for. What holds at every fire is not in it.
pub fn listed(plan: &Plan, balance: &Balance) -> Vec<Caution> {
    const RATED: &str = "rated-part";
    let grave = balance.findings.iter().filter(|finding| finding.severity > Severity::Note && finding.id != RATED);
    let found = grave.map(|finding| Caution { id: finding.id, words: stop_words(plan, finding) });
    let rating = rating(plan.duty).map(|words| (RATED, words));
    let rest = rating.into_iter().chain(named_own(plan));
    found.chain(rest.map(|(id, words)| Caution { id, words: words.to_owned() })).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::balance::balance;

    fn of(keys: &str) -> Cautions {
        let text = format!(
            r#"{{ "firstheat": 1, {keys} "bars": [{{ "stock": {{ "square": "12 mm" }},
                "segments": [{{ "form": {{ "taper": {{ "length": "60 mm", "to": "point" }} }} }},
                    {{ "form": {{ "plain": {{ "length": "150 mm" }} }} }}] }}] }}"#
        );
        let plan = crate::file::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}"));
        cautions(&plan, &balance(&plan))
    }

    #[test]
    fn a_plain_plan_of_mild_steel_has_the_general_ones_and_says_that_strength_is_not_checked() {
        let plain = of("");
        assert!(!plain.has_own(), "{plain:?}");
        assert_eq!(plain.general.len(), 7);
        assert_eq!(plain.general.last(), Some(&"Nothing found wrong. Strength is not checked."));
    }

    #[test]
    fn what_holds_people_lifts_or_tows_is_not_rated() {
        for (duty, word) in [("holds_people", "nobody"), ("lifts", "load"), ("tows", "tow")] {
            let told = of(&format!(r#""duty": "{duty}","#));
            assert!(told.rating.is_some_and(|words| words.contains(word)), "{duty}: {told:?}");
            assert!(told.stops.is_empty(), "the band says it: {told:?}");
        }
        assert_eq!(of(r#""duty": "light","#).rating, None);
    }

    #[test]
    fn coating_metal_and_hammer_bring_their_own() {
        for coating in ["galvanised", "plated"] {
            let told = of(&format!(r#""coating": "{coating}","#));
            assert!(told.stops.iter().any(|stop| stop.contains(coating) && stop.contains(BARE_STOCK)), "{told:?}");
        }
        assert!(of(r#""coating": "painted","#).own.contains(&STRIPPED));
        assert!(of(r#""material": "brass","#).own.iter().any(|words| words.contains("it breaks")));
        assert!(of(r#""material": "stainless steel","#).own.iter().any(|words| words.contains("chromium")));
        let power = of(r#""work": { "heats": { "hammer": { "kg": 33, "by": "power" } } },"#);
        assert!(power.own.iter().any(|words| words.contains("Power hammer")));
    }
}

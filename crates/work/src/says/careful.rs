//! What to be careful of at a step: common practice, no source, unless one is named.

use crate::bar::held::{Hold, least_mm};
use crate::fire::hearth::Fire;
use crate::fire::smith::Smith;
use crate::job::kind::{ends_in_point, is_rivet, is_slit};
use crate::job::part::{is_on_edge, is_rolled_across};
use crate::job::site::Site;
use crate::job::task::{Task, is_hot};
use crate::says::lay::joined::no_weld;
use crate::says::words::length_words;
use fh_core::cautions::BARE_STOCK;
use fh_core::material::{Material, Quench};
use fh_core::plan::{Coating, Operation};
use fh_heat::colors::CHAPMAN;

/// What to be careful of.
///
/// `held` is the part that is gripped, none where none is.
pub(crate) fn caution(site: &Site<'_>, task: &Task, thin: &[String], held: Option<usize>) -> Option<String> {
    let is_hot = is_hot(site, task);
    let of_work = if is_hot { of_hot_work(site, task, held) } else { of_cold_work(site, task) };
    let near = keep_out(site, thin).filter(|_| is_hot);
    let metal = site.plan.material().hot_caution.map(str::to_owned).filter(|_| is_hot);
    let all: Vec<String> = of_work.into_iter().chain(near).chain(metal).collect();
    (!all.is_empty()).then(|| all.join(" "))
}

/// What to be careful of where little is left to hold, once something was parted off.
pub(crate) fn short_hold(site: &Site<'_>, hold: Option<&Hold>, was_off: bool) -> Option<String> {
    let hold = hold.filter(|hold| was_off && hold.length_mm < least_mm(site) - 0.05)?;
    let left = length_words(site.plan, hold.length_mm);
    Some(format!("Only {left} is left to hold: it slips easily, and the hand is near the heat."))
}

/// What to be careful of in work that is done cold.
fn of_cold_work(site: &Site<'_>, task: &Task) -> Vec<String> {
    match task.operation {
        Operation::Mark => match site.plan.coating {
            Some(coating @ (Coating::Galvanised | Coating::Plated)) => {
                vec![format!("The stock is {}: its fumes are poisonous. {BARE_STOCK}", coating.name())]
            }
            _ => Vec::new(),
        },
        Operation::Drill => {
            vec!["Clamp it, and wear no gloves: the drill snatches the work as it breaks through.".to_owned()]
        }
        Operation::Wax => vec![
            "Wax and oil can flare up: warm, not hot, away from the fire, in fresh air; never water on burning wax."
                .to_owned(),
        ],
        _ => Vec::new(),
    }
}

/// What to be careful of in work that is done hot, besides what the metal and thin neighbors ask for.
fn of_hot_work(site: &Site<'_>, task: &Task, held: Option<usize>) -> Vec<String> {
    use Operation as O;
    let part = task.part.and_then(|at| site.part(at));
    let metal = site.plan.material();
    let one = match task.operation {
        O::PartOff | O::Trim if task.part.is_some() && task.part == held => {
            "Make the last blow light: it is the work that comes off. Have second tongs on it, or something soft below it, and nobody in line with it."
        }
        O::PartOff | O::Trim => "Make the last blow light, with nobody in line with the offcut.",
        O::Split => "Work on the soft step or over a plate; cool the chisel before its edge turns red.",
        O::Punch if is_slit(site, task) => "Cool the chisel every few blows, or it softens and sticks.",
        O::Punch => "Take the punch out and cool it every few blows, or it sticks and swells.",
        O::Weld | O::Scarf if metal.weld.is_none() => return vec![no_weld(metal)],
        O::Weld => {
            let hard = metal.weld.as_ref().and_then(|weld| weld.hard).map(str::to_owned);
            let sparks =
                "Sparks and flux fly at the first blow: cover eyes and arms, and keep bystanders back.".to_owned();
            return hard.into_iter().chain([sparks]).collect();
        }
        O::Upset if !is_rivet(site, task) => return vec![of_an_upset(site, task)],
        O::Twist => "One even heat over what twists, and no more: the hottest place twists first.",
        O::Bend if part.is_some_and(|part| is_on_edge(site, part)) => {
            "On its edge it buckles inside and thins outside: level it flat after every few blows, and heat it again before it resists."
        }
        O::Roll if part.is_some_and(|part| !is_rolled_across(part) && !site.beside(part.at).contains(&None)) => {
            "Never heat a socket that is closed at both ends: trapped air or water bursts it."
        }
        O::Taper if ends_in_point(site, task) => "A point burns in a moment: push it past the heart of the fire.",
        _ => return Vec::new(),
    };
    vec![one.to_owned()]
}

fn of_an_upset(site: &Site<'_>, task: &Task) -> String {
    let quench = site.plan.material().quench;
    if !quench.may {
        return format!("A short heat, with no more than the marked length hot; do not quench it: it {}.", quench.does);
    }
    let is_end = task.part.is_some_and(|at| site.beside(at).contains(&None));
    let side = if is_end { "beyond the heat" } else { "on both sides of the heat" };
    format!("Cool the bar {side}, so that only the marked length thickens.")
}

/// That thin parts are kept out of the fire; none where there are none.
fn keep_out(site: &Site<'_>, thin: &[String]) -> Option<String> {
    if thin.is_empty() {
        return None;
    }
    let them = if thin.len() == 1 { "it" } else { "them" };
    let quench = match site.plan.material().quench {
        Quench { may: true, .. } => format!("'s heart; dip {them} before you strike"),
        Quench { does, .. } => format!(": push {them} past it, and do not quench {them}, it {does}"),
    };
    Some(format!("Keep {} out of the fire{quench}.", crate::says::words::joined(thin)))
}

/// Between which heats a steel that hardens is worked; none of other metals, whose own caution says what has to be said.
pub(crate) fn stop(site: &Site<'_>, tasks: &[Task]) -> Option<String> {
    if tasks.iter().any(|task| task.operation == Operation::Normalise) {
        return None;
    }
    let metal = site.plan.material();
    let celsius = metal.normalise.and_then(|_| Fire::of(site.plan, Smith::default()))?.stop_celsius(tasks);
    let why = if metal.own_brittle().any(|range| range.to_celsius <= celsius) { "it cracks" } else { "heat it again" };
    let low = format!("Not below {}: {why}.", with_its_color(celsius));
    let high = not_above(metal).filter(|_| tasks.iter().all(|task| task.operation != Operation::Weld));
    Some(high.into_iter().chain([low]).collect::<Vec<_>>().join(" "))
}

/// How hot a steel may be made, but to weld it.
fn not_above(metal: &Material) -> Option<String> {
    match metal.open_most_celsius {
        Some(celsius) => {
            let most = with_its_color(celsius);
            Some(format!("Not above {most}: it burns. Test a spark where the grade is unknown."))
        }
        None => Some(format!("Not above {}: it burns.", with_its_color(metal.forging?.usual_celsius))),
    }
}

/// A heat with what it looks like.
fn with_its_color(celsius: f64) -> String {
    let looks = CHAPMAN.word(celsius).map_or_else(String::new, |word| {
        let article = if word.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
        format!(", {article} {word}")
    });
    format!("{celsius:.0} °C{looks}")
}

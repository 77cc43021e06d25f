//! An asked size in the smith's words.

use super::{fine_length, short_name};
use crate::balance::SizeBalance;
use crate::plan::{AskedSize, Direction, Feature, PlanUnit, Taken};

/// From where to where a size is taken: `“foot” start to “arm” end, straight across`.
pub fn asked_size_words(size: &AskedSize) -> String {
    if let Some(overall) = &size.overall {
        let of = overall.of.as_ref().map_or_else(|| "the bar".to_owned(), |of| format!("“{}”", short_name(of)));
        return match overall.direction {
            Direction::Along => format!("overall, along {of}"),
            Direction::Up => format!("overall, square to {of} up and down"),
            Direction::Across => format!("overall, square to {of} to and fro"),
        };
    }
    let place = |feature: &Option<Feature>| {
        feature.as_ref().map_or_else(String::new, |of| format!("“{}” {}", short_name(&of.part), of.at.name()))
    };
    let taken = match &size.taken {
        None | Some(Taken::InSpace) => "straight across".to_owned(),
        Some(Taken::Along(part)) => format!("along “{}”", short_name(part)),
        Some(Taken::OnStraightBar) => "on the bar while it is straight".to_owned(),
    };
    format!("{} to {}, {taken}", place(&size.from), place(&size.to))
}

/// What is asked, what it is where it is not that, and which part keeps it: `140 mm, kept by “shank”`.
pub fn asked_size_state(size: &AskedSize, balance: &SizeBalance, unit: PlanUnit) -> String {
    let asked = size.size.text();
    let is =
        balance.value.map_or_else(|| "cannot be taken".to_owned(), |value| format!("is {}", fine_length(value, unit)));
    match &size.kept_by {
        Some(part) if balance.met && balance.missed.is_none() => format!("{asked}, kept by “{}”", short_name(part)),
        _ if balance.met => format!("{asked}, {is}"),
        _ => format!("{asked} asked, {is}"),
    }
}

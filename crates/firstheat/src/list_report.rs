//! The cut list of plans in words and as JSON.

use crate::rack_report::mass;
use crate::table::{Side, lined_up};
use fh_rack::list::make::{Aim, BarCuts, Bought, CutList, Group};
use fh_rack::list::source::{From, Source};
use fh_rack::list::words::{known, run, tenths, way};
use serde::Serialize;

/// A cut list for other programs. Lengths in mm, masses in kg, money in whole units of the currency.
#[derive(Serialize)]
pub(crate) struct ListReport {
    title: String,
    feasible: bool,
    currency: String,
    groups: Vec<GroupReport>,
    buy: Vec<Buy>,
    new_mass_kg: f64,
    left: Vec<Left>,
    cut_already: Vec<CutAlready>,
    told: Vec<String>,
}

#[derive(Serialize)]
struct GroupReport {
    material: String,
    section: String,
    /// Other sections that pieces of the group may come from.
    also_from: Vec<String>,
    way: String,
    kerf_mm: f64,
    hold_mm: Option<f64>,
    bars_used: i64,
    new_bars: u64,
    /// What is bought costs so much; absent where not every price is known.
    cost: Option<f64>,
    scrap_mm: f64,
    longest_offcut_mm: f64,
    /// No list has less of the first aim: `cost`, or `new_bars`.
    lower_bound: f64,
    aim: &'static str,
    proven: bool,
    all_proven: bool,
    mass_kg: f64,
    bars: Vec<Bar>,
    /// What pieces and cuts take of the bars.
    used_mm: f64,
}

#[derive(Serialize)]
struct Bar {
    length_mm: f64,
    section: String,
    from: &'static str,
    place: Option<String>,
    times: u64,
    cuts: Vec<Cut>,
    offcut_mm: f64,
    kept: bool,
}

#[derive(Serialize)]
struct Cut {
    piece: String,
    length_mm: f64,
    at_mm: f64,
}

#[derive(Serialize)]
struct Buy {
    count: u64,
    section: String,
    material: String,
    length: String,
    length_mm: f64,
    price: Option<f64>,
    mass_kg: f64,
    /// How long it takes to come, in words.
    lead: Option<String>,
    /// What pieces and cuts take of all of them.
    used_mm: f64,
}

#[derive(Serialize)]
struct Left {
    piece: String,
    count: u64,
    too_long_mm: Option<f64>,
}

#[derive(Serialize)]
struct CutAlready {
    piece: String,
    count: u64,
}

fn mm(nm: i64) -> f64 {
    nm as f64 / 1e6
}

impl ListReport {
    /// The report of a list.
    pub(crate) fn new(title: &str, list: &CutList) -> Self {
        let name = |piece: usize| list.wanted.pieces.get(piece).map(|piece| piece.name.clone()).unwrap_or_default();
        let left = list.groups.iter().flat_map(|group| &group.left);
        let buy = list.bought().into_iter().map(|Bought { source, count, used_nm }| Buy {
            count,
            section: source.section.describe(),
            material: source.alike.material.clone(),
            length: source.called.text().to_owned(),
            length_mm: mm(source.length_nm),
            price: source.price.map(|price| list.money.number(price)),
            mass_kg: source.mass_kg * count as f64,
            lead: source.place.clone(),
            used_mm: mm(used_nm),
        });
        Self {
            title: title.to_owned(),
            feasible: list.is_whole(),
            currency: list.money.name.clone(),
            groups: list.groups.iter().map(|group| group_report(list, group)).collect(),
            buy: buy.collect(),
            new_mass_kg: list.new_mass_kg(),
            left: left
                .map(|over| Left { piece: name(over.piece), count: over.count, too_long_mm: over.too_long_nm.map(mm) })
                .collect(),
            cut_already: list
                .wanted
                .cut_already
                .iter()
                .map(|(piece, count)| CutAlready { piece: piece.clone(), count: *count })
                .collect(),
            told: list.wanted.told.clone(),
        }
    }
}

fn group_report(list: &CutList, group: &Group) -> GroupReport {
    let worth = &group.worth;
    let is_priced = group.aim == Aim::Cost;
    let source = |bar: &BarCuts| list.sources.get(bar.source);
    let mass_kg = group.bars.iter().filter_map(|bar| Some(source(bar)?.mass_kg * bar.times as f64)).sum();
    GroupReport {
        material: group.material.clone(),
        section: group.sections.first().cloned().unwrap_or_default(),
        also_from: group.sections.iter().skip(1).cloned().collect(),
        way: group.way.clone(),
        kerf_mm: mm(group.kerf_nm),
        hold_mm: group.hold_nm.map(mm),
        bars_used: worth.bars,
        new_bars: group.new_bars,
        cost: is_priced.then(|| list.money.number(worth.cost)),
        scrap_mm: mm(worth.scrap_nm),
        longest_offcut_mm: mm(worth.longest_nm),
        lower_bound: if is_priced { list.money.number(group.bound) } else { group.bound as f64 },
        aim: if is_priced { "cost" } else { "new_bars" },
        proven: group.is_first_proven,
        all_proven: group.is_proven,
        mass_kg,
        bars: group.bars.iter().filter_map(|bar| Some(bar_report(list, source(bar)?, bar))).collect(),
        used_mm: mm(list.taken_nm(group).1),
    }
}

fn bar_report(list: &CutList, source: &Source, bar: &BarCuts) -> Bar {
    let cut = |cut: &fh_rack::list::make::Cut| Cut {
        piece: list.wanted.pieces.get(cut.piece).map(|piece| piece.name.clone()).unwrap_or_default(),
        length_mm: mm(cut.length_nm),
        at_mm: mm(cut.at_nm),
    };
    Bar {
        length_mm: mm(source.length_nm),
        section: source.section.describe(),
        from: from(source),
        place: source.place.clone(),
        times: bar.times,
        cuts: bar.cuts.iter().map(cut).collect(),
        offcut_mm: mm(bar.offcut_nm),
        kept: bar.is_kept,
    }
}

fn from(source: &Source) -> &'static str {
    match source.from {
        From::Rack(_) => "rack",
        From::New(_) => "new",
    }
}

/// The list as a smith reads it: group after group, what to buy, what is left, and how good it is known to be.
pub(crate) fn words(title: &str, list: &CutList) -> String {
    let mut text = format!("Cut list: {title}\n");
    for group in &list.groups {
        text.push_str(&group_words(list, group));
    }
    text.push_str(&buy_words(list));
    let name = |piece: usize| list.wanted.pieces.get(piece).map_or("", |piece| piece.name.as_str());
    for over in list.groups.iter().flat_map(|group| &group.left) {
        let why = match over.too_long_nm {
            Some(nm) if nm > 0 => format!("{} mm too long for every bar", mm(nm)),
            _ => "there is no bar for it".to_owned(),
        };
        text.push_str(&format!("Not cut: {} × {}: {why}.\n", over.count, name(over.piece)));
    }
    for (piece, count) in &list.wanted.cut_already {
        text.push_str(&format!("Cut already: {count} × {piece}.\n"));
    }
    for told in &list.wanted.told {
        text.push_str(&format!("Note: {told}\n"));
    }
    text
}

fn group_words(list: &CutList, group: &Group) -> String {
    let (first, others) = group.sections.split_first().map_or(("", &[][..]), |(first, rest)| (first.as_str(), rest));
    let others = if others.is_empty() { String::new() } else { format!(", or {}", others.join(", ")) };
    let mut text = format!("\n{first}{others}, {}: {}\n", group.material, way(group));
    let heads = ["bars", "from", "pieces, and where each ends", "offcut"].map(str::to_owned).to_vec();
    let rows = group.bars.iter().filter_map(|bar| Some(bar_row(list, list.sources.get(bar.source)?, bar, group)));
    let rows: Vec<Vec<String>> = std::iter::once(heads).chain(rows).collect();
    text.push_str(&lined_up(&[Side::Right, Side::Left, Side::Left, Side::Left], &rows));
    text.push_str(&format!("{}\n", known(list, group)));
    text
}

fn bar_row(list: &CutList, source: &Source, bar: &BarCuts, group: &Group) -> Vec<String> {
    let place =
        source.place.as_ref().filter(|_| matches!(source.from, From::Rack(_))).map(|place| format!(", {place}"));
    let section = if group.sections.len() > 1 { format!("{}, ", source.section.describe()) } else { String::new() };
    let of = format!("{} {section}{}{}", from(source), source.called.text(), place.unwrap_or_default());
    let kept = if bar.is_kept { ", kept" } else { "" };
    vec![bar.times.to_string(), of, cuts_words(list, bar), format!("{} mm{kept}", mm(bar.offcut_nm))]
}

/// `3 × hook 120.5 (120.5, 242, 363.5) + pin 80 (445)`.
fn cuts_words(list: &CutList, bar: &BarCuts) -> String {
    let mut lots: Vec<(usize, f64, Vec<String>)> = Vec::new();
    for cut in &bar.cuts {
        let at = tenths(mm(cut.at_nm));
        match lots.last_mut().filter(|(piece, ..)| *piece == cut.piece) {
            Some((_, _, ends)) => ends.push(at),
            None => lots.push((cut.piece, mm(cut.length_nm), vec![at])),
        }
    }
    let lot = |(piece, length, ends): &(usize, f64, Vec<String>)| {
        let name = list.wanted.pieces.get(*piece).map_or("", |piece| piece.name.as_str());
        format!("{} × {name} {length} ({})", ends.len(), ends.join(", "))
    };
    lots.iter().map(lot).collect::<Vec<_>>().join(" + ")
}

fn buy_words(list: &CutList) -> String {
    let bought = list.bought();
    if bought.is_empty() {
        return String::new();
    }
    let rows = bought.iter().map(|bought| {
        let source = bought.source;
        let price = bought.cost().map(|cost| list.money.words(cost));
        let of = format!("{}, {}, {}", source.section.describe(), source.alike.material, source.called.text());
        let lead = source.place.clone().unwrap_or_default();
        vec![
            bought.count.to_string(),
            of,
            mass(source.mass_kg * bought.count as f64),
            price.unwrap_or_else(|| "price not known".to_owned()),
            format!("{} used", run(bought.used_nm, source)),
            lead,
        ]
    });
    let mut text = "\nTo buy\n".to_owned();
    text.push_str(&lined_up(
        &[Side::Right, Side::Left, Side::Right, Side::Right, Side::Right, Side::Left],
        &rows.collect::<Vec<_>>(),
    ));
    text.push_str(&format!("all of it {}\n", mass(list.new_mass_kg())));
    text
}

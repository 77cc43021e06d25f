//! `firstheat bars`: which bar a piece is made from.

use crate::check::as_json;
use crate::failure::Failure;
use crate::list_cli::BarsArgs;
use crate::table::{Side, lined_up};
use crate::{input, kept, output};
use fh_core::plan::Plan;
use fh_rack::list::source::sources;
use fh_rack::quote::hours::wait_for_a_heat;
use fh_rack::said::money::Currency;
use fh_rack::which::options::{BarOption, By, Moved, options, sort, work_options};
use fh_work::Shop;
use serde::Serialize;
use std::process::ExitCode;

/// The most options that are printed where not all are asked for.
const MOST: usize = 15;

/// Prints the options of every bar of a plan.
pub(crate) fn run(args: &BarsArgs) -> Result<ExitCode, Failure> {
    let plan = input::read(&args.plan)?;
    let (rack, merchant) = (kept::rack(args.rack.as_deref())?, kept::merchant(args.merchant.as_deref())?);
    let sources = sources(&rack, &merchant).map_err(Failure::new)?;
    let wait = wait_for_a_heat(&kept::shop(None)?);
    let mut bars = Vec::new();
    for bar in 0..plan.bars.len() {
        let mut all = options(&plan, bar, &sources);
        if !args.quick {
            work_options(&plan, bar, &mut all, (&Shop::default(), wait), &|| true, &mut |_| ());
        }
        sort(&mut all, if args.by_cost { By::Cost } else { By::Effort });
        bars.push(all);
    }
    let money = merchant.money();
    let text = if args.json { as_json(&report(&plan, &bars, &money))? } else { words(&plan, &bars, &money, args.all) };
    output::print(&text)?;
    Ok(ExitCode::SUCCESS)
}

#[derive(Serialize)]
struct Report {
    title: String,
    currency: String,
    bars: Vec<OfBar>,
}

#[derive(Serialize)]
struct OfBar {
    name: String,
    options: Vec<Row>,
}

#[derive(Serialize)]
struct Row {
    section: String,
    own: bool,
    on_rack: bool,
    can_be_forged: bool,
    long_enough: bool,
    length_mm: f64,
    length: String,
    mass_kg: f64,
    loss_kg: f64,
    cost: Option<f64>,
    drawn_kg: f64,
    drawn_times: f64,
    upset_kg: f64,
    upset_times: f64,
    heats: Option<usize>,
    minutes: Option<f64>,
    waiting_minutes: Option<f64>,
    against: Vec<String>,
}

fn report(plan: &Plan, bars: &[Vec<BarOption>], money: &Currency) -> Report {
    let row = |option: &BarOption| Row {
        section: option.section.describe(),
        own: option.is_own,
        on_rack: option.is_on_rack,
        can_be_forged: option.can_be_forged(),
        long_enough: option.is_long_enough,
        length_mm: option.length_nm as f64 / 1e6,
        length: option.words.clone(),
        mass_kg: option.mass_kg,
        loss_kg: option.loss_kg,
        cost: option.cost.map(|cost| money.number(cost)),
        drawn_kg: option.drawn.kg,
        drawn_times: option.drawn.times,
        upset_kg: option.upset.kg,
        upset_times: option.upset.times,
        heats: option.fire.map(|fire| fire.heats),
        minutes: option.fire.map(|fire| fire.minutes),
        waiting_minutes: option.fire.map(|fire| fire.waiting),
        against: option.against.iter().map(|against| against.message.clone()).collect(),
    };
    let of_bar = |(bar, options): (&fh_core::plan::Bar, &Vec<BarOption>)| OfBar {
        name: bar.name.clone(),
        options: options.iter().map(row).collect(),
    };
    Report {
        title: plan.title.clone(),
        currency: money.name.clone(),
        bars: plan.bars.iter().zip(bars).map(of_bar).collect(),
    }
}

fn words(plan: &Plan, bars: &[Vec<BarOption>], money: &Currency, all: bool) -> String {
    let mut text = String::new();
    for (index, (bar, options)) in plan.bars.iter().zip(bars).enumerate() {
        let name = if bar.name.trim().is_empty() { format!("Bar {}", index + 1) } else { bar.name.clone() };
        text.push_str(&format!("{name}, now {}\n", bar.stock.describe()));
        if options.is_empty() {
            text.push_str("Nothing is marked on this bar yet.\n\n");
            continue;
        }
        let shown: Vec<&BarOption> = options
            .iter()
            .enumerate()
            .filter(|(at, option)| all || *at < MOST || option.is_own)
            .map(|(_, one)| one)
            .collect();
        text.push_str(&table(&shown, money));
        let hidden = options.len() - shown.len();
        if hidden > 0 {
            text.push_str(&format!("{hidden} more: --all prints them.\n"));
        }
        for option in shown.iter().filter(|option| !option.against.is_empty()) {
            for against in &option.against {
                text.push_str(&format!(
                    "{}, {}: {}\n",
                    option.section.describe(),
                    against.severity.name(),
                    against.message
                ));
            }
        }
        text.push('\n');
    }
    text
}

fn table(options: &[&BarOption], money: &Currency) -> String {
    let heads = ["section", "", "cut", "kg", "lost kg", "draw out", "upset", "heats", "min", "cost", "against"];
    let row = |option: &&BarOption| {
        let place = match (option.is_own, option.is_on_rack) {
            (true, true) => "now, on the rack",
            (true, false) => "now",
            (false, true) => "on the rack",
            (false, false) => "",
        };
        let fire = option.fire;
        let against = match option.against.len() {
            0 if option.is_long_enough => String::new(),
            0 => "no bar is long enough".to_owned(),
            1 => option.against[0].id.to_owned(),
            many => format!("{}, {} more", option.against[0].id, many - 1),
        };
        vec![
            option.section.describe(),
            place.to_owned(),
            option.words.clone(),
            format!("{:.2}", option.mass_kg),
            format!("{:.2}", option.loss_kg),
            moved(option.drawn),
            moved(option.upset),
            fire.map_or_else(String::new, |fire| fire.heats.to_string()),
            fire.map_or_else(String::new, |fire| format!("{:.0}", fire.all_minutes().ceil())),
            option.cost.map_or_else(String::new, |cost| money.words(cost)),
            against,
        ]
    };
    let rows: Vec<Vec<String>> =
        std::iter::once(heads.map(str::to_owned).to_vec()).chain(options.iter().map(row)).collect();
    use Side::{Left, Right};
    lined_up(&[Left, Left, Right, Right, Right, Left, Left, Right, Right, Right, Left], &rows)
}

/// `0.42 kg × 1.8`.
fn moved(moved: Moved) -> String {
    if moved.kg < 0.000_5 { String::new() } else { format!("{:.2} kg × {:.1}", moved.kg, moved.times) }
}

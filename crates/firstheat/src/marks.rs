//! `firstheat marks`: the marks and the balance.

use crate::cli::ReadArgs;
use crate::failure::Failure;
use crate::marks_report::MarksReport;
use crate::table::{Side, lined_up};
use crate::{check, finding_report, input, output};
use fh_core::balance::{Balance, BarBalance, SegmentBalance, SizeBalance, balance};
use fh_core::contents::contents;
use fh_core::describe::{self, plain_line};
use fh_core::plan::{AskedSize, Bar, Plan, PlanUnit, Segment};
use fh_measure::counted;
use std::process::ExitCode;
use uom::si::f64::Mass;
use uom::si::length::millimeter;
use uom::si::mass::{kilogram, pound};
use uom::si::volume::cubic_millimeter;

/// Prints the marks of a plan.
pub(crate) fn run(args: &ReadArgs) -> Result<ExitCode, Failure> {
    let plan = input::read(&args.plan)?;
    let balance = balance(&plan);
    let text = if args.json { check::as_json(&MarksReport::new(&plan, &balance))? } else { words(&plan, &balance) };
    output::print(&text)?;
    Ok(ExitCode::SUCCESS)
}

/// The marks for people: each bar's table and totals, then the findings.
pub(crate) fn words(plan: &Plan, balance: &Balance) -> String {
    let title = if plan.title.trim().is_empty() { "Untitled plan".to_owned() } else { plain_line(&plan.title) };
    let mut text = format!("{title} ({})\n", plain_line(plan.material_name()));
    for (index, (bar, of_bar)) in plan.bars.iter().zip(&balance.bars).enumerate() {
        text.push('\n');
        text.push_str(&bar_words(plan, index, bar, of_bar));
    }
    if plan.bars.len() > 1 {
        text.push_str(&whole_plan(plan, balance));
    }
    text.push_str(&asked_sizes(plan, balance));
    format!("{text}\n{}", finding_report::words(plan, balance))
}

fn bar_words(plan: &Plan, index: usize, bar: &Bar, balance: &BarBalance) -> String {
    let name = if bar.name.trim().is_empty() { format!("Bar {}", index + 1) } else { plain_line(&bar.name) };
    let pieces = counted(bar.pieces(), "piece");
    let mut text = format!("{name}: {}, {pieces}\n", bar.stock.describe());
    if bar.segments.is_empty() {
        text.push_str("Nothing is marked on this bar yet.\n");
    } else {
        text.push_str(&format!("Marks from the datum: {}\n\n", plain_line(bar.datum_name())));
        text.push_str(&mark_table(plan, bar, balance));
    }
    text.push_str(&open_blocks(plan, bar, balance));
    format!("{text}\n{}", totals(plan, bar, balance))
}

/// What is in the blocks that are left open.
fn open_blocks(plan: &Plan, bar: &Bar, balance: &BarBalance) -> String {
    let unit = plan.units.length;
    let mut text = String::new();
    for block in contents(plan, bar, balance) {
        let name = plain_line(&describe::segment_name(bar, block.segment));
        let metal = block.metal.get::<cubic_millimeter>();
        let bar_length = describe::fine_length(block.bar_length, unit);
        text.push_str(&format!("\nIn “{name}”, {bar_length} of bar, is {metal:.0} mm³ after scale. It would be, as\n"));
        let rows: Vec<_> = block.answers.iter().map(|answer| describe::answer_words(answer, unit).to_vec()).collect();
        text.push_str(&lined_up(&[Side::Left, Side::Left], &rows));
    }
    text
}

/// The sizes that the finished piece is asked to have.
fn asked_sizes(plan: &Plan, balance: &Balance) -> String {
    let one = |(index, (size, of)): (usize, (&AskedSize, &SizeBalance))| {
        let state = describe::asked_size_state(size, of, plan.units.length);
        [size.title(index), state, describe::asked_size_words(size)].map(|words| plain_line(&words)).to_vec()
    };
    let rows: Vec<_> = plan.sizes.iter().zip(&balance.sizes).enumerate().map(one).collect();
    if rows.is_empty() {
        return String::new();
    }
    format!("\nAsked sizes, cold\n{}", lined_up(&[Side::Left, Side::Left, Side::Left], &rows))
}

/// What all bars take together, each as often as it is made.
fn whole_plan(plan: &Plan, balance: &Balance) -> String {
    let all = fh_core::balance::totals(plan, balance);
    let cut = all.cut_length.get::<millimeter>();
    let rows = [
        ["to cut".to_owned(), format!("{} ({cut:.1} mm)", plan.units.marks.round_up(cut))],
        ["mass of all bars".to_owned(), mass(all.stock_mass)],
        ["mass of all pieces".to_owned(), mass(all.finished_mass)],
    ];
    let rows: Vec<_> = rows.into_iter().map(|row| row.to_vec()).collect();
    let head = format!("\nThe whole plan: {}, {}\n", counted(plan.bars.len(), "bar"), counted(all.pieces, "piece"));
    head + &lined_up(&[Side::Left, Side::Left], &rows)
}

fn mass(mass: Mass) -> String {
    format!("{:.3} kg ({:.2} lb)", mass.get::<kilogram>(), mass.get::<pound>())
}

fn mark_table(plan: &Plan, bar: &Bar, balance: &BarBalance) -> String {
    let columns = [Side::Right, Side::Right, Side::Right, Side::Right, Side::Left, Side::Left];
    let mut rows = vec![["", "mark", "mm", "step", "part", "becomes"].map(str::to_owned).to_vec()];
    let paths = bar.paths();
    for (index, (flat, of_segment)) in bar.flat().iter().zip(&balance.segments).enumerate() {
        let fixed = if of_segment.fixed_mark.is_some() { ", fixed" } else { "" };
        let mark = format!("{}{fixed}", plain_line(&balance.mark_text(index).unwrap_or_default()));
        let exact = balance.block_exact(index).map_or(of_segment.mark_end, |[_, end]| end);
        rows.push(vec![
            paths.get(index).cloned().unwrap_or_default(),
            mark,
            format!("{:.1}", exact.get::<millimeter>()),
            balance.step_shop(index).map_or_else(String::new, |step| step.to_string()),
            plain_line(&describe::segment_name(bar, index)),
            plain_line(&becomes(flat.segment, of_segment, plan.units.length)),
        ]);
    }
    lined_up(&columns, &rows)
}

/// What a segment becomes: its form, the side it is on, how it is bent, and the sizes that follow.
fn becomes(segment: &Segment, balance: &SegmentBalance, unit: PlanUnit) -> String {
    let side = describe::side_words(segment).map(|side| format!("on {side}"));
    let made = describe::made_words(segment, balance, unit);
    [Some(made.form), side, describe::bend_words(segment, &balance.derived)]
        .into_iter()
        .flatten()
        .chain(made.follows.into_iter().map(|size| size.words))
        .collect::<Vec<_>>()
        .join("; ")
}

fn totals(plan: &Plan, bar: &Bar, balance: &BarBalance) -> String {
    let cut = balance.stock_length.get::<millimeter>();
    let mut rows = vec![
        cut_length(plan, bar, balance, cut),
        vec!["mass of the bar".to_owned(), mass(balance.stock_mass)],
        vec!["mass of the piece".to_owned(), mass(balance.finished_mass)],
    ];
    if bar.pieces() > 1 {
        let all = f64::from(bar.pieces());
        let each = if bar.length.is_some() { cut } else { balance.cut_length_shop(plan.units.marks).mm() };
        rows.push(vec![
            format!("all {} pieces", bar.pieces()),
            format!("{}, {:.0} mm", mass(balance.stock_mass * all), (each * all).ceil()),
        ]);
    }
    let error = balance.largest_rounding_error.get::<millimeter>();
    rows.push(vec!["marks between".to_owned(), format!("within {error:.2} mm of their true places")]);
    lined_up(&[Side::Left, Side::Left], &rows)
}

/// What is cut, rounded up; of a bar that is already cut its length.
fn cut_length(plan: &Plan, bar: &Bar, balance: &BarBalance, cut_mm: f64) -> Vec<String> {
    if let Some(length) = &bar.length {
        return vec!["already cut to".to_owned(), format!("{} ({cut_mm:.1} mm)", length.text())];
    }
    let shop = balance.cut_length_shop(plan.units.marks);
    let up = if shop.mm() - cut_mm >= 0.05 { ", rounded up" } else { "" };
    vec!["cut length".to_owned(), format!("{shop} (exactly {cut_mm:.1} mm{up})")]
}

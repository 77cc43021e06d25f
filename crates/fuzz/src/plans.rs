//! A plan through every stage: what it has to keep at each of them.

use crate::Fault;
use crate::corpus::Corpus;
use crate::mutate::{mutate, mutate_bytes};
use crate::paper;
use crate::random::Random;
use crate::run::Run;
use fh_core::balance::{Balance, BarBalance, Block, SegmentBalance, balance, spread};
use fh_core::file;
use fh_core::metal::Shape;
use fh_core::plan::{Chain, Plan};
use fh_work::{Shop, after, work_out};

/// Of so many plans one goes through sheets and files too, which take longest.
pub(crate) const WHOLE: u64 = 6;

/// The bytes of a random plan's file.
pub(crate) fn input(corpus: &Corpus, number: u64) -> Vec<u8> {
    let mut random = Random::new(number);
    let Some(tree) = random.of(&corpus.trees) else { return Vec::new() };
    let mut tree = tree.clone();
    let times = random.below(6);
    mutate(&mut tree, &corpus.values, &mut random, times);
    let mut bytes = tree.to_string().into_bytes();
    if random.one_in(12) {
        mutate_bytes(&mut bytes, &mut random);
    }
    bytes
}

/// Takes the bytes of a file through every stage; with `whole` through sheets and files too. What was found, and how many
/// stages were tried.
pub fn check(bytes: &[u8], whole: bool) -> (Vec<Fault>, usize) {
    let mut run = Run { faults: Vec::new(), tried: 0 };
    match run.stage("reading", || file::read(bytes)) {
        None => {}
        Some(Err(error)) => {
            let words = error.to_string();
            run.tame("an error", &words);
            if words.contains('\n') || words.len() > 2000 {
                run.wrong("an error is no line", words);
            }
        }
        Some(Ok(plan)) => check_plan(&mut run, &plan, whole),
    }
    (run.faults, run.tried)
}

fn check_plan(run: &mut Run, plan: &Plan, whole: bool) {
    reads_back(run, plan);
    let Some(balance) = run.stage("the balance", || balance(plan)) else { return };
    balances(run, plan, &balance);
    run.stage("the spread", || spread(plan));
    check_order(run, plan, &balance);
    if whole {
        paper::check(run, plan, &balance);
    }
}

/// Whatever was planned, its balance keeps its laws.
pub(crate) fn balances(run: &mut Run, plan: &Plan, balance: &Balance) {
    for bar in &balance.bars {
        check_bar(run, bar);
        bar.blocks.iter().for_each(|block| check_block(run, plan, bar, block));
    }
    check_sizes(run, plan, balance);
    for finding in &balance.findings {
        is_a_number(run, "a finding", &format!("{} {}", finding.message, finding.remedy));
    }
}

/// The parts of a block, and what of it is over or short, are as long as it is.
fn check_block(run: &mut Run, plan: &Plan, bar: &BarBalance, block: &Block) {
    let own = bar.whole().skip(block.places.start).take(block.places.len());
    let taken: f64 = own.map(|(_, part)| part.stock_length.value).sum();
    let long = (block.mark_end - block.mark_start).value;
    if (taken + block.over_length.value - long).abs() > 1e-6 * taken.max(long.abs()) + 1e-12 {
        run.wrong(
            "a block is not as long as its parts",
            format!("{block:?} takes {taken} m\non {}", file::write(plan)),
        );
    }
}

/// An asked size is as it was asked, or it is told.
fn check_sizes(run: &mut Run, plan: &Plan, balance: &Balance) {
    for (size, found) in plan.sizes.iter().zip(&balance.sizes) {
        let off = found.value.map(|value| (value.value * 1000.0 - size.size.mm()).abs());
        let is_kept = found.factor.is_some() && found.missed.is_none();
        if is_kept && off.is_none_or(|off| off > 1e-5 * size.size.mm().max(1.0)) {
            run.wrong("a size that is kept is another", format!("{size:?} {found:?}"));
        }
        let is_told = balance.findings.iter().any(|finding| finding.id.starts_with("size-"));
        let is_missed_and_told = found.missed.is_some() && is_told;
        if !found.met && !is_missed_and_told {
            run.wrong("a size that is missed is not told", format!("{size:?} {found:?}"));
        }
    }
}

/// What is written can be read again, and is the same.
pub(crate) fn reads_back(run: &mut Run, plan: &Plan) {
    let Some(text) = run.stage("writing", || file::write(plan)) else { return };
    match run.stage("reading again", || file::read(text.as_bytes())) {
        Some(Err(error)) => run.wrong("what was written is refused", error.to_string()),
        Some(Ok(again)) if again != *plan => run.wrong("what was written reads otherwise", text),
        Some(Ok(again)) if file::write(&again) != text => run.wrong("what was read is written otherwise", text),
        _ => {}
    }
    if let Err(error) = file::check(plan) {
        run.wrong("what can be read is refused by the check", error.to_string());
    }
}

fn is_a_number(run: &mut Run, what: &str, words: &str) {
    if words.contains("NaN") || words.contains("inf ") {
        run.wrong(&format!("{what} has no number"), words);
    }
}

/// Marks run on without gaps, metal in is metal out, and numbers are numbers.
fn check_bar(run: &mut Run, bar: &BarBalance) {
    for (number, segment) in bar.segments.iter().enumerate() {
        let sizes = [
            segment.finished_volume.value,
            segment.trimmed_volume.value,
            segment.forged_length.value,
            segment.stock_length.value,
            segment.mark_start.value,
            segment.mark_end.value,
            segment.mark_end_shop.mm(),
        ];
        if sizes.iter().any(|size| !size.is_finite() || *size < 0.0) {
            run.wrong("a size is no number above 0", format!("segment {number}: {sizes:?}"));
        }
        if is_metal_lost(bar, segment) {
            run.wrong("metal is lost", format!("segment {number}: {segment:?}"));
        }
    }
    let whole: Vec<&SegmentBalance> = bar.segments.iter().filter(|segment| segment.chain == Chain::Bar).collect();
    for (place, pair) in whole.windows(2).enumerate() {
        // What a block has over or is short of lies before the fixed mark that ends it.
        let block = bar.blocks.iter().find(|block| block.places.start == place + 1);
        let end = block.map_or(pair[0].mark_end, |block| block.mark_start).value;
        let start = pair[1].mark_start.value;
        if (end - start).abs() > 1e-9 * end.abs() + 1e-12 {
            run.wrong("a gap between marks", format!("from {end} m to {start} m"));
        }
    }
}

/// Whether a segment's bar, without its scale, is not what its piece and what is trimmed off it hold.
fn is_metal_lost(bar: &BarBalance, segment: &SegmentBalance) -> bool {
    let is_split = matches!(segment.shape, Some(Shape::Split(_)));
    if segment.shape.is_none() || is_split || segment.chain != Chain::Bar {
        return false;
    }
    let given = (segment.stock_length * bar.stock_area).value * (1.0 - segment.scale_share);
    let taken = (segment.finished_volume + segment.trimmed_volume - segment.missing_volume).value;
    // What is missing of an outline beyond all measure is a difference of figures that are exact to their last ones alone.
    (given - taken).abs() > 1e-6 * given.max(taken) + 1e-12 * segment.missing_volume.value + 1e-21
}

/// The order of work, and the bar after some of its steps.
fn check_order(run: &mut Run, plan: &Plan, balance: &Balance) {
    let Some(worked) = run.stage("the order of work", || work_out(plan, balance, &Shop::default())) else { return };
    for step in &worked.steps {
        let words = [&step.title, &step.tool].into_iter().chain(&step.lay).chain(&step.check).chain(&step.caution);
        for words in words {
            is_a_number(run, "a step", words);
        }
        if !step.minutes.is_finite() {
            run.wrong("a step takes no time that is a number", format!("{}: {}", step.title, step.minutes));
        }
    }
    for steps in [0, worked.steps.len() / 2, worked.steps.len()] {
        let Some(then) = run.stage("the bar after a step", || after(plan, balance, &worked, steps)) else { return };
        let lengths = then.bars.iter().map(|bar| bar.forged_length.value);
        if lengths.clone().any(|length| !length.is_finite()) {
            run.wrong("a bar after a step has no length", format!("{:?}", lengths.collect::<Vec<_>>()));
        }
    }
}

//! A file of the rack, the merchant, the shop or a job through every stage: what it has to keep at each of them.

use crate::Fault;
use crate::corpus::Corpus;
use crate::mutate::{mutate, mutate_bytes};
use crate::random::Random;
use crate::run::Run;
use fh_core::file::FileError;
use fh_print::paper::Paper;
use fh_print::sheets::{CutHead, QuoteHead, customer_page, cut_sheets, reckoning};
use fh_rack::kept::booking;
use fh_rack::kept::job::{self, Job};
use fh_rack::kept::merchant::{self, Merchant};
use fh_rack::kept::rack::{self, Rack, RackBar};
use fh_rack::kept::shop::{self, Shop};
use fh_rack::list::booked::{put_back, taken};
use fh_rack::list::make::{CutList, Stock, make};
use fh_rack::list::source::From;
use fh_rack::list::wanted::Ordered;
use fh_rack::quote::quoted::{Quote, quote};
use std::cell::Cell;

/// A search goes on so many steps, so that a round follows from its number and not from the clock.
const STEPS: u32 = 200;
/// From so many pieces on there is no search, only the list by best fit.
const MANY: u64 = 400;

/// The bytes of a random file.
pub(crate) fn input(corpus: &Corpus, number: u64) -> Vec<u8> {
    let mut random = Random::new(number);
    let Some(tree) = random.of(&corpus.steel) else { return Vec::new() };
    let mut tree = tree.clone();
    let times = random.below(5);
    mutate(&mut tree, &corpus.steel_values, &mut random, times);
    let mut bytes = tree.to_string().into_bytes();
    if random.one_in(12) {
        mutate_bytes(&mut bytes, &mut random);
    }
    bytes
}

/// The bytes of a random file of one sort: rack, merchant's list, shop's figures, job.
pub(crate) fn input_of(corpus: &Corpus, number: u64, sort: usize) -> Vec<u8> {
    let mut random = Random::new(number.wrapping_mul(4).wrapping_add(sort as u64));
    // The demo job's four stand behind the four that have every key.
    let at = if random.one_in(2) { sort } else { sort + 4 };
    let mut tree = corpus.steel.get(at).cloned().unwrap_or_default();
    let times = random.below(3);
    mutate(&mut tree, &corpus.steel_values, &mut random, times);
    tree.to_string().into_bytes()
}

/// The four files, of which one is tried.
struct Four {
    rack: Rack,
    merchant: Merchant,
    shop: Shop,
    job: Job,
}

/// Takes the bytes of a file through every stage; with `whole` onto paper too. What was found, and how many stages were tried.
pub fn check(corpus: &Corpus, bytes: &[u8], whole: bool) -> (Vec<Fault>, usize) {
    let mut run = Run { faults: Vec::new(), tried: 0 };
    let rack = read(&mut run, bytes, "the rack", rack::read, rack::write);
    let merchant = read(&mut run, bytes, "the merchant's list", merchant::read, merchant::write);
    let shop = read(&mut run, bytes, "the shop's figures", shop::read, shop::write);
    let job = read(&mut run, bytes, "the job", job::read, job::write);
    let sorts = [rack.is_some(), merchant.is_some(), shop.is_some(), job.is_some()];
    if sorts.iter().filter(|is| **is).count() > 1 {
        run.wrong("a file is of two sorts", String::from_utf8_lossy(bytes));
    }
    if !sorts.contains(&true) {
        return (run.faults, run.tried);
    }
    if let Some(rack) = &rack {
        booked_and_undone(&mut run, rack);
    }
    let own = |text: &str| text.as_bytes().to_vec();
    let [a_rack, a_merchant, a_shop, a_job] = &corpus.steel_texts;
    let four = Four {
        rack: rack.or_else(|| rack::read(&own(a_rack)).ok()).unwrap_or_default(),
        merchant: merchant.or_else(|| merchant::read(&own(a_merchant)).ok()).unwrap_or_else(Merchant::common),
        shop: shop.or_else(|| shop::read(&own(a_shop)).ok()).unwrap_or_else(Shop::common),
        job: job.or_else(|| job::read(&own(a_job)).ok()).unwrap_or_else(|| Job::of("", Vec::new())),
    };
    cut_and_asked(&mut run, corpus, &four, whole);
    (run.faults, run.tried)
}

/// Reads a file as one of a sort: what is read is written so that it reads the same.
fn read<T: PartialEq>(
    run: &mut Run,
    bytes: &[u8],
    what: &str,
    read: fn(&[u8]) -> Result<T, FileError>,
    write: fn(&T) -> String,
) -> Option<T> {
    match run.stage(&format!("reading {what}"), || read(bytes))? {
        Err(error) => {
            let words = error.to_string();
            run.tame("an error", &words);
            if words.contains('\n') || words.len() > 2000 {
                run.wrong("an error is no line", words);
            }
            None
        }
        Ok(value) => {
            let text = run.stage(&format!("writing {what}"), || write(&value))?;
            match run.stage(&format!("reading {what} again"), || read(text.as_bytes()))? {
                Err(error) => run.wrong(&format!("{what} as it was written is refused"), error.to_string()),
                Ok(again) if again != value => run.wrong(&format!("{what} as it was written reads otherwise"), text),
                Ok(again) if write(&again) != text => run.wrong(&format!("{what} is written otherwise again"), text),
                Ok(_) => {}
            }
            Some(value)
        }
    }
}

/// Everything on a rack in a fixed order, lines of like bars together, however they are said.
fn all(rack: &Rack) -> Vec<(String, u64)> {
    let mut all: Vec<(String, u64)> = Vec::new();
    for bar in &rack.bars {
        let like = format!(
            "{:?} {} {} {:?} {:?} {:?}",
            bar.alike(),
            bar.length_nm(),
            bar.end_nm(),
            bar.lies,
            bar.price,
            bar.note
        );
        match all.iter_mut().find(|(known, _)| *known == like) {
            Some((_, count)) => *count += u64::from(bar.bar.count),
            None => all.push((like, u64::from(bar.bar.count))),
        }
    }
    all.sort();
    all
}

/// A booking takes what is there and no more, and undone it gives everything back.
fn booked_and_undone(run: &mut Run, rack: &Rack) {
    let Some(first) = rack.bars.first() else { return };
    let more = first.with_count(first.bar.count.saturating_add(1));
    let sum = |bars: &[RackBar]| {
        bars.iter().filter(|bar| bar.is_like(first)).map(|bar| u64::from(bar.bar.count)).sum::<u64>()
    };
    let took = run.stage("taking more than is there", || booking::take(rack, std::slice::from_ref(&more)));
    if matches!(took, Some(Ok(_))) && sum(&rack.bars) < u64::from(more.bar.count) {
        run.wrong("more is taken from the rack than is there", rack::write(rack));
    }
    let back = first.with_count(1);
    let booked = run.stage("booking", || {
        booking::book(rack, "a round", None, std::slice::from_ref(first), std::slice::from_ref(&back))
    });
    let Some(Ok(booked)) = booked else { return };
    let undone =
        run.stage("undoing a booking", || booking::undo(&booked, booked.booked.last().map(|booking| booking.number)));
    match undone {
        Some(Ok((undone, _))) if all(&undone) != all(rack) => {
            run.wrong("a booking that is undone does not give the rack back", rack::write(rack));
        }
        Some(Err(why)) => run.wrong("a booking cannot be undone at once", why.to_string()),
        _ => {}
    }
}

fn cut_and_asked(run: &mut Run, corpus: &Corpus, four: &Four, whole: bool) {
    let Four { rack, merchant, shop, job } = four;
    // The plans themselves are tried elsewhere: two of our own stand for those that a job names.
    let plans = corpus.plans.iter().filter(|plan| plan.bars.len() == 1).cycle();
    let ordered = |(line, plan): (&job::JobPlan, &fh_core::plan::Plan)| Ordered {
        plan: plan.clone(),
        count: line.pieces(),
        cut: line.cut.clone(),
        also_from: line.also_from.iter().map(|said| said.section.clone()).collect(),
    };
    let order: Vec<Ordered> = job.plans.iter().zip(plans).take(3).map(ordered).collect();
    let stock = Stock { rack, merchant, shop, kerf_nm: None, keep_from_nm: None };
    let pieces: u64 = order.iter().map(|ordered| u64::from(ordered.count)).sum();
    let left = Cell::new(if pieces > MANY { 0 } else { STEPS });
    let goes_on = || {
        left.set(left.get().saturating_sub(1));
        left.get() > 0
    };
    let list = run.stage("the cut list", || make(&order, stock, &goes_on, &mut |_| ()));
    if let Some(Ok(list)) = &list {
        check_list(run, list, &order, rack);
        if whole && pieces <= MANY {
            let head = CutHead { title: &job.title, customer: job.customer.as_deref().unwrap_or_default(), date: "" };
            print(run, "the cut list", || cut_sheets(list, head, Paper::A4));
        }
    }
    if pieces > MANY {
        return;
    }
    let tools = fh_work::Shop::default();
    let asked = run.stage("the quote", || quote(job, &order, stock, &tools, &[1, 7], &|| false, &mut |_| ()));
    match asked {
        Some(Ok(quote)) => {
            check_quote(run, &quote);
            if whole {
                let head = QuoteHead { job, order: &order, shop, date: "" };
                print(run, "the quote", || customer_page(&quote, head, Paper::Letter));
                print(run, "the figures", || reckoning(&quote, head, Paper::A4));
            }
        }
        Some(Err(why)) => run.tame("an error", &why.to_string()),
        None => {}
    }
}

/// Every piece is cut once or told, no bar gives more than it has, and no more is taken from the rack than lies there.
fn check_list(run: &mut Run, list: &CutList, order: &[Ordered], rack: &Rack) {
    let mut cut = vec![0_u64; list.wanted.pieces.len()];
    for group in &list.groups {
        for bar in &group.bars {
            let source = &list.sources[bar.source];
            let pieces = i64::try_from(bar.cuts.len()).unwrap_or(i64::MAX);
            let taken: i64 = bar.cuts.iter().map(|cut| cut.length_nm).sum::<i64>() + group.kerf_nm * (pieces - 1);
            if taken > source.length_nm - source.end_nm {
                run.wrong("a bar gives more than it has", format!("{bar:?} of {source:?}"));
            }
            bar.cuts.iter().for_each(|one| cut[one.piece] += bar.times);
        }
        group.left.iter().for_each(|left| cut[left.piece] += left.count);
        if group.is_first_proven && group.left.is_empty() && group.aim == fh_rack::list::make::Aim::NewBars {
            let new = i64::try_from(group.new_bars).unwrap_or(i64::MAX);
            if new != group.bound {
                run.wrong("a list is called the best and is above its bound", format!("{new} over {}", group.bound));
            }
        }
    }
    let wanted: Vec<u64> = list.wanted.pieces.iter().map(|piece| piece.count).collect();
    if cut != wanted {
        run.wrong("not every piece is cut or told", format!("{cut:?} of {wanted:?}, {} plans", order.len()));
    }
    for (at, line) in rack.bars.iter().enumerate() {
        let of_line = |bar: &&fh_rack::list::make::BarCuts| list.sources[bar.source].from == From::Rack(at);
        let used: u64 = list.groups.iter().flat_map(|group| &group.bars).filter(of_line).map(|bar| bar.times).sum();
        if used > u64::from(line.bar.count) {
            run.wrong("more bars are cut than lie on the rack", line.words());
        }
    }
    let booked = run.stage("booking a list", || {
        booking::book(rack, "a round", None, &taken(list, rack), &put_back(list)).map(|next| (rack::write(&next), next))
    });
    match booked {
        Some(Err(why)) => run.wrong("a list cannot be booked on the rack that it was made on", why.to_string()),
        Some(Ok((text, _))) if rack::read(text.as_bytes()).is_err() => run.wrong("a booked rack cannot be read", text),
        _ => {}
    }
}

/// The sums of a quote are those of its lines.
fn check_quote(run: &mut Run, quote: &Quote) {
    for one in &quote.counts {
        let prime = one.lines.iter().map(|line| line.amount).fold(0, i64::saturating_add);
        let asked = &one.asked;
        let cost = prime.saturating_add(asked.overheads).saturating_add(asked.contingency);
        let is_sound = prime == asked.prime
            && cost == asked.cost
            && asked.total == asked.price.saturating_add(asked.tax)
            && asked.price == asked.cost.saturating_add(asked.profit) - asked.discount + asked.rounding
            && asked.deposit <= asked.total.max(0);
        if !is_sound {
            run.wrong("the sums of a quote are not those of its lines", format!("{asked:?}"));
        }
        if !one.minutes.is_finite() || !one.mass_kg.is_finite() {
            run.wrong("a quote has no number", format!("{} min, {} kg", one.minutes, one.mass_kg));
        }
        one.lines.iter().for_each(|line| run.tame("a line of a quote", &format!("{} {}", line.what, line.source)));
    }
}

fn print(run: &mut Run, what: &str, draw: impl FnOnce() -> fh_print::drawing::Drawing) {
    let Some(drawing) = run.stage(&format!("{what} on paper"), draw) else { return };
    for svg in run.stage(&format!("{what} as SVG"), || fh_print::svg(&drawing)).into_iter().flatten() {
        run.tame(what, &svg);
    }
    if let Some(Err(error)) = run.stage(&format!("{what} as PDF"), || fh_print::pdf(&drawing)) {
        run.wrong(&format!("{what} is no PDF"), error.to_string());
    }
}

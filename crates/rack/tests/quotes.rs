//! A quote worked by hand, and what is refused.

use fh_core::file;
use fh_rack::kept::job::{self, Job};
use fh_rack::kept::merchant::{self, Merchant};
use fh_rack::kept::rack::{self, Rack};
use fh_rack::kept::shop::{self, Shop};
use fh_rack::list::make::Stock;
use fh_rack::list::wanted::Ordered;
use fh_rack::quote::error::QuoteError;
use fh_rack::quote::hours::PlanWork;
use fh_rack::quote::lines::Part;
use fh_rack::quote::quoted::{Quote, quote_of};

const PLAN: &str = r#"{ "firstheat": 1, "title": "Stake", "units": { "length": "mm", "marks": "1 mm" },
    "bars": [{ "name": "stake", "stock": { "square": "12 mm" }, "segments": [
        { "name": "shank", "form": { "plain": { "length": "497 mm" } } } ] }] }"#;
const SHOP: &str = r#"{ "firstheat_shop": 1, "currency": "EUR", "rate": "30.00 per hour",
    "overhead": { "yearly": "12000", "hours": 1200 }, "fuel": "4.00 per hour", "consumables": "1.50 per hour",
    "heat_up": "4 min", "irons": 2, "setup": "40 min", "learning": "80 %",
    "cutting": [{ "name": "chop saw", "kerf": "3 mm", "time": "1 min" }], "keep_from": "300 mm",
    "finishes": [{ "name": "oil", "price": "2.50 per kg" }],
    "contingency": "10 %", "profit": { "markup": "25 %" }, "round_up_to": "1.00",
    "tax": { "name": "tax", "rate": "20 %" }, "deposit": "40 %" }"#;
const MERCHANT: &str = r#"{ "firstheat_merchant": 1, "currency": "EUR", "bars": [
    { "sections": ["12 mm square"], "lengths": ["6 m"], "price": "12.00 each" } ] }"#;

struct Made {
    job: Job,
    shop: Shop,
    merchant: Merchant,
    rack: Rack,
}

fn made(job: &str, shop: &str) -> Made {
    Made {
        job: job::read(job.as_bytes()).unwrap(),
        shop: shop::read(shop.as_bytes()).unwrap(),
        merchant: merchant::read(MERCHANT.as_bytes()).unwrap(),
        rack: Rack::default(),
    }
}

/// 20 minutes of work and 10 heats, 1 kg.
const WORK: PlanWork = PlanWork { minutes: 20.0, heats: 10, is_learned: false, mass_kg: 1.0, surface_m2: 0.05 };

fn quoted(made: &Made, counts: &[u32]) -> Result<Quote, QuoteError> {
    let order = [Ordered::new(file::read(PLAN.as_bytes()).unwrap(), 1)];
    let Made { job, shop, merchant, rack } = made;
    let stock = Stock { rack, merchant, shop, kerf_nm: None, keep_from_nm: None };
    quote_of(job, &order, vec![WORK], stock, counts, &|| true, &mut |_| ())
}

const JOB: &str = r#"{ "firstheat_job": 1, "title": "Stakes", "plans": [{ "plan": "stake.plan.json" }], "finish": "oil",
    "lines": [{ "kind": "bench", "time": "10 min", "each": true }, { "kind": "delivery", "price": "35.00" }], "discount": "10 %" }"#;

fn amount(quote: &Quote, at: usize, what: &str) -> i64 {
    let line = quote.counts[at].lines.iter().find(|line| line.what.starts_with(what));
    line.unwrap_or_else(|| panic!("no line {what}: {:?}", quote.counts[at].lines)).amount
}

#[test]
fn four_stakes_are_quoted_as_they_are_by_hand() {
    let quote = quoted(&made(JOB, SHOP), &[1, 4]).unwrap();
    // Four of 497 mm and 3 mm of kerf leave 4000 mm of 6000: a third of 12.00 is spent, 8.00 is credited.
    assert_eq!((amount(&quote, 1, "1 ×"), amount(&quote, 1, "offcuts kept")), (1200, -800));
    // The first takes 20 min + 10 × 4 min / 2 irons = 40 min. At 80 % four take 1 + 0.8 + 0.7021 + 0.64 = 3.1421 of it:
    // 125.68 min at 30.00 an hour are 62.84. 4 cuts of 1 min are 2.00, 40 min of setting up 20.00, 4 × 10 min at the bench 20.00.
    assert_eq!(amount(&quote, 1, "4 × Stake"), 6284);
    assert_eq!(
        (amount(&quote, 1, "cutting"), amount(&quote, 1, "setting up"), amount(&quote, 1, "bench work")),
        (200, 2000, 2000)
    );
    // Fuel for 125.68 min at 4.00: 8.38. All work is 4 + 40 + 125.68 + 40 = 209.68 min: at 1.50 it is 5.24. 4 kg of oil: 10.00.
    assert_eq!(
        (amount(&quote, 1, "fuel"), amount(&quote, 1, "consumables"), amount(&quote, 1, "finish: oil")),
        (838, 524, 1000)
    );
    let asked = &quote.counts[1].asked;
    // 4.00 + 104.84 + 8.38 + 5.24 + 10.00 + 35.00.
    assert_eq!(asked.prime, 16746);
    // 12000 over 1200 hours is 10.00 an hour: 209.68 min are 34.95.
    assert_eq!(asked.overheads, 3495);
    // 10 % of 202.41 is 20.24; the cost 222.65; 25 % of it 55.66; 10 % off 278.31 is 27.83; 250.48 is rounded up to 251.00.
    assert_eq!((asked.contingency, asked.cost, asked.profit, asked.discount), (2024, 22265, 5566, 2783));
    assert_eq!((asked.price, asked.rounding), (25100, 52));
    // 20 % is 50.20: 301.20 to pay, 75.30 each, 120.48 with the order.
    assert_eq!((asked.tax, asked.total, asked.each, asked.deposit), (5020, 30120, 7530, 12048));
    assert!(quote.counts[0].asked.each > asked.each, "one alone carries the whole setting up");
}

#[test]
fn a_markup_of_25_per_cent_is_a_margin_of_20() {
    let plain =
        r#"{ "firstheat_shop": 1, "currency": "EUR", "rate": "30.00 per hour", "profit": { "markup": "25 %" } }"#;
    let margin = plain.replace("markup", "margin").replace("25 %", "20 %");
    let job = r#"{ "firstheat_job": 1, "plans": [{ "plan": "stake.plan.json" }] }"#;
    let [one, other] =
        [plain.to_owned(), margin].map(|shop| quoted(&made(job, &shop), &[1]).unwrap().counts[0].asked.clone());
    assert_eq!((one.price, one.markup, one.margin), (other.price, 2500, 2000));
    assert_eq!(one.profit_words(), "25 % on the cost, 20 % of the price");
}

#[test]
fn an_inclusive_tax_is_part_of_the_rounded_price() {
    let shop = r#"{ "firstheat_shop": 1, "currency": "EUR", "rate": "30.00 per hour", "round_up_to": "5.00", "tax": { "name": "tax", "rate": "25 %", "inclusive": true } }"#;
    let job = r#"{ "firstheat_job": 1, "plans": [{ "plan": "stake.plan.json" }] }"#;
    let asked = quoted(&made(job, shop), &[1]).unwrap().counts[0].asked.clone();
    // 12.00 of steel (nothing is kept), and 60 min (20 and 10 × 4, one iron) at 30.00: 42.00, with tax 52.50, up to 55.00.
    assert_eq!((asked.cost, asked.total, asked.price, asked.tax), (4200, 5500, 4400, 1100));
}

#[test]
fn hours_are_a_range_and_the_quote_says_which_end_it_took() {
    let job = r#"{ "firstheat_job": 1, "plans": [{ "plan": "stake.plan.json" }] }"#;
    let shop = |hours: &str| {
        format!(r#"{{ "firstheat_shop": 1, "currency": "EUR", "rate": "30.00 per hour", "hours": "{hours}" }}"#)
    };
    let taken =
        ["low", "likely", "high"].map(|hours| quoted(&made(job, &shop(hours)), &[1]).unwrap().counts[0].minutes);
    // 60 min, and 1.5 times as short or as long.
    assert_eq!(taken.map(f64::round), [40.0, 60.0, 90.0]);
}

#[test]
fn mixed_currencies_wrong_counts_and_unknown_finishes_are_told() {
    let job = |rest: &str| format!(r#"{{ "firstheat_job": 1, "plans": [{{ "plan": "stake.plan.json" }}]{rest} }}"#);
    let told = |job: &str, shop: &str, counts: &[u32]| quoted(&made(job, shop), counts).unwrap_err().to_string();
    let pounds = SHOP.replace("EUR", "GBP");
    let words = told(&job(""), &pounds, &[1]);
    assert!(words.contains("the shop's figures is GBP") && words.contains("the merchant's list EUR"), "{words}");
    assert!(told(&job(""), SHOP, &[0]).contains("0 was found"));
    assert!(told(&job(""), SHOP, &[1_000_000]).contains("1 to 10000"));
    assert!(told(&job(r#", "finish": "gold""#), SHOP, &[1]).contains("no finish called \"gold\""));
    let many = r#"{ "firstheat_job": 1, "plans": [{ "plan": "stake.plan.json", "count": 100000 }] }"#;
    let order = [Ordered::new(file::read(PLAN.as_bytes()).unwrap(), 100_000)];
    let Made { job, shop, merchant, rack } = &made(many, SHOP);
    let stock = Stock { rack, merchant, shop, kerf_nm: None, keep_from_nm: None };
    let refused = quote_of(job, &order, vec![WORK], stock, &[40], &|| true, &mut |_| ()).unwrap_err().to_string();
    assert!(refused.starts_with("4000000 pieces are wanted"), "{refused}");
}

#[test]
fn what_is_not_known_is_told_and_not_counted() {
    let nothing = r#"{ "firstheat_shop": 1, "currency": "EUR" }"#;
    let job = r#"{ "firstheat_job": 1, "plans": [{ "plan": "stake.plan.json" }] }"#;
    let quote = quoted(&made(job, nothing), &[1]).unwrap();
    assert!(quote.not_counted.iter().any(|words| words.starts_with("No rate for an hour")));
    assert_eq!(quote.counts[0].asked.total, 1200, "the steel alone");
    let paid =
        |quote: &Quote| quote.not_counted.iter().any(|words| words.starts_with("Bars from the rack without a price"));
    assert!(!paid(&quote));
    let with_rack = |line: &str| {
        let text =
            format!(r#"{{ "firstheat_rack": 1, "currency": "EUR", "bars": [{{ "bar": "12 square, 2 m"{line} }}] }}"#);
        quoted(&Made { rack: rack::read(text.as_bytes()).unwrap(), ..made(job, nothing) }, &[1]).unwrap()
    };
    assert!(paid(&with_rack("")));
    assert!(!paid(&with_rack(r#", "price": "4.00 each""#)));
    let unused = rack::read(b"{ \"firstheat_rack\": 1 }").unwrap();
    assert_eq!(unused, Rack::default());
}

#[test]
fn steel_is_paid_by_the_bar_with_its_offcuts_or_by_what_is_used() {
    let job = |rest: &str| format!(r#"{{ "firstheat_job": 1, "plans": [{{ "plan": "stake.plan.json" }}]{rest} }}"#);
    let steel = |rest: &str, shop: &str| {
        let quote = quoted(&made(&job(rest), shop), &[4]).unwrap();
        let lines: Vec<_> = quote.counts[0].lines.iter().filter(|line| line.part == Part::Material).cloned().collect();
        lines.into_iter().map(|line| (line.what, line.amount, line.source)).collect::<Vec<_>>()
    };
    let line = |what: &str, amount: i64, source: &str| (what.to_owned(), amount, source.to_owned());
    // Four of 497 mm and 3 mm of kerf take 2000 mm of a bar of 6000 that costs 12.00: a third of it, 4.00.
    let bar = line("1 × 12 mm square, 6 m", 1200, "12.00 each, merchant's list; 2.00 m of 6.00 m is used");
    let credit = line("offcuts kept", -800, "by length of their bars: they go back on the rack");
    assert_eq!(steel("", SHOP), [bar.clone(), credit]);
    let paid = line("1 offcut kept", 0, "not credited: the job pays for whole bars");
    assert_eq!(steel(r#", "offcuts_paid": true"#, SHOP), [bar.clone(), paid]);
    // Where 4 m are too short to keep, by the bar nothing is credited, and by what is used it is the smith's.
    let wasteful = SHOP.replace("300 mm", "5 m");
    assert_eq!(steel("", &wasteful), [bar]);
    let used = line("2.00 m of 12 mm square", 400, "used of 1 × 6 m at 12.00 each, merchant's list");
    assert_eq!(steel(r#", "steel": "used""#, &wasteful), std::slice::from_ref(&used));
    assert_eq!(steel(r#", "steel": "used""#, SHOP), [used]);
    let both = job::read(job(r#", "steel": "used", "offcuts_paid": true"#).as_bytes()).unwrap_err();
    assert!(both.to_string().contains("offcuts cost nothing"), "{both}");
}

#[test]
fn a_file_that_names_no_money_counts_in_that_of_the_others() {
    let job = r#"{ "firstheat_job": 1, "plans": [{ "plan": "stake.plan.json" }] }"#;
    let yen = r#"{ "firstheat_shop": 1, "currency": "JPY", "decimals": 0, "rate": "4200 per hour" }"#;
    let mut all = made(job, yen);
    all.merchant =
        merchant::read(MERCHANT.replace(r#""currency": "EUR", "#, "").replace("12.00", "1200").as_bytes()).unwrap();
    let quote = quoted(&all, &[1]).unwrap();
    // 20 minutes and 10 heats of 4 minutes, one iron in the fire: an hour; and a bar of 1200.
    assert_eq!(quote.money.words(quote.counts[0].asked.total), "JPY 5400");
    all.job.decimals = Some(2);
    let words = quoted(&all, &[1]).unwrap_err().to_string();
    assert!(words.contains("JPY with 0 figures behind the point, and that of the job not named with 2"), "{words}");
}

#[test]
fn the_handbook_works_the_four_stakes_out_to_the_same_figures() {
    let page = include_str!("../../../docs/handbook/quote.md");
    let quote = quoted(&made(JOB, SHOP), &[4]).unwrap();
    let one = &quote.counts[0];
    let asked = &one.asked;
    let steps = [
        asked.prime,
        asked.overheads,
        asked.contingency,
        asked.cost,
        asked.profit,
        -asked.discount,
        asked.rounding,
        asked.price,
        asked.tax,
        asked.total,
        asked.deposit,
        asked.each,
    ];
    for amount in one.lines.iter().map(|line| line.amount).chain(steps) {
        let figure = format!("| {} |", quote.money.figures(amount));
        assert!(page.contains(&figure), "{figure}");
    }
}

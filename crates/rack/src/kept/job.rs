//! A job: plans with counts, whom for, what is agreed, and what was made of it.

use super::checks::{Checked, check_price, refuse};
use crate::said::money::Currency;
use crate::said::percent::Percent;
use crate::said::price::{Per, Price};
use crate::said::section::SaidSection;
use crate::said::time::WrittenTime;
use crate::said::written::Written;
use fh_core::file::{self, FileError, KeyPath, Sort};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The version of the job's file.
pub const VERSION: u32 = 1;
/// What the names of job files end with.
pub const ENDING: &str = ".job.json";
/// The most of one plan in a job.
pub const MOST_PIECES: u32 = 100_000;

const SORT: Sort = Sort {
    key: "firstheat_job",
    newest: VERSION,
    what: "job",
    lists: &["plans", "also_from", "lines", "made", "not_included"],
};

/// A job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Job {
    /// The version of the file format: 1.
    #[schemars(range(min = 1, max = 1))]
    pub firstheat_job: u32,
    /// What it is called.
    #[serde(default)]
    pub title: String,
    /// Whom it is for.
    #[serde(default, rename = "for", skip_serializing_if = "Option::is_none")]
    pub customer: Option<String>,
    /// The date that stands on its papers, as `2026-05-04`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
    /// What prices in it are counted in, for example `EUR`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub currency: Option<String>,
    /// How many figures stand behind the point; 2 where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub decimals: Option<u8>,
    /// The plans: their bars are cut together.
    pub plans: Vec<JobPlan>,
    /// What is not in the plans: bench work, design, packing, delivery, fixing, bought-in work.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub lines: Vec<JobLine>,
    /// The finish, by its name in the shop's figures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub finish: Option<String>,
    /// What is taken off the price.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub discount: Option<Written<Percent>>,
    /// How steel is counted; by the bars where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub steel: Option<SteelBy>,
    /// Whether the customer pays for offcuts that are kept; they are credited where not.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub offcuts_paid: bool,
    /// What is agreed, in words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub agreed: Option<String>,
    /// What the price does not include, beside what the shop says.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub not_included: Vec<String>,
    /// What was made of it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub made: Vec<Made>,
}

/// A plan in a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct JobPlan {
    /// Its file, from the folder of the job on.
    pub plan: String,
    /// How many; one where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schemars(range(min = 1, max = 100_000))]
    pub count: Option<u32>,
    /// The way of cutting, by its name in the shop's figures; the shop's first where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cut: Option<String>,
    /// Larger sections that its bars may also be made from.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub also_from: Vec<Written<SaidSection>>,
}

/// What of its bars a job pays for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SteelBy {
    /// Whole bars; the offcuts that are kept are credited, unless they are paid for.
    #[default]
    Bars,
    /// What the pieces and their cuts take of them.
    Used,
}

/// What a line of a job is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum LineKind {
    /// Drawing, measuring up, a sample.
    Design,
    /// Filing, drilling, fitting.
    Bench,
    /// A striker's time.
    Striker,
    /// A jig or a tool made for it.
    Tooling,
    /// Packing.
    Packing,
    /// Delivery.
    Delivery,
    /// Fixing at the place.
    Fixing,
    /// What others do for it: galvanising, machining.
    BoughtIn,
    /// Screws, hinges, timber.
    Parts,
}

impl LineKind {
    /// Every kind.
    pub const ALL: [Self; 9] = [
        Self::Design,
        Self::Bench,
        Self::Striker,
        Self::Tooling,
        Self::Packing,
        Self::Delivery,
        Self::Fixing,
        Self::BoughtIn,
        Self::Parts,
    ];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Design => "design",
            Self::Bench => "bench work",
            Self::Striker => "striker",
            Self::Tooling => "tooling",
            Self::Packing => "packing",
            Self::Delivery => "delivery",
            Self::Fixing => "fixing",
            Self::BoughtIn => "bought-in work",
            Self::Parts => "parts",
        }
    }
}

/// A line of a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct JobLine {
    /// What kind of cost it is.
    pub kind: LineKind,
    /// What it is, in words.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub what: String,
    /// How long it takes; the shop's rate is charged for it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub time: Option<Written<WrittenTime>>,
    /// What it costs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<Written<Price>>,
    /// Whether it comes with every one that is made; once for the job where not.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub each: bool,
}

/// Something that was made of a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Made {
    /// What: `quote`, `cut list`, `booking 3`.
    pub what: String,
    /// When, as `2026-05-04`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub on: Option<String>,
    /// Its file.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub file: Option<String>,
    /// The figure that counts: a price, or how many bars.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub figure: Option<String>,
}

impl Job {
    /// A job of these plans.
    pub fn of(title: &str, plans: Vec<JobPlan>) -> Self {
        Self {
            firstheat_job: VERSION,
            title: title.to_owned(),
            customer: None,
            date: None,
            currency: None,
            decimals: None,
            plans,
            lines: Vec::new(),
            finish: None,
            discount: None,
            steel: None,
            offcuts_paid: false,
            agreed: None,
            not_included: Vec::new(),
            made: Vec::new(),
        }
    }

    /// What its prices are counted in.
    pub fn money(&self) -> Currency {
        Currency::of(self.currency.as_deref(), self.decimals)
    }
}

impl JobPlan {
    /// One of a plan.
    pub fn one(plan: &str) -> Self {
        Self { plan: plan.to_owned(), count: None, cut: None, also_from: Vec::new() }
    }

    /// How many.
    pub fn pieces(&self) -> u32 {
        self.count.unwrap_or(1)
    }
}

/// Whether bytes are a job rather than a plan: by the key that its file begins with.
pub fn is_job(bytes: &[u8]) -> bool {
    let head = &bytes[..bytes.len().min(4096)];
    String::from_utf8_lossy(head).contains("\"firstheat_job\"")
}

/// Reads a job.
///
/// # Errors
/// When the bytes are none that this program can read; the error names the line, the key and what would be right.
pub fn read(bytes: &[u8]) -> Result<Job, FileError> {
    file::read_sort(bytes, &SORT, check)
}

/// Writes a job.
pub fn write(job: &Job) -> String {
    file::write_sort(job)
}

/// The JSON Schema of the job's file.
pub fn schema() -> serde_json::Value {
    file::schema_of::<Job>()
}

fn check(job: &Job) -> Checked {
    super::checks::check_currency(job.currency.as_deref(), job.decimals)?;
    let (top, money) = (KeyPath::default(), job.money());
    if job.plans.is_empty() {
        return refuse(top.key("plans"), "a job needs at least one plan");
    }
    for (at, plan) in job.plans.iter().enumerate() {
        let at = top.key("plans").index(at);
        if !(1..=MOST_PIECES).contains(&plan.pieces()) {
            return refuse(
                at.key("count"),
                format!("{} was found; a count runs from 1 to {MOST_PIECES}", plan.pieces()),
            );
        }
        if plan.plan.trim().is_empty() {
            return refuse(at.key("plan"), "the name of the plan's file is missing");
        }
    }
    if job.discount.as_ref().is_some_and(|share| share.hundredths > 10_000) {
        return refuse(top.key("discount"), "a discount is at most 100 %");
    }
    if job.offcuts_paid && job.steel == Some(SteelBy::Used) {
        let message = "where only the steel that is used is counted, offcuts cost nothing: leave this out";
        return refuse(top.key("offcuts_paid"), message);
    }
    job.lines.iter().enumerate().try_for_each(|(at, line)| check_line(line, &money, &top.key("lines").index(at)))
}

fn check_line(line: &JobLine, money: &Currency, at: &KeyPath) -> Checked {
    check_price(line.price.as_deref(), &[Per::Each], money, at.key("price"))?;
    if line.time.is_none() && line.price.is_none() {
        return refuse(at.clone(), format!("give this {} a time, a price or both", line.kind.name()));
    }
    Ok(())
}

//! `firstheat quote`: what a job costs, and what to charge for it.

use crate::check::as_json;
use crate::failure::Failure;
use crate::list::Stores;
use crate::list_cli::{PaperFor, QuoteArgs};
use crate::quote_report::{QuoteReport, words};
use crate::{order, output, sheet};
use fh_print::sheets::{QuoteHead, customer_page, reckoning};
use fh_rack::quote::quoted::quote;
use fh_work::Shop as Tools;
use std::process::ExitCode;

/// The most counts in one quote.
const MOST_COUNTS: usize = 12;

/// Prints the quote, and writes a paper where one is asked for.
pub(crate) fn run(args: &QuoteArgs) -> Result<ExitCode, Failure> {
    if args.count.is_empty() || args.count.len() > MOST_COUNTS {
        return Err(Failure::new(format!("a quote has 1 to {MOST_COUNTS} counts")));
    }
    let order = order::read(&args.plans)?;
    let stores = Stores::read(&args.stock)?;
    let stock = stores.stock(&stores.rack);
    let quoted = quote(&order.job, &order.plans, stock, &Tools::default(), &args.count, &|| true, &mut |_| ());
    let quoted = quoted.map_err(Failure::new)?;
    if let Some(path) = &args.output {
        let date = order.job.date.as_deref().unwrap_or_default();
        let head = QuoteHead { job: &order.job, order: &order.plans, shop: &stores.shop, date };
        let drawing = match args.paper_for {
            PaperFor::Customer => customer_page(&quoted, head, args.paper.paper()),
            PaperFor::Smith => reckoning(&quoted, head, args.paper.paper()),
        };
        let written = sheet::write_drawing(&drawing, path, args.force)?;
        if !args.json {
            output::print(&format!("wrote {}\n", written.display()))?;
        }
    }
    let title = &order.job.title;
    output::print(&if args.json { as_json(&QuoteReport::new(title, &quoted))? } else { words(title, &quoted) })?;
    Ok(ExitCode::SUCCESS)
}

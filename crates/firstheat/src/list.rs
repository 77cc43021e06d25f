//! Cut lists of plans and jobs: printed, written as sheets, and booked on the rack.

use crate::check::as_json;
use crate::failure::Failure;
use crate::list_cli::{BookArgs, CutArgs, StockArgs};
use crate::list_report::{ListReport, words};
use crate::order::{self, Order};
use crate::{kept, output, sheet};
use fh_measure::{LengthRange, WrittenLength};
use fh_print::sheets::{CutHead, cut_sheets};
use fh_rack::kept::booking;
use fh_rack::kept::merchant::Merchant;
use fh_rack::kept::rack::{Rack, RackBar};
use fh_rack::kept::shop::Shop;
use fh_rack::list::booked::{put_back, taken};
use fh_rack::list::make::{CutList, Stock, make};
use std::process::ExitCode;

/// The exit status where some piece finds no bar.
pub(crate) const LEFT: u8 = 1;

/// What a list is cut from, read.
pub(crate) struct Stores {
    pub(crate) rack: Rack,
    merchant: Merchant,
    pub(crate) shop: Shop,
    kerf_nm: Option<i64>,
    keep_from_nm: Option<i64>,
}

impl Stores {
    /// Reads the rack, the merchant's list and the shop's figures.
    pub(crate) fn read(args: &StockArgs) -> Result<Self, Failure> {
        Ok(Self {
            rack: kept::rack(args.rack.as_deref())?,
            merchant: kept::merchant(args.merchant.as_deref())?,
            shop: kept::shop(args.shop.as_deref())?,
            kerf_nm: length_nm("kerf", args.kerf.as_deref())?,
            keep_from_nm: length_nm("length of offcuts that are kept", args.keep.as_deref())?,
        })
    }

    /// With what stands on the rack.
    pub(crate) fn stock<'a>(&'a self, rack: &'a Rack) -> Stock<'a> {
        let Self { merchant, shop, kerf_nm, keep_from_nm, .. } = self;
        Stock { rack, merchant, shop, kerf_nm: *kerf_nm, keep_from_nm: *keep_from_nm }
    }
}

/// The most that a kerf or a kept offcut may be, in mm.
const MOST_MM: f64 = 1e5;

fn length_nm(what: &str, text: Option<&str>) -> Result<Option<i64>, Failure> {
    let Some(text) = text else { return Ok(None) };
    let length = WrittenLength::parse(text, None, LengthRange::ZeroOrMore);
    let length = length.map_err(|error| Failure::new(format!("the {what}: {error}")))?;
    if length.is_range() || length.mm() > MOST_MM {
        return Err(Failure::new(format!("the {what}: {text} isn't a length for it")));
    }
    Ok(Some((length.mm() * 1e6).round() as i64))
}

/// Makes the cut list of what is ordered.
pub(crate) fn list(order: &Order, stock: Stock<'_>) -> Result<CutList, Failure> {
    make(&order.plans, stock, &|| true, &mut |_| ()).map_err(Failure::new)
}

/// Prints the cut list.
pub(crate) fn cut(args: &CutArgs) -> Result<ExitCode, Failure> {
    let order = order::read(&args.plans)?;
    let stores = Stores::read(&args.stock)?;
    let list = list(&order, stores.stock(&stores.rack))?;
    if let Some(path) = &args.output {
        let head = CutHead {
            title: &order.job.title,
            customer: order.job.customer.as_deref().unwrap_or_default(),
            date: order.job.date.as_deref().unwrap_or_default(),
        };
        let written = sheet::write_drawing(&cut_sheets(&list, head, args.paper.paper()), path, args.force)?;
        if !args.json {
            output::print(&format!("wrote {}\n", written.display()))?;
        }
    }
    output::print(&if args.json {
        as_json(&ListReport::new(&order.job.title, &list))?
    } else {
        words(&order.job.title, &list)
    })?;
    Ok(if list.is_whole() { ExitCode::SUCCESS } else { ExitCode::from(LEFT) })
}

/// Books the cut list of what is ordered. It is made on the rack as it is held, so that nobody takes a bar in between.
pub(crate) fn book(args: &BookArgs) -> Result<(), Failure> {
    let order = order::read(&args.plans)?;
    let stores = Stores::read(&args.stock)?;
    kept::change(args.stock.rack.as_deref(), |held| {
        let list = list(&order, stores.stock(held))?;
        if !list.is_whole() {
            return Err(Failure::new("not every piece finds a bar, so nothing is booked: see firstheat cut"));
        }
        let (took, back) = (taken(&list, held), put_back(&list));
        let on = order.job.date.clone();
        let next = booking::book(held, &order.job.title, on.as_deref(), &took, &back).map_err(Failure::new)?;
        let number = next.booked.last().map_or(0, |booking| booking.number);
        Ok((next, told(number, &took, &back)))
    })
}

fn told(number: u32, took: &[RackBar], back: &[RackBar]) -> String {
    let lines = |bars: &[RackBar]| bars.iter().map(|bar| format!("  {}\n", bar.words())).collect::<String>();
    let none = |bars: &[RackBar]| if bars.is_empty() { "  nothing\n".to_owned() } else { lines(bars) };
    format!("Booking {number}\nOff the rack:\n{}On the rack:\n{}", none(took), none(back))
}

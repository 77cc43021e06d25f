//! `firstheat rack`: the bars on hand.

use crate::check::as_json;
use crate::failure::Failure;
use crate::kept;
use crate::rack_cli::{AddArgs, ListArgs, RackCommand, TakeArgs, UndoArgs};
use crate::rack_report::{RackReport, words};
use crate::{list, output};
use fh_measure::{LengthRange, WrittenLength};
use fh_rack::kept::booking::{put, take, undo};
use fh_rack::kept::rack::{Rack, RackBar};
use fh_rack::said::bar::SaidBar;
use fh_rack::said::written::{Said, Written};
use std::fmt::Display;
use std::process::ExitCode;

/// Does it.
pub(crate) fn run(command: &RackCommand) -> Result<ExitCode, Failure> {
    match command {
        RackCommand::List(args) => list(args),
        RackCommand::Add(args) => add(args),
        RackCommand::Take(args) => take_off(args),
        RackCommand::Book(args) => list::book(args),
        RackCommand::Undo(args) => undo_booking(args),
    }?;
    Ok(ExitCode::SUCCESS)
}

fn list(args: &ListArgs) -> Result<(), Failure> {
    let rack = kept::rack(args.file.rack.as_deref())?;
    let report = RackReport::new(&rack);
    output::print(&if args.json { as_json(&report)? } else { words(&rack, &report) })
}

fn add(args: &AddArgs) -> Result<(), Failure> {
    let bar = added(args)?;
    kept::change(args.file.rack.as_deref(), |rack| {
        let told = format!("put on the rack: {}\n", bar.words());
        Ok((put(rack, std::slice::from_ref(&bar)), told))
    })
}

fn added(args: &AddArgs) -> Result<RackBar, Failure> {
    let length = |what: &str, text: &Option<String>, range| {
        let read = |text: &String| WrittenLength::parse(text, None, range).map_err(|error| of_the(what, &error));
        text.as_ref().map(read).transpose()
    };
    let price = args.price.as_ref().map(|text| Written::parse(text).map_err(|error| of_the("price", &error)));
    Ok(RackBar {
        measured: length("measured length", &args.measured, LengthRange::AboveZero)?,
        end: length("end", &args.end, LengthRange::ZeroOrMore)?,
        price: price.transpose()?,
        lies: args.lies.clone(),
        note: args.note.clone(),
        ..RackBar::new(SaidBar::parse(&args.bar).map_err(Failure::new)?, args.material.clone())
    })
}

fn of_the(what: &str, error: &impl Display) -> Failure {
    Failure::new(format!("the {what}: {error}"))
}

fn take_off(args: &TakeArgs) -> Result<(), Failure> {
    let asked = RackBar::new(SaidBar::parse(&args.bar).map_err(Failure::new)?, args.material.clone());
    kept::change(args.file.rack.as_deref(), |rack| {
        let lines = fitting(rack, &asked, args.lies.as_deref());
        let there: u32 = lines.iter().map(|line| line.bar.count).sum();
        if there < asked.bar.count {
            let (count, bar) = (asked.bar.count, asked.with_count(1).words());
            return Err(Failure::new(format!("you asked for {count} of {bar}; the rack has {there}")));
        }
        let mut missing = asked.bar.count;
        let mut taken = Vec::new();
        for line in lines {
            let count = line.bar.count.min(missing);
            missing -= count;
            taken.extend((count > 0).then(|| line.with_count(count)));
        }
        let next = take(rack, &taken).map_err(Failure::new)?;
        let words: Vec<String> = taken.iter().map(RackBar::words).collect();
        Ok((next, format!("taken off the rack: {}\n", words.join("; "))))
    })
}

/// The bars that are called as asked, wherever they lie unless a place is named.
fn fitting(rack: &Rack, asked: &RackBar, lies: Option<&str>) -> Vec<RackBar> {
    let is_called = |line: &&RackBar| {
        line.alike() == asked.alike()
            && [line.bar.length_nm(), line.length_nm()].contains(&asked.bar.length_nm())
            && lies.is_none_or(|lies| line.lies.as_deref() == Some(lies))
    };
    rack.bars.iter().filter(is_called).cloned().collect()
}

fn undo_booking(args: &UndoArgs) -> Result<(), Failure> {
    kept::change(args.file.rack.as_deref(), |rack| {
        let (next, number) = undo(rack, args.number).map_err(Failure::new)?;
        Ok((next, format!("booking {number} is undone: its bars are back, its offcuts off the rack\n")))
    })
}

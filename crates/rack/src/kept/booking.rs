//! Taking bars from the rack and putting them on it: never below zero, and booked so that it can be undone.

use super::rack::{Booking, Rack, RackBar};
use thiserror::Error;

/// Why bars cannot be taken.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum BookingError {
    /// Fewer are there than were counted on: somebody took or changed them.
    #[error("the list needs {wanted} of {bar}, and the rack has {there}; make the cut list again")]
    NotThere {
        /// The bar in words.
        bar: String,
        /// How many are wanted.
        wanted: u32,
        /// How many are there.
        there: u32,
    },
    /// There is no such booking.
    #[error("there is no booking {0} on this rack")]
    NoBooking(u32),
    /// It was undone before.
    #[error("booking {0} was undone before")]
    Undone(u32),
    /// Nothing was booked.
    #[error("nothing was booked on this rack")]
    Nothing,
}

/// Takes bars off a rack; the rack stays as it was where one is not there.
///
/// # Errors
/// Where fewer are there than are wanted.
pub fn take(rack: &Rack, wanted: &[RackBar]) -> Result<Rack, BookingError> {
    let mut left = rack.clone();
    for line in wanted {
        take_line(&mut left, line)?;
    }
    left.bars.retain(|line| line.bar.count > 0);
    Ok(left)
}

fn take_line(rack: &mut Rack, wanted: &RackBar) -> Result<(), BookingError> {
    let count = wanted.bar.count;
    let there: u32 = rack.bars.iter().filter(|line| line.is_like(wanted)).map(|line| line.bar.count).sum();
    if there < count {
        let bar = wanted.with_count(1).words();
        return Err(BookingError::NotThere { bar, wanted: count, there });
    }
    let mut missing = count;
    for line in rack.bars.iter_mut().filter(|line| line.is_like(wanted)) {
        let taken = line.bar.count.min(missing);
        *line = line.with_count(line.bar.count - taken);
        missing -= taken;
    }
    Ok(())
}

/// Puts bars on a rack, to those of their kind where there are any.
pub fn put(rack: &Rack, bars: &[RackBar]) -> Rack {
    let mut more = rack.clone();
    for bar in bars.iter().filter(|bar| bar.bar.count > 0) {
        match more.bars.iter_mut().find(|line| line.is_like(bar) && line.bar.length.text() == bar.bar.length.text()) {
            Some(line) => *line = line.with_count(line.bar.count.saturating_add(bar.bar.count)),
            None => more.bars.push(bar.clone()),
        }
    }
    more
}

/// Books a cut list: its bars are taken and its offcuts put back, both or neither.
///
/// # Errors
/// Where the rack no longer has the bars.
pub fn book(
    rack: &Rack,
    what: &str,
    on: Option<&str>,
    took: &[RackBar],
    back: &[RackBar],
) -> Result<Rack, BookingError> {
    let mut booked = put(&take(rack, took)?, back);
    let number = booked.booked.iter().map(|booking| booking.number).max().unwrap_or(0).saturating_add(1);
    booked.booked.push(Booking {
        number,
        what: what.to_owned(),
        on: on.map(str::to_owned),
        took: took.to_vec(),
        back: back.to_vec(),
        undone: false,
    });
    Ok(booked)
}

/// Undoes a booking, the latest that stands where none is named: its offcuts are taken off, and its bars put on again.
///
/// # Errors
/// Where there is no such booking, it was undone before, or an offcut of it is no longer there.
pub fn undo(rack: &Rack, number: Option<u32>) -> Result<(Rack, u32), BookingError> {
    let latest = || rack.booked.iter().rev().find(|booking| !booking.undone).map(|booking| booking.number);
    let number = number.or_else(latest).ok_or(BookingError::Nothing)?;
    let booking = rack.booked.iter().find(|booking| booking.number == number);
    let booking = booking.ok_or(BookingError::NoBooking(number))?;
    if booking.undone {
        return Err(BookingError::Undone(number));
    }
    let mut undone = put(&take(rack, &booking.back)?, &booking.took);
    undone.booked.iter_mut().filter(|booking| booking.number == number).for_each(|booking| booking.undone = true);
    Ok((undone, number))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use crate::said::bar::SaidBar;
    use crate::said::written::Said;

    fn bar(text: &str) -> RackBar {
        RackBar::new(SaidBar::parse(text).unwrap(), None)
    }

    fn rack(bars: &[&str]) -> Rack {
        Rack { bars: bars.iter().map(|text| bar(text)).collect(), ..Rack::default() }
    }

    fn words(rack: &Rack) -> Vec<&str> {
        rack.bars.iter().map(|line| line.bar.text()).collect()
    }

    #[test]
    fn a_booking_takes_bars_puts_offcuts_back_and_can_be_undone() {
        let before = rack(&["3 x 12 mm square, 2.4 m", "1/2 in round, 20 ft"]);
        let took = [bar("2 x 12 mm square, 2.4 m"), bar("1/2 in round, 20 ft")];
        let booked = book(&before, "trellis", Some("2026-05-04"), &took, &[bar("12 mm square, 0.6 m")]).unwrap();
        assert_eq!(words(&booked), ["12 mm square, 2.4 m", "12 mm square, 0.6 m"]);
        let (undone, number) = undo(&booked, None).unwrap();
        assert_eq!(number, 1);
        assert_eq!(words(&undone), ["3 x 12 mm square, 2.4 m", "1/2 in round, 20 ft"]);
        assert_eq!(undo(&undone, Some(1)), Err(BookingError::Undone(1)));
        assert_eq!(undo(&undone, Some(7)), Err(BookingError::NoBooking(7)));
        assert_eq!(undo(&undone, None), Err(BookingError::Nothing));
    }

    #[test]
    fn a_rack_never_has_less_than_nothing_and_a_refused_booking_changes_nothing() {
        let one = rack(&["12 mm square, 2.4 m"]);
        let refused = book(&one, "", None, &[bar("2 x 12 mm square, 2.4 m")], &[]).unwrap_err();
        let words = refused.to_string();
        assert_eq!(words, "the list needs 2 of 12 mm square, 2.4 m, and the rack has 1; make the cut list again");
    }

    #[test]
    fn an_offcut_that_was_used_since_stops_the_undoing() {
        let booked =
            book(&rack(&["12 mm square, 6 m"]), "", None, &[bar("12 mm square, 6 m")], &[bar("12 mm square, 1 m")]);
        let used = take(&booked.unwrap(), &[bar("12 mm square, 1 m")]).unwrap();
        assert!(matches!(undo(&used, None), Err(BookingError::NotThere { there: 0, .. })));
    }

    #[test]
    fn bars_that_lie_elsewhere_or_are_of_another_steel_are_other_bars() {
        let mut spring = bar("12 mm square, 2.4 m");
        spring.material = Some("spring steel".to_owned());
        assert!(take(&rack(&["12 mm square, 2.4 m"]), &[spring]).is_err());
        let shed = RackBar { lies: Some("shed".to_owned()), ..bar("12 mm square, 2.4 m") };
        assert_eq!(put(&rack(&["12 mm square, 2.4 m"]), &[shed]).bars.len(), 2);
    }
}

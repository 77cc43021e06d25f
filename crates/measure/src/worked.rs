//! Sizes that are worked out as they are typed: `10 - 2 1/2`, `1/3 of 9`, `half of it`. What comes out is written as a size.

use crate::error::{MeasureError, Problem};
use crate::exact::Exact;
use crate::format::format_exact;
use crate::length_range::LengthRange;
use crate::length_unit::LengthUnit;
use crate::reader::Reader;
use crate::scan::{Kind, Part, scan};
use crate::size::{JOINING, Size, is_foot, is_word};
use crate::written_length::WrittenLength;

const EXAMPLE: &str = "10 - 2 1/2, 1/3 of 9 or half of it";

/// The words that a term may begin with.
const SHARES: [(&str, i128); 3] = [("half", 2), ("third", 3), ("quarter", 4)];
/// The word for the size that was there.
const IT: &str = "it";

impl WrittenLength {
    /// Reads a length as it is typed: as [`Self::parse`] does, and sums, shares and multiples besides, which are worked out
    /// and written as what comes of them: `10 - 2 1/2`, `4 and 3/8`, `1/3 of 9`, `90 % of it`, `3 times 25`.
    ///
    /// A number without a unit takes `unit`; beside a size in another unit it is refused. `it` is the size that was there.
    ///
    /// # Errors
    /// Where the text is neither a length nor a sum, or what comes of it is not in the range.
    pub fn typed(text: &str, unit: LengthUnit, range: LengthRange, it: Option<&Self>) -> Result<Self, MeasureError> {
        let trimmed = text.trim();
        let plain = Self::parse(trimmed, Some(unit), range);
        let Ok(parts) = scan(trimmed) else { return plain };
        if plain.is_ok() {
            return match spaced_hyphen(&parts) {
                Some(problem) => Err(problem.of(trimmed, "1' 2\" or 1' less 2\"")),
                None => plain,
            };
        }
        if !is_sum(&parts) {
            return plain;
        }
        worked(trimmed, &parts, unit, range, it).map_err(|problem| problem.of(trimmed, EXAMPLE))
    }
}

/// Whether there is anything to work out.
fn is_sum(parts: &[Part]) -> bool {
    let joins = |kind: &Kind| JOINING.iter().any(|word| is_word(kind, word));
    let begins = |kind: &Kind| is_word(kind, IT) || SHARES.iter().any(|(word, _)| is_word(kind, word));
    let signs = parts.iter().skip(1).any(|part| matches!(part.kind, Kind::Plus | Kind::Minus));
    signs || parts.iter().any(|part| joins(&part.kind) || begins(&part.kind))
}

/// Feet and inches with a hyphen that could be a minus as well.
fn spaced_hyphen(parts: &[Part]) -> Option<Problem> {
    let triple = |three: &[Part]| match three {
        [foot, minus, inches] if is_foot(&foot.kind) && minus.kind == Kind::Minus => {
            (minus.at > foot.end && inches.at > minus.end).then_some(minus.at)
        }
        _ => None,
    };
    let at = parts.windows(3).find_map(triple)?;
    Some(Problem::new(at, "this may join feet and inches or take the inches away"))
}

/// One term: so many times a size.
struct Term {
    /// The character it starts at.
    at: usize,
    times: Exact,
    of: Of,
}

/// What a term is so many times of.
enum Of {
    It,
    Size(Size),
}

fn worked(
    text: &str,
    parts: &[Part],
    unit: LengthUnit,
    range: LengthRange,
    it: Option<&WrittenLength>,
) -> Result<WrittenLength, Problem> {
    let mut reader = Reader::new(parts, text.chars().count());
    let terms = terms(&mut reader)?;
    let mut sum = Exact::new(0, 1);
    for term in &terms {
        let mm = match &term.of {
            Of::It => it_mm(term.at, it)?,
            Of::Size(size) => {
                one_unit(size, &terms, unit)?;
                size.mm(Some(unit), LengthRange::Any)?
            }
        };
        sum = sum.and_then(|sum| sum.plus(mm.times(term.times)?));
    }
    let mm = sum.ok_or_else(|| Problem::new(0, "this is too large or too small"))?.value();
    let named = terms.iter().find_map(|term| match &term.of {
        Of::Size(size) => size.unit(),
        Of::It => it.map(WrittenLength::unit),
    });
    let unit = named.map_or(unit, |named| if named == LengthUnit::Foot { LengthUnit::Inch } else { named });
    let too_low = match range {
        LengthRange::AboveZero => mm <= 0.0,
        LengthRange::ZeroOrMore => mm < 0.0,
        LengthRange::Any => false,
    };
    if too_low {
        return Err(Problem::new(0, format!("this comes to {}, and no size does", format_exact(mm, unit))));
    }
    WrittenLength::from_mm(mm, unit, range).map_err(|error| Problem::new(0, error.problem))
}

/// The size that was there, exactly as it was written.
fn it_mm(at: usize, it: Option<&WrittenLength>) -> Result<Exact, Problem> {
    let it = it.ok_or_else(|| Problem::new(at, "no size was there before"))?;
    if it.is_range() {
        return Err(Problem::new(at, "what was there is a range, and no one size"));
    }
    let parts = scan(it.text())?;
    let mut reader = Reader::new(&parts, it.text().chars().count());
    Size::read(&mut reader)?.mm(Some(it.unit()), LengthRange::Any)
}

/// Refuses a bare number beside a size in another unit than the usual one.
fn one_unit(size: &Size, all: &[Term], unit: LengthUnit) -> Result<(), Problem> {
    let other = all.iter().any(|term| match &term.of {
        Of::Size(other) => other.unit().is_some_and(|other| other != unit),
        Of::It => false,
    });
    if size.unit().is_none() && other {
        return Err(Problem::new(size.at, "say the unit of this as well"));
    }
    Ok(())
}

/// The terms, those that are taken away times -1.
fn terms(reader: &mut Reader<'_>) -> Result<Vec<Term>, Problem> {
    let mut terms = Vec::new();
    let mut takes_away = false;
    loop {
        let term = term(reader)?;
        let times = if takes_away { term.times.negated() } else { term.times };
        terms.push(Term { times, ..term });
        let Some(kind) = reader.peek() else { return Ok(terms) };
        takes_away = match kind {
            Kind::Plus => false,
            Kind::Minus => true,
            kind if is_word(kind, "plus") || is_word(kind, "and") => false,
            kind if is_word(kind, "minus") || is_word(kind, "less") => true,
            _ => return Err(reader.finish().err().unwrap_or_else(|| Problem::new(reader.at(), "a sum ends here"))),
        };
        reader.take();
        if reader.peek().is_none() {
            return Err(Problem::new(reader.at(), "a size belongs behind the sign"));
        }
    }
}

fn term(reader: &mut Reader<'_>) -> Result<Term, Problem> {
    let at = reader.at();
    let whole = || Exact::new(1, 1).ok_or_else(|| Problem::new(at, "this is too large or too small"));
    if reader.peek().is_some_and(|kind| is_word(kind, IT)) {
        reader.take();
        return Ok(Term { at, times: whole()?, of: Of::It });
    }
    if let Some(times) = share(reader)? {
        return Ok(Term { at, times, of: shared(reader)? });
    }
    if matches!(reader.peek(), Some(Kind::Plus | Kind::Minus)) {
        return Err(Problem::new(at, "one sign is enough"));
    }
    Ok(Term { at, times: whole()?, of: Of::Size(Size::read(reader)?) })
}

/// `half of`, `a third of`, `2/3 of`, `90 % of`, `3 times`: how many times the size behind it; none where a size begins.
fn share(reader: &mut Reader<'_>) -> Result<Option<Exact>, Problem> {
    let mut ahead = reader.clone();
    if ahead.peek().is_some_and(|kind| is_word(kind, "a")) {
        ahead.take();
    }
    let named = SHARES.iter().find(|(word, _)| ahead.peek().is_some_and(|kind| is_word(kind, word)));
    let number = match named {
        Some((_, parts)) => {
            ahead.take();
            Exact::new(1, *parts)
        }
        None => ahead.number().ok(),
    };
    let Some(number) = number else { return Ok(None) };
    let per_cent = ahead.take_if(&Kind::Word("%".to_owned()));
    let joins = |word| ahead.peek().is_some_and(|kind| is_word(kind, word));
    if !(joins("of") || (joins("times") && !per_cent)) {
        return match (named, per_cent) {
            (None, false) => Ok(None),
            _ => Err(Problem::new(ahead.at(), "“of” and a size belong here")),
        };
    }
    ahead.take();
    *reader = ahead;
    Ok(if per_cent { Exact::new(1, 100).and_then(|hundredth| number.times(hundredth)) } else { Some(number) })
}

/// What stands behind `of`: a size, or nothing, which is the size that was there.
fn shared(reader: &mut Reader<'_>) -> Result<Of, Problem> {
    match reader.peek() {
        None => Ok(Of::It),
        Some(kind) if is_word(kind, IT) => {
            reader.take();
            Ok(Of::It)
        }
        Some(Kind::Plus | Kind::Minus) => Err(Problem::new(reader.at(), "a size belongs here")),
        Some(_) => Size::read(reader).map(Of::Size),
    }
}

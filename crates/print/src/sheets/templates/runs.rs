//! Which segments lie flat together: the runs that one template is drawn for.

use fh_core::balance::BarBalance;
use fh_core::metal::{FreeEnd, Shape, SplitSize};
use fh_core::plan::{Bar, Chain};
use fh_piece::vector::{Vector, cross, direction, dot, length, minus};
use fh_piece::{Line, Piece};

/// A tail of which no more than this would be left out is drawn whole.
const LEFT_OUT_MM: f64 = 30.0;
/// A segment of which no more than this would be left out is drawn whole.
const CUT_OFF_MM: f64 = 12.0;
/// Bends with more straight bar than this between them are drawn apart.
const APART_MM: f64 = 160.0;
/// The bar behind the root of a split is drawn so far.
const BEHIND_ROOT_MM: f64 = 40.0;

/// One segment of a run, and how much of it is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Member {
    /// The segment, counted through the bar.
    pub(super) segment: usize,
    /// How many mm of a straight one are drawn, from the end that is joined to the run; none where it is drawn whole.
    pub(super) shown: Option<Shown>,
}

/// The part of a straight segment that is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Shown {
    /// How much of it, in mm.
    pub(super) mm: f64,
    /// Whether it is the part toward the datum end.
    pub(super) datum_part: bool,
}

/// Segments that lie in one plane.
#[derive(Clone, Debug)]
pub(super) struct Run {
    /// Its segments, in order through the bar.
    pub(super) members: Vec<Member>,
    /// The direction that its plane is square to.
    pub(super) normal: Vector,
    /// The split whose branches it shows together.
    pub(super) split: Option<usize>,
}

/// How the line of a segment runs.
#[derive(Clone, Copy, Debug)]
enum Kind {
    Straight(f64),
    Flat(Vector),
    /// It is bent out of one plane, or is no part of the piece.
    Other,
}

/// The runs of a bar, in order through it; of straight bar beside a bend `tail_mm` is drawn.
pub(super) fn runs(bar_index: usize, bar: &Bar, worked: &BarBalance, piece: &Piece, tail_mm: f64) -> Vec<Run> {
    let kinds: Vec<Kind> = (0..worked.segments.len()).map(|segment| kind(piece.line(bar_index, segment))).collect();
    let mut chains: Vec<Chain> = bar.flat().iter().map(|flat| flat.chain).collect();
    let mut seen = Vec::new();
    chains.retain(|chain| {
        !seen.contains(chain) && {
            seen.push(*chain);
            true
        }
    });
    let mut runs: Vec<Run> =
        chains.iter().flat_map(|chain| runs_of_chain(&numbers(bar, *chain), &kinds, tail_mm)).collect();
    for (split, segment) in worked.segments.iter().enumerate() {
        if let Some(Shape::Split(size)) = &segment.shape {
            join_at_root(&mut runs, bar, (split, size), &kinds, tail_mm);
        }
    }
    runs.sort_by_key(|run| run.members.iter().map(|member| member.segment).min());
    runs
}

/// The segments of a chain, counted through the bar.
fn numbers(bar: &Bar, chain: Chain) -> Vec<usize> {
    let count = bar.chain(chain).map_or(0, Vec::len);
    (0..count).filter_map(|place| bar.number_of(chain, place)).collect()
}

fn kind(line: Option<&Line>) -> Kind {
    let Some(line) = line else { return Kind::Other };
    let (Some(first), Some(last)) = (line.frames.first(), line.frames.last()) else { return Kind::Other };
    let across = |frame: &fh_piece::Frame| cross(first.along, frame.along);
    let normal = line.frames.iter().map(across).max_by(|a, b| length(*a).total_cmp(&length(*b))).unwrap_or_default();
    let Some(normal) = direction(normal).filter(|_| length(normal) >= 1e-6) else {
        return Kind::Straight(length(minus(last.at, first.at)));
    };
    let flat = line.frames.iter().all(|frame| dot(frame.along, normal).abs() < 1e-4);
    if flat { Kind::Flat(normal) } else { Kind::Other }
}

fn runs_of_chain(numbers: &[usize], kinds: &[Kind], tail_mm: f64) -> Vec<Run> {
    let mut runs = Vec::new();
    let mut start: Option<(usize, usize, Vector)> = None;
    let mut straight = 0.0;
    for (place, number) in numbers.iter().enumerate() {
        match (kinds.get(*number).copied().unwrap_or(Kind::Other), start) {
            (Kind::Flat(normal), Some((first, _, before))) if alike(normal, before) && straight <= APART_MM => {
                start = Some((first, place, before));
                straight = 0.0;
            }
            (Kind::Flat(normal), _) => {
                runs.extend(start.map(|run| with_tails(numbers, kinds, run, tail_mm)));
                start = Some((place, place, normal));
                straight = 0.0;
            }
            (Kind::Straight(mm), _) => straight += mm,
            (Kind::Other, _) => {
                runs.extend(start.take().map(|run| with_tails(numbers, kinds, run, tail_mm)));
                straight = 0.0;
            }
        }
    }
    runs.extend(start.map(|run| with_tails(numbers, kinds, run, tail_mm)));
    runs
}

fn alike(a: Vector, b: Vector) -> bool {
    dot(a, b).abs() > 1.0 - 1e-6
}

/// A run from its first bend to its last, with the straight bar before and behind it.
fn with_tails(numbers: &[usize], kinds: &[Kind], (first, last, normal): (usize, usize, Vector), tail_mm: f64) -> Run {
    let before = tail(numbers.iter().take(first).rev(), kinds, tail_mm, false);
    let within = numbers.iter().take(last + 1).skip(first).map(|segment| Member { segment: *segment, shown: None });
    let behind = tail(numbers.iter().skip(last + 1), kinds, tail_mm, true);
    Run { members: before.into_iter().rev().chain(within).chain(behind).collect(), normal, split: None }
}

/// The straight segments next to a bend, from it outward: whole where they end soon, and cut where they go on.
fn tail<'a>(
    outward: impl Iterator<Item = &'a usize> + Clone,
    kinds: &[Kind],
    shown: f64,
    datum_part: bool,
) -> Vec<Member> {
    let straight = |number: &usize| match kinds.get(*number) {
        Some(Kind::Straight(mm)) => Some(*mm),
        _ => None,
    };
    let all: f64 = outward.clone().map_while(straight).sum();
    let mut room = if all <= shown + LEFT_OUT_MM { f64::INFINITY } else { shown };
    let mut members = Vec::new();
    for (number, mm) in outward.map_while(|number| Some((*number, straight(number)?))) {
        if room <= 1.0 {
            break;
        }
        let cut = (mm > room + CUT_OFF_MM).then_some(Shown { mm: room, datum_part });
        members.push(Member { segment: number, shown: cut });
        room -= mm;
    }
    members
}

/// Joins the runs of branches that reach the root of their split in one plane, with a piece of the bar behind it.
fn join_at_root(runs: &mut Vec<Run>, bar: &Bar, (split, size): (usize, &SplitSize), kinds: &[Kind], tail_mm: f64) {
    let count = bar.segment(split).map_or(0, |segment| segment.form.branches().len());
    let at_root: Vec<usize> = (0..count)
        .flat_map(|branch| {
            let numbers = numbers(bar, Chain::Branch { split, branch });
            match size.opens() {
                FreeEnd::Datum => numbers.last().copied(),
                FreeEnd::Far | FreeEnd::Neither => numbers.first().copied(),
            }
        })
        .collect();
    let reaches =
        |run: &Run| run.members.iter().any(|member| at_root.contains(&member.segment) && member.shown.is_none());
    let Some(normal) = runs.iter().find(|run| reaches(run)).map(|run| run.normal) else { return };
    let (joined, apart): (Vec<Run>, Vec<Run>) =
        std::mem::take(runs).into_iter().partition(|run| reaches(run) && alike(run.normal, normal));
    *runs = apart;
    let mut members: Vec<Member> = joined.into_iter().flat_map(|run| run.members).collect();
    // A branch that runs straight belongs to it as well.
    for branch in 0..count {
        let own = numbers(bar, Chain::Branch { split, branch });
        if !own.iter().any(|number| members.iter().any(|member| member.segment == *number)) {
            let from_root: Vec<usize> =
                if size.opens() == FreeEnd::Datum { own.into_iter().rev().collect() } else { own };
            members.extend(tail(from_root.iter(), kinds, tail_mm, size.opens() != FreeEnd::Datum));
        }
    }
    let (before, behind) = beside_split(bar, split);
    if size.opens() != FreeEnd::Datum {
        members.extend(tail(before.iter(), kinds, BEHIND_ROOT_MM, false));
    }
    if size.opens() != FreeEnd::Far {
        members.extend(tail(behind.iter(), kinds, BEHIND_ROOT_MM, true));
    }
    members.sort_by_key(|member| member.segment);
    members.dedup_by_key(|member| member.segment);
    runs.push(Run { members, normal, split: Some(split) });
}

/// The segments before a split in its chain, the nearest first, and those behind it.
fn beside_split(bar: &Bar, split: usize) -> (Vec<usize>, Vec<usize>) {
    let Some((chain, place)) = bar.place_of(split) else { return (Vec::new(), Vec::new()) };
    let all = numbers(bar, chain);
    (all.iter().take(place).rev().copied().collect(), all.iter().skip(place + 1).copied().collect())
}

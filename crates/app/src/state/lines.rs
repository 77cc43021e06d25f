//! The lines of a bar in the list of parts: its segments, and under a split its branches with theirs.

use super::Focus;
use fh_core::plan::{Bar, Segment};

/// What a line stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Line {
    /// A segment, counted through the bar, and how many splits it lies within.
    Segment {
        /// Its number.
        at: usize,
        /// How deep it lies.
        depth: usize,
    },
    /// A branch of a split.
    Branch {
        /// The split, counted through the bar.
        split: usize,
        /// Which of its branches.
        branch: usize,
        /// How many splits it lies within.
        depth: usize,
    },
}

impl Line {
    /// What is selected where this line is.
    pub(crate) fn focus(self) -> Focus {
        match self {
            Self::Segment { at, .. } => Focus::Segment(at),
            Self::Branch { split, branch, .. } => Focus::Branch { split, branch },
        }
    }
}

/// The lines of a bar, in order.
pub(crate) fn lines(bar: &Bar) -> Vec<Line> {
    let mut all = Vec::with_capacity(bar.segments.len());
    let mut number = 0;
    add(&bar.segments, 0, &mut number, &mut all);
    all
}

fn add(segments: &[Segment], depth: usize, number: &mut usize, all: &mut Vec<Line>) {
    for segment in segments {
        let split = *number;
        all.push(Line::Segment { at: split, depth });
        *number += 1;
        for (branch, below) in segment.form.branches().iter().enumerate() {
            all.push(Line::Branch { split, branch, depth: depth + 1 });
            add(&below.segments, depth + 1, number, all);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use fh_core::forms;
    use fh_core::plan::{Branch, Form, SectionSpec};

    #[test]
    fn an_empty_branch_has_a_line_too() {
        let plain = || Segment::new("", Form::Plain(forms::Plain { length: None }));
        let branches = [vec![plain(), plain()], Vec::new()].map(|segments| Branch::new("", segments));
        let split = Form::Split(forms::Split { branches: branches.into(), ..forms::Split::default() });
        let mut bar = Bar::new("bar", SectionSpec::Point);
        bar.segments = vec![Segment::new("", split), plain()];
        let expected = [
            Line::Segment { at: 0, depth: 0 },
            Line::Branch { split: 0, branch: 0, depth: 1 },
            Line::Segment { at: 1, depth: 1 },
            Line::Segment { at: 2, depth: 1 },
            Line::Branch { split: 0, branch: 1, depth: 1 },
            Line::Segment { at: 3, depth: 0 },
        ];
        assert_eq!(lines(&bar), expected);
    }
}

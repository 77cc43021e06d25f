//! Steps follow their segments through every edit.

#![allow(clippy::unwrap_used, reason = "tests")]

use crate::edit::Edit;
use crate::forms;
use crate::plan::{Bar, Branch, Chain, Deed, Form, Operation, Plan, SectionSpec, Segment, Step, Units};
use fh_measure::{LengthRange, WrittenLength};

fn length(text: &str) -> WrittenLength {
    WrittenLength::parse(text, None, LengthRange::AboveZero).unwrap()
}

fn leaf(name: &str) -> Segment {
    Segment::new(name, Form::Plain(forms::Plain { length: Some(length("20 mm")) }))
}

fn split(name: &str, branches: &[&[&str]]) -> Segment {
    let branch = |names: &&[&str]| Branch::new("", names.iter().map(|name| leaf(name)).collect());
    Segment::new(
        name,
        Form::Split(forms::Split { branches: branches.iter().map(branch).collect(), ..forms::Split::default() }),
    )
}

fn stock() -> SectionSpec {
    SectionSpec::Round(length("12 mm"))
}

/// Two bars; each segment has a step whose title is its name.
fn plan() -> Plan {
    let mut plan = Plan::new("", Units::default(), stock());
    plan.bars.push(Bar::new("second", stock()));
    plan.bars[0].segments = vec![leaf("a"), split("s", &[&["b", "c"], &["d"]]), leaf("e"), leaf("f")];
    plan.bars[1].segments = vec![leaf("x")];
    let mut steps = Vec::new();
    for (index, bar) in plan.bars.iter().enumerate() {
        for (flat, path) in bar.flat().iter().zip(bar.paths()) {
            steps.push(Step {
                bar: (index > 0).then_some(index as u32 + 1),
                work: vec![Deed::new(Operation::Draw, vec![path])],
                title: Some(flat.segment.name.clone()),
                ..Step::default()
            });
        }
    }
    plan.work.steps = Some(steps);
    plan
}

/// That every step still works on the segment of its name; the names that have lost their step.
fn lost(plan: &Plan) -> Vec<String> {
    let steps = plan.work.steps.as_ref().unwrap();
    for step in steps {
        let bar = &plan.bars[step.bar_index()];
        let at = bar.find_path(&step.work[0].parts[0]).unwrap();
        assert_eq!(bar.segment(at).unwrap().name, *step.title.as_ref().unwrap());
    }
    let titled = |name: &str| steps.iter().any(|step| step.title.as_deref() == Some(name));
    ["a", "s", "b", "c", "d", "e", "f", "x"].into_iter().filter(|name| !titled(name)).map(str::to_owned).collect()
}

fn after(edit: &Edit) -> Plan {
    edit.applied(&plan()).unwrap().0
}

#[test]
fn steps_follow_their_segments() {
    let none: [&str; 0] = [];
    let branch = Chain::Branch { split: 1, branch: 0 };
    let new = || Box::new(split("new", &[&["y"], &["z"]]));
    for edit in [
        Edit::InsertSegment { bar: 0, at: 0, segment: new() },
        Edit::InsertSegment { bar: 0, at: 3, segment: new() },
        Edit::InsertSegment { bar: 0, at: 99, segment: new() },
        Edit::InsertInto { bar: 0, chain: branch, place: 1, segment: new() },
        Edit::InsertSegments { bar: 0, chain: Chain::Bar, place: 1, segments: vec![leaf("y"), leaf("z")] },
        Edit::MoveSegment { bar: 0, from: 0, to: 5 },
        Edit::MoveSegment { bar: 0, from: 6, to: 0 },
        Edit::MoveSegment { bar: 0, from: 1, to: 6 },
        Edit::MoveSegment { bar: 0, from: 2, to: 3 },
        Edit::AddBar { at: 0, bar: Box::new(Bar::new("new", stock())) },
        Edit::AddBar { at: 1, bar: Box::new(Bar::new("new", stock())) },
    ] {
        assert_eq!(lost(&after(&edit)), none, "{edit:?}");
    }
}

#[test]
fn what_is_taken_out_takes_its_steps_along() {
    for (edit, gone) in [
        (Edit::RemoveSegment { bar: 0, at: 0 }, vec!["a"]),
        (Edit::RemoveSegment { bar: 0, at: 1 }, vec!["s", "b", "c", "d"]),
        (Edit::RemoveSegment { bar: 0, at: 3 }, vec!["c"]),
        (Edit::RemoveBar { bar: 0 }, vec!["a", "s", "b", "c", "d", "e", "f"]),
        (Edit::RemoveBar { bar: 1 }, vec!["x"]),
    ] {
        assert_eq!(lost(&after(&edit)), gone, "{edit:?}");
    }
}

#[test]
fn a_split_that_is_changed_keeps_the_steps_of_what_stays() {
    let segment = Box::new(split("s", &[&["b"], &["d", "y"], &["z"]]));
    assert_eq!(lost(&after(&Edit::ReplaceSegment { bar: 0, at: 1, segment })), ["c"]);
}

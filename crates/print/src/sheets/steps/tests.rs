//! The pictures of the demo plans show what is there after each step.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

use super::bent::Now;
use super::job::Job;
use super::piece_view::{From, PieceView};
use super::strip_bar::{StripBar, across_at};
use crate::drawing::Item;
use crate::pen::Pen;
use crate::sheets::flow::Block;
use crate::sheets::templates::space::Plane;
use fh_core::balance::{Balance, BarBalance};
use fh_core::cautions::Cautions;
use fh_core::metal::{Shape, View};
use fh_core::plan::{Chain, Operation, Plan};
use fh_piece::vector::{Vector, dot};
use fh_piece::{Piece, Quality, piece};
use fh_work::{Shop, Worked, WorkedStep, after, bar_after, work_out};
use uom::si::length::millimeter;

/// The width of a strip with its names.
const WIDTH: f64 = 180.0;

fn demo(name: &str) -> Plan {
    let path = format!("{}/../../demo-plans/{name}.plan.json", env!("CARGO_MANIFEST_DIR"));
    fh_core::file::read(&std::fs::read(path).unwrap()).unwrap()
}

fn demos() -> Vec<(String, Plan)> {
    let folder = format!("{}/../../demo-plans", env!("CARGO_MANIFEST_DIR"));
    let names = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let mut names: Vec<String> = names.filter_map(|name| name.strip_suffix(".plan.json").map(str::to_owned)).collect();
    names.sort();
    assert!(names.len() >= 14, "{names:?}");
    names.into_iter().map(|name| (name.clone(), demo(&name))).collect()
}

/// A plan worked out.
struct Shown {
    plan: Plan,
    balance: Balance,
    worked: Worked,
    warned: Cautions,
}

impl Shown {
    fn new(plan: Plan) -> Self {
        let balance = fh_core::balance::balance(&plan);
        let worked = work_out(&plan, &balance, &Shop::default());
        let warned = fh_core::cautions::cautions(&plan, &balance);
        Self { plan, balance, worked, warned }
    }

    fn job(&self) -> Job<'_> {
        Job { plan: &self.plan, balance: &self.balance, worked: &self.worked, warned: &self.warned }
    }

    /// The first step that does something.
    fn step(&self, operation: Operation) -> usize {
        let does = |step: &WorkedStep| step.tasks.iter().any(|task| task.operation == operation);
        self.worked.steps.iter().position(does).unwrap()
    }

    /// The first bar after so many steps.
    fn after(&self, steps: usize) -> StripBar {
        StripBar::new(&self.plan, 0, bar_after(&self.plan, &self.balance, &self.worked, 0, steps).unwrap())
    }

    /// The numbers of the parts of this name.
    fn parts(&self, name: &str) -> Vec<usize> {
        let flat = self.plan.bars[0].flat();
        (0..flat.len()).filter(|at| flat[*at].segment.name == name).collect()
    }

    /// What a step draws under its strip.
    fn picture(&self, step: usize) -> Block {
        self.job().bent(&self.job().states(WIDTH), step, &self.worked.steps[step], WIDTH)
    }

    fn strip(&self, step: usize) -> Block {
        let job = self.job();
        job.strip(&job.states(WIDTH), step, &self.worked.steps[step], WIDTH)
    }
}

/// The size of a piece along two directions, by its surfaces alone.
fn true_size(piece: &Piece, directions: [Vector; 2]) -> [f64; 2] {
    directions.map(|direction| {
        let along = piece.solids.iter().flat_map(|solid| &solid.mesh.points).map(|point| dot(*point, direction));
        let [low, high] = along.fold([f64::INFINITY, f64::NEG_INFINITY], |[l, h], mm| [l.min(mm), h.max(mm)]);
        high - low
    })
}

#[test]
fn every_view_of_a_piece_is_as_large_as_the_piece() {
    for (name, plan) in demos() {
        let balance = fh_core::balance::balance(&plan);
        let solid = piece(&plan, &balance, Quality::Print);
        let [side, above] = super::anchor::directions(&super::anchor::anchor(&solid));
        for (from, [right, up]) in [(From::Side, side), (From::Above, above)] {
            for laid in [false, true] {
                let [wide, high] = PieceView::new(&plan, &solid, &balance, from, laid).unwrap().size();
                let drawn = if laid { [high, wide] } else { [wide, high] };
                let wanted = true_size(&solid, [right, up]);
                let off = |axis: usize| (drawn[axis] - wanted[axis]).abs();
                assert!(off(0) < 0.1 && off(1) < 0.1, "{name}, {}: {drawn:?} for {wanted:?}", from.name());
            }
        }
    }
}

/// The tenons of the pot stand's legs stand out 13 mm over the bosses to be headed; the ring, 12 mm thick, stands (12 - 8)/2 mm over
/// its bosses, and so is 11 mm lower.
#[test]
fn what_stands_out_to_be_headed_counts_for_no_overall_size() {
    let plan = demo("pot-stand");
    let balance = fh_core::balance::balance(&plan);
    let solid = piece(&plan, &balance, Quality::Print);
    let view = PieceView::new(&plan, &solid, &balance, From::Side, false).unwrap();
    let ([_, high], [_, finished]) = (view.size(), view.finished_size());
    assert!((high - finished - 11.0).abs() < 0.1, "{high} {finished}");
    assert!(view.has_pins());
    // A leg by itself is measured as it is before it is fitted.
    let alone = Plan { joints: Vec::new(), ..plan };
    let view = PieceView::new(&alone, &solid, &balance, From::Side, false).unwrap();
    assert!((view.finished_size()[1] - high).abs() < 1e-9 && !view.has_pins());
}

#[test]
fn every_picture_of_a_bent_bar_is_as_large_as_the_bar() {
    for (name, plan) in demos() {
        let shown = Shown::new(plan);
        let balance = after(&shown.plan, &shown.balance, &shown.worked, shown.worked.steps.len());
        let now = Now::new(&shown.plan, &balance);
        if !now.is_bent() {
            continue;
        }
        let solid = piece(&shown.plan, &balance, Quality::Print);
        let [side, above] = super::anchor::directions(&super::anchor::anchor(&solid));
        let sizes = now.sizes();
        for (size, directions) in sizes.iter().zip([side, above]) {
            let wanted = true_size(&solid, directions);
            assert!((0..2).all(|axis| (size[axis] - wanted[axis]).abs() < 0.1), "{name}: {size:?} for {wanted:?}");
        }
    }
}

/// How much farther than its middle line a part of the first bar reaches to the side that is given by its angle than to the other
/// one, in mm, in each view of its bent picture that shows that side.
fn stands_out(plan: &Plan, bar: &BarBalance, at: usize, side: f64) -> Vec<f64> {
    let plan = Plan { bars: vec![plan.bars[0].clone()], joints: Vec::new(), ..plan.clone() };
    let balance = Balance::of_bars(vec![bar.clone()]);
    let frame = piece(&plan, &balance, Quality::Print).line(0, at).unwrap().frames[0];
    let out = [0, 1, 2].map(|way| frame.toward[way] * side.sin() + frame.up[way] * side.cos());
    let drawn = Now::new(&plan, &balance).outlines_of(at);
    let shows = drawn.into_iter().filter(|(plane, _)| plane.direction(out).iter().any(|part| part.abs() > 0.99));
    let reach = |(plane, outline): (Plane, Vec<[f64; 2]>)| {
        let ([right, up], [x, y]) = (plane.direction(out), plane.place(frame.at));
        let across = outline.iter().map(|point| (point[0] - x) * right + (point[1] - y) * up);
        let [low, high] = across.fold([f64::INFINITY, f64::NEG_INFINITY], |[l, h], mm| [l.min(mm), h.max(mm)]);
        high + low
    };
    shows.map(reach).collect()
}

#[test]
fn a_swelling_lies_on_the_outside_of_its_bend_in_the_bent_picture_as_on_the_strip() {
    let mut looked_at = 0;
    for (name, plan) in demos() {
        let shown = Shown::new(plan);
        for step in 0..=shown.worked.steps.len() {
            let Some(bar) = bar_after(&shown.plan, &shown.balance, &shown.worked, 0, step) else { continue };
            let strip = StripBar::new(&shown.plan, 0, bar.clone());
            for (at, part) in bar.segments.iter().enumerate() {
                let (Some(Shape::Peak { corner, .. }), None) = (&part.shape, part.bent) else { continue };
                let high = corner.peak_height_mm();
                for more in stands_out(&shown.plan, &bar, at, corner.side + std::f64::consts::PI) {
                    assert!((more - high).abs() < 0.05, "{name}, step {step}, {at}: {more} for {high}");
                    looked_at += 1;
                }
                let (view, outward) = if corner.side.cos().abs() > 0.9 {
                    (View::Side, -corner.side.cos())
                } else {
                    (View::Top, corner.side.sin())
                };
                let [low, up] =
                    across_at(strip.outline(at, view), reach(&strip, at).iter().sum::<f64>() / 2.0).unwrap();
                // The bar itself lies beside the middle where a step on one side has shifted it.
                let aside = if view == View::Side { part.offset_mm[1] } else { -part.offset_mm[0] };
                let more = (low + up - 2.0 * aside) * outward;
                assert!((more - high).abs() < 0.05, "{name}, step {step}, {at}: {low} to {up}");
            }
        }
    }
    assert!(looked_at > 3, "{looked_at}");
}

#[test]
fn branches_are_drawn_apart_until_they_are_brought_back() {
    let fork = Shown::new(demo("weeding-fork"));
    let (apart, back) = (fork.step(Operation::BendAside), fork.step(Operation::Straighten));
    let wide = |steps: usize| {
        let [_, [low, high]] = fork.after(steps).extent(View::Top).unwrap();
        high - low
    };
    let straight = wide(apart);
    assert!(straight < 30.0, "{straight}");
    assert!(wide(apart + 1) > straight + 10.0, "{}", wide(apart + 1));
    assert!(wide(back) > straight + 10.0 && wide(back + 1) < 40.0, "{} {}", wide(back), wide(back + 1));
    // At a right angle to each other each stands 45° off: so far out as it is long, times the sine of that.
    let long = fork.balance.bars[0].segments[0].stock_length.get::<millimeter>();
    let least = 2.0 * long * std::f64::consts::FRAC_PI_4.sin();
    assert!(wide(apart + 1) > least && wide(apart + 1) < least + straight * 1.5, "{} {least}", wide(apart + 1));
    // Drawn longer, they stand farther apart at their tips.
    assert!(wide(back) > wide(apart + 1) + 5.0);
    let solid = |steps: usize| {
        let bars = after(&fork.plan, &fork.balance, &fork.worked, steps);
        piece(&fork.plan, &bars, Quality::Screen).bounds().unwrap().size()[1]
    };
    assert!(solid(apart + 1) > solid(apart) + 10.0 && solid(back + 1) < solid(back) - 10.0);
}

/// From where to where a part reaches along the bar, in mm; of a branch, the whole of its split.
fn reach(bar: &StripBar, at: usize) -> [f64; 2] {
    let at = if let Chain::Branch { split, .. } = bar.bar.segments[at].chain { split } else { at };
    let part = &bar.bar.segments[at];
    let [start, long] = [part.forged_start, part.forged_length].map(|length| length.get::<millimeter>());
    [start, start + long]
}

/// The space between the two rods of the basket halfway along it, from the side and from above; none where they overlap.
fn gap(shown: &Shown, steps: usize) -> f64 {
    let bar = shown.after(steps);
    let rods = shown.parts("rod");
    let rods = &rods[rods.len() - 2..];
    let [from, to] = reach(&bar, rods[0]);
    let gap = |view: View| {
        let across = |rod: usize| across_at(bar.outline(rod, view), (from + to) / 2.0).unwrap();
        let [a, b] = [across(rods[0]), across(rods[1])];
        (a[0] - b[1]).max(b[0] - a[1])
    };
    gap(View::Side).max(gap(View::Top))
}

#[test]
fn a_slit_is_drawn_open_while_it_is_wedged_and_when_it_is_opened() {
    let lifter = Shown::new(demo("cloche-lifter"));
    let (wedged, open) = (lifter.step(Operation::BendAside), lifter.step(Operation::Open));
    let together = (wedged..open).find(|step| {
        lifter.worked.steps[*step]
            .tasks
            .iter()
            .any(|task| task.operation == Operation::Straighten && task.part.is_some())
    });
    let together = together.unwrap();
    assert!(gap(&lifter, wedged + 1) > 4.0, "{}", gap(&lifter, wedged + 1));
    assert!(gap(&lifter, together) > 4.0);
    assert!(gap(&lifter, together + 1) < 4.0 && gap(&lifter, open) < 4.0);
    assert!(gap(&lifter, open + 1) > 10.0, "{}", gap(&lifter, open + 1));
}

#[test]
fn the_rods_of_a_basket_lie_between_its_cheeks() {
    let lifter = Shown::new(demo("cloche-lifter"));
    let [cheek] = lifter.parts("upper cheek")[..] else { panic!() };
    for steps in lifter.step(Operation::BendAside)..=lifter.worked.steps.len() {
        let bar = lifter.after(steps);
        let [beyond, _] = reach(&bar, cheek);
        let rods = lifter.parts("rod");
        for rod in &rods[rods.len() - 2..] {
            for view in [View::Side, View::Top] {
                let far = bar.outline(*rod, view).iter().map(|[along, _]| *along).fold(f64::NEG_INFINITY, f64::max);
                assert!(far < beyond + 1.0, "after {steps} steps: {far} over {beyond}");
            }
        }
    }
}

/// Open lines drawn with a pen.
fn lines(block: &Block, pen: Pen) -> usize {
    block.items.iter().filter(|item| matches!(item, Item::Polyline { pen: own, .. } if *own == pen)).count()
}

#[test]
fn a_twist_is_drawn_twisted_from_its_own_step_on() {
    let bracket = Shown::new(demo("herb-bracket"));
    let twist = bracket.step(Operation::Twist);
    assert_eq!(lines(&bracket.strip(twist - 1), Pen::MarkLine), 0);
    // One turn of a square: four arrises come into sight, and one or two were there before.
    let seen = lines(&bracket.strip(twist), Pen::MarkLine);
    assert!((4..=6).contains(&seen), "{seen}");
    assert!(lines(&bracket.strip(twist + 2), Pen::MarkLine) >= 4);
}

#[test]
fn each_fit_shows_what_it_adds_and_nothing_that_is_still_to_be_fitted() {
    let stand = Shown::new(demo("pot-stand"));
    let weld = stand.step(Operation::Weld);
    let fits: Vec<usize> = (0..stand.worked.steps.len())
        .filter(|step| stand.worked.steps[*step].tasks.iter().any(|task| task.operation == Operation::Fit))
        .collect();
    assert_eq!(fits.len(), 3);
    let metal = |step: usize| {
        let block = stand.picture(step);
        let filled = |item: &&Item| matches!(item, Item::Polygon { fill: Some(_), pen: None, .. });
        block.items.iter().filter(filled).count()
    };
    let ring = metal(weld);
    let parts = stand.plan.bars[0].flat().len();
    assert!(ring < parts, "the scarf is burnt in: {ring} of {parts}");
    let leg = stand.plan.bars[1].flat().len();
    let now: Vec<usize> = fits.iter().map(|step| metal(*step)).collect();
    assert_eq!(now, [ring + leg, ring + 2 * leg, ring + 3 * leg]);
}

#[test]
fn a_view_from_above_keeps_the_shape_of_what_it_shows() {
    let long = r#"{ "firstheat": 1, "title": "Long", "units": { "length": "mm", "marks": "1 mm" },
      "bars": [ { "name": "long", "stock": { "square": "12 mm" }, "segments": [
        { "name": "boss", "form": { "hole": { "outline": { "disc": { "diameter": "40 mm" } }, "thickness": "6 mm",
          "hole": { "round": "12 mm" }, "made": "punched" } } },
        { "name": "rail", "form": { "plain": { "length": "1200 mm" } } } ] } ] }"#;
    let long = Shown::new(fh_core::file::read(long.as_bytes()).unwrap());
    let job = long.job();
    let states = job.states(WIDTH);
    let scale = states[0].scale.unwrap();
    assert!(scale.explained().is_some(), "a bar so long is drawn thicker from the side: {scale:?}");
    let punched = long.step(Operation::Punch);
    let boss = |block: &Block| {
        let sizes = block.items.iter().filter_map(|item| match item {
            Item::Polygon { points, fill: None, pen: Some(Pen::Outline) } => {
                let reach = |of: fn(&crate::drawing::Point) -> f64| {
                    let [low, high] = points
                        .iter()
                        .map(of)
                        .fold([f64::INFINITY, f64::NEG_INFINITY], |[l, h], mm| [l.min(mm), h.max(mm)]);
                    high - low
                };
                Some([reach(|point| point.x), reach(|point| point.y)])
            }
            _ => None,
        });
        sizes.collect::<Vec<_>>()
    };
    let drawn = boss(&long.strip(punched));
    let above = drawn.last().unwrap();
    assert!((above[0] - above[1]).abs() < 0.1 * above[0], "{drawn:?}");
    let alone = PieceView::new(
        &long.plan,
        &piece(&long.plan, &long.balance, Quality::Print),
        &long.balance,
        From::Above,
        false,
    );
    assert!(!alone.unwrap().may_be_thicker());
}

#[test]
fn a_shoulder_is_no_thicker_than_the_bar_beside_it() {
    for (name, plan) in demos() {
        let balance = fh_core::balance::balance(&plan);
        for segment in balance.bars.iter().flat_map(|bar| &bar.segments) {
            let Some(Shape::Shoulder { from, to, .. }) = &segment.shape else { continue };
            for view in [View::Side, View::Top] {
                let outline = segment.silhouette_mm(view);
                let across = outline.iter().map(|[_, across]| *across);
                let [low, high] = across.fold([f64::INFINITY, f64::NEG_INFINITY], |[l, h], mm| [l.min(mm), h.max(mm)]);
                let most = from.seen_mm(view).max(to.seen_mm(view));
                assert!(high - low <= most + 1e-6, "{name}: {} over {most}", high - low);
            }
        }
    }
}

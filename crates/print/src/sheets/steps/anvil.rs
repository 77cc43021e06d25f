//! Small pictures of where the bar is laid and what is done to it there: the anvil seen from its heel, the smith at its left.

use crate::drawing::{Item, Point, at};
use crate::pen::{Gray, Pen};
use fh_core::plan::{AnvilPlace, Operation};
use fh_work::WorkedStep;

/// The width of a picture.
pub(super) const WIDTH_MM: f64 = 34.0 * SHARE;
/// The height of a picture.
pub(super) const HEIGHT_MM: f64 = FOOT_MM * SHARE;

/// From the top of the picture to its foot.
const FOOT_MM: f64 = 24.0;
/// From the top of the picture to the anvil's face.
const FACE_MM: f64 = 11.0;
/// The same, where something stands on the face.
const LOW_FACE_MM: f64 = 16.0;
/// The bar's thickness in the picture.
const BAR_MM: f64 = 2.4;
/// The anvil's edges.
const NEAR_MM: f64 = 8.0;
const FAR_MM: f64 = 26.0;
/// The middle between them.
const MIDDLE_MM: f64 = (NEAR_MM + FAR_MM) / 2.0;

/// How much smaller it is printed than it is drawn here.
const SHARE: f64 = 0.66;

/// What is done, as far as it looks different at the same place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Act {
    /// Struck on its end.
    Upset,
    /// Turned about itself.
    Twist,
    /// Cut with a chisel.
    Cut,
    /// Pierced with a punch.
    Pierce,
    /// Bent.
    Bend,
    /// Anything else: struck from above.
    Strike,
}

impl Act {
    /// What a step does, by its first task.
    pub(super) fn of(step: &WorkedStep) -> Self {
        use Operation as O;
        let Some(task) = step.tasks.first() else { return Self::Strike };
        let stage = task.part.and_then(|at| step.stages.get(at));
        match task.operation {
            O::Upset => Self::Upset,
            // Rods are opened by turning them.
            O::Twist | O::Open => Self::Twist,
            O::Split | O::Trim | O::PartOff => Self::Cut,
            // A slit is cut with a chisel too.
            O::Punch if !step.slits_mm.is_empty() && stage.is_some_and(|stage| stage.slit && !stage.pierced) => {
                Self::Cut
            }
            O::Punch | O::Drift => Self::Pierce,
            O::Bend | O::Corner | O::BendAside => Self::Bend,
            _ => Self::Strike,
        }
    }
}

/// The picture of a place and what is done there; none of the bench.
pub(super) fn picture(place: AnvilPlace, act: Act) -> Option<Vec<Item>> {
    let items = drawn(place, act)?;
    Some(items.into_iter().map(smaller).collect())
}

fn smaller(item: Item) -> Item {
    let small = |point: Point| at(point.x * SHARE, point.y * SHARE);
    match item {
        Item::Line { from, to, pen } => Item::Line { from: small(from), to: small(to), pen },
        Item::Polygon { points, fill, pen } => {
            Item::Polygon { points: points.into_iter().map(small).collect(), fill, pen }
        }
        Item::Polyline { points, pen } => Item::Polyline { points: points.into_iter().map(small).collect(), pen },
        other => other,
    }
}

fn drawn(place: AnvilPlace, act: Act) -> Option<Vec<Item>> {
    use AnvilPlace as P;
    Some(match (place, act) {
        (P::Bench, _) => return None,
        (P::Face, Act::Upset) => on_end(),
        (P::Vice, Act::Twist) => twist(),
        (P::Vice, Act::Bend) => [vice(), blow_from_left(at(15.4, 3.0))].concat(),
        (P::Vice, _) => [vice_with([7.4, FOOT_MM - 6.0]), arrow(MIDDLE_MM, 7.0)].concat(),
        (P::Face, Act::Cut) => [anvil(LOW_FACE_MM), under_tool(chisel())].concat(),
        (P::Face, Act::Pierce) => [anvil(LOW_FACE_MM), hole_in_face(), under_tool(punch())].concat(),
        (P::Step, Act::Cut) => cut_on_step(),
        (P::HardyHole, Act::Cut) => hardy([17.0, 17.0]),
        (P::HardyHole, _) => hardy([15.8, 18.2]),
        (P::FarEdge, Act::Bend) => [anvil(FACE_MM), over_edge(|x| x)].concat(),
        (P::NearEdge, Act::Bend) => [anvil(FACE_MM), over_edge(|x| NEAR_MM + FAR_MM - x)].concat(),
        (P::Horn, Act::Bend) => round_horn(),
        (P::NearEdge, _) => [anvil(FACE_MM), bar([1.0, FAR_MM - 2.0]), blow(NEAR_MM)].concat(),
        (P::FarEdge, _) => [anvil(FACE_MM), bar([NEAR_MM + 2.0, 33.0]), blow(FAR_MM)].concat(),
        (P::Face, _) => [anvil(FACE_MM), bar([4.0, 30.0]), blow(MIDDLE_MM)].concat(),
        (P::Horn, _) => horn(),
        (P::Step, _) => step(),
        (P::SwageBlock, _) => swage_block(),
    })
}

fn outline(points: Vec<Point>) -> Item {
    Item::Polygon { points, fill: Some(Gray::WHITE), pen: Some(Pen::Frame) }
}

fn dark(points: Vec<Point>) -> Item {
    Item::Polygon { points, fill: Some(Gray::DARK), pen: Some(Pen::MarkLine) }
}

fn block([left, right]: [f64; 2], [top, bottom]: [f64; 2]) -> Vec<Point> {
    vec![at(left, top), at(right, top), at(right, bottom), at(left, bottom)]
}

/// Places on a circle, from one angle to another in turns, clockwise from the right.
fn round(middle: Point, [wide, high]: [f64; 2], [from, to]: [f64; 2]) -> Vec<Point> {
    let place = |step: i32| {
        let (sin, cos) = (std::f64::consts::TAU * (from + (to - from) * f64::from(step) / 24.0)).sin_cos();
        at(middle.x + wide * cos, middle.y + high * sin)
    };
    (0..=24).map(place).collect()
}

/// The anvil across its face: edges, waist and foot.
fn anvil(face: f64) -> Vec<Item> {
    let foot = FOOT_MM - 0.5;
    let (edge, waist) = (face + (foot - face) * 0.48, face + (foot - face) * 0.68);
    vec![outline(vec![
        at(NEAR_MM, face),
        at(FAR_MM, face),
        at(FAR_MM, edge),
        at(FAR_MM - 4.0, waist),
        at(FAR_MM - 1.0, foot),
        at(NEAR_MM + 1.0, foot),
        at(NEAR_MM + 4.0, waist),
        at(NEAR_MM, edge),
    ])]
}

/// The bar on the face.
fn bar([left, right]: [f64; 2]) -> Vec<Item> {
    vec![dark(block([left, right], [FACE_MM - BAR_MM, FACE_MM]))]
}

/// The arrow of the blow, down on the bar.
fn blow(x: f64) -> Vec<Item> {
    arrow(x, FACE_MM - BAR_MM - 0.6)
}

fn arrow(x: f64, tip: f64) -> Vec<Item> {
    vec![Item::line(at(x, tip - 6.5), at(x, tip - 1.5), Pen::CutLine), head(at(x, tip), [0.0, 1.0])]
}

/// The head of an arrow that points in a direction of length 1.
fn head(tip: Point, [x, y]: [f64; 2]) -> Item {
    let back = at(tip.x - 2.4 * x, tip.y - 2.4 * y);
    let points = vec![at(back.x - 1.4 * y, back.y + 1.4 * x), at(back.x + 1.4 * y, back.y - 1.4 * x), tip];
    Item::Polygon { points, fill: Some(Gray::BLACK), pen: None }
}

fn blow_from_left(tip: Point) -> Vec<Item> {
    vec![Item::line(at(tip.x - 6.5, tip.y), at(tip.x - 1.5, tip.y), Pen::CutLine), head(tip, [1.0, 0.0])]
}

/// The bar on its end, thicker where it is hot, the blow on its upper end.
fn on_end() -> Vec<Item> {
    let (half, swell) = (BAR_MM / 2.0, BAR_MM * 0.9);
    let [top, bottom] = [7.4, LOW_FACE_MM];
    let side = |sign: f64| {
        let x = |mm: f64| MIDDLE_MM + sign * mm;
        [
            at(x(half), top),
            at(x(half), 9.4),
            at(x(swell), 10.8),
            at(x(swell), 12.0),
            at(x(half), 13.4),
            at(x(half), bottom),
        ]
    };
    let points = side(-1.0).into_iter().chain(side(1.0).into_iter().rev()).collect();
    [anvil(LOW_FACE_MM), vec![dark(points)], arrow(MIDDLE_MM, top - 0.4)].concat()
}

/// A tool on the bar on the low face, the blow on its head.
fn under_tool(tool: Vec<Point>) -> Vec<Item> {
    let on_face = block([5.0, 29.0], [LOW_FACE_MM - BAR_MM, LOW_FACE_MM]);
    [vec![dark(on_face), outline(tool)], arrow(MIDDLE_MM, 6.4)].concat()
}

fn chisel() -> Vec<Point> {
    let edge = LOW_FACE_MM - BAR_MM + 0.8;
    let x = |mm: f64| MIDDLE_MM + mm;
    vec![at(x(-1.5), 7.0), at(x(1.5), 7.0), at(x(1.5), edge - 3.6), at(x(0.0), edge), at(x(-1.5), edge - 3.6)]
}

fn punch() -> Vec<Point> {
    let end = LOW_FACE_MM - BAR_MM + 0.8;
    let x = |mm: f64| MIDDLE_MM + mm;
    vec![at(x(-1.5), 7.0), at(x(1.5), 7.0), at(x(1.5), 9.0), at(x(0.7), end), at(x(-0.7), end), at(x(-1.5), 9.0)]
}

/// The hole in the face that a punch drives the slug into.
fn hole_in_face() -> Vec<Item> {
    let sides = [MIDDLE_MM - 1.3, MIDDLE_MM + 1.3];
    let bottom = LOW_FACE_MM + 3.6;
    let hole = Item::Polygon { points: block(sides, [LOW_FACE_MM, bottom]), fill: Some(Gray::LIGHT), pen: None };
    let edges = sides.map(|x| Item::line(at(x, LOW_FACE_MM), at(x, bottom), Pen::MarkLine));
    std::iter::once(hole).chain(edges).collect()
}

/// The bar over the far edge, bent down a little, the blow on what hangs over; mirrored for the near edge.
fn over_edge(x: impl Fn(f64) -> f64) -> Vec<Item> {
    let top = FACE_MM - BAR_MM;
    let bent =
        [(9.0, top), (FAR_MM + 0.4, top), (33.2, top + 3.4), (32.2, top + 5.6), (FAR_MM, FACE_MM), (9.0, FACE_MM)];
    let blow = arrow(x(31.0), top + 1.7);
    [vec![dark(bent.map(|(along, y)| at(x(along), y)).to_vec())], blow].concat()
}

/// The horn from its tip, the bar over it, the blow on what hangs over.
fn round_horn() -> Vec<Item> {
    let middle = at(15.0, 16.0);
    let (inside, outside) = (6.0, 6.0 + BAR_MM);
    let arc = |radius: f64| round(middle, [radius, radius], [-0.25, -0.09]);
    let mut bar = vec![at(2.0, middle.y - outside)];
    bar.extend(arc(outside));
    bar.extend([at(25.3, 16.2), at(23.4, 17.7)]);
    bar.extend(arc(inside).into_iter().rev());
    bar.push(at(2.0, middle.y - inside));
    let horn = |radius: f64| outline(round(middle, [radius, radius], [0.0, 1.0]));
    [vec![horn(inside), horn(2.2), dark(bar)], arrow(24.0, 13.4)].concat()
}

/// The horn from the side, the bar across it.
fn horn() -> Vec<Item> {
    let body = vec![
        at(33.0, FACE_MM),
        at(22.0, FACE_MM),
        at(21.0, FACE_MM + 1.5),
        at(13.0, FACE_MM + 2.0),
        at(6.0, FACE_MM + 3.0),
        at(1.0, FACE_MM + 4.5),
        at(6.0, FACE_MM + 6.5),
        at(14.0, FACE_MM + 9.0),
        at(22.0, FACE_MM + 11.0),
        at(33.0, FACE_MM + 11.5),
    ];
    let top = FACE_MM + 2.0;
    let across = block([10.6, 13.4], [top - 2.7, top + 0.2]);
    [vec![outline(body), dark(across)], arrow(12.0, top - 3.2)].concat()
}

/// The anvil with its step from the side, the step at a height.
fn step_body(y: f64) -> Item {
    let down = |mm: f64| (y + mm).min(FOOT_MM - 0.5);
    outline(vec![
        at(33.0, y - 3.0),
        at(24.0, y - 3.0),
        at(24.0, y),
        at(12.0, y),
        at(6.0, down(1.5)),
        at(1.0, down(3.5)),
        at(10.0, down(7.0)),
        at(22.0, down(10.0)),
        at(33.0, down(10.5)),
    ])
}

/// The step between face and horn from the side.
fn step() -> Vec<Item> {
    let y = FACE_MM + 1.0;
    let on_it = block([13.0, 23.0], [y - BAR_MM, y]);
    [vec![step_body(y), dark(on_it)], arrow(18.0, FACE_MM - 2.0)].concat()
}

/// The bar on the step, a chisel on it.
fn cut_on_step() -> Vec<Item> {
    let on_it = block([11.5, 22.5], [LOW_FACE_MM - BAR_MM, LOW_FACE_MM]);
    [vec![step_body(LOW_FACE_MM), dark(on_it), outline(chisel())], arrow(MIDDLE_MM, 6.4)].concat()
}

/// A tool standing in the face, so wide at its top, the bar on it.
fn hardy([left, right]: [f64; 2]) -> Vec<Item> {
    const FACE: f64 = 13.4;
    let top = FACE - 3.6;
    let tool = vec![at(13.0, FACE), at(left, top), at(right, top), at(21.0, FACE)];
    let on_it = block([3.0, 31.0], [top - BAR_MM, top]);
    [anvil(FACE), vec![outline(tool), dark(on_it)], arrow(MIDDLE_MM, top - BAR_MM - 0.4)].concat()
}

/// The jaws of the vice, the bar upright between them.
fn vice() -> Vec<Item> {
    vice_with([1.0, FOOT_MM - 6.0])
}

/// The jaws of the vice, the bar between them from one height to another.
fn vice_with(bar: [f64; 2]) -> Vec<Item> {
    let upright = block([15.8, 18.2], bar);
    let jaw = |left: f64, right: f64, grip: f64, back: f64| {
        outline(vec![
            at(grip, FACE_MM),
            at(back, FACE_MM),
            at(back, FACE_MM + 6.0),
            at(right, FOOT_MM - 0.5),
            at(left, FOOT_MM - 0.5),
            at(grip, FACE_MM + 6.0),
        ])
    };
    vec![dark(upright), jaw(13.0, 8.0, 15.6, 6.0), jaw(21.0, 26.0, 18.4, 28.0)]
}

/// The bar upright in the vice, a wrench across it, and which way it turns.
fn twist() -> Vec<Item> {
    let wrench = block([6.0, 28.0], [5.6, 7.4]);
    let jaw = block([14.2, 19.8], [4.8, 8.2]);
    let bar_end = dark(block([15.8, 18.2], [2.6, 4.8]));
    let turn = round(at(MIDDLE_MM, 3.2), [9.0, 2.4], [-0.02, -0.48]);
    let tip = turn.last().map_or(at(8.0, 3.2), |last| at(last.x - 0.2, last.y + 1.8));
    let turning = [Item::Polyline { points: turn, pen: Pen::CutLine }, head(tip, [0.0, 1.0])];
    [vice_with([2.6, FOOT_MM - 6.0]), vec![outline(wrench), outline(jaw), bar_end], turning.to_vec()].concat()
}

/// The swage block with its grooves, the bar in one of them.
fn swage_block() -> Vec<Item> {
    let mut points = vec![at(4.0, FACE_MM)];
    for middle in [9.0, 17.0, 25.0] {
        points.extend((0..=12).map(|step| {
            let (sin, cos) = (std::f64::consts::PI * f64::from(step) / 12.0).sin_cos();
            at(middle - 2.6 * cos, FACE_MM + 2.6 * sin)
        }));
    }
    points.extend([at(30.0, FACE_MM), at(30.0, FOOT_MM - 1.0), at(4.0, FOOT_MM - 1.0)]);
    let section = round(at(17.0, FACE_MM + 0.5), [2.1, 2.1], [0.0, 1.0]);
    [vec![outline(points), dark(section)], arrow(17.0, FACE_MM - 2.2)].concat()
}

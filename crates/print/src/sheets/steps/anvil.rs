//! Small pictures of where the bar is laid: the anvil seen from its heel, the smith at its left.

use crate::drawing::{Item, Point, at};
use crate::pen::{Gray, Pen};
use fh_core::plan::AnvilPlace;

/// The width of a picture.
pub(super) const WIDTH_MM: f64 = 34.0 * SHARE;
/// The height of a picture.
pub(super) const HEIGHT_MM: f64 = FOOT_MM * SHARE;

/// From the top of the picture to its foot.
const FOOT_MM: f64 = 24.0;
/// From the top of the picture to the anvil's face.
const FACE_MM: f64 = 11.0;
/// The bar's thickness in the picture.
const BAR_MM: f64 = 2.4;
/// The anvil's edges.
const NEAR_MM: f64 = 8.0;
const FAR_MM: f64 = 26.0;

/// How much smaller it is printed than it is drawn here.
const SHARE: f64 = 0.66;

/// The picture of a place; none of the bench.
pub(super) fn picture(place: AnvilPlace) -> Option<Vec<Item>> {
    let items = drawn(place)?;
    Some(items.into_iter().map(smaller).collect())
}

fn smaller(item: Item) -> Item {
    let small = |point: Point| at(point.x * SHARE, point.y * SHARE);
    match item {
        Item::Line { from, to, pen } => Item::Line { from: small(from), to: small(to), pen },
        Item::Polygon { points, fill, pen } => {
            Item::Polygon { points: points.into_iter().map(small).collect(), fill, pen }
        }
        other => other,
    }
}

fn drawn(place: AnvilPlace) -> Option<Vec<Item>> {
    Some(match place {
        AnvilPlace::NearEdge => [anvil(), bar([1.0, FAR_MM - 2.0]), blow(NEAR_MM)].concat(),
        AnvilPlace::FarEdge => [anvil(), bar([NEAR_MM + 2.0, 33.0]), blow(FAR_MM)].concat(),
        AnvilPlace::Face => [anvil(), bar([4.0, 30.0]), blow((NEAR_MM + FAR_MM) / 2.0)].concat(),
        AnvilPlace::Horn => horn(),
        AnvilPlace::Step => step(),
        AnvilPlace::HardyHole => hardy(),
        AnvilPlace::Vice => vice(),
        AnvilPlace::SwageBlock => swage_block(),
        AnvilPlace::Bench => return None,
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

/// The anvil across its face: edges, waist and foot.
fn anvil() -> Vec<Item> {
    vec![outline(vec![
        at(NEAR_MM, FACE_MM),
        at(FAR_MM, FACE_MM),
        at(FAR_MM, FACE_MM + 6.0),
        at(FAR_MM - 4.0, FACE_MM + 8.5),
        at(FAR_MM - 1.0, FOOT_MM - 0.5),
        at(NEAR_MM + 1.0, FOOT_MM - 0.5),
        at(NEAR_MM + 4.0, FACE_MM + 8.5),
        at(NEAR_MM, FACE_MM + 6.0),
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
    vec![
        Item::line(at(x, tip - 6.5), at(x, tip - 1.5), Pen::CutLine),
        Item::Polygon {
            points: vec![at(x - 1.4, tip - 2.4), at(x + 1.4, tip - 2.4), at(x, tip)],
            fill: Some(Gray::BLACK),
            pen: None,
        },
    ]
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

/// The step between face and horn from the side.
fn step() -> Vec<Item> {
    let body = vec![
        at(33.0, FACE_MM - 2.0),
        at(24.0, FACE_MM - 2.0),
        at(24.0, FACE_MM + 1.0),
        at(12.0, FACE_MM + 1.0),
        at(6.0, FACE_MM + 2.5),
        at(1.0, FACE_MM + 4.5),
        at(10.0, FACE_MM + 8.0),
        at(22.0, FACE_MM + 11.0),
        at(33.0, FACE_MM + 11.5),
    ];
    let on_it = block([13.0, 23.0], [FACE_MM + 1.0 - BAR_MM, FACE_MM + 1.0]);
    [vec![outline(body), dark(on_it)], arrow(18.0, FACE_MM - 2.0)].concat()
}

/// A tool standing in the face, the bar on it.
fn hardy() -> Vec<Item> {
    let tool = vec![at(13.0, FACE_MM), at(15.8, FACE_MM - 3.6), at(18.2, FACE_MM - 3.6), at(21.0, FACE_MM)];
    let on_it = block([3.0, 31.0], [FACE_MM - 3.6 - BAR_MM, FACE_MM - 3.6]);
    [anvil(), vec![outline(tool), dark(on_it)], arrow(17.0, FACE_MM - 4.0 - BAR_MM)].concat()
}

/// The jaws of the vice, the bar upright between them.
fn vice() -> Vec<Item> {
    let upright = block([15.8, 18.2], [1.0, FOOT_MM - 6.0]);
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
    let round = (0..24).map(|step| {
        let (sin, cos) = (std::f64::consts::TAU * f64::from(step) / 24.0).sin_cos();
        at(17.0 + 2.1 * cos, FACE_MM + 0.5 + 2.1 * sin)
    });
    [vec![outline(points), dark(round.collect())], arrow(17.0, FACE_MM - 2.2)].concat()
}

//! Sections: each is written down anew as the point where a face of any direction touches it.

use crate::volumes::integrate::gauss;
use serde_json::{Value, json};
use std::f64::consts::{FRAC_1_SQRT_2, PI};
use tests::{assert_close, balanced, mm, mm2, one_bar};

/// A section as a plan names it, and where a face with the outward normal at an angle touches it, in mm.
pub(crate) struct Outline {
    /// Its text in a plan.
    pub(crate) text: Value,
    /// The touching point.
    pub(crate) touch: Box<dyn Fn(f64) -> [f64; 2]>,
}

impl Outline {
    /// The area by the touching points p(φ): `½ ∮ (p·n)² - (p·n')² dφ`, which holds for every convex outline.
    pub(crate) fn area(&self) -> f64 {
        blended_area(self, self, 0.0)
    }
}

/// Area and first moment about the middle, upward, of an outline through many of its touching points.
pub(crate) fn area_and_moment(touch: &dyn Fn(f64) -> [f64; 2]) -> (f64, f64) {
    const STEPS: u32 = 20_000;
    let at = |step: u32| touch(2.0 * PI * (f64::from(step) + 0.5) / f64::from(STEPS));
    let (mut area, mut moment) = (0.0, 0.0);
    for step in 0..STEPS {
        let (a, b) = (at(step), at((step + 1) % STEPS));
        let cross = a[0] * b[1] - b[0] * a[1];
        area += cross / 2.0;
        moment += (a[1] + b[1]) * cross / 6.0;
    }
    (area, moment)
}

/// The area of the section that lies a share of the way from one to another, points of equal normal joined.
pub(crate) fn blended_area(first: &Outline, second: &Outline, share: f64) -> f64 {
    // 48 pieces of 7.5°: the edges of all sections have their normals on the borders of pieces.
    0.5 * gauss(-PI, PI, 48 * 4, |angle| {
        let (a, b) = ((first.touch)(angle), (second.touch)(angle));
        let point = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
        let (sin, cos) = angle.sin_cos();
        let (reach, aside) = (point[0] * cos + point[1] * sin, point[1] * cos - point[0] * sin);
        reach * reach - aside * aside
    })
}

/// The corner of a list that reaches farthest.
fn farthest(corners: &[[f64; 2]], angle: f64) -> [f64; 2] {
    let (sin, cos) = angle.sin_cos();
    let reach = |corner: &[f64; 2]| corner[0] * cos + corner[1] * sin;
    *corners.iter().max_by(|a, b| reach(a).total_cmp(&reach(b))).unwrap()
}

fn polygon(text: Value, corners: Vec<[f64; 2]>) -> Outline {
    Outline { text, touch: Box::new(move |angle| farthest(&corners, angle)) }
}

/// A polygon with a disk of a radius swept along it.
fn swept(text: Value, corners: Vec<[f64; 2]>, radius: f64) -> Outline {
    let touch = move |angle: f64| {
        let corner = farthest(&corners, angle);
        [corner[0] + radius * angle.cos(), corner[1] + radius * angle.sin()]
    };
    Outline { text, touch: Box::new(touch) }
}

fn rectangle(half_width: f64, half_thickness: f64) -> Vec<[f64; 2]> {
    let (y, z) = (half_width, half_thickness);
    vec![[-y, -z], [y, -z], [y, z], [-y, z]]
}

fn size(mm: f64) -> String {
    format!("{mm} mm")
}

pub(crate) fn square(a: f64) -> Outline {
    polygon(json!({ "square": size(a) }), rectangle(a / 2.0, a / 2.0))
}

pub(crate) fn eased_square(a: f64, r: f64) -> Outline {
    let text = json!({ "square": { "side": size(a), "edge_radius": size(r) } });
    swept(text, rectangle(a / 2.0 - r, a / 2.0 - r), r)
}

pub(crate) fn round(d: f64) -> Outline {
    swept(json!({ "round": size(d) }), vec![[0.0, 0.0]], d / 2.0)
}

pub(crate) fn flat(w: f64, t: f64) -> Outline {
    polygon(json!({ "flat": { "width": size(w), "thickness": size(t) } }), rectangle(w / 2.0, t / 2.0))
}

pub(crate) fn eased_flat(w: f64, t: f64, r: f64) -> Outline {
    let text = json!({ "flat": { "width": size(w), "thickness": size(t), "edge_radius": size(r) } });
    swept(text, rectangle(w / 2.0 - r, t / 2.0 - r), r)
}

pub(crate) fn oval(w: f64, t: f64) -> Outline {
    let reach = (w - t) / 2.0;
    swept(json!({ "oval": { "width": size(w), "thickness": size(t) } }), vec![[-reach, 0.0], [reach, 0.0]], t / 2.0)
}

/// A regular polygon with a flat side up, across flats.
fn regular(name: &str, sides: u32, across: f64) -> Outline {
    let turn = 2.0 * PI / f64::from(sides);
    let reach = across / 2.0 / (turn / 2.0).cos();
    let corner = |index: u32| {
        let angle = PI / 2.0 + turn * (f64::from(index) + 0.5);
        [reach * angle.cos(), reach * angle.sin()]
    };
    polygon(json!({ name: size(across) }), (0..sides).map(corner).collect())
}

pub(crate) fn hexagon(across: f64) -> Outline {
    regular("hexagon", 6, across)
}

pub(crate) fn octagon(across: f64) -> Outline {
    regular("octagon", 8, across)
}

pub(crate) fn diamond(a: f64) -> Outline {
    let reach = a * FRAC_1_SQRT_2;
    polygon(json!({ "diamond": size(a) }), vec![[reach, 0.0], [0.0, reach], [-reach, 0.0], [0.0, -reach]])
}

/// A half-round, flat side down, its middle at half its height: above the flat's corners only the arc is touched.
pub(crate) fn half_round(w: f64, h: f64) -> Outline {
    let radius = (w * w / 4.0 + h * h) / (2.0 * h);
    let center = h / 2.0 - radius;
    let text = json!({ "half_round": { "width": size(w), "height": size(h) } });
    let touch = move |angle: f64| {
        let on_arc = [radius * angle.cos(), center + radius * angle.sin()];
        let foot = [w / 2.0 * angle.cos().signum(), -h / 2.0];
        if on_arc[1] > -h / 2.0 { on_arc } else { foot }
    };
    Outline { text, touch: Box::new(touch) }
}

pub(crate) fn edge(w: f64) -> Outline {
    polygon(json!({ "edge": size(w) }), vec![[-w / 2.0, 0.0], [w / 2.0, 0.0]])
}

pub(crate) fn point() -> Outline {
    polygon(json!("point"), vec![[0.0, 0.0]])
}

/// One of every section that a bar or a drawn part may have.
pub(crate) fn every() -> Vec<Outline> {
    vec![
        square(20.0),
        eased_square(18.0, 4.0),
        round(14.0),
        flat(40.0, 10.0),
        flat(6.0, 25.0),
        eased_flat(38.0, 10.0, 2.5),
        oval(30.0, 8.0),
        hexagon(22.0),
        octagon(25.0),
        diamond(15.0),
        half_round(24.0, 12.0),
    ]
}

/// The one place that knows the interface: a bar of this section, and a part drawn to it.
fn check(outline: &Outline, area: f64, tolerance: f64) {
    let text = &outline.text;
    let drawn = json!({ "name": "part", "form": { "drawn": { "length": "100 mm", "section": text } } });
    let plain = json!({ "name": "rest", "form": { "plain": { "length": "50 mm" } } });
    let bar = &balanced(&one_bar(text, &[drawn, plain])).bars[0];
    assert_close(&format!("{text} stock"), mm2(bar.stock_area), area, tolerance);
    assert_close(&format!("{text} drawn"), mm2(bar.segments[0].area_at(0.3)), area, tolerance);
    let reach = |angle: f64| {
        let point = (outline.touch)(angle);
        point[0] * angle.cos() + point[1] * angle.sin()
    };
    assert_close(&format!("{text} width"), mm(bar.stock_section.width()), reach(0.0) + reach(PI), 1e-12);
    let thickness = reach(PI / 2.0) + reach(-PI / 2.0);
    assert_close(&format!("{text} thickness"), mm(bar.stock_section.thickness()), thickness, 1e-12);
}

#[test]
fn every_section_has_its_area() {
    for outline in every() {
        check(&outline, outline.area(), 1e-9);
    }
}

#[test]
fn half_rounds_lower_and_higher_than_half_a_circle_have_their_area() {
    // Their arcs begin at odd angles, between the pieces of the integral; so many small chords do instead.
    for (w, h) in [(24.0, 5.0), (24.0, 9.0), (20.0, 14.0), (40.0, 1.0)] {
        let outline = half_round(w, h);
        let (area, _) = area_and_moment(&outline.touch);
        check(&outline, area, 1e-5);
    }
}

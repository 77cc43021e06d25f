//! The parts of a large template, laid together again.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use super::*;

#[test]
fn crosses_of_neighbors_fall_on_each_other() {
    let line = Item::line(at(0.0, 20.0), at(250.0, 20.0), Pen::Outline);
    let figure = Figure { items: vec![line], width: 250.0, height: 40.0 };
    let tiles = tiles(&figure, [100.0, 50.0]).unwrap_or_default();
    assert_eq!(tiles.iter().map(|tile| tile.letters.as_str()).collect::<Vec<_>>(), ["A", "B", "C"]);
    let crosses = |tile: &Tile| -> Vec<f64> {
        let middles = tile.items.iter().filter_map(|item| match item {
            Item::Line { from, to, pen: Pen::JoinCross } if from.y == to.y => Some((from.x + to.x) / 2.0),
            _ => None,
        });
        middles.collect()
    };
    // 100 mm wide, 90 mm from one to the next.
    assert_eq!(crosses(&tiles[0]), [95.0, 95.0]);
    assert_eq!(crosses(&tiles[1]), [5.0, 5.0, 95.0, 95.0]);
    assert_eq!(crosses(&tiles[2]), [5.0, 5.0]);
}

/// A place on the whole drawing as it was on a tile, by the crosses of its neighbors: tiles hang on one another.
fn tops_and_lefts(tiles: &[Tile]) -> Vec<[f64; 2]> {
    let crosses = |tile: &Tile| -> Vec<(String, Point)> {
        let is_join = |text: &Text| text.content().chars().count() == 2 && text.size_mm == BODY;
        let names = tile.items.iter().filter_map(|item| match item {
            Item::Text(text) if is_join(text) => Some((text.content().to_owned(), text.at)),
            _ => None,
        });
        names.collect()
    };
    let mut found: Vec<Option<[f64; 2]>> = vec![None; tiles.len()];
    found[0] = Some([0.0, 0.0]);
    for _ in 0..tiles.len() {
        for (one, tile) in tiles.iter().enumerate() {
            let Some([left, top]) = found[one] else { continue };
            for (name, place) in crosses(tile) {
                let other = tiles.iter().position(|other| name.replace(&tile.letters, "") == other.letters);
                let Some(other) = other else { panic!("{name} on {} leads nowhere", tile.letters) };
                let own: Vec<Point> =
                    crosses(tile).into_iter().filter(|(found, _)| *found == name).map(|(_, at)| at).collect();
                let there: Vec<Point> =
                    crosses(&tiles[other]).into_iter().filter(|(found, _)| *found == name).map(|(_, at)| at).collect();
                assert_eq!((own.len(), there.len()), (2, 2), "{name}");
                let index = own.iter().position(|known| *known == place).unwrap();
                found[other].get_or_insert([left + place.x - there[index].x, top + place.y - there[index].y]);
            }
        }
    }
    found.into_iter().map(|place| place.expect("every part hangs on another")).collect()
}

/// A chance that is the same each time: a linear congruential generator (constants: Knuth's MMIX).
fn chance(state: &mut u64) -> f64 {
    *state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    (*state >> 11) as f64 / (1_u64 << 53) as f64
}

/// A line that bends now this way and now that, as long as a bar.
fn bent_line(seed: u64) -> Figure {
    let mut state = seed;
    let (mut place, mut heading) = ([0.0, 0.0], 0.0_f64);
    let mut points = vec![at(0.0, 0.0)];
    for _ in 0..8 {
        let (angle, radius) = ((chance(&mut state) - 0.5) * 4.0, 20.0 + 200.0 * chance(&mut state));
        for _ in 0..60 {
            heading += angle / 60.0;
            let step = radius * angle.abs() / 60.0 + 0.5;
            place = [place[0] + step * heading.cos(), place[1] + step * heading.sin()];
            points.push(at(place[0], place[1]));
        }
    }
    Figure::of(vec![Item::Polyline { points, pen: Pen::Outline }, Text::new(at(60.0, 80.0), 5.0, "R 60 mm").into()])
}

#[test]
fn whatever_is_bent_lies_on_some_part_and_no_part_is_empty() {
    let mut split = 0;
    for seed in 0..200 {
        let figure = bent_line(seed);
        let Some(tiles) = tiles(&figure, [180.0, 120.0]) else { continue };
        let wanted: Vec<String> = (0..tiles.len()).map(letters).collect();
        assert_eq!(tiles.iter().map(|tile| tile.letters.clone()).collect::<Vec<_>>(), wanted);
        split += usize::from(tiles.len() > 2);
        let lines = |tile: &Tile| {
            tile.items
                .iter()
                .filter(|item| matches!(item, Item::Polyline { pen: Pen::Outline, .. }))
                .flat_map(corners)
                .collect::<Vec<_>>()
        };
        let origins = if tiles.len() > 1 { tops_and_lefts(&tiles) } else { vec![[0.0, 0.0]] };
        let on_tiles: Vec<Point> = tiles
            .iter()
            .zip(&origins)
            .flat_map(|(tile, [left, top])| lines(tile).into_iter().map(move |point| at(point.x + left, point.y + top)))
            .collect();
        assert!(tiles.iter().all(|tile| !lines(tile).is_empty()), "{seed}: an empty part");
        // The first part need not be the drawing's corner.
        let whole = corners(&figure.items[0]);
        let low = |points: &[Point]| {
            points.iter().fold([f64::INFINITY; 2], |low, point| [low[0].min(point.x), low[1].min(point.y)])
        };
        let (here, there) = (low(&on_tiles), low(&whole));
        let off = [there[0] - here[0], there[1] - here[1]];
        let found = |point: &Point| {
            on_tiles.iter().any(|other| (other.x + off[0] - point.x).hypot(other.y + off[1] - point.y) < 1e-6)
        };
        assert!(whole.iter().all(found), "{seed}: a piece of the line is on no part");
        let words = tiles
            .iter()
            .flat_map(|tile| &tile.items)
            .filter(|item| matches!(item, Item::Text(text) if text.content() == "R 60 mm"));
        assert_eq!(words.count(), 1, "{seed}: words once");
    }
    assert!(split > 50, "{split} were in several parts");
}

#[test]
fn an_absurd_template_is_refused() {
    let figure = Figure { items: Vec::new(), width: 1e7, height: 1e7 };
    assert!(tiles(&figure, [100.0, 50.0]).is_none());
}

#[test]
fn the_letters_of_a_part_lie_on_no_line_where_there_is_room_off_the_corners() {
    // Lines through all four corners and the middle, and free paper between them.
    let across = |x: f64| Item::line(at(x, 0.0), at(x, 90.0), Pen::Outline);
    let lines = [14.0, 16.0, 18.0, 50.0, 82.0, 84.0, 86.0].map(across).to_vec();
    let long = Item::line(at(0.0, 1.0), at(180.0, 1.0), Pen::Outline);
    let figure = Figure { items: lines.into_iter().chain([long]).collect(), width: 180.0, height: 90.0 };
    let tiles = tiles(&figure, [100.0, 100.0]).unwrap_or_default();
    let first = tiles.first().unwrap();
    let letter = first.items.iter().find(|item| matches!(item, Item::Text(text) if text.content() == "A")).unwrap();
    let own = space(&[letter]).unwrap();
    let is_on = |x: &f64| *x > own.left && *x < own.right;
    assert!(![14.0, 16.0, 18.0, 50.0, 82.0, 84.0, 86.0].iter().any(is_on), "{own:?}");
}

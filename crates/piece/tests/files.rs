//! Files for other programs, read back by the readers of their libraries.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests stop where something is wrong")]

use fh_core::balance::{Balance, balance};
use fh_core::file;
use fh_core::plan::Plan;
use fh_piece::files::{ExportError, FileKind, export};
use std::io::Cursor;

fn plan(segments: &str) -> (Plan, Balance) {
    let text = format!(
        r#"{{ "firstheat": 1, "units": {{ "length": "mm", "marks": "1 mm" }},
              "bars": [{{ "name": "bar", "stock": {{ "square": "12 mm" }}, "segments": [{segments}] }}] }}"#
    );
    let plan = file::read(text.as_bytes()).unwrap();
    let balance = balance(&plan);
    (plan, balance)
}

const HOOK: &str = r#"
    { "name": "plate", "form": { "hole": { "outline": { "rectangle": { "length": "50 mm", "width": "30 mm" } },
      "thickness": "5 mm", "hole": { "round": "8 mm" }, "made": "punched" } } },
    { "name": "hook & eye", "form": { "drawn": { "section": { "round": "9 mm" } } },
      "bend": { "curve": { "angle": "200 deg", "inside_radius": "18 mm" } } },
    { "name": "leaf", "form": { "flag": { "outline": { "leaf": { "length": "60 mm", "width": "24 mm" } }, "thickness": "3 mm" } } }"#;

fn volume(corners: impl Iterator<Item = [[f64; 3]; 3]>) -> f64 {
    let of_one = |[a, b, c]: [[f64; 3]; 3]| {
        (a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]))
            / 6.0
    };
    corners.map(of_one).sum()
}

fn finished(balance: &Balance) -> f64 {
    balance.bars[0].finished_volume.get::<uom::si::volume::cubic_millimeter>()
}

#[test]
fn the_stl_holds_the_metal_of_the_piece() {
    let (plan, balance) = plan(HOOK);
    let bytes = export(&plan, &balance, FileKind::Stl).unwrap();
    let read = stl_io::read_stl(&mut Cursor::new(bytes)).unwrap();
    let corner = |at: usize| {
        let vertex = read.vertices[at];
        [0, 1, 2].map(|axis| f64::from(vertex[axis]))
    };
    let got = volume(read.faces.iter().map(|face| face.vertices.map(corner)));
    let want = finished(&balance);
    assert!((got - want).abs() <= 1e-3 * want, "{got} where {want} is right");
}

#[test]
fn the_obj_holds_the_metal_of_the_piece_and_names_its_segments() {
    let (plan, balance) = plan(HOOK);
    let text = String::from_utf8(export(&plan, &balance, FileKind::Obj).unwrap()).unwrap();
    let numbers = |line: &str| line.split_whitespace().skip(1).map(|n| n.parse::<f64>().unwrap()).collect::<Vec<_>>();
    let points: Vec<Vec<f64>> = text.lines().filter(|line| line.starts_with("v ")).map(numbers).collect();
    let corner = |n: &f64| {
        let point = &points[*n as usize - 1];
        [point[0], point[1], point[2]]
    };
    let faces = text.lines().filter(|line| line.starts_with("f ")).map(numbers);
    let got = volume(faces.map(|face| [corner(&face[0]), corner(&face[1]), corner(&face[2])]));
    let want = finished(&balance);
    assert!((got - want).abs() <= 1e-3 * want, "{got} where {want} is right");
    assert!(text.contains("g bar1_1_plate") && text.contains("g bar1_2_hook___eye"), "each segment has its group");
}

#[test]
fn the_dxf_holds_the_flat_outlines_in_millimetres() {
    let (plan, balance) = plan(HOOK);
    let bytes = export(&plan, &balance, FileKind::Dxf).unwrap();
    let read = dxf::Drawing::load(&mut Cursor::new(bytes)).unwrap();
    assert_eq!(read.header.default_drawing_units, dxf::enums::Units::Millimeters);
    let areas: Vec<f64> = read
        .entities()
        .map(|entity| {
            let dxf::entities::EntityType::Polyline(line) = &entity.specific else { panic!("a polyline") };
            assert!(line.is_closed());
            let corners: Vec<_> = line.vertices().map(|vertex| vertex.location.clone()).collect();
            let cross = |at: usize| {
                let (a, b) = (&corners[at], &corners[(at + 1) % corners.len()]);
                a.x * b.y - b.x * a.y
            };
            ((0..corners.len()).map(cross).sum::<f64>() / 2.0).abs()
        })
        .collect();
    let layers: Vec<&str> = read.entities().map(|entity| entity.common.layer.as_str()).collect();
    assert_eq!(layers, ["BAR1_1_plate", "BAR1_1_plate", "BAR1_3_leaf"]);
    // The plate, its hole, and the leaf: R² (θ - sin θ), R = (L² + W²)/(4W), θ = 4 atan(W/L).
    let (radius, angle) = ((3600.0 + 576.0) / 96.0, 4.0 * (24.0_f64 / 60.0).atan());
    let wanted = [1500.0, std::f64::consts::PI * 16.0, radius * radius * (angle - angle.sin())];
    assert_eq!(areas.len(), wanted.len());
    for (got, want) in areas.iter().zip(wanted) {
        assert!((got - want).abs() <= 2e-3 * want, "{got} where {want} is right");
    }
}

#[test]
fn the_svg_is_as_large_as_what_is_in_it() {
    let (plan, balance) = plan(HOOK);
    let text = String::from_utf8(export(&plan, &balance, FileKind::Svg).unwrap()).unwrap();
    // The leaf is the longest, 60 mm; plate 30 and leaf 24 wide with 10 between; 5 around.
    assert!(text.contains("width=\"70mm\" height=\"74mm\""), "{}", text.lines().next().unwrap());
    assert_eq!(text.matches("<path").count(), 2);
}

#[test]
fn every_file_has_the_same_bytes_each_time_and_nothing_of_the_machine() {
    let (plan, balance) = plan(HOOK);
    for kind in FileKind::ALL {
        assert_eq!(export(&plan, &balance, kind).unwrap(), export(&plan, &balance, kind).unwrap(), "{}", kind.name());
    }
    let text = String::from_utf8(export(&plan, &balance, FileKind::Dxf).unwrap()).unwrap();
    let variables: Vec<&str> = text.lines().filter(|line| line.starts_with('$')).collect();
    assert_eq!(variables, ["$ACADVER", "$INSUNITS", "$MEASUREMENT"], "no time, no number by chance");
}

#[test]
fn a_name_with_letters_that_xml_does_not_allow_leaves_a_file_that_can_be_read() {
    let name = r"a\u0001b\u000bc\u001fd\ufffee\uffff <\u0085>&";
    let leaf = HOOK.replace("\"leaf\", \"form\"", &format!("\"{name}\", \"form\""));
    let (plan, balance) = plan(&leaf);
    let text = String::from_utf8(export(&plan, &balance, FileKind::Svg).unwrap()).unwrap();
    let is_allowed = |c: char| c == '\n' || ('\u{20}'..='\u{fffd}').contains(&c) || c >= '\u{10000}';
    assert!(text.chars().all(is_allowed), "{text:?}");
    assert!(text.contains("a b c d e  &lt; &gt;&amp;"), "{text}");
}

#[test]
fn what_is_not_there_is_told() {
    let (bare, of_bare) = plan(r#"{ "form": { "plain": { "length": "100 mm" } } }"#);
    assert!(matches!(export(&bare, &of_bare, FileKind::Dxf), Err(ExportError::NoOutline)));
    let (empty, of_empty) = plan("");
    assert!(matches!(export(&empty, &of_empty, FileKind::Stl), Err(ExportError::EmptyPiece)));
}

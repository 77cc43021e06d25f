//! A socket that is rolled from a neck too wide to go round, and one from a neck that rolls.

use super::findings;

/// The bar that both are forged from.
pub(crate) const BAR: &str = r#""stock": { "flat": { "width": "35 mm", "thickness": "16 mm" } }, "#;

/// 34 mm of neck against a mandrel of 30 mm.
pub(crate) const WIDE: &str = r#"{ "form": { "flag": { "outline": { "rectangle": { "length": "85 mm" } }, "thickness": "3 mm" } },
    "bend": { "socket": { "mandrel": "30 mm", "sweep": "350 deg", "axis": "along" } } },
  { "form": { "taper": { "length": "70 mm", "from": { "flat": { "width": "34 mm", "thickness": "12 mm" } },
    "to": { "round": "16 mm" } } } }"#;

#[test]
fn a_neck_narrower_than_the_mandrel_rolls_and_the_wide_end_away_from_the_socket_does_not_matter() {
    let has = |segments: &str| findings("", BAR, segments).iter().any(|finding| finding.id == "socket-root");
    assert!(has(WIDE));
    assert!(!has(&WIDE.replace("34 mm", "18 mm")));
    let turned = WIDE.replace(
        r#""from": { "flat": { "width": "34 mm", "thickness": "12 mm" } }"#,
        r#""from": { "round": "16 mm" }"#,
    );
    assert!(!has(&turned
        .replace(r#""to": { "round": "16 mm" }"#, r#""to": { "flat": { "width": "34 mm", "thickness": "12 mm" } }"#)));
}

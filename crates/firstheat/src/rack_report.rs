//! The rack in words and as JSON.

use crate::table::{Side, lined_up};
use fh_measure::counted;
use fh_rack::kept::rack::{Rack, RackBar};
use fh_rack::said::written::Said;
use fh_rack::weight::kg_per_meter;
use serde::Serialize;
use uom::si::f64::Mass;
use uom::si::mass::{kilogram, pound};

/// The rack for other programs. Lengths in mm, masses in kg, a price in whole money.
#[derive(Serialize)]
pub(crate) struct RackReport {
    bars: Vec<Line>,
    count: u64,
    mass_kg: f64,
    booked: Vec<Booked>,
}

#[derive(Serialize)]
struct Line {
    section: String,
    material: String,
    count: u32,
    length_mm: f64,
    end_mm: f64,
    mass_kg: f64,
    price: Option<String>,
    lies: Option<String>,
    note: Option<String>,
}

#[derive(Serialize)]
struct Booked {
    number: u32,
    what: String,
    on: Option<String>,
    undone: bool,
}

impl RackReport {
    /// The report of a rack.
    pub(crate) fn new(rack: &Rack) -> Self {
        let bars: Vec<Line> = rack.bars.iter().map(line).collect();
        let booked = rack.booked.iter().map(|one| Booked {
            number: one.number,
            what: one.what.clone(),
            on: one.on.clone(),
            undone: one.undone,
        });
        Self {
            count: rack.count(),
            mass_kg: bars.iter().map(|line| line.mass_kg).sum(),
            bars,
            booked: booked.collect(),
        }
    }
}

fn line(bar: &RackBar) -> Line {
    let length_mm = bar.length_nm() as f64 / 1e6;
    Line {
        section: bar.bar.section.describe(),
        material: bar.alike().material,
        count: bar.bar.count,
        length_mm,
        end_mm: bar.end_nm() as f64 / 1e6,
        mass_kg: kg_per_meter(bar.material.as_deref(), &bar.bar.section) * length_mm / 1000.0
            * f64::from(bar.bar.count),
        price: bar.price.as_ref().map(|price| price.text().to_owned()),
        lies: bar.lies.clone(),
        note: bar.note.clone(),
    }
}

/// The rack as a smith reads it.
pub(crate) fn words(rack: &Rack, report: &RackReport) -> String {
    if rack.bars.is_empty() && rack.booked.is_empty() {
        return "The rack is empty. Put bars on it: firstheat rack add \"3 x 12 mm square, 2.4 m\"\n".to_owned();
    }
    let heads = ["bars", "mass", "where", "note"].map(str::to_owned).to_vec();
    let rows = rack.bars.iter().zip(&report.bars).map(|(bar, line)| {
        let measured = bar.measured.as_ref().map(|length| format!(", measures {}", length.text()));
        let end = bar.end.as_ref().map(|length| format!(", {} gives no piece", length.text()));
        let material = bar.material.as_ref().map(|name| format!(", {name}"));
        let said: String = [Some(bar.bar.text().to_owned()), material, measured, end].into_iter().flatten().collect();
        vec![said, mass(line.mass_kg), bar.lies.clone().unwrap_or_default(), bar.note.clone().unwrap_or_default()]
    });
    let rows: Vec<Vec<String>> = std::iter::once(heads).chain(rows).collect();
    let mut text = lined_up(&[Side::Left, Side::Right, Side::Left, Side::Left], &rows);
    let bars = counted(report.count, "bar");
    text.push_str(&format!("\n{bars}, {}\n", mass(report.mass_kg)));
    for one in &report.booked {
        let on = one.on.as_ref().map(|on| format!(", {on}")).unwrap_or_default();
        let undone = if one.undone { ", undone" } else { "" };
        text.push_str(&format!("Booking {}: {}{on}{undone}\n", one.number, one.what));
    }
    text
}

/// A mass both ways: `2.71 kg (5.98 lb)`.
pub(crate) fn mass(kg: f64) -> String {
    let mass = Mass::new::<kilogram>(kg);
    format!("{kg:.2} kg ({:.2} lb)", mass.get::<pound>())
}

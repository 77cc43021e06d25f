//! Cooling against what can be solved with pencil and paper, and against the laws that every cooling keeps.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use fh_heat::cooled::{Cooled, Workable};
use fh_heat::cooling::{Span, cool};
use fh_heat::hot_zone::{HotZone, Start};
use fh_heat::loss::{Convection, End, Loss};
use fh_heat::lumped::section_seconds;
use fh_heat::profile::{Profile, Run};
use fh_heat::section::BarSection;
use fh_heat::substance::Substance;
use serde_json::Value;

const SQUARE_20: BarSection = BarSection::Square { side_mm: 20.0 };

fn data() -> Value {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/data/heat.json");
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn number(value: &Value, key: &str) -> f64 {
    value[key].as_f64().unwrap_or_else(|| panic!("{key} in {value}"))
}

fn constant(data: &Value) -> Substance {
    let constants = &data["analytic_conduction"]["constants"];
    Substance::constant(number(constants, "rho"), number(constants, "c"), number(constants, "k"))
}

/// A bar in air that takes so many W/(m² K), and radiates nothing.
fn linear(w_m2k: f64, start: End, end: End) -> Loss {
    Loss { emissivity: 0.0, convection: Convection::Fixed { w_m2k }, skin: false, start, end, ..Loss::in_still_air() }
}

#[track_caller]
fn holds(cooled: &Cooled, case: &Value, seconds: f64, tolerance: f64) {
    for (x, wanted) in case["x"].as_array().unwrap().iter().zip(case["T"].as_array().unwrap()) {
        let (x_mm, wanted) = (x.as_f64().unwrap() * 1e3, wanted.as_f64().unwrap());
        let found = cooled.celsius_at(x_mm, seconds);
        assert!((found - wanted).abs() <= tolerance, "{x_mm} mm: {found} instead of {wanted}");
    }
}

/// Lets a bar come to rest: cooling after cooling, each from where the last one ended.
fn steady(profile: &Profile, substance: Substance, loss: &Loss) -> Cooled {
    let span = Span { seconds: 1800.0, step_seconds: Some(5.0), cell_mm: None };
    let mut cooled = cool(profile, substance, loss, &Start::Zone(HotZone::whole(20.0)), span);
    for _ in 0..6 {
        cooled = cool(profile, substance, loss, &Start::Along(cooled.along(1800.0)), span);
    }
    cooled
}

#[test]
fn every_analytic_case_has_its_test() {
    let data = data();
    let known = ["constants", "slab_images", "semi_infinite_fin", "steady_fin_insulated_tip", "steady_pyramid_fin"];
    for key in data["analytic_conduction"].as_object().unwrap().keys() {
        assert!(known.contains(&key.as_str()), "no test reads {key}");
    }
}

#[test]
fn a_hot_slab_between_closed_ends_spreads_as_its_images() {
    let data = data();
    let case = &data["analytic_conduction"]["slab_images"];
    let runs = vec![Run::even(0.0, 100.0, SQUARE_20).unwrap(), Run::even(100.0, 300.0, SQUARE_20).unwrap()];
    let bar = Profile::of_runs(runs).unwrap();
    let sharp = Start::Along(vec![(99.99, 1200.0), (100.01, 20.0)]);
    let loss = linear(number(case, "h_lin"), End::Closed, End::Closed);
    let seconds = number(case, "t");
    let cooled = cool(&bar, constant(&data), &loss, &sharp, Span { step_seconds: Some(0.25), ..Span::of(seconds) });
    holds(&cooled, case, seconds, 0.5);
}

#[test]
fn a_bar_heated_at_its_end_warms_as_the_formula() {
    let data = data();
    let case = &data["analytic_conduction"]["semi_infinite_fin"];
    let bar = Profile::bar(300.0, SQUARE_20).unwrap();
    let loss = linear(number(case, "h_lin"), End::Held { celsius: number(case, "T_end") }, End::Closed);
    let seconds = number(case, "t");
    let cold = Start::Zone(HotZone::whole(number(case, "T_init")));
    let cooled = cool(&bar, constant(&data), &loss, &cold, Span::of(seconds));
    holds(&cooled, case, seconds, 0.5);
}

#[test]
fn a_bar_held_hot_comes_to_rest_as_a_fin() {
    let data = data();
    let case = &data["analytic_conduction"]["steady_fin_insulated_tip"];
    let bar = Profile::bar(number(case, "L") * 1e3, SQUARE_20).unwrap();
    let loss = linear(number(case, "h_lin"), End::Held { celsius: number(case, "T_base") }, End::Closed);
    holds(&steady(&bar, constant(&data), &loss), case, 1800.0, number(case, "tol_K"));
}

#[test]
fn a_pyramid_held_hot_comes_to_rest_as_a_fin() {
    let data = data();
    let case = &data["analytic_conduction"]["steady_pyramid_fin"];
    let tip = BarSection::Square { side_mm: 0.0 };
    let bar = Profile::of_runs(vec![Run::between(0.0, 120.0, tip, SQUARE_20).unwrap()]).unwrap();
    let loss = linear(number(case, "h_lin"), End::Open, End::Held { celsius: 1000.0 });
    holds(&steady(&bar, constant(&data), &loss), case, 1800.0, 0.5);
}

/// Seconds that radiation alone takes: the closed form for one temperature and one specific heat.
fn radiated_seconds(area_over_girth_m: f64, emissivity: f64, from: f64, to: f64, ambient: f64) -> f64 {
    let (from, to, ambient) = (from + 273.15, to + 273.15, ambient + 273.15);
    let f = |t: f64| {
        ((t - ambient) / (t + ambient)).ln() / (4.0 * ambient.powi(3)) - (t / ambient).atan() / (2.0 * ambient.powi(3))
    };
    7850.0 * 650.0 * area_over_girth_m / (emissivity * 5.670_374_419e-8) * (f(from) - f(to))
}

#[test]
fn radiation_alone_takes_the_time_of_its_closed_form() {
    let loss = Loss {
        convection: Convection::None,
        skin: false,
        start: End::Closed,
        end: End::Closed,
        ..Loss::in_still_air()
    };
    let metal = Substance::constant(7850.0, 650.0, 27.3);
    for (side, to) in [(6.0, 700.0), (20.0, 900.0), (50.0, 850.0)] {
        let section = BarSection::Square { side_mm: side };
        let exact = radiated_seconds(side / 4e3, 0.8, 1200.0, to, 20.0);
        let lumped = section_seconds(section, metal, &loss, 1200.0, to);
        assert!((lumped / exact - 1.0).abs() < 1e-5, "{side}: {lumped} {exact}");
        let bar = Profile::bar(60.0, section).unwrap();
        let whole = Start::Zone(HotZone::whole(1200.0));
        let found = cool(&bar, metal, &loss, &whole, Span::of(exact)).celsius_at(30.0, exact);
        assert!((found - to).abs() < 0.1, "{side}: {found}");
    }
}

/// A point, a shoulder and a thick bar: everything that a profile can have.
fn forged() -> Profile {
    let side = |side_mm| BarSection::Square { side_mm };
    let flat = BarSection::Flat { width_mm: 30.0, thickness_mm: 6.0 };
    let runs = [
        Run::between(0.0, 60.0, side(0.0), side(14.0)),
        Run::even(60.0, 110.0, flat),
        Run::even(110.0, 300.0, side(20.0)),
    ];
    Profile::of_runs(runs.into_iter().flatten().collect()).unwrap()
}

#[test]
fn an_insulated_bar_keeps_its_heat() {
    let closed = Loss { emissivity: 0.0, convection: Convection::None, ..Loss::in_still_air() };
    let start = Start::Zone(HotZone::start(1200.0, 100.0, 15.0));
    let cooled = cool(&forged(), Substance::Steel, &closed, &start, Span::of(120.0));
    let before = cooled.heat_joules(0.0);
    for seconds in [1.0, 10.0, 60.0, 120.0] {
        // What is off is the way from enthalpy to temperature and back, not the flow.
        assert!((cooled.heat_joules(seconds) / before - 1.0).abs() < 1e-5, "{seconds} s");
    }
    assert!(cooled.celsius_at(250.0, 120.0) > 21.0, "heat has to flow");
}

#[test]
fn a_bar_in_air_only_cools() {
    for loss in [Loss::in_still_air(), Loss::on_the_anvil(20.0, 90.0)] {
        let start = Start::Zone(HotZone::start(1250.0, 120.0, 12.0));
        let cooled = cool(&forged(), Substance::Steel, &loss, &start, Span::of(300.0));
        let hottest = |seconds: f64| cooled.along(seconds).iter().map(|(_, celsius)| *celsius).fold(0.0, f64::max);
        let coldest = |seconds: f64| cooled.along(seconds).iter().map(|(_, celsius)| *celsius).fold(2e3, f64::min);
        let moments = cooled.moments();
        assert!(moments.len() > 100);
        for pair in moments.windows(2) {
            assert!(cooled.heat_joules(pair[1]) < cooled.heat_joules(pair[0]), "{} s", pair[1]);
            assert!(hottest(pair[1]) <= hottest(pair[0]) + 1e-9, "{} s", pair[1]);
            assert!(coldest(pair[1]) >= 20.0 - 0.01, "{} s", pair[1]);
        }
    }
}

#[test]
fn the_length_in_range_only_shrinks() {
    let start = Start::Zone(HotZone::start(1200.0, 100.0, 15.0));
    let cooled = cool(&forged(), Substance::Steel, &Loss::in_still_air(), &start, Span::of(120.0));
    let all = cooled.in_range(850.0, 2000.0);
    assert_eq!(all.len(), 121);
    assert!(all.windows(2).all(|pair| pair[1].length_mm <= pair[0].length_mm + 0.1));
    assert!((all[0].length_mm - 93.6).abs() < 1.0, "{}", all[0].length_mm);
    assert_eq!(all[120].length_mm, 0.0);
}

/// Seconds to 850 °C in the middle of a heated end, by length of cell and of step.
fn seconds_to_finish(cell_mm: f64, step_seconds: f64) -> f64 {
    let start = Start::Zone(HotZone::start(1200.0, 100.0, 15.0));
    let span = Span { seconds: 90.0, step_seconds: Some(step_seconds), cell_mm: Some(cell_mm) };
    cool(&forged(), Substance::Steel, &Loss::in_still_air(), &start, span).seconds_until(85.0, 850.0).unwrap()
}

#[test]
fn finer_cells_come_to_the_same_answer() {
    let best = seconds_to_finish(0.25, 0.25);
    let off = [6.0, 3.0, 1.5].map(|cell| (seconds_to_finish(cell, 0.25) / best - 1.0).abs());
    assert!(off[2] < 0.004 && off[1] < 0.012 && off[0] < 0.05, "{off:?}");
}

#[test]
fn finer_steps_come_to_the_same_answer() {
    let best = seconds_to_finish(1.5, 0.05);
    let off = [1.0, 0.5, 0.25].map(|step| (seconds_to_finish(1.5, step) / best - 1.0).abs());
    assert!(off[1] < 0.004 && off[2] < 0.002 && off[0] < 0.02, "{off:?}");
}

#[test]
fn the_skin_and_the_rings_count() {
    let start = Start::Zone(HotZone::start(1200.0, 250.0, 15.0));
    let after =
        |loss: Loss, x_mm: f64| cool(&forged(), Substance::Steel, &loss, &start, Span::of(60.0)).celsius_at(x_mm, 60.0);
    let usual = Loss::in_still_air();
    assert!(after(usual, 180.0) > after(Loss { skin: false, ..usual }, 180.0) + 3.0);
    assert!(after(usual, 112.0) < after(Loss { shoulder_rings: false, ..usual }, 112.0) - 2.0);
}

#[test]
fn hammering_on_the_anvil_leaves_about_six_tenths_of_the_time() {
    let air = section_seconds(SQUARE_20, Substance::Steel, &Loss::in_still_air(), 1200.0, 850.0);
    let anvil = section_seconds(SQUARE_20, Substance::Steel, &Loss::on_the_anvil(0.0, 1.0), 1200.0, 850.0);
    assert!((0.55..=0.65).contains(&(anvil / air)), "{}", anvil / air);
}

#[test]
fn what_is_asked_of_a_heat_is_answered_with_its_doubt() {
    let bar = Profile::bar(300.0, BarSection::Square { side_mm: 12.0 }).unwrap();
    let cooled_from = |to_mm: f64| {
        let start = Start::Zone(HotZone::start(1200.0, to_mm, 12.0));
        cool(&bar, Substance::Steel, &Loss::in_still_air(), &start, Span::of(120.0))
    };
    assert_eq!(cooled_from(30.0).workable(0.0, 80.0, 850.0, false), Workable::NotHot);
    let Workable::Until(time) = cooled_from(100.0).workable(0.0, 70.0, 850.0, false) else { panic!("it cools") };
    assert!((20.0..45.0).contains(&time.likely) && time.low < time.likely && time.likely < time.high);
    assert_eq!(cooled_from(100.0).workable(0.0, 10.0, 100.0, false), Workable::Beyond(120.0));
}

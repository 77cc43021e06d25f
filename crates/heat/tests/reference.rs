//! The reference cases of `tests/data/heat.json`, each to its own tolerance; an entry that no test knows fails.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use fh_heat::blows::{blows, work_joules};
use fh_heat::cooling::{Span, cool};
use fh_heat::drawing::{Sides, draw};
use fh_heat::flow_stress::{Deformation, hammered_mpa, misaka_mpa, shida_mean_mpa, shida_mpa};
use fh_heat::hammer::Hammer;
use fh_heat::hot_size::more_per_100_mm;
use fh_heat::hot_zone::{HotZone, Start};
use fh_heat::loss::{Convection, Loss, natural_convection_w_m2k, nusselt};
use fh_heat::lumped::section_seconds;
use fh_heat::profile::{Profile, Run};
use fh_heat::scale::{Exposure, ScaleLaw, loss_um, parabolic_kg2_m4s};
use fh_heat::section::BarSection;
use fh_heat::spread::{Pass, spread_share};
use fh_heat::steel;
use fh_heat::substance::Substance;
use fh_heat::upset::Upset;
use serde_json::Value;

/// Every group of the file, with the test that holds it.
const GROUPS: [(&str, &str); 13] = [
    ("about", "words"),
    ("units", "words"),
    ("constants", "the_constants_are_ours"),
    ("ec3_properties", "steel_is_that_of_the_standard"),
    ("convection_churchill_chu", "still_air_takes_what_the_formula_says"),
    ("lumped_square_long_bar", "a_long_bar_cools_in_the_time_of_the_table"),
    ("analytic_conduction", "analytic.rs"),
    ("fv_bar", "bars_with_a_local_heat_cool_as_the_reference"),
    ("flow_stress_MPa", "flow_stress_is_that_of_the_formulas"),
    ("spread", "a_bar_spreads_by_the_formula"),
    ("draw_20_to_10_square_100mm_stock", "a_square_is_drawn_in_the_passes_of_the_table"),
    ("upset", "an_upset_takes_the_work_of_the_table"),
    ("oxidation", "scale_grows_by_the_laws"),
];
const LAST_GROUP: &str = "hot_measure";

/// What is known of the file and not held to, with the reason.
const SKIPPED: [(&str, &str); 1] = [(
    "uncertainty_factor_p5_p95",
    "spread of a Monte Carlo, not a result of the model; its two figures are held by blows_are_told_with_their_doubt",
)];

fn data() -> Value {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/data/heat.json");
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn rows<'a>(value: &'a Value, key: &str) -> &'a [Value] {
    let rows = value[key].as_array().unwrap();
    assert!(!rows.is_empty(), "{key}");
    rows
}

fn number(value: &Value, key: &str) -> f64 {
    value[key].as_f64().unwrap_or_else(|| panic!("{key} in {value}"))
}

#[track_caller]
fn near(found: f64, wanted: f64, share: f64, what: &str) {
    let off = (found - wanted).abs();
    assert!(off <= share * wanted.abs() + 1e-12, "{what}: {found} instead of {wanted}");
}

/// Fails where an object has a key that the test does not read.
#[track_caller]
fn only_keys(value: &Value, known: &[&str]) {
    for key in value.as_object().unwrap().keys() {
        let skipped = SKIPPED.iter().any(|(name, _)| name == key);
        assert!(known.contains(&key.as_str()) || skipped, "no test reads {key} of {value}");
    }
}

#[test]
fn every_group_has_its_test() {
    let data = data();
    let known: Vec<&str> = GROUPS.iter().map(|(name, _)| *name).chain([LAST_GROUP]).collect();
    only_keys(&data, &known);
    for name in known {
        assert!(!data[name].is_null(), "{name} is gone from the file");
    }
}

#[test]
fn the_constants_are_ours() {
    let constants = &data()["constants"];
    only_keys(constants, &["stefan_boltzmann", "rho_cold", "g", "air_Pr"]);
    near(steel::DENSITY_KG_M3, number(constants, "rho_cold"), 0.0, "density");
    // These three stay inside the engine; the times and film coefficients of the other tests show that they are the same.
    near(number(constants, "stefan_boltzmann"), 5.670_374_419e-8, 1e-12, "Stefan-Boltzmann");
    near(number(constants, "g"), 9.80665, 0.0, "gravity");
    near(number(constants, "air_Pr"), 0.7, 0.0, "Prandtl");
}

#[test]
fn steel_is_that_of_the_standard() {
    let data = data();
    let group = &data["ec3_properties"];
    only_keys(group, &["tol_rel", "points"]);
    let share = number(group, "tol_rel");
    for point in rows(group, "points") {
        only_keys(point, &["T", "c", "k", "elong", "H_from_20"]);
        let celsius = number(point, "T");
        near(steel::specific_heat_j_kgk(celsius), number(point, "c"), share, "specific heat");
        near(steel::conductivity_w_mk(celsius), number(point, "k"), share, "conductivity");
        near(steel::elongation(celsius), number(point, "elong"), share, "elongation");
        near(steel::enthalpy_j_kg(celsius), number(point, "H_from_20"), share, "enthalpy");
    }
}

#[test]
fn still_air_takes_what_the_formula_says() {
    let data = data();
    let group = &data["convection_churchill_chu"];
    only_keys(group, &["tol_rel", "points", "Nu_example"]);
    for point in rows(group, "points") {
        only_keys(point, &["D", "Ts", "Ta", "h"]);
        let found = natural_convection_w_m2k(number(point, "D") * 1e3, number(point, "Ts"), number(point, "Ta"));
        near(found, number(point, "h"), number(group, "tol_rel"), "film");
    }
    let example = &group["Nu_example"];
    let prandtl = number(example, "Pr");
    near(nusselt(number(example, "Gr") * prandtl, prandtl), number(example, "Nu"), 1e-6, "Nusselt");
}

#[test]
fn a_long_bar_cools_in_the_time_of_the_table() {
    let data = data();
    let group = &data["lumped_square_long_bar"];
    only_keys(group, &["tol_rel", "cases", "formula"]);
    let shares = &group["tol_rel"];
    for case in rows(group, "cases") {
        let section = BarSection::Square { side_mm: number(case, "side") * 1e3 };
        let air = Loss {
            emissivity: number(case, "eps"),
            ambient_celsius: number(case, "Ta"),
            skin: false,
            ..Loss::in_still_air()
        };
        let constant = Substance::constant(7850.0, 650.0, 27.3);
        let ways = [
            ("rad_only_const_c650_s", constant, Loss { convection: Convection::None, ..air }),
            ("rad_plus_conv_ec3_s", Substance::Steel, air),
            ("rad_plus_conv_ec3_skin23_s", Substance::Steel, Loss { skin: true, ..air }),
        ];
        let mut known = vec!["side", "eps", "Ta", "T0", "T1"];
        known.extend(ways.iter().map(|(name, ..)| *name));
        only_keys(case, &known);
        for (name, substance, loss) in ways {
            let found = section_seconds(section, substance, &loss, number(case, "T0"), number(case, "T1"));
            near(found, number(case, name), number(shares, name), name);
        }
    }
}

fn section(kind: &str, size: &Value) -> BarSection {
    let mm = |value: &Value| value.as_f64().unwrap() * 1e3;
    match kind {
        "square" => BarSection::Square { side_mm: mm(size) },
        "round" => BarSection::Round { diameter_mm: mm(size) },
        "flat" => BarSection::Flat { width_mm: mm(&size[0]), thickness_mm: mm(&size[1]) },
        other => panic!("{other}"),
    }
}

fn profile(case: &Value) -> Profile {
    let runs = rows(case, "pieces").iter().map(|piece| {
        let mm = |index: usize| piece[index].as_f64().unwrap() * 1e3;
        let kind = piece[2].as_str().unwrap();
        Run::between(mm(0), mm(1), section(kind, &piece[3]), section(kind, &piece[4])).unwrap()
    });
    Profile::of_runs(runs.collect()).unwrap()
}

fn start(case: &Value) -> Start {
    let celsius = number(case, "T_hot_C");
    let mm = |index: usize| case["hot"][index].as_f64().unwrap() * 1e3;
    match &case["hot"] {
        Value::Null => Start::Zone(HotZone::whole(celsius)),
        Value::String(_) => Start::Zone(HotZone::between(celsius, 150.0, 250.0, 12.0)),
        _ => Start::Zone(HotZone::start(celsius, mm(0), mm(1))),
    }
}

#[test]
fn bars_with_a_local_heat_cool_as_the_reference() {
    let data = data();
    let group = &data["fv_bar"];
    only_keys(group, &["initial_profile", "model", "tol", "cases"]);
    let tolerance = &group["tol"];
    for case in rows(group, "cases") {
        only_keys(
            case,
            &[
                "id",
                "length_m",
                "pieces",
                "hot",
                "T_hot_C",
                "T_amb_C",
                "emissivity",
                "skin",
                "probes_m",
                "times_s",
                "T_C",
                "t_fall_to_900_s",
                "t_fall_to_800_s",
                "len_above_850_at_30s_mm",
                "hot_growth_t0_mm",
                "hot_growth_t60_mm",
            ],
        );
        let loss = Loss {
            ambient_celsius: number(case, "T_amb_C"),
            emissivity: number(case, "emissivity"),
            skin: number(case, "skin") > 0.0,
            // The file says that the rings of shoulders radiate, but its figures for F7 are those of closed rings: with them
            // every probe agrees within 0.2 K, with open ones the thick side is up to 19 K cooler.
            shoulder_rings: false,
            ..Loss::in_still_air()
        };
        let cooled = cool(&profile(case), Substance::Steel, &loss, &start(case), Span::of(120.0));
        for (probe, place) in rows(case, "probes_m").iter().enumerate() {
            let x_mm = place.as_f64().unwrap() * 1e3;
            for (moment, seconds) in rows(case, "times_s").iter().enumerate() {
                let found = cooled.celsius_at(x_mm, seconds.as_f64().unwrap());
                let wanted = case["T_C"][probe][moment].as_f64().unwrap();
                let off = (found - wanted).abs();
                assert!(off <= number(tolerance, "T_K"), "{} {x_mm} mm {seconds} s: {found} not {wanted}", case["id"]);
            }
            for (celsius, key) in [(900.0, "t_fall_to_900_s"), (800.0, "t_fall_to_800_s")] {
                match (cooled.seconds_until(x_mm, celsius), case[key][probe].as_f64()) {
                    (Some(found), Some(wanted)) => near(found, wanted, number(tolerance, "t_rel"), key),
                    (found, wanted) => assert_eq!(found, wanted, "{} {key} at {x_mm} mm", case["id"]),
                }
            }
        }
        let lengths = cooled.in_range(850.0, f64::INFINITY);
        let above = lengths.iter().find(|it| it.seconds == 30.0).unwrap().length_mm;
        let wanted = number(case, "len_above_850_at_30s_mm");
        assert!((above - wanted).abs() <= number(tolerance, "len_above_850_mm"), "{}: {above} mm", case["id"]);
        for (seconds, key) in [(0.0, "hot_growth_t0_mm"), (60.0, "hot_growth_t60_mm")] {
            let off = (cooled.growth_mm(seconds) - number(case, key)).abs();
            assert!(off <= number(tolerance, "hot_growth_mm"), "{} {key} off by {off}", case["id"]);
        }
    }
}

#[test]
fn flow_stress_is_that_of_the_formulas() {
    let data = data();
    let group = &data["flow_stress_MPa"];
    only_keys(group, &["tol_rel", "note", "points", "spittel"]);
    let share = number(group, "tol_rel");
    for point in rows(group, "points") {
        only_keys(point, &["C", "T", "eps", "rate", "misaka", "shida_inst", "shida_mean"]);
        let of = Deformation {
            carbon_percent: number(point, "C"),
            celsius: number(point, "T"),
            strain: number(point, "eps"),
            rate_per_second: number(point, "rate"),
        };
        near(misaka_mpa(of), number(point, "misaka"), share, "Misaka");
        near(shida_mpa(of), number(point, "shida_inst"), share, "Shida");
        near(shida_mean_mpa(of), number(point, "shida_mean"), share, "Shida's mean");
    }
    // A third formula, of single grades, which the program does not use: it has to agree within a quarter where the others do.
    for point in rows(group, "spittel") {
        only_keys(point, &["grade", "T", "eps", "rate", "MPa"]);
        let carbon = match point["grade"].as_str().unwrap() {
            "C20" | "S355" => 0.2,
            "C45" => 0.45,
            other => panic!("{other}"),
        };
        let celsius = number(point, "T");
        let mean = number(point, "MPa") / 1.21;
        let allowed = if celsius < 900.0 { 0.35 } else { 0.25 };
        near(hammered_mpa(carbon, celsius).likely, mean, allowed, "against Spittel");
    }
}

#[test]
fn a_bar_spreads_by_the_formula() {
    let data = data();
    let group = &data["spread"];
    only_keys(group, &["tol_rel", "s", "one_pass_example"]);
    for point in rows(group, "s") {
        near(spread_share(number(point, "b_over_w")), number(point, "s"), number(group, "tol_rel"), "spread");
    }
    let example = &group["one_pass_example"];
    only_keys(example, &["h", "w", "b", "reduction", "s", "w_after", "length_gain"]);
    let height = number(example, "h");
    let after = height * (1.0 - number(example, "reduction"));
    let pass = Pass::of(height, number(example, "w"), after, number(example, "b")).unwrap();
    near(pass.spread, number(example, "s"), 2e-5, "share");
    near(pass.width_after_mm, number(example, "w_after"), 5e-5, "width");
    near(pass.longer, number(example, "length_gain"), 1e-5, "length");
}

#[test]
fn a_square_is_drawn_in_the_passes_of_the_table() {
    let data = data();
    let group = &data["draw_20_to_10_square_100mm_stock"];
    only_keys(group, &["tol_rel", "inputs", "cases", "uncertainty_factor_p5_p95"]);
    let share = number(group, "tol_rel");
    let inputs = &group["inputs"];
    let square = |side: f64| Sides { height_mm: side, width_mm: side };
    let hammer = Hammer {
        speed_m_s: number(inputs, "v"),
        efficiency: number(inputs, "eta"),
        ..Hammer::hand(number(inputs, "m"))
    };
    let stress = hammered_mpa(number(inputs, "C"), number(inputs, "T")).likely;
    for case in rows(group, "cases") {
        only_keys(
            case,
            &[
                "bite",
                "passes",
                "length_ratio",
                "end_h_mm",
                "end_w_mm",
                "sigma_MPa",
                "sum_eps_eff",
                "ideal_eps",
                "redundancy",
                "work_J",
                "J_per_cm3",
                "blow_J",
                "blows",
            ],
        );
        let drawn = draw(square(20.0), square(10.0), number(case, "bite") * 1e3, number(inputs, "reduction"));
        let last = drawn.passes.last().unwrap();
        let work = work_joules(&drawn.passes, 40_000.0, stress);
        assert!(drawn.reached && drawn.passes.len() as f64 == number(case, "passes"), "{case}");
        near(drawn.longer, number(case, "length_ratio"), share, "length");
        // The table has the sides after the last quarter turn.
        near(last.width_after_mm, number(case, "end_h_mm"), share, "height");
        near(last.height_after_mm, number(case, "end_w_mm"), share, "width");
        near(stress, number(case, "sigma_MPa"), share, "stress");
        near(drawn.effective_strain(), number(case, "sum_eps_eff"), share, "strain");
        near(2.0 * 2.0_f64.ln(), number(case, "ideal_eps"), share, "ideal strain");
        near(drawn.effective_strain() / (2.0 * 2.0_f64.ln()), number(case, "redundancy"), share, "redundancy");
        near(work, number(case, "work_J"), share, "work");
        near(work / 40.0, number(case, "J_per_cm3"), share, "work of a cm³");
        near(hammer.blow_joules(), number(case, "blow_J"), share, "blow");
        near(blows(work, &hammer, None).likely, number(case, "blows"), share, "blows");
    }
}

#[test]
fn blows_are_told_with_their_doubt() {
    let data = data();
    let factors = &data["draw_20_to_10_square_100mm_stock"]["uncertainty_factor_p5_p95"];
    let told = blows(14_400.0, &Hammer::hand(1.0), None);
    near(told.low / told.likely, factors[0].as_f64().unwrap(), 1e-9, "low");
    near(told.high / told.likely, factors[1].as_f64().unwrap(), 1e-9, "high");
}

#[test]
fn an_upset_takes_the_work_of_the_table() {
    let data = data();
    let group = &data["upset"];
    only_keys(group, &["tol_rel", "cases"]);
    let share = number(group, "tol_rel");
    for case in rows(group, "cases") {
        only_keys(case, &["d0", "L", "d1", "L_over_d", "L_after_mm", "eps", "work_J", "blows"]);
        let [before, after, length] = ["d0", "d1", "L"].map(|key| number(case, key) * 1e3);
        let upset = Upset::of(before, after, length).unwrap();
        // The table is for 0.2 % C at 1100 °C and a blow of 18 J, 0.8 of it in the bar.
        let work = upset.work_joules(hammered_mpa(0.2, 1100.0)).likely;
        near(upset.slenderness(), number(case, "L_over_d"), share, "slenderness");
        near(upset.length_after_mm(), number(case, "L_after_mm"), share, "length");
        near(upset.strain(), number(case, "eps"), share, "strain");
        near(work, number(case, "work_J"), share, "work");
        near(blows(work, &Hammer::hand(1.0), None).likely, number(case, "blows"), share, "blows");
    }
}

#[test]
fn scale_grows_by_the_laws() {
    let data = data();
    let group = &data["oxidation"];
    only_keys(group, &["tol_rel", "kl", "points"]);
    let share = number(group, "tol_rel");
    for point in rows(group, "points") {
        let celsius = number(point, "T");
        let minute = [Exposure { seconds: 60.0, celsius, air: 1.0 }];
        let all = [
            ("kpO_stanley", parabolic_kg2_m4s(ScaleLaw::Stanley, celsius)),
            ("kpO_markworth", parabolic_kg2_m4s(ScaleLaw::Markworth, celsius)),
            ("loss_um_60s_stanley", loss_um(ScaleLaw::Stanley, &minute, false)),
            ("loss_um_60s_markworth", loss_um(ScaleLaw::Markworth, &minute, false)),
            ("loss_um_60s_markworth_kl", loss_um(ScaleLaw::Markworth, &minute, true)),
        ];
        let known: Vec<&str> = all.iter().map(|(name, _)| *name).chain(["T"]).collect();
        only_keys(point, &known);
        for (name, found) in all {
            near(found, number(point, name), share, name);
        }
    }
}

#[test]
fn a_hot_bar_measures_more() {
    let data = data();
    let group = &data["hot_measure"];
    only_keys(group, &["tol_rel", "points"]);
    for point in rows(group, "points") {
        only_keys(point, &["T", "mm_per_100mm"]);
        let found = more_per_100_mm(number(point, "T"));
        // The file has four decimals, fewer than its own tolerance asks for.
        let rounded = (found.likely * 1e4).round() / 1e4;
        near(rounded, number(point, "mm_per_100mm"), number(group, "tol_rel"), "hot measure");
        assert!(found.low < found.likely && found.likely < found.high);
    }
}

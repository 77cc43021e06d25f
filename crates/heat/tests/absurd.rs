//! Whatever it is given, the engine answers with numbers.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use fh_heat::blows::{blows, work_joules};
use fh_heat::cooled::Workable;
use fh_heat::cooling::{Span, cool};
use fh_heat::drawing::{Sides, best_bite_mm, draw, set_down};
use fh_heat::estimate::Estimate;
use fh_heat::flow_stress::{Deformation, hammered_mpa, misaka_mpa, shida_mean_mpa, shida_mpa};
use fh_heat::hammer::Hammer;
use fh_heat::heats::{HeatRange, heats};
use fh_heat::hot_size::{hot_size_by_coefficient_mm, hot_size_mm};
use fh_heat::hot_zone::{HotZone, Start};
use fh_heat::loss::{AnvilContact, Convection, End, Loss};
use fh_heat::lumped::section_seconds;
use fh_heat::profile::{Place, Profile, Run};
use fh_heat::scale::{Exposure, heat_loss_um, lost_share, over_heats};
use fh_heat::section::BarSection;
use fh_heat::spread::{Pass, peened_width_ratio};
use fh_heat::substance::Substance;
use fh_heat::upset::Upset;
use proptest::prelude::*;

/// A number of any kind: sensible, huge, tiny, negative, none at all.
fn any_number() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => 0.0..2000.0,
        2 => -100.0..100.0,
        1 => any::<f64>(),
        1 => prop::sample::select(vec![0.0, -0.0, f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e-300, 1e300, f64::MAX]),
    ]
}

fn numbers<const N: usize>() -> impl Strategy<Value = [f64; N]> {
    prop::collection::vec(any_number(), N).prop_map(|all| all.try_into().unwrap())
}

fn is_sound(estimate: Estimate) -> bool {
    estimate.low.is_finite()
        && estimate.likely.is_finite()
        && estimate.low <= estimate.likely
        && !estimate.high.is_nan()
}

/// A bar that may be one: places in order, sections between nothing and a lot.
fn any_bar() -> impl Strategy<Value = Option<Profile>> {
    let place = (0.001..80.0_f64, 0.0..3000.0_f64, 0.0..400.0_f64);
    let run = prop::collection::vec(place, 2..6);
    prop::collection::vec(run, 1..5).prop_map(|runs| {
        let mut x_mm = 0.0;
        let runs: Option<Vec<Run>> = runs
            .into_iter()
            .map(|run| {
                let places = run.into_iter().enumerate().map(|(index, (step, area_mm2, perimeter_mm))| {
                    x_mm += if index == 0 { 0.0 } else { step };
                    Place { x_mm, area_mm2, perimeter_mm }
                });
                Run::through(places.collect(), 0.5)
            })
            .collect();
        Profile::of_runs(runs?)
    })
}

fn loss_of(n: [f64; 12]) -> Loss {
    let contact = AnvilContact {
        conductance_w_m2k: n[0],
        duty: n[1] / 100.0,
        share_of_girth: n[2] / 100.0,
        anvil_celsius: n[3],
        from_mm: n[4],
        to_mm: n[5],
    };
    let convection = match n[6] {
        kind if kind < 300.0 => Convection::Natural { draught: n[7] },
        kind if kind < 900.0 => Convection::Fixed { w_m2k: n[7] },
        _ => Convection::None,
    };
    Loss {
        ambient_celsius: n[8],
        emissivity: n[9] / 1000.0,
        convection,
        skin: n[10] > 50.0,
        shoulder_rings: n[10] < 500.0,
        anvil: (n[11] > 0.0).then_some(contact),
        start: if n[11] > 1000.0 { End::Held { celsius: n[3] } } else { End::Open },
        end: if n[10] > 1000.0 { End::Closed } else { End::Open },
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_bar_cools_to_numbers(bar in any_bar(), n in numbers::<12>(), z in numbers::<6>(), substance in numbers::<3>()) {
        let Some(bar) = bar else { return Ok(()) };
        let start = if z[5] > 500.0 {
            Start::Along(vec![(z[0], z[1]), (z[2], z[3])])
        } else {
            Start::Zone(HotZone { celsius: z[0], from_mm: z[1], to_mm: z[2], edge_mm: z[3] })
        };
        let substance = Substance::constant(substance[0], substance[1], substance[2]);
        let span = Span { seconds: (z[4] / 20.0).min(40.0), step_seconds: Some(z[5] / 500.0).filter(|step| *step > 0.05), cell_mm: Some(3.0) };
        for metal in [Substance::Steel, substance] {
            let cooled = cool(&bar, metal, &loss_of(n), &start, span);
            let last = cooled.moments().last().copied().unwrap();
            prop_assert!(cooled.along(last).iter().all(|(x, celsius)| x.is_finite() && celsius.is_finite()));
            prop_assert!(cooled.in_range(z[0], z[1]).iter().all(|it| it.length_mm >= 0.0 && it.length_mm <= bar.length_mm() + 1e-6));
            prop_assert!(cooled.celsius_at(z[2], z[3]).is_finite() && cooled.growth_mm(z[0]).is_finite());
            if let Workable::Until(time) = cooled.workable(z[0], z[1], z[2], z[3] > 0.0) {
                prop_assert!(is_sound(time));
            }
        }
    }

    #[test]
    fn any_section_cools_in_some_time(n in numbers::<12>(), s in numbers::<4>()) {
        for section in [
            BarSection::Square { side_mm: s[0] },
            BarSection::Round { diameter_mm: s[0] },
            BarSection::Flat { width_mm: s[0], thickness_mm: s[1] },
        ] {
            prop_assert!(section_seconds(section, Substance::Steel, &loss_of(n), s[2], s[3]) >= 0.0);
            let bar = Profile::bar(s[2], section);
            prop_assert!(bar.is_none_or(|bar| bar.length_mm() > 0.0));
        }
    }

    #[test]
    fn any_drawing_ends(n in numbers::<8>()) {
        let (from, to) = (Sides { height_mm: n[0], width_mm: n[1] }, Sides { height_mm: n[2], width_mm: n[3] });
        for drawn in [draw(from, to, n[4], n[5] / 1000.0), set_down(from, n[2], n[4], n[5] / 1000.0)] {
            prop_assert!(drawn.longer >= 1.0 && drawn.longer.is_finite());
            let work = work_joules(&drawn.passes, n[6].abs().min(1e9), hammered_mpa(n[7], n[0]).likely);
            let hammer = Hammer { mass_kg: n[0], speed_m_s: n[1], blows_per_second: n[2], efficiency: n[3] / 1000.0 };
            prop_assert!(is_sound(blows(work, &hammer, Some(n[4]))) && is_sound(blows(n[5], &hammer, None)));
            let range = HeatRange { start_celsius: n[0], finish_celsius: n[1], handling_seconds: n[2], carbon_percent: n[3] };
            if let Some(counted) = heats(&drawn, n[6], &hammer, &Loss::in_still_air(), range) {
                prop_assert!(is_sound(counted.count) && counted.blows.iter().all(|blows| blows.is_finite()));
            }
        }
        prop_assert!(best_bite_mm(from).is_none_or(|bite| bite > 0.0));
    }

    #[test]
    fn any_figures_have_their_doubt(n in numbers::<6>()) {
        let of = Deformation { carbon_percent: n[0], celsius: n[1], strain: n[2], rate_per_second: n[3] };
        for stress in [misaka_mpa(of), shida_mpa(of), shida_mean_mpa(of)] {
            prop_assert!(stress.is_finite() && stress > 0.0, "{of:?}: {stress}");
        }
        prop_assert!(is_sound(hot_size_mm(n[0].abs(), n[1])) && is_sound(hot_size_by_coefficient_mm(n[0].abs(), n[1], n[2])));
        prop_assert!(peened_width_ratio(n[0], n[1], n[2]).is_none_or(is_sound));
        if let Some(pass) = Pass::of(n[0], n[1], n[2], n[3]) {
            prop_assert!(is_sound(pass.width_estimate_mm()) && is_sound(pass.longer_estimate()));
        }
        if let Some(upset) = Upset::of(n[0], n[1], n[2]) {
            prop_assert!(is_sound(upset.work_joules(hammered_mpa(n[3], n[4]))));
        }
        let eaten = heat_loss_um(&[Exposure { seconds: n[0], celsius: n[1], air: n[2] }, Exposure { seconds: n[3], celsius: n[4], air: n[5] }]);
        prop_assert!(is_sound(eaten));
        let share = lost_share(eaten, n[0], n[1]);
        prop_assert!(is_sound(share) && is_sound(over_heats(share, 7)) && share.high <= 1.0);
        prop_assert!(!Estimate::times_or_over(n[0], n[1]).one_figure().likely.is_nan() || n[0].is_nan());
    }
}

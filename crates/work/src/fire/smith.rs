//! Who forges: by what heats are reckoned where the plan does not say what strikes.

use fh_core::material::Forging;
use fh_core::plan::{HammerSpec, SwungBy};
use fh_heat::hammer::Hammer;
use serde::{Deserialize, Serialize};

/// Who forges.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Smith {
    /// A beginner.
    Beginner,
    /// A practised smith.
    #[default]
    Practised,
    /// A practised smith with a striker.
    Striker,
    /// A practised smith at a power hammer.
    Power,
}

/// A hammer as a beginner swings it, in kg and m/s: a light one, and with it about 1.9 times as many blows as a practised smith
/// takes; 40 to 50 where a master takes 25 (Williams 1915, chapter VI), so 1.6 to 2 times.
const BEGINNER: (f64, f64) = (1.25, 6.0);

/// How fast a practised smith's hammer lands, in m/s: 4.5 to 9 by evidence that is thin; common practice, no source.
const PRACTISED_M_S: f64 = 7.5;

/// By how much a beginner takes the bar cooler out of the fire, for fear of burning it, and leaves off light work hotter, in °C: common
/// practice, no source.
const BEGINNER_CELSIUS: f64 = 50.0;

/// A striker's sledge, in kg: common practice, no source.
const SLEDGE: f64 = 4.0;

/// The ram of a small power hammer, in kg: common practice, no source.
const RAM: f64 = 25.0;

impl Smith {
    /// Every one, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::Beginner, Self::Practised, Self::Striker, Self::Power];

    /// The words for who it is.
    pub fn name(self) -> &'static str {
        match self {
            Self::Beginner => "a beginner",
            Self::Practised => "a practised smith",
            Self::Striker => "a smith with a striker",
            Self::Power => "a smith at a power hammer",
        }
    }

    /// Whether it is the one that is taken where nobody said.
    pub fn is_usual(&self) -> bool {
        *self == Self::default()
    }

    /// Whether the smith swings the hammer, and nobody is there to hold the bar or a tool; a power hammer leaves a hand free.
    pub(crate) fn is_alone(self, own: Option<HammerSpec>) -> bool {
        matches!(self, Self::Beginner | Self::Practised) && own.is_none_or(|own| own.by == SwungBy::Hand)
    }

    /// What strikes: what the plan says, else what is usual for this smith.
    pub(crate) fn hammer(self, own: Option<HammerSpec>) -> Hammer {
        let hand = |own: Option<f64>| match self {
            Self::Beginner => Hammer { speed_m_s: BEGINNER.1, ..Hammer::hand(own.unwrap_or(BEGINNER.0)) },
            _ => Hammer { speed_m_s: PRACTISED_M_S, ..Hammer::hand(own.unwrap_or(HammerSpec::default().kg)) },
        };
        match (own, self) {
            (Some(HammerSpec { kg, by: SwungBy::Hand }), _) => hand(Some(kg)),
            (Some(HammerSpec { kg, by: SwungBy::Striker }), _) => Hammer::striker(kg),
            (Some(HammerSpec { kg, by: SwungBy::Power }), _) => Hammer::power(kg),
            (None, Self::Striker) => Hammer::striker(SLEDGE),
            (None, Self::Power) => Hammer::power(RAM),
            (None, Self::Beginner | Self::Practised) => hand(None),
        }
    }

    /// To what the bar is heated, in °C: at a power hammer, where heats are quick, to the most that its metal stands.
    pub(crate) fn fire_celsius(self, metal: &Forging) -> f64 {
        match self {
            Self::Beginner => metal.usual_celsius - BEGINNER_CELSIUS,
            Self::Practised | Self::Striker => metal.usual_celsius,
            Self::Power => metal.most_celsius,
        }
    }

    /// By how much hotter light work is left off than is usual for the metal, in °C.
    pub(crate) fn stops_celsius(self) -> f64 {
        if self == Self::Beginner { BEGINNER_CELSIUS } else { 0.0 }
    }

    /// The figures that heats are reckoned by, in words, with what they rest on; `own` is what the plan says of the hammer.
    ///
    /// `1.5 kg at 7.5 m/s, 102 blows a minute; common practice, no source.`
    pub fn figures(self, own: Option<HammerSpec>) -> String {
        let hammer = self.hammer(own);
        let source = match (own, self) {
            (Some(_), _) => "the weight is the plan's, the rest common practice, no source",
            (None, Self::Beginner) => "about twice the blows of a practised smith, as Williams counted in 1915",
            (None, Self::Power) => "from memory",
            (None, _) => "common practice, no source",
        };
        let blows = hammer.blows_per_second * 60.0;
        let hammer = format!("{} kg at {} m/s, {blows:.0} blows a minute; {source}.", hammer.mass_kg, hammer.speed_m_s);
        let heat = match self {
            Self::Beginner => format!(
                " Heated {BEGINNER_CELSIUS:.0} °C less than usual, and light work stopped that much sooner: common practice, no source."
            ),
            Self::Power => " Heated to the most the metal will take, as heats are quick.".to_owned(),
            Self::Practised | Self::Striker => String::new(),
        };
        hammer + &heat
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_beginner_takes_about_twice_the_blows_of_a_practised_smith() {
        let [beginner, practised] =
            [Smith::Beginner, Smith::Practised].map(|smith| smith.hammer(None).delivered_joules());
        let times = practised / beginner;
        assert!((1.6..=2.0).contains(&times), "{times}");
    }

    #[test]
    fn only_a_beginner_takes_it_out_cooler_and_stops_sooner_and_says_so() {
        for smith in Smith::ALL {
            let is_beginner = smith == Smith::Beginner;
            assert_eq!(smith.stops_celsius() > 0.0, is_beginner);
            assert_eq!(smith.figures(None).contains("50 °C less than usual"), is_beginner);
        }
    }

    #[test]
    fn what_the_plan_says_of_the_hammer_goes_first() {
        let own = HammerSpec { kg: 3.0, by: SwungBy::Striker };
        assert!(Smith::ALL.iter().all(|smith| smith.hammer(Some(own)) == Hammer::striker(3.0)));
        let light = HammerSpec { kg: 0.8, by: SwungBy::Hand };
        assert!(Smith::Beginner.hammer(Some(light)).speed_m_s < Smith::Practised.hammer(Some(light)).speed_m_s);
    }
}

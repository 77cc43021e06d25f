//! The sides of a bar by their names.

use crate::plan::Sides;

/// A side of the bar, as the smith stands before it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Face {
    /// The upper side.
    Top,
    /// The side toward the smith.
    Near,
    /// The lower side.
    Bottom,
    /// The side away from the smith.
    Far,
    /// None of the four: so many degrees around from up by way of toward-you.
    Askew(f64),
}

impl Face {
    /// The side at an angle around the bar, in degrees from up by way of toward-you.
    pub fn at(degrees: f64) -> Self {
        let rounded = degrees.round();
        if (degrees - rounded).abs() >= 1e-9 {
            return Self::Askew(degrees);
        }
        match rounded.rem_euclid(360.0) as u16 {
            0 => Self::Top,
            90 => Self::Near,
            180 => Self::Bottom,
            270 => Self::Far,
            _ => Self::Askew(degrees),
        }
    }

    /// The side at an angle in radians, however often it goes round.
    pub fn at_radians(radians: f64) -> Self {
        Self::at(radians.to_degrees().rem_euclid(360.0))
    }

    /// What it is called: `top`, `near side`.
    pub fn name(self) -> String {
        match self {
            Self::Top => "top".to_owned(),
            Self::Near => "near side".to_owned(),
            Self::Bottom => "bottom".to_owned(),
            Self::Far => "far side".to_owned(),
            Self::Askew(_) => format!("side {}", self.way()),
        }
    }

    /// What its edge is called as it is seen from the side beside it: `top edge`, `near edge`.
    pub fn edge(self) -> String {
        match self {
            Self::Top | Self::Bottom => format!("{} edge", self.name()),
            Self::Near => "near edge".to_owned(),
            Self::Far => "far edge".to_owned(),
            Self::Askew(_) => self.name(),
        }
    }

    /// Which way one bends toward it: `upward`, `toward you`.
    pub fn toward(self) -> String {
        match self {
            Self::Top => "upward".to_owned(),
            Self::Bottom => "downward".to_owned(),
            Self::Far => "away from you".to_owned(),
            Self::Near | Self::Askew(_) => self.way(),
        }
    }

    /// Which way it faces: `up`, `toward you`, or its angle where it is none of the four.
    fn way(self) -> String {
        let degrees = match self {
            Self::Top => 0,
            Self::Near => 90,
            Self::Bottom => 180,
            Self::Far => 270,
            Self::Askew(degrees) => return format!("{degrees:.0}° from up"),
        };
        Sides::name_of(degrees).to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_side_has_its_name_its_edge_and_its_way() {
        let all = |face: Face| [face.name(), face.edge(), face.toward()];
        assert_eq!(all(Face::at(0.0)), ["top", "top edge", "upward"]);
        assert_eq!(all(Face::at(90.0)), ["near side", "near edge", "towards you"]);
        assert_eq!(all(Face::at(180.0)), ["bottom", "bottom edge", "downward"]);
        assert_eq!(all(Face::at(270.0)), ["far side", "far edge", "away from you"]);
        assert_eq!(all(Face::at(45.0)), ["side 45° from up", "side 45° from up", "45° from up"]);
        assert_eq!(Face::at_radians(-std::f64::consts::FRAC_PI_2), Face::Far);
        assert_eq!(Face::at_radians(std::f64::consts::TAU), Face::Top);
    }
}

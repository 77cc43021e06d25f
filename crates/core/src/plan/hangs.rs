//! How the finished piece hangs or stands: how it is turned from how its first bar was planned.

use fh_measure::{MeasureError, WrittenAngle};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// An angle this close to none, in radians, is none.
const NONE: f64 = 1e-9;
/// A bar leans less than this share from the upright where it stands.
const UPRIGHT: f64 = 1e-6;
/// Angles are written to this share of a degree.
const STEP_DEGREES: f64 = 0.1;

/// How the piece hangs: from how its first bar was planned, rolled, then tipped, then turned. Pictures of the finished piece
/// show it so; marks, sizes and the work do not change.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Hangs {
    /// Rolled about the bar: at 90 deg what was up faces you.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rolled: Option<WrittenAngle>,
    /// Tipped: at 90 deg what ran away from the datum points up.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tipped: Option<WrittenAngle>,
    /// Turned about the upright: at 90 deg what pointed to the right points away from you.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub turned: Option<WrittenAngle>,
}

/// Three rows: to the right, away from you, up.
type Rows = [[f64; 3]; 3];

impl Hangs {
    /// Whether it hangs as it was planned.
    pub fn is_default(&self) -> bool {
        *self == Self::default()
    }

    /// Where what was planned to the right, away from you and up comes to lie: three rows that a place is multiplied by.
    pub fn rows(&self) -> Rows {
        let of = |angle: &Option<WrittenAngle>| angle.as_ref().map_or(0.0, WrittenAngle::radians).sin_cos();
        let [(sr, cr), (st, ct), (su, cu)] = [of(&self.rolled), of(&self.tipped), of(&self.turned)];
        let rolled = [[1.0, 0.0, 0.0], [0.0, cr, -sr], [0.0, sr, cr]];
        let tipped = [[ct, 0.0, -st], [0.0, 1.0, 0.0], [st, 0.0, ct]];
        let turned = [[cu, -su, 0.0], [su, cu, 0.0], [0.0, 0.0, 1.0]];
        times(turned, times(tipped, rolled))
    }

    /// The same turned once more, by three rows, its angles to a tenth of a degree.
    ///
    /// # Errors
    /// Where the rows are no turn.
    pub fn turned_by(&self, by: Rows) -> Result<Self, MeasureError> {
        let rows = times(by, self.rows());
        // Where the bar stands upright, rolling it and turning it are one; then it is only rolled.
        let is_upright = rows[0][0].hypot(rows[1][0]) < UPRIGHT;
        let (turned, rolled) = match is_upright {
            true => (0.0, (-rows[2][0] * rows[0][1]).atan2(rows[1][1])),
            false => (rows[1][0].atan2(rows[0][0]), rows[2][1].atan2(rows[2][2])),
        };
        let tipped = rows[2][0].atan2(rows[0][0].hypot(rows[1][0]));
        Ok(Self { rolled: written(rolled)?, tipped: written(tipped)?, turned: written(turned)? })
    }
}

fn written(radians: f64) -> Result<Option<WrittenAngle>, MeasureError> {
    let degrees = (radians.to_degrees() / STEP_DEGREES).round() * STEP_DEGREES;
    let is_none = degrees.abs() < NONE;
    if is_none { Ok(None) } else { WrittenAngle::from_degrees((degrees * 10.0).round() / 10.0).map(Some) }
}

fn times(a: Rows, b: Rows) -> Rows {
    let cell = |row: usize, column: usize| (0..3).map(|at| a[row][at] * b[at][column]).sum();
    [0, 1, 2].map(|row| [0, 1, 2].map(|column| cell(row, column)))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    fn hangs([rolled, tipped, turned]: [f64; 3]) -> Hangs {
        let angle = |degrees: f64| (degrees != 0.0).then(|| WrittenAngle::from_degrees(degrees).unwrap());
        Hangs { rolled: angle(rolled), tipped: angle(tipped), turned: angle(turned) }
    }

    fn placed(hangs: &Hangs, place: [f64; 3]) -> [f64; 3] {
        hangs.rows().map(|row| ((0..3).map(|at| row[at] * place[at]).sum::<f64>() * 1e6).round() / 1e6)
    }

    /// Right, away from you, up.
    #[test]
    fn each_angle_turns_what_it_says() {
        assert_eq!(placed(&hangs([90.0, 0.0, 0.0]), [0.0, 0.0, 1.0]), [0.0, -1.0, 0.0], "up faces you");
        assert_eq!(placed(&hangs([0.0, 90.0, 0.0]), [1.0, 0.0, 0.0]), [0.0, 0.0, 1.0], "the far end points up");
        assert_eq!(placed(&hangs([0.0, 0.0, 90.0]), [1.0, 0.0, 0.0]), [0.0, 1.0, 0.0], "right points away");
    }

    #[test]
    fn turned_again_it_lies_where_the_turns_put_it() {
        let all = [-170.0, -90.0, -35.5, 0.0, 20.0, 90.0, 180.0];
        for rolled in all {
            for tipped in [-90.0, -40.0, 0.0, 90.0] {
                for turned in all {
                    let by = hangs([turned, tipped, rolled]).rows();
                    let was = hangs([rolled, tipped, turned]);
                    let now = was.turned_by(by).unwrap();
                    let want = times(by, was.rows());
                    let rows = now.rows();
                    let off = rows.iter().flatten().zip(want.iter().flatten()).map(|(a, b)| (a - b).abs());
                    assert!(off.fold(0.0, f64::max) < 3e-3, "{was:?} by {by:?}: {now:?}");
                }
            }
        }
    }

    #[test]
    fn what_is_turned_back_hangs_as_planned() {
        let quarter = hangs([0.0, 90.0, 0.0]);
        let back = quarter.turned_by(hangs([0.0, -90.0, 0.0]).rows()).unwrap();
        assert!(back.is_default(), "{back:?}");
    }
}

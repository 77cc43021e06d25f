//! The plan as the smith wrote it: every size keeps its text. Its keys are those of `docs/plan-format.md`.

mod asked;
mod bar;
mod base_line;
mod bend;
mod corners;
mod dressed;
mod duty;
mod form;
mod gives;
mod grown;
mod hangs;
mod hole;
mod joint;
mod joint_side;
mod length_or;
mod limits;
mod logged;
mod operation;
mod outline;
mod plate_hole;
mod practice;
mod repeat;
mod runout;
mod section;
mod section_said;
mod segment;
mod sides;
mod size_name;
mod size_words;
mod sizes;
mod spelling;
mod split;
mod square;
mod target;
mod thickness;
mod tree;
mod underlay;
mod units;
mod via;
mod work;

pub use asked::{AskedSize, Direction, Feature, FeatureAt, Overall, Taken};
pub use bar::Bar;
pub use base_line::BaseLine;
pub use bend::{Bend, BendKind, ScrollEye, ScrollRun, SocketAxis};
pub use corners::{ArcSpec, Bulges, CornerSpec, Corners, LEAST_CORNERS, MOST_CORNERS};
pub(crate) use dressed::V_DEGREES;
pub use dressed::{DieKind, DieSpec, Dressed, DressedSide};
pub use duty::{Coating, Duty};
pub use form::{Form, FormKind};
pub use gives::Gives;
pub use grown::GrownSpec;
pub(crate) use grown::Lean;
pub use hangs::Hangs;
pub use hole::{HoleKind, HoleSpec, Made};
pub use joint::{Joint, JointKind, Member};
pub use joint_side::JointSide;
pub use limits::{InBoth, Limits};
pub use logged::Logged;
pub use operation::Operation;
pub use outline::{OutlineKind, OutlineSpec};
pub(crate) use plate_hole::holes_words;
pub use plate_hole::{MOST_HOLES, PlateHole};
pub use practice::{CollarRule, Practice, SlitRule};
pub use repeat::{Repeat, RepeatFrom};
pub use runout::RunoutSpec;
pub use section::{SectionKind, SectionSpec};
pub use segment::Segment;
pub use sides::Sides;
pub use size_name::SizeName;
pub(crate) use size_name::{Looking, Visiting};
pub use split::{Branch, BranchFree, Opening, RootSpec};
pub use square::SquareSpec;
pub use target::Target;
pub use thickness::ThicknessSpec;
pub(crate) use tree::path_in;
pub use tree::{Chain, Flat};
pub use underlay::{Place, Underlay, UnderlayView};
pub use units::{PlanUnit, Units};
pub use via::Via;
pub use work::{Accepted, AnvilPlace, Deed, HammerSpec, HeatRules, HeatWish, Step, SwungBy, Work};

use crate::material::{self, Material};
use fh_measure::WrittenShare;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The version of the plan file that this program writes.
pub const FORMAT_VERSION: u32 = 1;

/// One job: a piece, or several alike, made of one bar or more.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Plan {
    /// The version of the file format: 1.
    #[schemars(range(min = 1, max = 1))]
    pub firstheat: u32,
    /// What the piece is called; may be empty.
    #[serde(default)]
    pub title: String,
    /// Free words about the job.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notes: Option<String>,
    /// The unit of lengths and the rounding of marks.
    #[serde(default)]
    pub units: Units,
    /// A name from the table of materials; mild steel where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none", deserialize_with = "spelling::material")]
    pub material: Option<String>,
    /// The share of metal lost to scale; none where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scale: Option<WrittenShare>,
    /// What the finished piece is used for, where that calls for a caution.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub duty: Option<Duty>,
    /// What the stock is coated with.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coating: Option<Coating>,
    /// The smith's own limits for the craft checks.
    #[serde(default, skip_serializing_if = "Limits::is_default")]
    pub limits: Limits,
    /// The smith's choice where the trade knows more than one rule.
    #[serde(default, skip_serializing_if = "Practice::is_default")]
    pub practice: Practice,
    /// How the finished piece hangs or stands, where it is not as its first bar was planned.
    #[serde(default, skip_serializing_if = "Hangs::is_default")]
    pub hangs: Hangs,
    /// A picture under the piece, to be traced.
    #[serde(default, rename = "sketch", alias = "underlay", skip_serializing_if = "Option::is_none")]
    pub underlay: Option<Underlay>,
    /// The bars of the piece: at least one.
    #[schemars(length(min = 1))]
    pub bars: Vec<Bar>,
    /// Where the bars are held together.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub joints: Vec<Joint>,
    /// Sizes that the finished piece is asked to have.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sizes: Vec<AskedSize>,
    /// The order of work, as far as the smith settled it.
    #[serde(default, skip_serializing_if = "Work::is_default")]
    pub work: Work,
}

impl Plan {
    /// The share for scale that a new plan is offered: a heat or two of a bar of 10 to 20 mm (common practice, no source).
    pub const USUAL_SCALE: &str = "2 %";

    /// A plan of one bar of the given stock with nothing on it yet, and no scale.
    pub fn new(title: &str, units: Units, stock: SectionSpec) -> Self {
        Self {
            firstheat: FORMAT_VERSION,
            title: title.to_owned(),
            notes: None,
            units,
            material: None,
            scale: None,
            duty: None,
            coating: None,
            limits: Limits::default(),
            practice: Practice::default(),
            hangs: Hangs::default(),
            underlay: None,
            bars: vec![Bar::new("bar", stock)],
            joints: Vec::new(),
            sizes: Vec::new(),
            work: Work::default(),
        }
    }

    /// The name of the material, with the default filled in.
    pub fn material_name(&self) -> &str {
        self.material.as_deref().unwrap_or(material::DEFAULT.name)
    }

    /// Its material's row in the table; that of the default where the table has none of its name.
    pub fn material(&self) -> &'static Material {
        material::find(self.material_name()).unwrap_or(&material::DEFAULT)
    }

    /// The segment at a place, counted through the bar, where there is one.
    pub fn segment(&self, bar: usize, segment: usize) -> Option<&Segment> {
        self.bars.get(bar)?.segment(segment)
    }
}

//! A form: what the hammer makes of a segment while the bar is still straight. Each form has a file of its own in `forms`.

use super::{Branch, Gives, GrownSpec, Operation, SectionSpec};
use crate::forms::{self, About, Block, OneForm};
use fh_measure::WrittenLength;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The form of a segment, with its sizes as written. A length that follows from the bend is left out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Form {
    /// Left as stock.
    Plain(forms::Plain),
    /// Drawn down to a section, or upset where the section is larger than the stock.
    Drawn(forms::Drawn),
    /// One section running into another, or into a point or an edge.
    Taper(forms::Taper),
    /// An abrupt set-down, or the step up again, with an inside radius.
    Shoulder(forms::Shoulder),
    /// A block isolated to be spread.
    Flag(forms::Flag),
    /// Metal left standing on one side for a sharp outside corner; its length follows from the bend `corner`.
    Peak(forms::Peak),
    /// A boss with a hole through its thickness.
    Hole(forms::Hole),
    /// A shouldered end, to be riveted or wedged in a hole.
    Tenon(forms::Tenon),
    /// A pin with a head made at both ends.
    Rivet(forms::Rivet),
    /// A strip wrapped round a bundle of bars; its length follows from the bundle by the collar rule.
    Collar(forms::Collar),
    /// Metal for the scarf, the upset and the waste of a fire weld.
    Weld(forms::Weld),
    /// The bar cut along its length; each branch is forged on its own.
    Split(forms::Split),
    /// A finial isolated and rounded to a ball.
    Ball(forms::Ball),
    /// A finial isolated and squared to a cube.
    Cube(forms::Cube),
    /// Cut off on purpose; not part of the finished piece.
    Trim(forms::Trim),
    /// What the tongs hold, or the rest of the bar; not part of the finished piece.
    Hold(forms::Hold),
    /// A block whose shape is not settled yet.
    Open(forms::Open),
}

/// The kinds of form, for lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FormKind {
    /// See [`Form::Plain`].
    Plain,
    /// See [`Form::Drawn`].
    Drawn,
    /// See [`Form::Taper`].
    Taper,
    /// See [`Form::Shoulder`].
    Shoulder,
    /// See [`Form::Flag`].
    Flag,
    /// See [`Form::Peak`].
    Peak,
    /// See [`Form::Hole`].
    Hole,
    /// See [`Form::Tenon`].
    Tenon,
    /// See [`Form::Split`].
    Split,
    /// See [`Form::Ball`].
    Ball,
    /// See [`Form::Cube`].
    Cube,
    /// See [`Form::Weld`].
    Weld,
    /// See [`Form::Rivet`].
    Rivet,
    /// See [`Form::Collar`].
    Collar,
    /// See [`Form::Trim`].
    Trim,
    /// See [`Form::Hold`].
    Hold,
    /// See [`Form::Open`].
    Open,
}

impl FormKind {
    /// The forms of which a length can be dressed in a die: of an even section, or of one running into another.
    pub const DRESSED: [Self; 3] = [Self::Plain, Self::Drawn, Self::Taper];

    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 17] = [
        Self::Plain,
        Self::Drawn,
        Self::Taper,
        Self::Shoulder,
        Self::Flag,
        Self::Peak,
        Self::Hole,
        Self::Tenon,
        Self::Split,
        Self::Ball,
        Self::Cube,
        Self::Weld,
        Self::Rivet,
        Self::Collar,
        Self::Trim,
        Self::Hold,
        Self::Open,
    ];

    /// The word for it.
    pub fn name(self) -> &'static str {
        self.about().name
    }

    /// One line that tells a smith what it is.
    pub fn summary(self) -> &'static str {
        self.about().summary
    }

    /// Whether a part of it can have shapes on the way.
    pub fn has_via(self) -> bool {
        !matches!(self, Self::Split | Self::Trim | Self::Hold | Self::Open)
    }

    fn about(self) -> About {
        match self {
            Self::Plain => forms::Plain::ABOUT,
            Self::Drawn => forms::Drawn::ABOUT,
            Self::Taper => forms::Taper::ABOUT,
            Self::Shoulder => forms::Shoulder::ABOUT,
            Self::Flag => forms::Flag::ABOUT,
            Self::Peak => forms::Peak::ABOUT,
            Self::Hole => forms::Hole::ABOUT,
            Self::Tenon => forms::Tenon::ABOUT,
            Self::Rivet => forms::Rivet::ABOUT,
            Self::Collar => forms::Collar::ABOUT,
            Self::Weld => forms::Weld::ABOUT,
            Self::Split => forms::Split::ABOUT,
            Self::Ball => forms::Ball::ABOUT,
            Self::Cube => forms::Cube::ABOUT,
            Self::Trim => forms::Trim::ABOUT,
            Self::Hold => forms::Hold::ABOUT,
            Self::Open => forms::Open::ABOUT,
        }
    }
}

impl Form {
    /// The form that it is, to be asked.
    pub(crate) fn one(&self) -> &dyn OneForm {
        match self {
            Self::Plain(form) => form,
            Self::Drawn(form) => form,
            Self::Taper(form) => form,
            Self::Shoulder(form) => form,
            Self::Flag(form) => form,
            Self::Peak(form) => form,
            Self::Hole(form) => form,
            Self::Tenon(form) => form,
            Self::Rivet(form) => form,
            Self::Collar(form) => form,
            Self::Weld(form) => form,
            Self::Split(form) => form,
            Self::Ball(form) => form,
            Self::Cube(form) => form,
            Self::Trim(form) => form,
            Self::Hold(form) => form,
            Self::Open(form) => form,
        }
    }

    /// The form that it is, to be changed.
    pub(crate) fn one_mut(&mut self) -> &mut dyn OneForm {
        match self {
            Self::Plain(form) => form,
            Self::Drawn(form) => form,
            Self::Taper(form) => form,
            Self::Shoulder(form) => form,
            Self::Flag(form) => form,
            Self::Peak(form) => form,
            Self::Hole(form) => form,
            Self::Tenon(form) => form,
            Self::Rivet(form) => form,
            Self::Collar(form) => form,
            Self::Weld(form) => form,
            Self::Split(form) => form,
            Self::Ball(form) => form,
            Self::Cube(form) => form,
            Self::Trim(form) => form,
            Self::Hold(form) => form,
            Self::Open(form) => form,
        }
    }

    /// Which kind this is.
    pub fn kind(&self) -> FormKind {
        match self {
            Self::Plain(_) => FormKind::Plain,
            Self::Drawn(_) => FormKind::Drawn,
            Self::Taper(_) => FormKind::Taper,
            Self::Shoulder(_) => FormKind::Shoulder,
            Self::Flag(_) => FormKind::Flag,
            Self::Peak(_) => FormKind::Peak,
            Self::Hole(_) => FormKind::Hole,
            Self::Tenon(_) => FormKind::Tenon,
            Self::Rivet(_) => FormKind::Rivet,
            Self::Collar(_) => FormKind::Collar,
            Self::Weld(_) => FormKind::Weld,
            Self::Split(_) => FormKind::Split,
            Self::Ball(_) => FormKind::Ball,
            Self::Cube(_) => FormKind::Cube,
            Self::Trim(_) => FormKind::Trim,
            Self::Hold(_) => FormKind::Hold,
            Self::Open(_) => FormKind::Open,
        }
    }

    /// The size that gives where the plan does not say: the length, where the form has one.
    pub fn default_gives(&self) -> Gives {
        self.one().default_gives()
    }

    /// The length as written, where the form has one of its own and it is given.
    pub fn length(&self) -> Option<&WrittenLength> {
        self.one().length()
    }

    /// Whether the bar stays as it is: its section is not its own, and no scale is reckoned.
    pub fn is_as_stock(&self) -> bool {
        self.one().is_as_stock()
    }

    /// What the hammer does to it while the bar is straight, in the order in which it has to be done.
    pub fn forging(&self, block: &Block<'_>) -> Vec<Operation> {
        self.one().forging(block)
    }

    /// The branches of a split; none of any other form.
    pub fn branches(&self) -> &[Branch] {
        match self {
            Self::Split(split) => &split.branches,
            _ => &[],
        }
    }

    /// Whether it is one plate with the part before it, without a neck between them.
    pub fn joins_before(&self) -> bool {
        self.one().joins_before()
    }

    /// Whether it is a peak whose metal is driven up once it is bent.
    pub fn is_driven_up(&self) -> bool {
        matches!(self, Self::Peak(peak) if peak.driven)
    }

    /// Whether it is metal of the finished piece.
    pub fn is_finished(&self) -> bool {
        self.one().is_finished()
    }
}

impl Form {
    /// The section of it that is left as it grows.
    pub(crate) fn grown(&self) -> Option<&GrownSpec> {
        let section = match self {
            Self::Drawn(forms::Drawn { section, .. }) => section,
            Self::Taper(forms::Taper { to, .. }) | Self::Shoulder(forms::Shoulder { to, .. }) => to,
            _ => return None,
        };
        match section {
            SectionSpec::Grown(grown) => Some(grown),
            _ => None,
        }
    }

    /// The same, to be changed.
    pub(crate) fn grown_mut(&mut self) -> Option<&mut GrownSpec> {
        let section = match self {
            Self::Drawn(forms::Drawn { section, .. }) => section,
            Self::Taper(forms::Taper { to, .. }) | Self::Shoulder(forms::Shoulder { to, .. }) => to,
            _ => return None,
        };
        match section {
            SectionSpec::Grown(grown) => Some(grown),
            _ => None,
        }
    }
}

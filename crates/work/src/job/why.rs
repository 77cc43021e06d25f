//! Why one thing has to come before another. All of it is common practice, no source, unless a source is named.

/// The reason of a rule of order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Why {
    /// Marks before everything.
    MarkFirst,
    /// A block is isolated before it or what is beside it is forged.
    IsolateFirst,
    /// Upsetting before the bar beside it is thinned.
    UpsetFirst,
    /// A part is forged before it is trimmed.
    ForgeBeforeTrim,
    /// A boss is forged before its hole is made.
    BossFirst,
    /// Of two blocks side by side the one at the end first.
    OuterFirst,
    /// A slit before it is drifted.
    SlitFirst,
    /// The hole at a slit's root before the slit.
    RootFirst,
    /// The slit before the branches.
    SplitFirst,
    /// The other branch aside before one is forged.
    AsideFirst,
    /// Branches are forged before they are brought back.
    BackLast,
    /// Thin parts after their neighbours.
    ThinLast,
    /// Before what goes thin toward it, the rest of the bar is parted off.
    PartForEnd,
    /// Parting off after what needs the bar to be held.
    PartLate,
    /// What the cut frees before the block that it is held by.
    HandleLast,
    /// Parting off before what the rest of the bar is in the way of.
    PartForBend,
    /// Trimming before the bend that it is in the way of.
    TrimBeforeBend,
    /// A part is forged before it is bent or twisted.
    ForgeBeforeBend,
    /// A hole before bending near it.
    HoleBeforeBend,
    /// A die dresses what is forged to its size.
    DieLate,
    /// Marks and stamps before the bend.
    StampBeforeBend,
    /// Straight and measured before the first bend.
    StraightFirst,
    /// A twist before the bends beside it.
    TwistFirst,
    /// What is closed in is brushed before.
    CleanFirst,
    /// The scarf after what lies beside it is forged.
    ScarfLate,
    /// Before a step down to what is thin beside the rest of the bar, that is parted off.
    PartForStep,
    /// What a taper runs down to, before the taper.
    TaperLast,
    /// A stub is drawn down along with the part beside it, before its step or its taper.
    StubAlong,
    /// The shapes on the way one after the other.
    ShapesInTurn,
    /// What is bent out of the way stays so while what lies beside it is forged.
    OutOfTheWay,
    /// The scarf before the bend that brings the ends together.
    ScarfFirst,
    /// The bend before the weld that closes it.
    CloseThenWeld,
    /// The inner bend before the one whose leg would be in the way.
    MiddleFirst,
    /// Rings and knuckles after all other bends.
    CloseLast,
    /// A socket before the bends of its bar.
    RollFirst,
    /// Welds before what is riveted, wedged or collared.
    WeldBeforeFit,
    /// What is put on one bar before that is closed into a frame.
    LooseFirst,
    /// A wrapped strip, a tenon or a rivet is ready before it is fitted.
    JoinLast,
    /// A steel that hardens is normalised after its last heat.
    NormaliseLast,
    /// Checking and finishing at the end.
    FinishLast,
}

impl Why {
    /// Every reason.
    pub const ALL: [Self; 40] = [
        Self::MarkFirst,
        Self::IsolateFirst,
        Self::UpsetFirst,
        Self::ForgeBeforeTrim,
        Self::BossFirst,
        Self::OuterFirst,
        Self::SlitFirst,
        Self::RootFirst,
        Self::SplitFirst,
        Self::AsideFirst,
        Self::BackLast,
        Self::ThinLast,
        Self::PartForEnd,
        Self::PartLate,
        Self::HandleLast,
        Self::PartForBend,
        Self::TrimBeforeBend,
        Self::ForgeBeforeBend,
        Self::HoleBeforeBend,
        Self::DieLate,
        Self::StampBeforeBend,
        Self::StraightFirst,
        Self::TwistFirst,
        Self::CleanFirst,
        Self::ScarfLate,
        Self::PartForStep,
        Self::TaperLast,
        Self::StubAlong,
        Self::ShapesInTurn,
        Self::OutOfTheWay,
        Self::ScarfFirst,
        Self::CloseThenWeld,
        Self::MiddleFirst,
        Self::CloseLast,
        Self::RollFirst,
        Self::WeldBeforeFit,
        Self::LooseFirst,
        Self::JoinLast,
        Self::NormaliseLast,
        Self::FinishLast,
    ];

    /// The id of the finding that tells of it when it is broken.
    pub fn id(self) -> &'static str {
        match self {
            Self::IsolateFirst => "mark-gone",
            Self::PartForEnd | Self::PartForBend | Self::CleanFirst | Self::CloseLast | Self::AsideFirst => {
                "out-of-reach"
            }
            Self::PartLate => "parted-too-soon",
            Self::ThinLast | Self::HandleLast => "thin-too-soon",
            Self::MiddleFirst => "leg-in-the-way",
            _ => "wrong-order",
        }
    }

    /// Why, in one sentence.
    pub fn reason(self) -> &'static str {
        match self {
            Self::MarkFirst => "Marks go on the cold, straight bar: later there is nothing to measure from.",
            Self::IsolateFirst => {
                "Once one side of a mark is drawn, the mark is gone and metal has crossed it; a neck keeps each block to itself."
            }
            Self::UpsetFirst => "A bar that is notched or thinned folds there before it thickens where it should.",
            Self::ForgeBeforeTrim => "What is forged afterwards grows past the cut again.",
            Self::BossFirst => "Forging round a hole pulls it out of shape.",
            Self::OuterFirst => {
                "While its neighbour is thick, the inner part has thick bar on both sides and cannot lie flat, so the one at the end goes first."
            }
            Self::SlitFirst => "The drift needs the slit to enter.",
            Self::RootFirst => "The slit runs into the hole and stops there; a sharp root cracks.",
            Self::SplitFirst => "The branches are there only once the bar is cut.",
            Self::AsideFirst => "The other branch is in the hammer's way.",
            Self::BackLast => "A branch that is brought back can no longer be laid flat on the anvil.",
            Self::ThinLast => "Thin metal burns or cools while its thick neighbour is heated.",
            Self::PartForEnd => "A thin end cannot be drawn while the rest of the bar hangs on it.",
            Self::PartLate => "While the bar is whole there is something to hold, and it stays out of the fire.",
            Self::HandleLast => {
                "A finished blade or points are no handle: while they are a full block, the other end is held by that."
            }
            Self::PartForBend => "The rest of the bar is in the way of the bend.",
            Self::TrimBeforeBend => "Once it is bent, neither chisel nor file gets at it squarely.",
            Self::ForgeBeforeBend => {
                "A bent part no longer lies flat on the anvil, and drawing it opens the bend again."
            }
            Self::HoleBeforeBend => {
                "While the bar is straight the boss lies flat and the punch stands square; a bend beside it is spoiled by punching."
            }
            Self::DieLate => "A die dresses what is to size: drawn afterwards, what it left is gone.",
            Self::StampBeforeBend => {
                "Equal steps are marked out on the straight part: on a bend they cannot be measured."
            }
            Self::StraightFirst => "Lengths can be checked, and corrected, only while the bar is straight.",
            Self::TwistFirst => "The wrench and the vice need straight bar at both ends of the twist.",
            Self::CleanFirst => "No brush can reach it once it is closed up.",
            Self::ScarfLate => "A thin lip burns, and is knocked about, while the bar beside it is forged.",
            Self::PartForStep => "The rest of the bar hangs on the thin side of the step, and bends it.",
            Self::TaperLast => "A taper that runs down to full bar ends in a step, which folds when that bar is drawn.",
            Self::StubAlong => {
                "A stub this short is drawn down along with the part beside it, before its step or its taper: left thick, it folds."
            }
            Self::ShapesInTurn => "Each shape on the way is made from the one before it.",
            Self::OutOfTheWay => {
                "What is bent out of the way is bent before the work that it makes room for, and opened again before the bar is measured."
            }
            Self::ScarfFirst => "The ends can be scarfed only while they are apart.",
            Self::CloseThenWeld => "The ends have to lie on each other before they are welded.",
            Self::MiddleFirst => "Bent the other way round, the leg that is already bent strikes the anvil.",
            Self::CloseLast => "A closed ring or knuckle is in the way of every other bend, and is pulled open by it.",
            Self::RollFirst => "A bent bar swings in the way of swage block and mandrel.",
            Self::WeldBeforeFit => "The heat of a weld loosens what is riveted or collared beside it.",
            Self::LooseFirst => "A loose bar lies on the anvil and turns in the hand; a frame does not.",
            Self::JoinLast => {
                "Parts are finished before they are put together: afterwards they cannot be turned in the fire one by one."
            }
            Self::NormaliseLast => "Forged or bent hot afterwards, its grain is coarse again.",
            Self::FinishLast => "Every heat makes new scale and moves what was checked.",
        }
    }

    /// How firmly a rule holds: where rules contradict each other, the lowest gives way.
    pub(crate) fn firmness(self) -> u8 {
        match self {
            Self::ThinLast | Self::PartLate | Self::HandleLast | Self::MiddleFirst | Self::OutOfTheWay => 1,
            Self::ScarfLate
            | Self::TaperLast
            | Self::PartForStep
            | Self::TwistFirst
            | Self::CloseLast
            | Self::RollFirst
            | Self::LooseFirst
            | Self::HoleBeforeBend
            | Self::CleanFirst
            | Self::OuterFirst
            | Self::UpsetFirst => 2,
            Self::StraightFirst | Self::FinishLast | Self::NormaliseLast | Self::JoinLast | Self::PartForBend => 3,
            _ => 4,
        }
    }
}

//! What a mark sheet says, settled in words and mm before anything is laid out.

use crate::sheets::fact_boxes::Fact;
use crate::sheets::findings::FindingWords;

/// The whole sheet.
pub(super) struct SheetWords {
    /// The title of the piece.
    pub(super) title: String,
    /// Free words about the job.
    pub(super) notes: String,
    /// One part for each bar.
    pub(super) bars: Vec<BarWords>,
}

/// The part of one bar.
pub(super) struct BarWords {
    /// Which bar it is.
    pub(super) name: String,
    /// Stock, cut length and the like.
    pub(super) facts: Vec<Fact>,
    /// The bar to be drawn; none where nothing is marked on it.
    pub(super) strip: Option<Strip>,
    /// The table of marks.
    pub(super) rows: Vec<TableRow>,
    /// The sizes that the finished piece is asked to have, each in a line.
    pub(super) sizes: Vec<String>,
    /// Stops and warnings.
    pub(super) findings: Vec<FindingWords>,
}

/// The starting bar, as it is drawn at full scale.
pub(super) struct Strip {
    /// Which end the marks start from, as it is printed.
    pub(super) datum: String,
    /// The height of the bar as it lies, in mm.
    pub(super) height_mm: f64,
    /// The length of the bar in mm.
    pub(super) length_mm: f64,
    /// The length of the bar in the shop's figures.
    pub(super) length: String,
    /// The marks after the datum, in order along the bar.
    pub(super) marks: Vec<StripMark>,
    /// The blocks between the marks, in order along the bar.
    pub(super) blocks: Vec<StripBlock>,
    /// The slits along the bar.
    pub(super) slits: Vec<Slit>,
    /// The marks on their branches, in order along the bar.
    pub(super) branch_marks: Vec<BranchMark>,
    /// The middles of holes.
    pub(super) holes: Vec<StripHole>,
    /// From where the bar is seen, and what the side is called that is up and punched.
    pub(super) seen: [&'static str; 2],
    /// Whether that is the wide side.
    pub(super) is_wide: bool,
    /// How many mm on paper one mm of the bar takes, at most 1.
    pub(super) scale: f64,
    /// The em that its labels are reduced to at least.
    pub(super) least: f64,
    /// Where the slits are, each in a sentence.
    pub(super) slit_words: Vec<String>,
}

impl Strip {
    /// The same strip so much smaller; what it says stays.
    pub(super) fn reduced(mut self, share: f64) -> Self {
        self.scale *= share;
        self.height_mm *= share;
        self.length_mm *= share;
        self.marks.iter_mut().for_each(|mark| mark.at_mm *= share);
        for block in &mut self.blocks {
            block.start_mm *= share;
            block.end_mm *= share;
        }
        self.slits.iter_mut().for_each(|slit| slit.reduce(share));
        self.branch_marks.iter_mut().for_each(|mark| mark.reduce(share));
        self.holes.iter_mut().for_each(|hole| hole.reduce(share));
        self
    }
}

/// One mark across the bar.
pub(super) struct StripMark {
    /// Its running number.
    pub(super) number: String,
    /// Its place from the datum, as printed beside it, in mm.
    pub(super) at_mm: f64,
    /// The running total beside it.
    pub(super) total: String,
    /// How it is struck.
    pub(super) kind: MarkKind,
    /// Whether the smith fixed it.
    pub(super) is_fixed: bool,
}

/// One block between two marks.
pub(super) struct StripBlock {
    /// What the smith calls it.
    pub(super) name: String,
    /// Its running number: that of the mark at its end.
    pub(super) number: String,
    /// Where it starts from the datum, in mm.
    pub(super) start_mm: f64,
    /// Where it ends, in mm.
    pub(super) end_mm: f64,
    /// What becomes of it.
    pub(super) fate: Fate,
}

/// A slit along the bar.
pub(super) struct Slit {
    /// Where it starts from the datum, in mm.
    pub(super) start_mm: f64,
    /// Where it ends, in mm.
    pub(super) end_mm: f64,
    /// How far each of its cuts lies above the bar's middle on paper, in mm.
    pub(super) cuts_mm: Vec<f64>,
    /// The ends that are rounded or drilled.
    pub(super) roots: Vec<Root>,
    /// Whether the cuts are on the face that is drawn; otherwise they are in its edge.
    pub(super) on_face: bool,
}

/// The end of a slit.
pub(super) struct Root {
    /// Where its middle lies from the datum, in mm.
    pub(super) at_mm: f64,
    /// Its radius in mm.
    pub(super) radius_mm: f64,
    /// Whether it is a hole of its own.
    pub(super) is_hole: bool,
}

/// A mark on one branch of a slit.
pub(super) struct BranchMark {
    /// Its running number: the branch's path.
    pub(super) path: String,
    /// Its place from the datum, as printed beside it, in mm.
    pub(super) at_mm: f64,
    /// The running total beside it.
    pub(super) total: String,
    /// The branch's lower and upper edge above the bar's middle on paper, in mm.
    pub(super) band_mm: [f64; 2],
    /// Whether it is told above the bar; otherwise below.
    pub(super) above: bool,
    /// Whether it is punched; otherwise it is only scribed.
    pub(super) is_punched: bool,
}

/// The middle of a hole, or of all holes across the bar at one end of a slit.
pub(super) struct StripHole {
    /// Its place from the datum, as printed beside it, in mm.
    pub(super) at_mm: f64,
    /// The running total beside it.
    pub(super) total: String,
    /// How far each lies above the bar's middle on paper, in mm.
    pub(super) across_mm: Vec<f64>,
    /// Whether it is told above the bar; otherwise below.
    pub(super) above: bool,
    /// Whether its own line crosses it: a root hole is drawn with its slit.
    pub(super) is_root: bool,
}

/// What becomes of a block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fate {
    /// It is metal of the finished piece.
    Stays,
    /// It is cut off on purpose.
    CutAway,
    /// The tongs hold it.
    Held,
    /// Its shape is not settled yet.
    Open,
}

/// How a mark is struck (common practice, no source).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum MarkKind {
    /// The bar is cut here before it is forged.
    Cut,
    /// What is trimmed or held is cut off here at some later step.
    CutLater,
    /// The edge of a set-down: punched, for it is worked to in the fire.
    SetDownEdge,
    /// A line beside another mark that is too near for both to be punched.
    LineOnly,
    /// A punch mark, seen on hot metal.
    CentrePunch,
    /// Not struck: what it lies in is hammered flat, and it is laid off again then.
    LaidOffAgain,
}

impl MarkKind {
    /// Whether it is punched, so that it is still seen on the hot bar; a scribed line burns off.
    pub(super) fn is_punched(self) -> bool {
        matches!(self, Self::CentrePunch | Self::CutLater | Self::SetDownEdge)
    }

    /// The words for it.
    pub(super) fn name(self) -> &'static str {
        match self {
            Self::Cut => "cut",
            Self::CutLater => "cut off later",
            Self::SetDownEdge => "punch the step",
            Self::LineOnly => "scribe",
            Self::CentrePunch => "punch",
            Self::LaidOffAgain => "not yet: mark it once flat",
        }
    }
}

/// One row of the table: a mark, and the block that ends at it.
#[derive(Default)]
pub(super) struct TableRow {
    /// The mark's running number.
    pub(super) number: String,
    /// The running total in the shop's figures.
    pub(super) total: String,
    /// The exact running total in mm.
    pub(super) exact_mm: String,
    /// How far the shop's figure is off, or empty.
    pub(super) off_by: String,
    /// Between what totals the mark may come out, where sizes have a tolerance; or empty.
    pub(super) total_between: String,
    /// From the mark before, in the shop's figures.
    pub(super) step: String,
    /// Between what steps it may come out; or empty.
    pub(super) step_between: String,
    /// What the smith calls the block.
    pub(super) block: String,
    /// What the block becomes, with further lines for its notes.
    pub(super) becomes: Vec<String>,
    /// Which side is set down or left standing.
    pub(super) side: String,
    /// How the mark is struck.
    pub(super) strike: String,
    /// How many splits the block lies within.
    pub(super) depth: usize,
    /// Whether it is no mark, but the middle of a hole.
    pub(super) is_hole: bool,
}

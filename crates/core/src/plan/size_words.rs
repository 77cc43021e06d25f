//! What a smith calls the sizes of a segment.

use super::SizeName;

impl SizeName {
    /// What a smith calls it.
    pub fn words(self) -> &'static str {
        match self {
            Self::Length => "length",
            Self::Width => "width",
            Self::Thickness => "thickness",
            Self::RootThickness => "thickness at the root",
            Self::TipThickness => "thickness at the tip",
            Self::Diameter => "diameter",
            Self::Side => "side",
            Self::Angle => "angle",
            Self::InsideRadius => "inside radius",
            Self::InsideDiameter => "inside diameter",
            Self::InnerRadius => "inner radius",
            Self::OuterRadius => "outer radius",
            Self::Turns => "turns",
            Self::Mandrel => "mandrel",
            Self::HowFarRound => "how far round",
            Self::BendToApex => "start of the bend to apex",
            Self::EdgeFibre => "edges stretched to",
            Self::Slit => "slit",
            Self::OtherSlit => "or a slit of",
            Self::BossShorter => "boss gets shorter by",
            Self::BossLonger => "boss gets longer by",
            Self::Punch => "punch",
            Self::Drill => "drill",
            Self::Scarf => "scarf",
            Self::Cut => "cut",
            Self::SecondCut => "second cut",
            Self::ThirdCut => "third cut",
            Self::FourthCut => "fourth cut",
            Self::FifthCut => "fifth cut",
            Self::EdgeRadius => "edge radius",
            Self::AcrossFlats => "across flats",
            Self::Height => "height",
            Self::RootWidth => "width at the root",
            Self::TipWidth => "width at the tip",
            Self::Corner => "place of a corner",
            Self::HoleDiameter => "diameter of the hole",
            Self::HoleSide => "side of the hole",
            Self::HoleLength => "length of the hole",
            Self::HoleWidth => "width of the hole",
            Self::Slug => "slug",
            Self::MiddleOfHole => "middle of the hole",
            Self::Grip => "grip",
            Self::Allowance => "allowance",
            Self::BundleWidth => "width of the bundle",
            Self::BundleHeight => "height of the bundle",
            Self::RootRadius => "radius at the root",
            Self::RootHole => "hole at the root",
            Self::Opening => "opening",
            Self::SlitLength | Self::CutLine | Self::Kerf => self.cut_words(),
            Self::Less => "less",
            Self::RowStep | Self::RowWidth | Self::RowMargin => self.row_words(),
            Self::DieRadius | Self::DressedFrom | Self::DressedLength | Self::DressedDepth => self.die_words(),
            Self::NearEdge => "edge at its start",
            Self::FarEdge => "edge at its end",
            Self::Base => "between the feet of the set-downs",
            Self::BetweenWalls => "between the walls of the set-downs",
            Self::Bite => "bite",
            _ => self.plate_words(),
        }
    }

    /// What a smith calls the sizes of a cut that is written.
    fn cut_words(self) -> &'static str {
        match self {
            Self::CutLine => "cut from the side",
            Self::Kerf => "saw's cut",
            _ => "length of the slit",
        }
    }

    /// What a smith calls the sizes of a row of marks.
    fn row_words(self) -> &'static str {
        match self {
            Self::RowWidth => "width of the row",
            Self::RowMargin => "margin of the row",
            _ => "step of the row",
        }
    }

    /// What a smith calls the sizes of what is dressed in a die.
    fn die_words(self) -> &'static str {
        match self {
            Self::DieRadius => "radius of the die",
            Self::DressedFrom => "start of what is dressed",
            Self::DressedLength => "length of what is dressed",
            _ => "depth of the die",
        }
    }

    /// What a smith calls the sizes of a plate that is cut to shape.
    fn plate_words(self) -> &'static str {
        match self {
            Self::BlankLength => "length of the blank",
            Self::BlankWidth => "width of the blank",
            Self::BlankRootWidth => "width of the blank at the root",
            Self::BlankTipWidth => "width of the blank at the tip",
            Self::BlankDiameter => "diameter of the blank",
            Self::BlankCorner => "place of a corner of the blank",
            Self::BlankBaseLine => "base line from the edge of the blank",
            Self::HoleAcross => "middle of the hole, across",
            _ => "base line from the edge",
        }
    }
}

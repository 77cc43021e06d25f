//! The pens and grays that a sheet is drawn with: black and white, so that any printer and any copier keeps them.

/// A gray, from black to white.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gray(u8);

impl Gray {
    /// Full ink.
    pub const BLACK: Self = Self(0);
    /// For words that come second. Still dark enough to read through soot.
    pub const DARK: Self = Self(70);
    /// For lines that only guide the eye.
    pub const MIDDLE: Self = Self(140);
    /// For the bar's face.
    pub const LIGHT: Self = Self(232);
    /// Bare paper.
    pub const WHITE: Self = Self(255);

    /// Its lightness, 0 for black to 255 for white.
    pub fn lightness(self) -> u8 {
        self.0
    }
}

/// A named style of line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pen {
    /// The edge of the metal.
    Outline,
    /// A mark across the bar.
    MarkLine,
    /// A mark where the bar is cut.
    CutLine,
    /// The datum end.
    DatumLine,
    /// A line of a known length, and its ticks.
    Dimension,
    /// From a mark to its figure.
    Leader,
    /// A cross that two strips are joined by.
    JoinCross,
    /// Where the paper is cut.
    ScissorLine,
    /// The frame around a box.
    Frame,
    /// A rule between rows.
    Hairline,
    /// An edge that is not seen, or that is there before something is cut off.
    Dashed,
    /// The middle of a bar or of a hole.
    CenterLine,
}

impl Pen {
    /// Its width in mm.
    pub fn width_mm(self) -> f64 {
        match self {
            Self::Outline => 0.5,
            Self::MarkLine => 0.3,
            Self::CutLine => 0.7,
            Self::DatumLine => 1.2,
            Self::Dimension | Self::Leader | Self::JoinCross | Self::ScissorLine => 0.2,
            Self::Frame => 0.4,
            Self::Hairline => 0.15,
            Self::Dashed => 0.25,
            Self::CenterLine => 0.18,
        }
    }

    /// Its gray.
    pub fn gray(self) -> Gray {
        match self {
            Self::Hairline | Self::ScissorLine => Gray::MIDDLE,
            _ => Gray::BLACK,
        }
    }

    /// The lengths of its dashes and gaps in mm; an unbroken line has none.
    pub fn dashes_mm(self) -> &'static [f64] {
        match self {
            Self::ScissorLine => &[2.0, 1.5],
            Self::Dashed => &[2.5, 1.5],
            Self::CenterLine => &[6.0, 1.2, 1.2, 1.2],
            _ => &[],
        }
    }

    /// The word for it, in text forms.
    pub fn name(self) -> &'static str {
        match self {
            Self::Outline => "outline",
            Self::MarkLine => "mark line",
            Self::CutLine => "cut line",
            Self::DatumLine => "datum line",
            Self::Dimension => "dimension",
            Self::Leader => "leader",
            Self::JoinCross => "join cross",
            Self::ScissorLine => "scissor line",
            Self::Frame => "frame",
            Self::Hairline => "hairline",
            Self::Dashed => "dashed line",
            Self::CenterLine => "centre line",
        }
    }
}

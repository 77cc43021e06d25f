//! The sheet of paper: its size, which way it lies, and the part of it that a printer reaches.

/// A size of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 mm × 297 mm (ISO 216).
    A4,
    /// 8 1/2 in × 11 in.
    Letter,
}

/// Which way the sheet lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Orientation {
    /// The short side on top.
    Portrait,
    /// The long side on top.
    Landscape,
}

/// A rectangle on the sheet, in mm from its top left corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// Its left edge.
    pub left: f64,
    /// Its top edge.
    pub top: f64,
    /// Its right edge.
    pub right: f64,
    /// Its bottom edge.
    pub bottom: f64,
}

/// What a home printer may leave white along each edge, in mm (common practice, no source).
pub const MARGIN_MM: f64 = 10.0;

impl Paper {
    /// Every size of paper, in the order they are offered.
    pub const ALL: [Self; 2] = [Self::A4, Self::Letter];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "Letter",
        }
    }

    /// Width and height of the sheet in mm, as it lies.
    pub fn size_mm(self, orientation: Orientation) -> (f64, f64) {
        let (short, long) = match self {
            Self::A4 => (210.0, 297.0),
            Self::Letter => (215.9, 279.4),
        };
        match orientation {
            Orientation::Portrait => (short, long),
            Orientation::Landscape => (long, short),
        }
    }

    /// The part of the sheet that can be printed on.
    pub fn printable(self, orientation: Orientation) -> Area {
        let (width, height) = self.size_mm(orientation);
        Area { left: MARGIN_MM, top: MARGIN_MM, right: width - MARGIN_MM, bottom: height - MARGIN_MM }
    }
}

impl Area {
    /// Its width in mm.
    pub fn width(self) -> f64 {
        self.right - self.left
    }

    /// Its height in mm.
    pub fn height(self) -> f64 {
        self.bottom - self.top
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn landscape_lays_the_long_side_on_top() {
        assert_eq!(Paper::A4.size_mm(Orientation::Landscape), (297.0, 210.0));
        assert_eq!(Paper::A4.size_mm(Orientation::Portrait), (210.0, 297.0));
        assert_eq!(Paper::Letter.size_mm(Orientation::Landscape), (279.4, 215.9));
    }

    #[test]
    fn margins_are_left_on_all_sides() {
        let area = Paper::Letter.printable(Orientation::Portrait);
        assert!((area.width() - 195.9).abs() < 1e-9);
        assert!((area.height() - 259.4).abs() < 1e-9);
    }
}

//! The kinds of text and their sizes.

use super::fonts;
use egui::{FontFamily, FontId, TextStyle};

/// A kind of text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Text {
    /// Units, hints, ticks of the ruler.
    Small,
    /// Everything that is read.
    Body,
    /// What stands out in a line.
    Strong,
    /// Figures that are read from a step away.
    Figure,
    /// The head of a group.
    Heading,
    /// The head of a dialog or an empty screen.
    Title,
}

impl Text {
    /// Every kind.
    pub const ALL: [Self; 6] = [Self::Small, Self::Body, Self::Strong, Self::Figure, Self::Heading, Self::Title];

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Self::Small => "Small",
            Self::Body => "Body",
            Self::Strong => "Strong",
            Self::Figure => "Figure",
            Self::Heading => "Heading",
            Self::Title => "Title",
        }
    }

    /// Its style, for labels and the like.
    pub fn style(self) -> TextStyle {
        match self {
            Self::Small => TextStyle::Small,
            Self::Body => TextStyle::Body,
            Self::Heading => TextStyle::Heading,
            Self::Strong | Self::Figure | Self::Title => TextStyle::Name(self.name().into()),
        }
    }

    /// Its font at so many times its normal size.
    pub fn font(self, scale: f32) -> FontId {
        let (points, family) = match self {
            Self::Small => (12.5, FontFamily::Proportional),
            Self::Body => (14.5, FontFamily::Proportional),
            Self::Strong => (14.5, fonts::strong()),
            Self::Figure => (18.0, fonts::strong()),
            Self::Heading => (15.0, fonts::strong()),
            Self::Title => (21.0, fonts::strong()),
        };
        FontId::new(points * scale, family)
    }
}

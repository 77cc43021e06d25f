//! The colors of the metal in the piece's picture.

use super::Theme;
use egui::{Color32, ColorImage};
use fh_piece::raster::Tone;

/// How much of the accent the metal in hand takes on.
const LIT: f32 = 0.62;
/// How much brighter the metal under the pointer is.
const POINTED_AT: f32 = 0.22;
/// How far metal goes toward the ink's ground in the shade, and toward white in the light.
const SHADE: f32 = 0.42;
const SHINE: f32 = 0.38;
/// On dark ground edges are light: the metal's own light must not reach them.
const SHINE_ON_DARK: f32 = 0.14;

/// How much of what lies behind it is hidden by metal that is held against a picture.
const COVER: f32 = 0.72;

/// A picture shown in its own colors.
pub(crate) const UNTINTED: Color32 = Color32::WHITE;

impl Theme {
    /// The tone of metal: selected or not, under the pointer or not.
    pub(crate) fn metal_tone(&self, selected: bool, pointed_at: bool) -> Tone {
        let plain = if selected { mix(self.forged_fill, self.accent, LIT) } else { self.forged_fill };
        let metal = if pointed_at { mix(plain, Color32::WHITE, POINTED_AT) } else { plain };
        // Where contrast is asked for nothing rests on a shade: edges carry the drawing.
        let depth = if self.high_contrast { 0.5 } else { 1.0 };
        let shine = if self.dark { SHINE_ON_DARK } else { SHINE };
        Tone {
            bright: rgb(mix(metal, Color32::WHITE, shine * depth)),
            dark: rgb(mix(metal, Color32::BLACK, SHADE * depth)),
            edge: rgb(if selected { self.accent_edge() } else { self.forged_edge }),
        }
    }

    /// The edges of metal that is selected: they must stand out from its own light.
    fn accent_edge(&self) -> Color32 {
        if self.dark { mix(self.accent, Color32::WHITE, SHADE) } else { mix(self.accent, Color32::BLACK, SHADE) }
    }
}

/// The tint of metal that lets what lies behind it through.
pub(crate) fn see_through() -> Color32 {
    UNTINTED.gamma_multiply(COVER)
}

/// A picture of pixels whose colors are multiplied by their cover.
pub(crate) fn picture(size: [usize; 2], pixels: &[[u8; 4]]) -> ColorImage {
    ColorImage::from_rgba_premultiplied(size, pixels.as_flattened())
}

/// A picture from outside, in its own colors: four bytes for each pixel.
pub(crate) fn own_colors(size: [usize; 2], bytes: &[u8]) -> ColorImage {
    ColorImage::from_rgba_unmultiplied(size, bytes)
}

fn mix(from: Color32, to: Color32, share: f32) -> Color32 {
    from.lerp_to_gamma(to, share)
}

fn rgb(color: Color32) -> [u8; 3] {
    [color.r(), color.g(), color.b()]
}

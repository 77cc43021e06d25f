//! The colors of the looks: cool sheet zinc and mill scale, steel greys for the bar, chalk for what is in hand, and a warm color for heat alone.

use super::Theme;
use egui::Color32;
use serde::{Deserialize, Serialize};

/// A look.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Look {
    /// Dark text on light ground.
    #[default]
    Light,
    /// Light text on dark ground.
    Dark,
    /// Black, white and strong colors.
    HighContrast,
}

impl Look {
    /// Every look, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Light, Self::Dark, Self::HighContrast];

    /// The words for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Light => "Light",
            Self::Dark => "Dark",
            Self::HighContrast => "High contrast",
        }
    }
}

/// A color by its six hexadecimal digits.
const fn hex(rgb: u32) -> Color32 {
    Color32::from_rgb((rgb >> 16) as u8, (rgb >> 8) as u8, rgb as u8)
}

pub(super) fn theme(look: Look, scale: f32) -> Theme {
    match look {
        Look::Light => light(scale),
        Look::Dark => dark(scale),
        Look::HighContrast => high_contrast(scale),
    }
}

fn light(scale: f32) -> Theme {
    Theme {
        ground: hex(0xe3e8ea),
        panel: hex(0xf1f3f4),
        panel_raised: hex(0xfcfdfd),
        rule: hex(0xc2cace),
        edge: hex(0x7d8992),
        ink: hex(0x172029),
        ink_quiet: hex(0x4c5862),
        stock_fill: hex(0xacb7be),
        stock_edge: hex(0x394650),
        forged_fill: hex(0xbfb2a8),
        forged_edge: hex(0x4c4038),
        hold_fill: hex(0xd3d9dc),
        band: hex(0xd1d8db),
        band_selected: hex(0xbccfda),
        accent: hex(0x34536a),
        on_accent: hex(0xffffff),
        hot: hex(0xdd8a2e),
        heat_cold: hex(0x2f2622),
        heat_red: hex(0xa02818),
        heat_pale: hex(0xfdf3c4),
        mark: hex(0x172029),
        stop: hex(0xa0141c),
        warning: hex(0x754a00),
        note: hex(0x275276),
        focus: hex(0x0a5aa8),
        chosen: hex(0xc9d6de),
        dark: false,
        high_contrast: false,
        scale,
    }
}

fn dark(scale: f32) -> Theme {
    Theme {
        ground: hex(0x15181b),
        panel: hex(0x1d2125),
        panel_raised: hex(0x282d32),
        rule: hex(0x3d444b),
        edge: hex(0x78838c),
        ink: hex(0xe8eaeb),
        ink_quiet: hex(0xa8b1b8),
        stock_fill: hex(0x58636c),
        stock_edge: hex(0xaeb9c1),
        forged_fill: hex(0x766960),
        forged_edge: hex(0xd6c7bb),
        hold_fill: hex(0x33393f),
        band: hex(0x262c31),
        band_selected: hex(0x33475a),
        accent: hex(0xc3d9e8),
        on_accent: hex(0x0d1519),
        hot: hex(0xc9742a),
        heat_cold: hex(0x241d1a),
        heat_red: hex(0xa02818),
        heat_pale: hex(0xfdf3c4),
        mark: hex(0xe8eaeb),
        stop: hex(0xff928c),
        warning: hex(0xf0bd5c),
        note: hex(0x8fc4f1),
        focus: hex(0x7cc1ff),
        chosen: hex(0x3b4a56),
        dark: true,
        high_contrast: false,
        scale,
    }
}

fn high_contrast(scale: f32) -> Theme {
    Theme {
        ground: hex(0x000000),
        panel: hex(0x000000),
        panel_raised: hex(0x141414),
        rule: hex(0xffffff),
        edge: hex(0xffffff),
        ink: hex(0xffffff),
        ink_quiet: hex(0xe0e0e0),
        stock_fill: hex(0x5a5a5a),
        stock_edge: hex(0xffffff),
        forged_fill: hex(0x3a3a3a),
        forged_edge: hex(0xffffff),
        hold_fill: hex(0x000000),
        band: hex(0x242424),
        band_selected: hex(0x26415c),
        accent: hex(0xd4ecff),
        on_accent: hex(0x000000),
        hot: hex(0xffb000),
        heat_cold: hex(0x000000),
        heat_red: hex(0xa02818),
        heat_pale: hex(0xfffbe0),
        mark: hex(0xffffff),
        stop: hex(0xff8484),
        warning: hex(0xffe066),
        note: hex(0x82d6ff),
        focus: hex(0xffff00),
        chosen: hex(0x003c78),
        dark: true,
        high_contrast: true,
        scale,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The contrast of two colors, 1 to 21 (Web Content Accessibility Guidelines 2.1, "contrast ratio").
    fn contrast(first: Color32, second: Color32) -> f64 {
        let [first, second] = [luminance(first), luminance(second)];
        (first.max(second) + 0.05) / (first.min(second) + 0.05)
    }

    fn luminance(color: Color32) -> f64 {
        let linear = |part: u8| {
            let part = f64::from(part) / 255.0;
            if part <= 0.04045 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * linear(color.r()) + 0.7152 * linear(color.g()) + 0.0722 * linear(color.b())
    }

    #[test]
    fn text_can_be_read_on_every_ground_it_stands_on() {
        for look in Look::ALL {
            let t = theme(look, 1.0);
            for ground in [t.ground, t.panel, t.panel_raised] {
                for ink in [t.ink, t.ink_quiet, t.accent, t.stop, t.warning, t.note, t.focus] {
                    let contrast = contrast(ink, ground);
                    assert!(contrast >= 4.5, "{look:?}: {ink:?} on {ground:?} has only {contrast:.2}");
                }
            }
            assert!(contrast(t.on_accent, t.accent) >= 4.5, "{look:?}: text on the accent");
            for ground in [t.band_selected, t.chosen] {
                assert!(contrast(t.ink, ground) >= 4.5, "{look:?}: text on {ground:?}");
            }
            assert!(
                contrast(t.edge, t.panel_raised) >= 3.0 && contrast(t.edge, t.panel) >= 3.0,
                "{look:?}: edges of fields"
            );
            assert!(contrast(t.stock_edge, t.ground) >= 3.0 && contrast(t.forged_edge, t.ground) >= 3.0, "{look:?}");
        }
    }
}

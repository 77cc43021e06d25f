//! The colors of the looks: cool sheet zinc and mill scale, steel greys for the bar, one warm color for what is in hand.

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
        ground: hex(0xe3_e8_ea),
        panel: hex(0xf1_f3_f4),
        panel_raised: hex(0xfc_fd_fd),
        rule: hex(0xc2_ca_ce),
        ink: hex(0x17_20_29),
        ink_quiet: hex(0x4c_58_62),
        stock_fill: hex(0xac_b7_be),
        stock_edge: hex(0x39_46_50),
        forged_fill: hex(0xbf_b2_a8),
        forged_edge: hex(0x4c_40_38),
        hold_fill: hex(0xd3_d9_dc),
        band: hex(0xd1_d8_db),
        band_selected: hex(0xf2_cf_ba),
        accent: hex(0xb3_3b_0c),
        on_accent: hex(0xff_ff_ff),
        mark: hex(0x17_20_29),
        stop: hex(0xa0_14_1c),
        warning: hex(0x75_4a_00),
        note: hex(0x27_52_76),
        focus: hex(0x0a_5a_a8),
        chosen: hex(0xc9_d6_de),
        dark: false,
        high_contrast: false,
        scale,
    }
}

fn dark(scale: f32) -> Theme {
    Theme {
        ground: hex(0x15_18_1b),
        panel: hex(0x1d_21_25),
        panel_raised: hex(0x28_2d_32),
        rule: hex(0x3d_44_4b),
        ink: hex(0xe8_ea_eb),
        ink_quiet: hex(0xa8_b1_b8),
        stock_fill: hex(0x58_63_6c),
        stock_edge: hex(0xae_b9_c1),
        forged_fill: hex(0x76_69_60),
        forged_edge: hex(0xd6_c7_bb),
        hold_fill: hex(0x33_39_3f),
        band: hex(0x26_2c_31),
        band_selected: hex(0x59_32_1f),
        accent: hex(0xff_8b_4d),
        on_accent: hex(0x1b_0e_06),
        mark: hex(0xe8_ea_eb),
        stop: hex(0xff_92_8c),
        warning: hex(0xf0_bd_5c),
        note: hex(0x8f_c4_f1),
        focus: hex(0x7c_c1_ff),
        chosen: hex(0x3b_4a_56),
        dark: true,
        high_contrast: false,
        scale,
    }
}

fn high_contrast(scale: f32) -> Theme {
    Theme {
        ground: hex(0x00_00_00),
        panel: hex(0x00_00_00),
        panel_raised: hex(0x14_14_14),
        rule: hex(0xff_ff_ff),
        ink: hex(0xff_ff_ff),
        ink_quiet: hex(0xe0_e0_e0),
        stock_fill: hex(0x5a_5a_5a),
        stock_edge: hex(0xff_ff_ff),
        forged_fill: hex(0x3a_3a_3a),
        forged_edge: hex(0xff_ff_ff),
        hold_fill: hex(0x00_00_00),
        band: hex(0x24_24_24),
        band_selected: hex(0x5c_34_00),
        accent: hex(0xff_a0_40),
        on_accent: hex(0x00_00_00),
        mark: hex(0xff_ff_ff),
        stop: hex(0xff_84_84),
        warning: hex(0xff_e0_66),
        note: hex(0x82_d6_ff),
        focus: hex(0xff_ff_00),
        chosen: hex(0x00_3c_78),
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
            assert!(contrast(t.stock_edge, t.ground) >= 3.0 && contrast(t.forged_edge, t.ground) >= 3.0, "{look:?}");
        }
    }
}

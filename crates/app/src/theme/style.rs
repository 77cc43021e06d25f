//! The theme carried over to the window library's own widgets.

use super::{Text, Theme, space};
use egui::style::{ScrollStyle, WidgetVisuals};
use egui::{Color32, CornerRadius, FontFamily, FontId, Margin, Shadow, Stroke, Style, TextStyle, vec2};

/// Sets everything about a style that is ours to choose.
pub(super) fn set(style: &mut Style, theme: &Theme) {
    set_text(style, theme);
    set_spacing(style, theme);
    set_colors(style, theme);
    set_widgets(style, theme);
    style.animation_time = 0.08;
    style.explanation_tooltips = false;
}

fn set_text(style: &mut Style, theme: &Theme) {
    for text in Text::ALL {
        style.text_styles.insert(text.style(), theme.font(text));
        style.text_styles.insert(TextStyle::Name(text.name().into()), theme.font(text));
    }
    let body = theme.font(Text::Body);
    style.text_styles.insert(TextStyle::Monospace, FontId::new(body.size, FontFamily::Monospace));
    style.text_styles.insert(TextStyle::Button, body);
}

fn set_spacing(style: &mut Style, theme: &Theme) {
    let spacing = &mut style.spacing;
    spacing.item_spacing = vec2(space::GAP, space::TIGHT);
    spacing.button_padding = vec2(space::GAP, space::TIGHT);
    spacing.interact_size = vec2(theme.scaled(space::TARGET), theme.scaled(space::TARGET));
    spacing.icon_width = theme.scaled(16.0);
    spacing.icon_width_inner = theme.scaled(10.0);
    spacing.icon_spacing = theme.scaled(6.0);
    spacing.window_margin = Margin::same(16);
    spacing.menu_margin = Margin::same(4);
    spacing.menu_width = theme.scaled(300.0);
    spacing.combo_width = theme.scaled(120.0);
    spacing.combo_height = theme.scaled(420.0);
    spacing.tooltip_width = theme.scaled(320.0);
    spacing.scroll = ScrollStyle {
        bar_width: 10.0,
        floating_width: 6.0,
        floating_allocated_width: 8.0,
        dormant_handle_opacity: 0.5,
        ..ScrollStyle::floating()
    };
}

fn set_colors(style: &mut Style, theme: &Theme) {
    let visuals = &mut style.visuals;
    visuals.dark_mode = theme.dark;
    visuals.override_text_color = None;
    visuals.weak_text_color = Some(theme.ink_quiet);
    visuals.hyperlink_color = theme.focus;
    visuals.faint_bg_color = theme.panel;
    visuals.extreme_bg_color = theme.panel_raised;
    visuals.text_edit_bg_color = Some(theme.panel_raised);
    visuals.code_bg_color = theme.panel_raised;
    visuals.warn_fg_color = theme.warning;
    visuals.error_fg_color = theme.stop;
    visuals.panel_fill = theme.panel;
    visuals.window_fill = theme.panel;
    visuals.window_stroke = Stroke::new(theme.hairline(), theme.rule);
    visuals.window_corner_radius = CornerRadius::same(2 * space::CORNER);
    visuals.menu_corner_radius = CornerRadius::same(space::CORNER);
    let shade = if theme.dark { 110 } else { 50 };
    let shadow = Shadow { offset: [0, 4], blur: 16, spread: 0, color: Color32::from_black_alpha(shade) };
    visuals.window_shadow = shadow;
    visuals.popup_shadow = shadow;
    visuals.selection.bg_fill = theme.chosen;
    visuals.selection.stroke = Stroke::new(space::LINE, theme.ink);
    visuals.disabled_alpha = 0.55;
}

fn set_widgets(style: &mut Style, theme: &Theme) {
    let edge = theme.hairline();
    let look = |fill: Color32, rule: Color32, line: f32, ink: Color32| WidgetVisuals {
        bg_fill: fill,
        weak_bg_fill: fill,
        bg_stroke: Stroke::new(line, rule),
        corner_radius: CornerRadius::same(space::CORNER),
        fg_stroke: Stroke::new(space::LINE, ink),
        expansion: 0.0,
    };
    let widgets = &mut style.visuals.widgets;
    widgets.noninteractive = look(theme.panel, theme.rule, edge, theme.ink);
    widgets.inactive = look(theme.panel_raised, theme.edge, edge, theme.ink);
    widgets.hovered = look(theme.panel_raised, theme.ink, edge, theme.ink);
    widgets.active = look(theme.chosen, theme.focus, space::LINE, theme.ink);
    widgets.open = look(theme.panel_raised, theme.ink, edge, theme.ink);
}

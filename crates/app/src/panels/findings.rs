//! The list of findings: what was seen, why it matters, what to do. Each selects its place.

use super::totals::says;
use crate::state::{Desk, Request, Told, told};
use crate::theme::{Text, space};
use crate::widgets::severity_sign::{color, sign};
use egui::text::LayoutJob;
use egui::{Id, Response, RichText, Role, ScrollArea, Sense, TextFormat, Ui, WidgetInfo, vec2};

/// How many findings are shown; the rest is counted. Each that is mended lets another one up.
const MOST: usize = 60;

/// Shows the list, no higher than this.
pub(crate) fn show(ui: &mut Ui, desk: &Desk<'_>, most_height: f32, out: &mut Vec<Request>) {
    let findings = told(desk);
    ui.label(RichText::new(says(&findings)).text_style(Text::Strong.style()).color(desk.theme.ink));
    ScrollArea::vertical().max_height(most_height).auto_shrink([false, true]).show(ui, |ui| {
        let newly = is_newly_looked_at(ui, desk);
        for (index, finding) in findings.iter().take(MOST).enumerate() {
            let is_looked_at = desk.finding == Some(index);
            let response = line(ui, desk, *finding, is_looked_at, out);
            if is_looked_at && newly {
                response.scroll_to_me(None);
            }
        }
        if findings.len() > MOST {
            let rest = format!("and {} more", findings.len() - MOST);
            ui.label(RichText::new(rest).color(desk.theme.ink_quiet));
        }
    });
}

/// Whether another finding is looked at than in the frame before: then it comes in sight.
fn is_newly_looked_at(ui: &Ui, desk: &Desk<'_>) -> bool {
    let last = Id::unique("the finding that was looked at");
    let before = ui.data(|data| data.get_temp::<Option<usize>>(last)).flatten();
    ui.data_mut(|data| data.insert_temp(last, desk.finding));
    before != desk.finding
}

fn line(ui: &mut Ui, desk: &Desk<'_>, told: Told<'_>, is_looked_at: bool, out: &mut Vec<Request>) -> Response {
    let (theme, finding) = (desk.theme, told.finding());
    let width = ui.available_width();
    let galley = ui.painter().layout_job(words(desk, told, width - 2.0 * space::GAP));
    let size = vec2(width, galley.size().y + 2.0 * space::TIGHT);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    let spoken = format!("{}: {}", finding.severity.name(), finding.message);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &spoken));
    if response.hovered() || response.has_focus() || is_looked_at {
        ui.painter().rect_filled(rect, space::CORNER, theme.panel_raised);
    }
    if response.has_focus() {
        ui.painter().rect_stroke(rect, space::CORNER, (space::LINE, theme.focus), egui::StrokeKind::Inside);
    }
    ui.painter().galley(rect.min + vec2(space::GAP, space::TIGHT), galley, theme.ink);
    let response = response.on_hover_text("Show the place.");
    if response.clicked() {
        out.push(told.show());
    }
    response
}

fn words(desk: &Desk<'_>, told: Told<'_>, width: f32) -> LayoutJob {
    let (theme, finding) = (desk.theme, told.finding());
    let mut job = LayoutJob::default();
    let tint = color(theme, finding.severity);
    let head = format!("{} {}", sign(finding.severity), finding.severity.name());
    job.append(&head, 0.0, TextFormat::simple(theme.font(Text::Strong), tint));
    if let Some(place) = told.place(desk) {
        job.append(&place, space::PAD, TextFormat::simple(theme.font(Text::Strong), theme.ink));
    }
    job.append(&finding.message, space::PAD, TextFormat::simple(theme.font(Text::Body), theme.ink));
    let rest = format!("{} {}", finding.reason, finding.remedy);
    job.append(&rest, space::GAP, TextFormat::simple(theme.font(Text::Body), theme.ink_quiet));
    job.wrap.max_width = width;
    job
}

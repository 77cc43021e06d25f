//! The templates: full-scale drawings of what the hot iron is laid on.

mod bend;
mod clip;
mod depth;
mod drawn;
pub(super) mod faces;
mod figure;
mod flat_outline;
mod lie;
mod measures;
mod numbers;
mod on_paper;
pub(super) mod plate;
mod plate_holes;
mod runs;
mod shelf;
pub(super) mod space;
mod template;
mod tiles;
mod words;

use self::bend::Bends;
use self::flat_outline::outline_template;
use self::shelf::Shelf;
use self::template::{Template, bar_heading, note};
use self::tiles::tiles;
use crate::sheets::cautions;
use crate::sheets::flow::{Block, Flow};
use crate::sheets::names::{bar_name, title};
use crate::sheets::title::title_block;
use fh_core::balance::{Balance, BarBalance};
use fh_core::cautions::Cautions;
use fh_core::plan::{Bar, Plan};
use fh_piece::{Piece, Quality, piece};

/// What stands over the templates (common practice, no source).
const LAY: &str = "Full scale. Paper burns: trace the lines in chalk onto sheet metal, and lay the hot iron on that.";
/// How parts of a large template are joined.
const JOIN: &str = "Cut out the parts and join them cross to cross, AB to AB.";

/// Puts the templates of a plan on the flow.
pub(super) fn put(flow: &mut Flow, plan: &Plan, balance: &Balance, warned: &Cautions) {
    let width = flow.width();
    flow.start_part(format!("{} · templates", title(plan)));
    flow.put(title_block(&title(plan), &only_bar(plan), "TEMPLATES", width).then_free(2.0));
    cautions::put_own(flow, warned);
    let piece = piece(plan, balance, Quality::Print);
    let mut any = false;
    for (index, (bar, worked)) in plan.bars.iter().zip(&balance.bars).enumerate() {
        let templates = templates_of(plan, (index, bar), worked, &piece, page(flow));
        if templates.is_empty() {
            continue;
        }
        if !any {
            flow.put(note(LAY, width).then_free(4.0));
        }
        any = true;
        let heading = (plan.bars.len() > 1).then(|| bar_heading(&bar_name(plan, index, bar)));
        put_all(flow, &templates, heading);
    }
    if !any {
        flow.put(note("Nothing on this piece is bent, spread or rolled: it needs no template.", width));
    }
    flow.fill_page();
}

/// The name of the bar where there is only one.
fn only_bar(plan: &Plan) -> String {
    match &plan.bars[..] {
        [bar] => bar_name(plan, 0, bar),
        _ => String::new(),
    }
}

/// What a page has room for, under a template's name.
fn page(flow: &Flow) -> [f64; 2] {
    const HEAD_MM: f64 = 14.0;
    [flow.width(), flow.page_room() - HEAD_MM]
}

/// The templates of a bar: spread blocks, then bends; those that are alike once.
fn templates_of(
    plan: &Plan,
    (index, bar): (usize, &Bar),
    worked: &BarBalance,
    piece: &Piece,
    page: [f64; 2],
) -> Vec<Template> {
    let flats = worked.segments.iter().enumerate();
    let flats = flats.filter_map(|(number, balance)| outline_template(plan, bar, number, balance, page));
    let bends = Bends { plan, bar, index, worked, piece };
    let mut all: Vec<Template> = Vec::new();
    for template in flats.chain(bends.templates(page)) {
        match all.iter_mut().find(|other| other.figure == template.figure && other.lines == template.lines) {
            Some(alike) => alike.name = format!("{}, {}", alike.name, template.name),
            None => all.push(template),
        }
    }
    all
}

/// Puts templates side by side and below each other, the bar's heading over the first of them.
fn put_all(flow: &mut Flow, templates: &[Template], heading: Option<Block>) {
    let mut shelf = Shelf::under(heading);
    for template in templates {
        // Better closer together than on a further page.
        let here = [flow.width(), flow.room() - template::HEADING_MM];
        match template.whole(here).or_else(|| template.whole(room(flow))) {
            Some(wide) => shelf.add(flow, wide),
            None => {
                shelf.put(flow);
                put_in_parts(flow, template);
            }
        }
    }
    shelf.put(flow);
}

/// What a page has room for, under a bar's heading.
fn room(flow: &Flow) -> [f64; 2] {
    [flow.width(), flow.page_room() - template::HEADING_MM]
}

/// A template that is larger than the page with its words.
fn put_in_parts(flow: &mut Flow, template: &Template) {
    let width = flow.width();
    let parts = tiles(&template.figure, page(flow));
    let Some(parts) = parts else {
        flow.put(template.head(width).over(note("It is too large to be printed at full scale.", width)));
        return;
    };
    let several = parts.len() > 1;
    for (index, tile) in parts.iter().enumerate() {
        let mut head = template.name.clone();
        if several {
            head = format!("{head}, part {} of {}", tile.letters, parts.len());
        }
        if several && index == 0 {
            head = format!("{head}. {JOIN}");
        }
        let drawn = Block { height: tile.height, items: tile.items.clone() };
        flow.put(note(&head, width).then_free(3.0).over(drawn).then_free(3.0));
    }
    flow.put(template.words(width).then_free(4.0));
}

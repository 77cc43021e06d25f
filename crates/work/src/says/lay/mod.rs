//! How the bar is laid, turned and struck in a step: common practice, no source.

pub(crate) mod bent;
pub(crate) mod drawn;
pub(crate) mod flat;
pub(crate) mod joined;
mod left;
pub(crate) mod rocks;
pub(crate) mod upset;

use crate::bar::held::least_mm;
use crate::bar::progress::Progress;
use crate::job::beside::{is_fullered_alone, is_thicker_than_bar};
use crate::job::kind::is_slit;
use crate::job::legs::WayToBend;
use crate::job::part::{is_beside_a_hold, is_drilled, is_filed_to_its_neck, is_sawn};
use crate::job::site::{Part, Site, extents, in_mm};
use crate::job::task::{Task, operations};
use crate::says::dies;
use crate::says::heat_with::normalise_words;
use crate::says::marks::leaves_marks_out;
use crate::says::necks;
use crate::says::plate_holes;
use crate::says::words::hot_length;
use fh_core::describe::marked_side_words;
use fh_core::forms;
use fh_core::metal::{FreeEnd, SectionSize, Shape, View};
use fh_core::plan::{Form, JointKind, Operation};

const ON_THE_EDGE: &str = "Lay the mark on the edge, what goes thin on the face, and strike half on, half off.";

const FULLER_ALONE: &str =
    "Wholly under the spring fuller, on the thin side of the mark: neither hammer nor edge goes in there.";

const FULLERED: &str = "Begin with the spring fuller, wholly on the thin side of the mark.";

/// How a bend that helped is opened.
const OPENED_AGAIN: &str = "Heat all of the bend, and open it on the face with light blows from outside, from its ends to its middle; look inside it for a gall, and file that out before you go on.";

/// Whatever a branch is forged to, its cut faces are reached once it stands apart.
const SMOOTH: &str =
    "Then smooth the cut faces, and round the root, before a branch is forged: a ragged face folds into a cold shut.";

const FROM_THE_EDGES: &str =
    "Strike its two edges only: it is already to thickness. Turn it over after every few blows.";

const FROM_TOP_AND_BOTTOM: &str =
    "Strike top and bottom only: it is already to width. Turn it over after every few blows.";

const BOTH: &str = "Turn it over after every few blows, so that both sides go down evenly.";

/// How the bar is laid and turned, in words; none where it does not matter.
pub(crate) fn lay(site: &Site<'_>, task: &Task, ways: &[WayToBend], progress: &Progress) -> Option<String> {
    match task.part {
        Some(at) => of_part(site, task, site.part(at)?, ways, progress),
        None if task.operation == Operation::Mark && site.flat.len() < 2 => None,
        None if task.operation == Operation::Mark => Some(marked(site)),
        None if task.operation == Operation::Normalise => normalise_words(site.plan),
        None => of_bar(site, task.operation).map(str::to_owned),
    }
}

fn of_bar(site: &Site<'_>, operation: Operation) -> Option<&'static str> {
    Some(match operation {
        Operation::Straighten => "Light blows on the face in what is left of the heat, sighting along it.",
        Operation::Check if has_bends(site) => {
            "True it first: sight along it, lay it on a flat plate, and correct it warm."
        }
        Operation::Brush if is_framed(site) => {
            "True it first: on a flat plate it must neither rock nor stand off; tap down what is high."
        }
        Operation::Wax => "Warm it until wax just melts on it, no more.",
        _ => return None,
    })
}

/// How the bar lies for marking, and what is punched. All sides that are named later hang on that.
fn marked(site: &Site<'_>) -> String {
    let view = site.balance.marked_view();
    let [wide, thick] = extents(&site.balance.stock);
    let lain = if (wide - thick).abs() > 1e-6 { "Lay it flat," } else { "Lay it with" };
    let turned = if view == View::Side { "; turn it towards you" } else { "" };
    let datum = site.bar.datum_name();
    let mut all = vec![format!(
        "{lain} the {datum} at your left. Square each mark across the side that is up, and punch it lightly. From now on that side is the {}{turned}.",
        marked_side_words(view)
    )];
    let laid = site.balance.laid_off();
    match laid.holes.iter().partition::<Vec<_>, _>(|hole| hole.is_hammered) {
        (hammered, punched) if hammered.is_empty() && punched.is_empty() => {}
        (hammered, punched) if punched.is_empty() && !hammered.is_empty() => {
            all.push("Do not punch the middles of the holes: the hammer takes them.".to_owned());
        }
        (hammered, _) if hammered.is_empty() => all.push("Punch the middles of the holes.".to_owned()),
        _ => all.push(
            "Punch the middles of the holes, but not in what is flattened later: the hammer takes them.".to_owned(),
        ),
    }
    if !laid.slits.is_empty() {
        all.push("Scribe the lines of the slits.".to_owned());
    }
    if leaves_marks_out(site) {
        all.push("Of two marks beside a short step only the one on its thick side is struck.".to_owned());
    }
    all.join(" ")
}

/// Whether the hole of a part cannot be punched with the marks, because its boss is forged after that.
pub(crate) fn is_hammered(site: &Site<'_>, at: usize) -> bool {
    site.balance.laid_off().holes.iter().any(|hole| hole.segment == at && hole.is_hammered)
}

fn has_bends(site: &Site<'_>) -> bool {
    site.parts().any(|part| part.balance.bent.is_some())
}

/// Whether bars of the plan are riveted or collared to a frame.
fn is_framed(site: &Site<'_>) -> bool {
    site.plan.joints.iter().any(|joint| matches!(joint.kind, JointKind::Rivet | JointKind::Tenon | JointKind::Collar))
}

/// How a slit is cut; where its branches are not bent apart to be forged it is wedged open for its cut faces.
fn split(site: &Site<'_>, part: Part<'_>) -> String {
    let cut = "Cut along the line, half through; then turn it over, and meet the cut from the other side.";
    if let Some(free) = cut_free(site, part) {
        return format!("{cut} {free}");
    }
    if operations(site, part).contains(&Operation::BendAside) {
        return cut.to_owned();
    }
    format!(
        "{cut} Then wedge it open a little, smooth the cut faces, and round the root: a ragged face folds into a cold shut."
    )
}

/// How the tip of a branch comes free that leaves the bar: at a step, or by a cut across; none where none leaves it.
pub(crate) fn cut_free(site: &Site<'_>, part: Part<'_>) -> Option<String> {
    let size = site.split_size(part.at).filter(|_| site.has_leaving_branch(part.at))?;
    let beside = site.beside(part.at)[usize::from(size.opens() == FreeEnd::Far)];
    if beside.is_some_and(|at| matches!(site.flat[at].segment.form, Form::Shoulder(_))) {
        return Some("At the step its tip comes free.".to_owned());
    }
    let leaving = size.branches.iter().find(|branch| branch.free != FreeEnd::Neither)?;
    let deep = crate::says::words::length_words(site.plan, in_mm(leaving.raw_width));
    Some(format!("Then cut across to it at its free end, {deep} deep and no deeper, so that the tip comes free."))
}

fn of_part(site: &Site<'_>, task: &Task, part: Part<'_>, ways: &[WayToBend], progress: &Progress) -> Option<String> {
    use Operation as O;
    let is_closed = site.is_closed_slit(part.at);
    let words = match (task.operation, &part.segment.form) {
        (O::SetDown, Form::Peak(_)) => return part.balance.standing.as_ref().map(|left| left::words(site, part, left)),
        (O::SetDown, form) => {
            let under = if is_fullered_alone(site, part) { None } else { rocks::set_down(site, part, progress) };
            let words: Vec<String> = std::iter::once(set_down(site, part, form)).chain(under).collect();
            return Some(words.join(" "));
        }
        (O::Isolate, _) => return necks::words(site, part),
        (O::Draw | O::Taper, _) => return Some(drawn::words(site, part, progress)),
        (O::Upset, Form::Rivet(forms::Rivet { allowance, .. })) => {
            let out = crate::says::words::length_words(site.plan, allowance.mm());
            return Some(format!("Leave {out} above the header for the head; strike it square before you round it."));
        }
        (O::Upset, _) => return Some(upset::words(site, part)),
        (O::Scarf, _) => return Some(joined::scarf(site, part)),
        (O::Weld, _) => {
            return Some(joined::weld(site.plan.material(), &joined::lap_words(site, part), joined::Blows::OnTheFace));
        }
        (O::Spread | O::Flatten, _) => return Some(flat::spread(site, part)),
        (O::Split, _) => return Some(split(site, part)),
        (O::BendAside, _) => {
            let apart = if is_closed {
                "Drive a wedge or a drift through the slit, until each branch can be laid over the thin end of the horn."
            } else {
                "Bend them until they stand at a right angle to each other: each can then be laid on the anvil, the other clear of the hammer and of the edge."
            };
            return Some(format!("{apart} {SMOOTH}"));
        }
        (O::Straighten, _) if is_closed => "Knock them straight, and side by side again, with light blows all round.",
        (O::Straighten, Form::Split(_)) => "Bring them in line again, with light blows.",
        (O::Straighten, _) => OPENED_AGAIN,
        (O::Trim | O::PartOff | O::Punch | O::Drill | O::Drift, _) => return cut(site, task, part),
        (O::Open, _) => return Some(bent::opened(site, part)),
        (O::Twist, _) => return Some(bent::twisted(site, part)),
        (O::Stamp, _) => "Step them off cold with the dividers; then cut or strike them evenly, square across.",
        (O::Dress, _) => return Some(dies::lay(site, part)),
        (O::Brush, _) => {
            "Brush it hot, all round, as it comes out of the fire to be closed in; then close it at once. Brushed cold it scales again in the next heat."
        }
        (O::Bend, Form::Collar(_)) => {
            "Bend it to a U round the mandrel, its legs even and open: it is closed hot, on the bars that it binds."
        }
        (O::Bend | O::Corner | O::Roll, _) => return bent::words(site, task, part, ways),
        _ => return None,
    };
    Some(words.to_owned())
}

/// How a part is cut off, trimmed or pierced.
fn cut(site: &Site<'_>, task: &Task, part: Part<'_>) -> Option<String> {
    use Operation as O;
    let words = match (task.operation, &part.segment.form) {
        (O::Trim, Form::Trim(_)) if is_sawn(site, part) => {
            "Saw it cold at the mark towards the piece; what falls off is waste."
        }
        (O::Trim, Form::Trim(_)) if is_beside_a_hold(site, part) => {
            "Cut at the mark towards the piece. The rest of the bar comes off with it: keep that."
        }
        (O::Trim, Form::Trim(_)) => "Cut at the mark towards the piece; what falls off is waste.",
        (O::Trim, Form::Flag(_)) => return Some(flat::trimmed(site, part)),
        (O::Trim, _) if is_filed_to_its_neck(site, part) => return Some(bent::filed_to_its_neck(site, part)),
        (O::PartOff, Form::Hold(_)) => return Some(parted_off(site, part)),
        (O::Drill, Form::Flag(_)) => return Some(plate_holes::laid_off(part, O::Drill)),
        (O::Punch, Form::Flag(_)) => {
            let how = if is_slit(site, task) { flat::slit(site, part) } else { flat::punched(site, part) };
            return Some(format!("{} {how}", plate_holes::laid_off(part, O::Punch)));
        }
        (O::Punch, Form::Hole(_)) if is_slit(site, task) => return Some(flat::slit(site, part)),
        (O::Punch, _) if is_drilled(site, part) => {
            "Drill it cold, from both sides to the middle: a punch this thin bends and sticks in a hole this deep."
        }
        (O::Punch, _) => return Some(flat::punched(site, part)),
        (O::Drill, Form::Hole(_)) if is_hammered(site, part.at) => {
            "Lay off its middle on the flat boss, and punch it for the drill."
        }
        (O::Drift, _) => return Some(flat::drifted(site, part)),
        _ => return None,
    };
    Some(words.to_owned())
}

/// How the rest of the bar comes off, and what it is still good for: the next piece, where enough of it is left to hold that by.
fn parted_off(site: &Site<'_>, part: Part<'_>) -> String {
    let cut = "Cut at the mark, all round and nearly through, and break it off";
    let left = in_mm(part.balance.stock_length);
    let piece = in_mm(site.balance.stock_length) - left;
    if left >= piece + least_mm(site) {
        return format!("{cut}; keep the rest for the next piece.");
    }
    format!("{cut}. What is left, {}, is too short for another: keep it for small work.", hot_length(site.plan, left))
}

/// Whether a step makes the bar narrower, and whether it makes it thinner.
fn shrinks(part: Part<'_>) -> [bool; 2] {
    /// What keeps such a share of its size is not set down: common practice, no source.
    const KEPT: f64 = 0.98;
    let Some(Shape::Shoulder { from, to, .. }) = &part.balance.shape else { return [true; 2] };
    let (large, small) = if to.area() < from.area() { (from, to) } else { (to, from) };
    let [large, small] = [large, small].map(extents);
    [0, 1].map(|way| small[way] < KEPT * large[way])
}

/// How a bar is turned while a step goes down all round, by the section that it is set down to.
fn all_round(part: Part<'_>) -> &'static str {
    let small = match &part.balance.shape {
        Some(Shape::Shoulder { from, to, .. }) if to.area() < from.area() => Some(to),
        Some(Shape::Shoulder { from, .. }) => Some(from),
        Some(Shape::Prism { section, .. }) => Some(section),
        _ => None,
    };
    match small {
        Some(SectionSize::Octagon { .. }) => {
            "Square first, a quarter turn after every blow; then an eighth: it keeps the step on one line all round."
        }
        Some(SectionSize::Round { .. }) => {
            "Square first, a quarter turn after every blow; then an eighth, and round it last: it keeps the step on one line all round."
        }
        Some(SectionSize::Hexagon { .. }) => "A sixth of a turn after every blow keeps the step on one line all round.",
        _ => "A quarter turn after every blow keeps the step on one line all round.",
    }
}

fn set_down(site: &Site<'_>, part: Part<'_>, form: &Form) -> String {
    let sides = match form {
        Form::Shoulder(forms::Shoulder { sides, .. }) => {
            [0, 90, 180, 270].into_iter().filter(|side| sides.contains(*side)).count()
        }
        Form::Tenon(_) if is_thicker_than_bar(site, part) => {
            return format!(
                "{ON_THE_EDGE} Only the two sides that become smaller go down; let it grow thicker across them, where it has no shoulder."
            );
        }
        _ => 4,
    };
    let turned = match (sides, shrinks(part)) {
        (0 | 1, _) => return ON_THE_EDGE.to_owned(),
        (3.., [true, false]) => FROM_THE_EDGES,
        (3.., [false, true]) => FROM_TOP_AND_BOTTOM,
        (4, _) => all_round(part),
        _ => BOTH,
    };
    if is_fullered_alone(site, part) {
        return format!("{FULLER_ALONE} {turned}");
    }
    let fullered = if sides > 2 && matches!(form, Form::Shoulder(_)) { FULLERED } else { "" };
    format!("{fullered} {ON_THE_EDGE} {turned}").trim().to_owned()
}

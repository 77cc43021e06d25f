//! Tools: which ones a step asks for, of which size, and why. Common practice, no source, unless one is named.

use crate::job::beside::{is_between_one_sided, is_between_thicker, is_flat_on_a_block, is_fullered_alone, is_long};
use crate::job::kind::is_slit_first;
use crate::job::neck::{FullerRoom, fuller_mm, fuller_room, plate_zones};
use crate::job::part::{is_drawn_in, is_drilled, is_filed, is_sawn, written_between_mm};
use crate::job::site::{Part, Site, extents, in_mm};
use crate::job::task::{Task, is_hot, operations};
use crate::job::upsets::upset_length_mm;
use crate::says::bend_tools::bend;
use crate::says::lay::drawn::{is_stub, taper_section};
use crate::says::notches;
use crate::says::plate_holes;
use crate::says::shop::ToolKind;
use crate::says::usual::{self, Fit};
use crate::says::wanted::{HOT, Wanted};
use crate::says::words::length_words;
use fh_core::balance::tolerance_mm;
use fh_core::forms;
use fh_core::metal::{HoleInPlate, HoleSize, RootSize, SectionSize, Shape};
use fh_core::plan::{Form, JointKind, Made, Operation, SizeName};

/// A bore is so much wider than what goes into it, in mm: common practice, no source.
const CLEAR: f64 = 0.1;

/// Why a brush.
const BRUSHED: &str = "Scale that is closed in or waxed over comes off later and takes the finish with it.";

/// The tools that a task asks for, the main one first.
pub(crate) fn wanted(site: &Site<'_>, task: &Task) -> Vec<Wanted> {
    use Operation as O;
    use ToolKind as K;
    if let Some(joint) = task.joint {
        return joint_tools(site, joint, is_hot(site, task));
    }
    let Some(part) = task.part.and_then(|at| site.part(at)) else { return of_bar(site, task.operation) };
    match task.operation {
        O::Isolate => vec![neck(site, part)],
        O::SetDown => set_down(site, part),
        O::Draw | O::Taper | O::Upset => drawn(site, part, task.operation),
        O::Flatten if is_drawn_in(site, part) => vec![Wanted::plain(K::Hammer, "On the edges, with its flat.")],
        O::Stamp => vec![Wanted::plain(K::ColdChisel, "It cuts or strikes the lines.")],
        O::Spread | O::Flatten => {
            let peen = "The ridge along the bar drives the metal sideways; then smooth its marks out with the face.";
            std::iter::once(Wanted::plain(K::CrossPeen, peen)).chain(between_thicker(site, part)).collect()
        }
        O::Split => vec![Wanted::plain(K::SlitChisel, "A thin chisel with a slightly rounded edge follows the line.")],
        O::Punch if is_drilled(site, part) => {
            vec![Wanted::sized(site, K::Drill, drilled_mm(part), "", "The hole is too deep for a punch this thin.")]
        }
        O::Punch | O::Drift => {
            let mut all = hole(site, part, task.operation);
            all.extend(under_the_hole(site, part, task.operation));
            all
        }
        O::Drill => hole(site, part, task.operation),
        O::Trim if is_filed(part) => {
            let is_flag = matches!(part.segment.form, Form::Flag(_));
            let outline = "Too little is left outside the outline to cut: file it.";
            let file =
                Wanted::plain(K::File, if is_flag { outline } else { "The end is hollowed to lie on its neck." });
            let notched = notches::tools(site, part).into_iter().filter(|tool| tool.kind != K::File);
            std::iter::once(file).chain(notched).collect()
        }
        O::Trim if matches!(part.segment.form, Form::Flag(_)) => {
            let chisel = Wanted::plain(K::HotChisel, "The outline is cut while it is hot, on the soft step.");
            std::iter::once(chisel).chain(notches::tools(site, part)).collect()
        }
        O::Trim if is_sawn(site, part) => {
            vec![Wanted::plain(K::Saw, "Too little for a hot cut to bite: saw it off cold.")]
        }
        O::Trim | O::PartOff => vec![Wanted::plain(K::CutOff, "It is cut nearly through, and broken off.")],
        O::Weld => weld(site, "Light, quick blows."),
        O::BendAside if site.is_closed_slit(part.at) => {
            vec![Wanted::plain(K::Drift, "Driven through the slit, it opens the branches.")]
        }
        O::Scarf | O::BendAside | O::Straighten => vec![Wanted::plain(K::Hammer, "Light, quick blows.")],
        O::Bend | O::Corner | O::Roll | O::Open | O::Twist => bend(site, part),
        O::Dress => crate::says::dies::tools(site, part),
        O::Brush => vec![Wanted::plain(K::Brush, BRUSHED)],
        _ => Vec::new(),
    }
}

/// The tools of what is done to the whole bar.
fn of_bar(site: &Site<'_>, operation: Operation) -> Vec<Wanted> {
    use ToolKind as K;
    match operation {
        Operation::Mark if site.flat.len() < 2 => {
            vec![Wanted::plain(K::Saw, "It is cut to length, its ends square.")]
        }
        Operation::Mark => {
            let saw = site.bar.length.is_none().then(|| Wanted::plain(K::Saw, &cut_to_length(site)));
            let punch = Wanted::plain(K::CenterPunch, "A mark that is punched in is still seen on the hot bar.");
            saw.into_iter().chain([punch]).collect()
        }
        Operation::Brush => vec![Wanted::plain(K::Brush, BRUSHED)],
        Operation::Straighten => vec![Wanted::plain(K::Hammer, "Light blows, so that no size is changed.")],
        _ => Vec::new(),
    }
}

/// How wide a hole is that is drilled in place of a punch, in mm.
fn drilled_mm(part: Part<'_>) -> f64 {
    match &part.balance.shape {
        Some(Shape::Split(size)) => match size.root {
            Some(RootSize::Hole(diameter)) => in_mm(diameter),
            _ => 0.0,
        },
        Some(Shape::Hole { hole, .. }) => in_mm(hole.width()),
        _ => 0.0,
    }
}

/// Why a bar is sawn before it is marked; an end that is cut off later is not cut twice.
fn cut_to_length(site: &Site<'_>) -> String {
    let ends = [site.chains[0].1.first(), site.chains[0].1.last()];
    let later = ends.into_iter().flatten().find(|at| matches!(site.flat[**at].segment.form, Form::Trim(_)));
    match later.map(|at| site.name(*at)) {
        Some(name) => {
            format!("The bar is cut to length before it is marked; “{name}” stays as it is until it is cut off.")
        }
        None => "The bar is cut to length before it is marked, its ends square.".to_owned(),
    }
}

fn joint_tools(site: &Site<'_>, joint: usize, is_hot: bool) -> Vec<Wanted> {
    let kind = site.plan.joints.get(joint).map(|joint| joint.kind);
    match kind {
        Some(JointKind::Rivet | JointKind::Tenon) => {
            let torch = Wanted::plain(ToolKind::Torch, "It heats what stands out, and leaves the frame cold.");
            let set = Wanted::plain(ToolKind::RivetSet, "A cupped tool gives every head the same round.");
            let sunk =
                Wanted::plain(ToolKind::Countersink, "The hole makes room for the round root of the tenon's step.");
            let is_tenon = kind == Some(JointKind::Tenon);
            std::iter::once(set).chain(is_tenon.then_some(sunk)).chain(is_hot.then_some(torch)).collect()
        }
        Some(JointKind::Collar) => {
            vec![Wanted::plain(ToolKind::CollarSet, "It closes the collar without bruising the bars.")]
        }
        Some(JointKind::Weld) => weld(site, "The first blows are light and quick."),
        _ => Vec::new(),
    }
}

/// What a weld is made with; nothing where the metal does not weld.
fn weld(site: &Site<'_>, blows: &str) -> Vec<Wanted> {
    let Some(weld) = site.plan.material().weld else { return Vec::new() };
    let flux = Wanted::plain(ToolKind::Flux, "It keeps scale out of the seam.");
    vec![Wanted::plain(ToolKind::Hammer, blows), Wanted { other_way: weld.other_flux.unwrap_or_default(), ..flux }]
}

/// What goes in between the thicker bar on both sides of a flattened part: a block below it, a set hammer over it.
fn between_thicker(site: &Site<'_>, part: Part<'_>) -> Vec<Wanted> {
    if !is_flat_on_a_block(site, part) {
        return Vec::new();
    }
    // It goes in from the first blow on.
    let of = |part: Part<'_>| {
        let upset = operations(site, part).contains(&Operation::Upset);
        let before = if upset { upset_length_mm(site, part) } else { in_mm(part.balance.stock_length) };
        before.min(in_mm(part.balance.forged_length))
    };
    let long = plate_zones(site, part.at).into_iter().filter_map(|at| site.part(at)).map(of).sum::<f64>();
    let sized = |kind: ToolKind, reason: &str| Wanted::whole(site, kind, (long, Fit::Down), "no longer than ", reason);
    vec![
        sized(ToolKind::BottomBlock, "Short enough for the thicker bar on both sides to hang clear."),
        sized(
            ToolKind::SetHammer,
            "It goes in between the thicker bar on both sides, where the hammer's face does not.",
        ),
    ]
}

/// What a boss between thicker bar is pierced on.
fn under_the_hole(site: &Site<'_>, part: Part<'_>, operation: Operation) -> Vec<Wanted> {
    if !is_flat_on_a_block(site, part) {
        return Vec::new();
    }
    let wide = match &part.balance.shape {
        Some(Shape::Hole { hole, .. }) => in_mm(hole.length().max(hole.width())),
        Some(shape) => {
            let widest = |hole: &HoleInPlate| in_mm(hole.hole.length().max(hole.hole.width()));
            shape.plate_holes().iter().map(widest).fold(0.0, f64::max)
        }
        None => 0.0,
    };
    let wide = written_between_mm(part, wide).map_or(wide, |[_, widest]| widest);
    let bolster = "The thicker bar on both sides hangs clear of it, and what comes through has a hole to go into.";
    let block = between_thicker(site, part).into_iter().take(1);
    let bolster = Wanted::whole(site, ToolKind::Bolster, (wide, Fit::Up), "hole larger than ", bolster);
    // A slit is cut on a soft plate, and what is drifted needs the hole alone.
    match operation {
        Operation::Drift => vec![bolster],
        _ if is_slit_first(&part.segment.form) => block.collect(),
        _ => block.chain([bolster]).collect(),
    }
}

/// A fuller that is as wide as the gap it works in, and no wider than it has room for.
fn neck(site: &Site<'_>, part: Part<'_>) -> Wanted {
    let [width, thickness] = extents(&site.raw_section(part.at));
    let FullerRoom { usual, room, block } = fuller_room(site, part);
    let size = fuller_mm(site, part);
    let half = width.min(thickness) / 2.0;
    let reason = if size > half {
        "The narrowest that necks without cutting, and starts no cold shut.".to_owned()
    } else if size < usual && room <= block {
        "It is as wide as the gap between its neighbours.".to_owned()
    } else if size < usual {
        "A wider one would take up more than half of a block this short.".to_owned()
    } else {
        "Half as wide as the bar is thick: a sharper one cuts, and starts a cold shut.".to_owned()
    };
    let all_round = matches!(part.segment.form, Form::Ball(_) | Form::Cube(_));
    let kind = if all_round { ToolKind::SpringFuller } else { ToolKind::Fuller };
    Wanted::usual(site, kind, [usual::fuller_mm(site.plan, size, Fit::Down), size], "", &reason)
}

/// How wide the fuller is that sets a shoulder down all round, in mm: as round as the inside of the step; none of a shoulder on
/// one or two sides, and of other parts.
pub(crate) fn shoulder_fuller_mm(part: Part<'_>) -> Option<f64> {
    /// No fuller is thinner: common practice, no source.
    const THINNEST: f64 = 4.0;
    let Form::Shoulder(forms::Shoulder { sides, .. }) = &part.segment.form else { return None };
    let all_round = [0, 90, 180, 270].iter().filter(|side| sides.contains(**side)).count() > 2;
    let Some(Shape::Shoulder { radius, .. }) = &part.balance.shape else { return None };
    all_round.then(|| (2.0 * in_mm(*radius)).max(THINNEST))
}

fn set_down(site: &Site<'_>, part: Part<'_>) -> Vec<Wanted> {
    use ToolKind as K;
    let sides = match &part.segment.form {
        Form::Shoulder(forms::Shoulder { sides, .. }) => {
            [0, 90, 180, 270].iter().filter(|side| sides.contains(**side)).count()
        }
        Form::Tenon(_) | Form::Peak(_) => 0,
        _ => 4,
    };
    let hammer = Wanted::plain(K::Hammer, "Half on and half off the edge of the anvil, which makes the step.");
    let alone = is_fullered_alone(site, part);
    match shoulder_fuller_mm(part) {
        Some(wide) if sides > 2 => {
            let reason = "It sets all sides down to one line; as round as the inside of the step.";
            let own = usual::fuller_mm(site.plan, wide, Fit::Near);
            let fuller = Wanted::usual(site, K::SpringFuller, [own, wide], "", reason);
            std::iter::once(fuller).chain((!alone).then_some(hammer)).collect()
        }
        _ => vec![hammer],
    }
}

fn drawn(site: &Site<'_>, part: Part<'_>, operation: Operation) -> Vec<Wanted> {
    use ToolKind as K;
    if let Form::Rivet(_) = part.segment.form {
        return vec![Wanted::plain(K::Header, "It holds the shank while the first head is formed.")];
    }
    let reason = match operation {
        Operation::Upset => "On the end of the bar, in line with it.",
        _ if is_long(site, part) => "Over the horn first, which lengthens it faster; then on the face.",
        _ => "On the face of the anvil, with the flat of the hammer.",
    };
    let mut all = vec![Wanted::plain(K::Hammer, reason)];
    if operation == Operation::Upset {
        return all;
    }
    if is_stub(site, part) {
        all.push(Wanted::plain(K::File, "It squares an end that was drawn too short to stay flat."));
    }
    if is_between_one_sided(site, part) {
        let long = in_mm(part.balance.stock_length);
        let reason = "It goes in between the steps, on the side that they go down.";
        all.push(Wanted::whole(site, K::SetHammer, (long, Fit::Down), "no longer than ", reason));
    } else if is_between_thicker(site, part) {
        all.push(Wanted::plain(K::SpringFuller, "It goes in where the hammer's face is too wide."));
    }
    if let (Operation::Taper, Some(Shape::Taper { from, to, .. })) = (operation, &part.balance.shape) {
        // A round end is worked square, eight-sided and round with the hammer.
        let section = taper_section(from, to);
        all.extend(swage(site, section).filter(|_| matches!(section, SectionSize::HalfRound { .. })));
    }
    if let (Operation::Draw, Some(Shape::Prism { section, .. })) = (operation, &part.balance.shape) {
        all.extend(swage(site, section));
        if let Form::Tenon(_) = part.segment.form {
            all.push(monkey_tool(site, section));
        }
    }
    all
}

/// A block with a hole of a tenon's own shape, that goes over the hot tenon where that is as stout as its step allows.
fn monkey_tool(site: &Site<'_>, section: &SectionSize) -> Wanted {
    let reason = "Driven over the tenon, it squares up the shoulder.";
    let over = |cold: f64| (cold + tolerance_mm(site.plan, cold)) * HOT + CLEAR;
    let [wide, thick] = extents(section).map(over);
    let sized = |measure: &str| Wanted::sized(site, ToolKind::MonkeyTool, wide.max(thick), measure, reason);
    match section {
        SectionSize::Round { .. } => sized("bored to "),
        SectionSize::Square { .. } => sized("with a square hole "),
        _ => {
            let size = [wide, thick].map(|mm| length_words(site.plan, mm));
            let words = format!("{}, with a hole {} × {}", ToolKind::MonkeyTool.name(), size[0], size[1]);
            Wanted { words, ..sized("") }
        }
    }
}

/// The swage of a section that a hammer's flat does not give.
fn swage(site: &Site<'_>, section: &SectionSize) -> Option<Wanted> {
    Some(match *section {
        SectionSize::Round { diameter } => {
            let best = in_mm(diameter);
            let own = usual::swage_mm(site.plan, best);
            let reason = "The one for a bar so thick, or the next larger: turn the bar in it.";
            Wanted::usual(site, ToolKind::Swage, [own, best], "groove for ", reason)
        }
        SectionSize::HalfRound { width, .. } => {
            let (best, groove) = (in_mm(width), "half-round groove for ");
            let swage = Wanted::whole(site, ToolKind::Swage, (best, Fit::Near), groove, "It gives the round side.");
            Wanted { other_way: "Draw it flat to width × thickness, then round one side only.", ..swage }
        }
        _ => return None,
    })
}

fn hole(site: &Site<'_>, part: Part<'_>, operation: Operation) -> Vec<Wanted> {
    use ToolKind as K;
    let size = |name| part.balance.derived_length(name).map(in_mm);
    match (&part.balance.shape, operation) {
        (Some(Shape::Split(split)), _) => match split.root {
            Some(RootSize::Hole(diameter)) => {
                vec![Wanted::sized(site, K::Punch, in_mm(diameter), "", "The slit ends in its hole.")]
            }
            _ => Vec::new(),
        },
        (Some(Shape::Flag { .. }), _) => plate_holes::tools(site, part, operation),
        (Some(Shape::Hole { hole, .. }), Operation::Drift) => {
            const OWN_SHAPE: &str = "It has the shape of the hole, and a long taper to start it.";
            let across = match *hole {
                HoleSize::Round { diameter } => in_mm(diameter),
                HoleSize::Square { side } => in_mm(side),
                HoleSize::Slot { width, .. } => in_mm(width),
            };
            let drift = Wanted::sized(site, K::Drift, across, "", OWN_SHAPE);
            vec![match *hole {
                HoleSize::Slot { length, .. } => {
                    let long = length_words(site.plan, in_mm(length));
                    Wanted { words: format!("drift, {long} × {}", length_words(site.plan, across)), ..drift }
                }
                _ => drift,
            }]
        }
        (Some(Shape::Hole { hole, .. }), Operation::Drill) => {
            vec![Wanted::sized(site, K::Drill, in_mm(hole.width()), "", "As wide as the hole.")]
        }
        (Some(Shape::Hole { hole, .. }), _) => {
            let slit = matches!(part.segment.form, Form::Hole(forms::Hole { made: Made::Drifted, .. }));
            let wide = size(if slit { SizeName::Slit } else { SizeName::Punch }).unwrap_or_else(|| in_mm(hole.width()));
            if slit {
                let reason = "No longer than the slit; it takes no metal out.";
                vec![Wanted::whole(site, K::SlitChisel, (wide, Fit::Down), "edge ", reason)]
            } else {
                vec![Wanted::sized(site, K::Punch, wide, "", "As wide as the slug that it drives out.")]
            }
        }
        _ => Vec::new(),
    }
}

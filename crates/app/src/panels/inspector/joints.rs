//! The joints of the plan: which bars meet, at which segments, on which sides.

mod member;

use crate::state::{Desk, Request, joint_to_open};
use crate::theme::{Text, space};
use crate::widgets::entry::Entry;
use crate::widgets::{Sizing, chooser, fields, heading};
use egui::{Button, CollapsingHeader, RichText, Ui};
use fh_core::describe::short_name;
use fh_core::edit::Edit;
use fh_core::plan::{Bar, Joint, JointKind, Member, Plan};

/// Shows the joints, and a button for another one.
pub(super) fn show(ui: &mut Ui, sizing: &Sizing<'_>, desk: &Desk<'_>, out: &mut Vec<Request>) {
    let plan = desk.document.plan();
    heading::show(ui, sizing.theme, "Joints");
    let mut next = plan.joints.clone();
    let mut removed = None;
    let opened = joint_to_open();
    let to_open = ui.data_mut(|data| data.remove_temp::<usize>(opened));
    for (index, joint) in next.iter_mut().enumerate() {
        let header = CollapsingHeader::new(format!("Joint {}: {}", index + 1, in_words(joint)));
        let header = header.id_salt(("joint", index)).open((to_open == Some(index)).then_some(true));
        header.show(ui, |ui| {
            if sizes(ui, sizing, plan, joint, index + 1) {
                removed = Some(index);
            }
        });
    }
    if let Some(index) = removed {
        next.remove(index);
    }
    if let Some(joint) = add(ui, sizing, plan) {
        ui.data_mut(|data| data.insert_temp(opened, next.len()));
        next.push(joint);
    }
    if next != plan.joints {
        out.push(Request::Edit(Edit::SetJoints(next)));
    }
}

/// What a joint is called, or what it joins.
fn in_words(joint: &Joint) -> String {
    if !joint.name.trim().is_empty() {
        return short_name(&joint.name);
    }
    let moved = joint.moved.first().map_or("", |member| member.segment.as_str());
    format!("{}, {} to {}", joint.kind.name(), short_name(&joint.fixed.segment), short_name(moved))
}

/// The button that adds a joint; it is dead where no segment has a name to be joined by.
fn add(ui: &mut Ui, sizing: &Sizing<'_>, plan: &Plan) -> Option<Joint> {
    let named: Vec<&Bar> = plan.bars.iter().filter(|bar| !bar.name.is_empty() && first_named(bar).is_some()).collect();
    let pair = named.first().zip(named.last());
    let tip = "Say where bars join. The findings check the fit, and the piece is put together from the joints.";
    let button = ui.add_enabled(pair.is_some(), Button::new("Add a joint")).on_hover_text(tip);
    if pair.is_none() {
        let words = "First name the bars and parts that meet.";
        ui.label(RichText::new(words).text_style(Text::Small.style()).color(sizing.theme.ink_quiet));
    }
    let (fixed, moved) = pair.filter(|_| button.clicked())?;
    let member = |bar: &Bar| first_named(bar).map(|segment| Member::new(&bar.name, segment));
    Some(Joint { name: String::new(), kind: JointKind::Tenon, fixed: member(fixed)?, moved: vec![member(moved)?] })
}

/// The first segment of a bar that has a name.
fn first_named(bar: &Bar) -> Option<&str> {
    bar.flat().iter().map(|flat| flat.segment.name.as_str()).find(|name| !name.is_empty())
}

/// Shows one joint; whether it is to be taken out.
fn sizes(ui: &mut Ui, sizing: &Sizing<'_>, plan: &Plan, joint: &mut Joint, number: usize) -> bool {
    let name = format!("Name of joint {number}");
    if let Some(typed) = fields::words(ui, sizing, &Entry::named("Name", &name).hint("none"), &joint.name) {
        joint.name = typed;
    }
    let kinds: Vec<_> = JointKind::ALL.into_iter().map(|kind| (kind, kind.name().to_owned())).collect();
    let name = format!("Kind of joint {number}");
    if let Some(kind) = chooser::show(ui, sizing.theme, "Kind", &name, joint.kind, &kinds) {
        joint.kind = kind;
    }
    let about = RichText::new(joint.kind.summary()).text_style(Text::Small.style()).color(sizing.theme.ink_quiet);
    ui.label(about);
    lead(ui, sizing, "Fixed part");
    let of = format!("of what stays in joint {number}");
    ui.push_id("fixed", |ui| member::show(ui, sizing, plan, &mut joint.fixed, (&of, false)));
    let mut removed = None;
    let several = joint.moved.len() > 1;
    for (index, member) in joint.moved.iter_mut().enumerate() {
        let place = index + 1;
        lead(ui, sizing, &format!("Moved part {place}"));
        let of = format!("of part {place} of joint {number}");
        ui.push_id(("moved", index), |ui| member::show(ui, sizing, plan, member, (&of, true)));
        if several && ui.button(format!("Remove part {place} of joint {number}")).clicked() {
            removed = Some(index);
        }
    }
    if let Some(index) = removed {
        joint.moved.remove(index);
    }
    ui.add_space(space::GAP);
    if ui.button(format!("Add a part to joint {number}")).clicked()
        && let Some(last) = joint.moved.last().cloned()
    {
        joint.moved.push(last);
    }
    ui.button(format!("Remove joint {number}")).clicked()
}

fn lead(ui: &mut Ui, sizing: &Sizing<'_>, words: &str) {
    ui.add_space(space::GAP);
    ui.label(RichText::new(words).text_style(Text::Strong.style()).color(sizing.theme.ink));
}

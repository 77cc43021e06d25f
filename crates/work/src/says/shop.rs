//! What the smith owns: tools by kind and size. It is the smith's own, not the plan's.

use crate::fire::learnt::Experience;
use crate::fire::smith::Smith;
use serde::{Deserialize, Serialize};

/// A kind of tool.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ToolKind {
    /// A hand hammer.
    Hammer,
    /// A hammer with a ridge across.
    CrossPeen,
    /// A center punch.
    CenterPunch,
    /// A saw that cuts a cold bar.
    Saw,
    /// A cutter in the hardy hole.
    CutOff,
    /// A chisel that cuts along the bar.
    SlitChisel,
    /// A thin chisel that cuts hot outlines.
    HotChisel,
    /// A top tool that squares a shoulder.
    SetHammer,
    /// A round-nosed tool that necks the bar.
    Fuller,
    /// Two fullers on a spring, for necks all round.
    SpringFuller,
    /// A grooved tool for round sections.
    Swage,
    /// A punch.
    Punch,
    /// A drift.
    Drift,
    /// A drill.
    Drill,
    /// A tool that takes the sharp edge off a hole.
    Countersink,
    /// A round bar to bend or roll on.
    Mandrel,
    /// Two upright pins to bend between.
    BendingFork,
    /// A block with a notch, for corners and for rolling.
    VBlock,
    /// A wrench that turns a square bar.
    TwistWrench,
    /// A block with a hole that squares the shoulder round a tenon.
    MonkeyTool,
    /// A holed plate for heads.
    Header,
    /// A cupped tool for rivet heads.
    RivetSet,
    /// A tool that closes collars.
    CollarSet,
    /// Tongs.
    Tongs,
    /// A vice.
    Vice,
    /// A steel brush.
    Brush,
    /// A block in the hardy hole, shorter than what is worked on it.
    BottomBlock,
    /// A block with a hole, to punch and drift over.
    Bolster,
    /// A file.
    File,
    /// A chisel or a stamp for lines on cold metal.
    ColdChisel,
    /// What keeps scale out of a weld.
    Flux,
    /// A gas torch, that heats what stands out and no more.
    Torch,
}

impl ToolKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 32] = [
        Self::Hammer,
        Self::CrossPeen,
        Self::CenterPunch,
        Self::Saw,
        Self::CutOff,
        Self::SlitChisel,
        Self::HotChisel,
        Self::SetHammer,
        Self::Fuller,
        Self::SpringFuller,
        Self::Swage,
        Self::Punch,
        Self::Drift,
        Self::Drill,
        Self::Countersink,
        Self::Mandrel,
        Self::BendingFork,
        Self::VBlock,
        Self::TwistWrench,
        Self::MonkeyTool,
        Self::Header,
        Self::RivetSet,
        Self::CollarSet,
        Self::Tongs,
        Self::Vice,
        Self::Brush,
        Self::BottomBlock,
        Self::Bolster,
        Self::File,
        Self::ColdChisel,
        Self::Flux,
        Self::Torch,
    ];

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Hammer => "hammer",
            Self::CrossPeen => "cross-peen hammer",
            Self::CenterPunch => "centre punch",
            Self::Saw => "saw",
            Self::CutOff => "hot cut",
            Self::SlitChisel => "slitting chisel",
            Self::HotChisel => "hot chisel",
            Self::SetHammer => "set hammer",
            Self::Fuller => "fuller",
            Self::SpringFuller => "spring fuller",
            Self::Swage => "swage",
            Self::Punch => "punch",
            Self::Drift => "drift",
            Self::Drill => "drill",
            Self::Countersink => "countersink",
            Self::Mandrel => "mandrel",
            Self::BendingFork => "bending fork",
            Self::VBlock => "V-block",
            Self::TwistWrench => "twisting wrench",
            Self::MonkeyTool => "monkey tool",
            Self::Header => "header",
            Self::RivetSet => "rivet set",
            Self::CollarSet => "collar set",
            Self::Tongs => "tongs",
            Self::Vice => "vice",
            Self::Brush => "wire brush",
            Self::BottomBlock => "bottom block",
            Self::Bolster => "bolster",
            Self::File => "file",
            Self::ColdChisel => "cold chisel or stamp",
            Self::Flux => "flux",
            Self::Torch => "gas torch",
        }
    }

    /// Whether every smithy has it: it is never told as missing.
    pub fn is_in_every_smithy(self) -> bool {
        matches!(
            self,
            Self::Hammer | Self::CenterPunch | Self::Saw | Self::CutOff | Self::Vice | Self::Brush | Self::File
        )
    }

    /// Another way where it is missing. Common practice, no source.
    pub fn other_way(self) -> &'static str {
        match self {
            Self::Hammer | Self::CenterPunch | Self::Saw | Self::CutOff | Self::Vice | Self::Brush | Self::File => "",
            // The metal's row says what serves.
            Self::Flux => "",
            Self::Torch => "Head a rivet hot out of the fire; what is part of a frame, cold, with many light blows.",
            Self::ColdChisel => "File the lines in, or saw them lightly.",
            Self::Bolster => {
                "A heavy nut or a short piece of pipe, bare, not plated, as high as the thicker bar needs."
            }
            Self::BottomBlock => {
                "Work it across the heel or over the edge of the anvil, first one half of its length, then the other."
            }
            Self::CrossPeen => "Spread over the horn with the flat face, or under a fuller.",
            Self::SlitChisel => "Saw along the line cold, or drill a row of holes and cut between them.",
            Self::HotChisel => "Trim it cold with saw and file.",
            Self::SetHammer => {
                "Work it with a short flat bar of steel held on it, or with the peen, and dress it with a file."
            }
            Self::Fuller => "Neck it over the near and the far edge of the anvil in turn.",
            Self::SpringFuller => "Neck it with a hand fuller over the edge, turning the bar after each blow.",
            Self::Swage => "Work it to eight sides and then to round under light blows.",
            Self::Punch => "Drill it, cold and clamped.",
            Self::Drift => "Open the hole over a tapered punch, or over the tip of the horn.",
            Self::Drill => "Punch it hot, from both sides, over the hole in the anvil.",
            Self::Countersink => "Turn a larger drill in the hole by hand, or file its edge.",
            Self::Mandrel => "Bend it over the horn, and true it against the template.",
            Self::BendingFork => "Bend it over the horn or in the vice, with a scrolling wrench.",
            Self::VBlock => "Bend it over the rounded edge of the anvil.",
            Self::TwistWrench => {
                "Grip it with an adjustable wrench, bare, not plated, that has a second handle welded on."
            }
            Self::MonkeyTool => "Drill a block to the tenon's size and dress its edge to the shoulder's radius.",
            Self::Header => "Clamp it in the vice between soft jaws, and leave the length of the head above them.",
            Self::RivetSet => "Round the head with light blows of the hammer all round its edge.",
            Self::CollarSet => "Close it with the hammer on the anvil, the joint down, while it is hot.",
            Self::Tongs => {
                "Fit a pair of about the right size: heat the jaws, and close them on a cold piece of the bar."
            }
        }
    }
}

/// One tool of the smith's, or a row of them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OwnedTool {
    /// What it is.
    pub kind: ToolKind,
    /// Its size in mm, or the least of a row; every size where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from_mm: Option<f64>,
    /// The largest of a row in mm; it is one size where it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to_mm: Option<f64>,
}

/// What the smith owns.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shop {
    /// Their tools.
    #[serde(default)]
    pub tools: Vec<OwnedTool>,
    /// Who forges.
    #[serde(default, skip_serializing_if = "Smith::is_usual")]
    pub smith: Smith,
    /// What came out of their jobs.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub experience: Vec<Experience>,
}

impl Shop {
    /// Keeps what came out of a piece in place of what was kept of it before.
    pub fn keep(&mut self, piece: &str, experience: &[Experience]) {
        self.experience.retain(|one| one.piece != piece);
        self.experience.extend(experience.iter().map(Experience::without_entry));
    }

    /// Whether it is kept just as it came out.
    pub fn keeps(&self, piece: &str, experience: &[Experience]) -> bool {
        let kept = self.experience.iter().filter(|one| one.piece == piece);
        kept.cloned().eq(experience.iter().map(Experience::without_entry))
    }

    /// Whether there is a tool of a kind and, where it has one, of a size in mm.
    pub fn has(&self, kind: ToolKind, size_mm: Option<f64>) -> bool {
        // Common practice, no source: a tool within a twentieth of the size will do.
        const NEAR: f64 = 0.05;
        let fits = |tool: &&OwnedTool| match (size_mm, tool.from_mm) {
            (Some(size), Some(from)) => {
                (from * (1.0 - NEAR)..=tool.to_mm.unwrap_or(from) * (1.0 + NEAR)).contains(&size)
            }
            _ => true,
        };
        kind.is_in_every_smithy() || self.tools.iter().filter(|tool| tool.kind == kind).any(|tool| fits(&tool))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tool_of_about_the_size_will_do() {
        let row = OwnedTool { kind: ToolKind::Punch, from_mm: Some(6.0), to_mm: Some(12.0) };
        let any = OwnedTool { kind: ToolKind::Fuller, from_mm: None, to_mm: None };
        let shop = Shop { tools: vec![row, any], ..Shop::default() };
        assert!(shop.has(ToolKind::Punch, Some(6.0)) && shop.has(ToolKind::Punch, Some(12.5)));
        assert!(!shop.has(ToolKind::Punch, Some(14.0)) && !shop.has(ToolKind::Drift, None));
        assert!(shop.has(ToolKind::Fuller, Some(30.0)) && shop.has(ToolKind::Hammer, None));
    }
}

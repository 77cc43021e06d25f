//! The demo plans, carried in the program: ironwork for a kitchen garden.

/// A demo plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Demo {
    /// The name of its file.
    pub file_name: &'static str,
    /// What the piece is called.
    pub title: &'static str,
    /// The plan, in the words of its file.
    pub text: &'static str,
}

/// Every demo plan, the first to show at the head.
pub const DEMOS: &[Demo] = &[
    Demo {
        file_name: "gate-hook.plan.json",
        title: "Gate hook",
        text: include_str!("../../../demo-plans/gate-hook.plan.json"),
    },
    Demo {
        file_name: "trellis-bracket.plan.json",
        title: "Trellis bracket",
        text: include_str!("../../../demo-plans/trellis-bracket.plan.json"),
    },
    Demo {
        file_name: "row-marker.plan.json",
        title: "Row marker",
        text: include_str!("../../../demo-plans/row-marker.plan.json"),
    },
    Demo {
        file_name: "line-pin.plan.json",
        title: "Garden line pin",
        text: include_str!("../../../demo-plans/line-pin.plan.json"),
    },
    Demo { file_name: "dibber.plan.json", title: "Dibber", text: include_str!("../../../demo-plans/dibber.plan.json") },
    Demo {
        file_name: "boot-scraper.plan.json",
        title: "Boot scraper",
        text: include_str!("../../../demo-plans/boot-scraper.plan.json"),
    },
    Demo {
        file_name: "trowel.plan.json",
        title: "Planting trowel",
        text: include_str!("../../../demo-plans/trowel.plan.json"),
    },
    Demo {
        file_name: "twine-stake.plan.json",
        title: "Twine stake",
        text: include_str!("../../../demo-plans/twine-stake.plan.json"),
    },
    Demo {
        file_name: "weeding-fork.plan.json",
        title: "Weeding fork",
        text: include_str!("../../../demo-plans/weeding-fork.plan.json"),
    },
    Demo {
        file_name: "herb-bracket.plan.json",
        title: "Herb shelf bracket",
        text: include_str!("../../../demo-plans/herb-bracket.plan.json"),
    },
    Demo {
        file_name: "draw-hoe.plan.json",
        title: "Draw hoe",
        text: include_str!("../../../demo-plans/draw-hoe.plan.json"),
    },
    Demo {
        file_name: "cloche-lifter.plan.json",
        title: "Cloche lifter",
        text: include_str!("../../../demo-plans/cloche-lifter.plan.json"),
    },
    Demo {
        file_name: "bean-frame.plan.json",
        title: "Bean frame",
        text: include_str!("../../../demo-plans/bean-frame.plan.json"),
    },
    Demo {
        file_name: "pot-stand.plan.json",
        title: "Pot stand",
        text: include_str!("../../../demo-plans/pot-stand.plan.json"),
    },
    Demo {
        file_name: "dibber-rack.plan.json",
        title: "Dibber rack",
        text: include_str!("../../../demo-plans/dibber-rack.plan.json"),
    },
    Demo {
        file_name: "lantern-arm.plan.json",
        title: "Lantern arm",
        text: include_str!("../../../demo-plans/lantern-arm.plan.json"),
    },
    Demo {
        file_name: "net-stake.plan.json",
        title: "Net stake",
        text: include_str!("../../../demo-plans/net-stake.plan.json"),
    },
];

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;
    use fh_core::file;

    #[test]
    fn every_demo_is_a_plan_in_the_programs_own_layout() {
        for demo in DEMOS {
            let plan = file::read(demo.text.as_bytes()).unwrap();
            assert_eq!(plan.title, demo.title);
            assert_eq!(file::write(&plan), demo.text, "{}", demo.file_name);
        }
    }

    #[test]
    fn every_file_in_the_folder_is_listed() {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-plans");
        let names = std::fs::read_dir(folder).unwrap().flatten().map(|file| file.file_name());
        for name in names.filter(|name| name.to_string_lossy().ends_with(".plan.json")) {
            assert!(DEMOS.iter().any(|demo| *demo.file_name == *name), "{}", name.to_string_lossy());
        }
    }
}

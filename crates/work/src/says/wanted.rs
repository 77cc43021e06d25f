//! A tool that a step asks for, and the list of all of them.

use crate::bar::held::Hold;
use crate::job::site::Site;
use crate::says::shop::{Shop, ToolKind};
use crate::says::usual::{self, Fit};
use crate::says::words::length_words;

/// How many times larger steel measures at 950 °C (EN 1993-1-2 §3.4.1.1).
pub(crate) const HOT: f64 = 1.013;

/// A tool that some steps ask for.
#[derive(Clone, Debug, PartialEq)]
pub struct Tool {
    /// What it is.
    pub kind: ToolKind,
    /// Its size in mm, where it has one.
    pub size_mm: Option<f64>,
    /// It in words, with its size.
    pub words: String,
    /// Why this tool, and this size, and which steps ask for it.
    pub uses: Vec<ToolUse>,
    /// Whether the smith owns it.
    pub owned: bool,
    /// Another way where it is missing.
    pub other_way: &'static str,
}

/// What a tool is for in some steps.
#[derive(Clone, Debug, PartialEq)]
pub struct ToolUse {
    /// Why this tool, and this size.
    pub reason: String,
    /// The steps that ask for it, counted from 0.
    pub steps: Vec<usize>,
}

impl Tool {
    /// Why this tool, and this size: each reason once.
    pub fn reason(&self) -> String {
        self.uses.iter().map(|one| one.reason.as_str()).collect::<Vec<_>>().join(" ")
    }

    /// The steps that ask for it, counted from 0.
    pub fn steps(&self) -> Vec<usize> {
        let mut steps: Vec<usize> = self.uses.iter().flat_map(|one| one.steps.iter().copied()).collect();
        steps.sort_unstable();
        steps.dedup();
        steps
    }

    /// One step more that asks for it.
    fn used(&mut self, step: usize, reason: String) {
        match self.uses.iter_mut().find(|one| one.reason == reason) {
            Some(one) if one.steps.last() == Some(&step) => {}
            Some(one) => one.steps.push(step),
            None => self.uses.push(ToolUse { reason, steps: vec![step] }),
        }
    }
}

/// A tool without its steps.
pub(crate) struct Wanted {
    pub(crate) kind: ToolKind,
    pub(crate) size_mm: Option<f64>,
    /// The size that would fit best, in mm, where the size that tools come in is another one.
    pub(crate) best_mm: Option<f64>,
    pub(crate) words: String,
    pub(crate) reason: String,
    /// Another way where it is missing; empty where there is none.
    pub(crate) other_way: &'static str,
}

impl Wanted {
    pub(crate) fn plain(kind: ToolKind, reason: &str) -> Self {
        Self {
            kind,
            size_mm: None,
            best_mm: None,
            words: kind.name().to_owned(),
            reason: reason.to_owned(),
            other_way: kind.other_way(),
        }
    }

    pub(crate) fn sized(site: &Site<'_>, kind: ToolKind, mm: f64, measure: &str, reason: &str) -> Self {
        let words = format!("{}, {measure}{}", kind.name(), length_words(site.plan, mm));
        let other_way = kind.other_way();
        Self { kind, size_mm: Some(mm), best_mm: None, words, reason: reason.to_owned(), other_way }
    }

    /// The same in a size that tools come in: of `[own, best]` in mm the first is told, and what is near the second will do too.
    pub(crate) fn usual(site: &Site<'_>, kind: ToolKind, [own, best]: [f64; 2], measure: &str, reason: &str) -> Self {
        let words = format!("{}, {measure}{}", kind.name(), usual::words(site.plan, own));
        Self { words, best_mm: Some(best), ..Self::sized(site, kind, own, measure, reason) }
    }

    /// The same in whole millimetres or sixteenths of an inch.
    pub(crate) fn whole(site: &Site<'_>, kind: ToolKind, (mm, fit): (f64, Fit), measure: &str, reason: &str) -> Self {
        Self::usual(site, kind, [usual::whole_mm(site.plan, mm, fit), mm], measure, reason)
    }
}

/// The tools of a step in the smith's own words, each by the kind that it names; none of words that name no kind that is known.
pub(crate) fn own(words: &str) -> Vec<Wanted> {
    let of = |words: &str| {
        let named = ToolKind::ALL.into_iter().filter(|kind| words.contains(kind.name()));
        // A cross-peen hammer is no hammer.
        let kind = named.max_by_key(|kind| kind.name().len())?;
        let reason = "The step asks for it in your own words.";
        Some(Wanted { words: words.to_owned(), ..Wanted::plain(kind, reason) })
    };
    words.split([';', ',']).map(str::trim).filter_map(of).collect()
}

/// The tongs that hold a bar by its cold end; none where so much of it is cold that it is held in the hand.
pub(crate) fn tongs(site: &Site<'_>, hold: &Hold) -> Option<Wanted> {
    if hold.by_hand || hold.length_mm <= 0.0 {
        return None;
    }
    let words = |mm: f64| usual::words(site.plan, usual::whole_mm(site.plan, mm, Fit::Near));
    let [width, thickness] = hold.jaw_mm;
    let (size, jaw) = match () {
        () if width > Hold::WIDE => (thickness, format!("flat tongs, jaws for {}", words(thickness))),
        () if (width - thickness).abs() < 0.05 => (width, format!("tongs, jaws for {}", words(width))),
        () => (width.max(thickness), format!("tongs, jaws for {} × {}", words(width), words(thickness))),
    };
    Some(Wanted {
        kind: ToolKind::Tongs,
        size_mm: Some(size),
        best_mm: None,
        words: jaw,
        reason: match hold.cool_first {
            true if site.plan.material().quench.may => {
                format!("They grip “{}”, once it is cooled.", site.name(hold.part))
            }
            true => format!("They grip “{}”, once it is cooled in air.", site.name(hold.part)),
            false => format!("They grip “{}”, which stays cold.", site.name(hold.part)),
        },
        other_way: ToolKind::Tongs.other_way(),
    })
}

/// The hammer that drives a struck tool; none where no tool is struck, or a hammer is asked for anyway.
pub(crate) fn driven_with(tools: &[Wanted]) -> Option<Wanted> {
    use ToolKind as K;
    let is_struck = |tool: &Wanted| {
        matches!(tool.kind, K::CutOff | K::SlitChisel | K::HotChisel | K::ColdChisel | K::SetHammer | K::Fuller)
            || matches!(tool.kind, K::SpringFuller | K::Punch | K::Drift | K::RivetSet | K::MonkeyTool | K::CollarSet)
    };
    let has_hammer = tools.iter().any(|tool| tool.kind == K::Hammer);
    (!has_hammer && tools.iter().any(is_struck)).then(|| Wanted::plain(K::Hammer, "It drives the tool."))
}

/// Whether words name the same tool, one of them with what does in its place.
fn is_one(one: &str, other: &str) -> bool {
    let name = |words: &str| words.split(", or ").next().unwrap_or_default().replace(", ", " ");
    name(one) == name(other)
}

/// The tools that a step's own sentences name and that it has not; each needs no size.
pub(crate) fn named<'w>(said: impl Iterator<Item = &'w str> + Clone, has: &[ToolKind]) -> Vec<Wanted> {
    const NAMED: [(ToolKind, &[&str]); 4] = [
        (ToolKind::CrossPeen, &["peen", "cross-peen"]),
        (ToolKind::File, &["file"]),
        (ToolKind::Countersink, &["countersink"]),
        (ToolKind::VBlock, &["v-block"]),
    ];
    let says = |word: &str| {
        let is_end = |letter: char| !letter.is_alphanumeric() && letter != '-';
        said.clone().flat_map(|text| text.split(is_end)).any(|said| said.eq_ignore_ascii_case(word))
    };
    let named = NAMED.into_iter().filter(|(kind, words)| !has.contains(kind) && words.iter().any(|word| says(word)));
    named.map(|(kind, _)| Wanted::plain(kind, "The step says where.")).collect()
}

/// The same tool asked for by several steps, once.
pub(crate) fn gather(lists: Vec<(usize, Vec<Wanted>)>, shop: &Shop) -> Vec<Tool> {
    let mut tools: Vec<Tool> = Vec::new();
    for (step, list) in lists {
        for wanted in list {
            match tools.iter_mut().find(|tool| tool.kind == wanted.kind && is_one(&tool.words, &wanted.words)) {
                Some(tool) => {
                    // What does in its place for one step does not for another.
                    if wanted.words != tool.words {
                        tool.words = wanted.words.split(", or ").next().unwrap_or_default().to_owned();
                    }
                    tool.used(step, wanted.reason);
                }
                None => tools.push(Tool {
                    owned: shop.has(wanted.kind, wanted.size_mm)
                        || wanted.best_mm.is_some_and(|mm| shop.has(wanted.kind, Some(mm))),
                    other_way: wanted.other_way,
                    kind: wanted.kind,
                    size_mm: wanted.size_mm,
                    words: wanted.words,
                    uses: vec![ToolUse { reason: wanted.reason, steps: vec![step] }],
                }),
            }
        }
    }
    tools.sort_by(|one, other| {
        one.kind.cmp(&other.kind).then(one.size_mm.unwrap_or(0.0).total_cmp(&other.size_mm.unwrap_or(0.0)))
    });
    tools
}

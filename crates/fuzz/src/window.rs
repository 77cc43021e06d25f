//! Random hands at the editor: clicks, drags, keys and texts, in windows of every size.

use crate::caught::{caught, without_figures};
use crate::corpus::Corpus;
use crate::mutate::mutate;
use crate::plans::reads_back;
use crate::random::Random;
use crate::run::Run;
use crate::steel;
use crate::{Fault, Round};
use egui::{Context, Event, Key, Modifiers, PointerButton, Pos2, RawInput, Rect, Vec2, pos2, vec2};
use fh_app::{Editor, Scripted, Services};
use fh_core::file;
use fh_core::plan::Plan;
use fh_store::Home;
use std::path::Path;

/// The most events in a round.
const MOST: usize = 50;

const SIZES: [Vec2; 6] = [
    vec2(1366.0, 768.0),
    vec2(640.0, 400.0),
    vec2(3840.0, 2160.0),
    vec2(800.0, 600.0),
    vec2(200.0, 150.0),
    vec2(1.0, 1.0),
];

const TEXTS: [&str; 26] = [
    "0",
    "-5",
    "12",
    "1/2 in",
    "3 1/4",
    "1e9 mm",
    "999999999 m",
    "0.0000001 mm",
    "5 mm to 6 mm",
    "6 ± 0.5 mm",
    "90",
    "360 deg",
    "100 %",
    "99.9 %",
    "1/0",
    "∞",
    "🔨🔥",
    "\u{202e}עברית",
    "a\u{301}\u{301}",
    "\u{0}",
    "leaf",
    "20, 45, 80",
    "2; 4 1/4; 6",
    "0 mm",
    "NaN",
    "",
];

const KEYS: [Key; 46] = [
    Key::ArrowLeft,
    Key::ArrowRight,
    Key::ArrowUp,
    Key::ArrowDown,
    Key::Enter,
    Key::Escape,
    Key::Tab,
    Key::Space,
    Key::Delete,
    Key::Backspace,
    Key::Home,
    Key::End,
    Key::PageUp,
    Key::PageDown,
    Key::A,
    Key::B,
    Key::C,
    Key::D,
    Key::E,
    Key::G,
    Key::H,
    Key::I,
    Key::J,
    Key::K,
    Key::L,
    Key::M,
    Key::N,
    Key::O,
    Key::P,
    Key::R,
    Key::S,
    Key::T,
    Key::V,
    Key::X,
    Key::Y,
    Key::Z,
    Key::Num0,
    Key::Num1,
    Key::Plus,
    Key::Minus,
    Key::F1,
    Key::F2,
    Key::F5,
    Key::F9,
    Key::F10,
    Key::F11,
];

/// Of so many rounds one begins in steel, on files of the rack that were changed at random.
const STEEL: u64 = 5;
/// What is typed there.
const SAID: [&str; 10] = [
    "3 x 12 mm square, 2.4 m",
    "1/2 in round, 7' 3 1/2\"",
    "30 x 8 mm flat; 12 mm square",
    "4294967296 x 12 mm square, 1 m",
    "1.85 per kg",
    "42.00 per hour",
    "-3 EUR each",
    "999 %",
    "1 h 30 min",
    "40",
];

/// One round at the window.
pub(crate) fn round(corpus: &Corpus, number: u64) -> Round {
    let mut random = Random::new(number);
    let (Some(plan), Ok(folder)) = (plan(corpus, &mut random), tempfile::tempdir()) else { return Round::default() };
    let input = file::write(&plan).into_bytes();
    let home = Home::at(folder.path());
    if !random.one_in(4) {
        // The tour was seen. Where it cannot be written the tour stands in front, which is no fault.
        let _ = std::fs::write(home.settings_file(), "{ \"tour_seen\": true }");
    }
    // What hands save under a name that they typed goes into the folder too, and with it.
    let _ = std::env::set_current_dir(folder.path());
    let services = Services { home: Some(home), dialogs: Box::new(Scripted::new(Vec::new())) };
    let in_steel = number.is_multiple_of(STEEL);
    if in_steel {
        lay_steel(corpus, number, folder.path());
    }
    let texts: &'static [&'static str] = if in_steel { &SAID } else { &TEXTS };
    let mut hands = Hands { random, at: pos2(600.0, 300.0), size: SIZES[0], time: 0.0, trail: Vec::new(), texts };
    let ctx = Context::default();
    let done = caught(|| {
        let mut editor = Editor::with_plan(services, plan);
        if in_steel {
            hands.go_to_steel(&ctx, &mut editor, number / STEEL);
        }
        for _ in 0..=hands.random.below(MOST) {
            hands.turn(&ctx, &mut editor);
        }
        editor.plan().clone()
    });
    let _ = std::env::set_current_dir(std::env::temp_dir());
    let mut run = Run { faults: Vec::new(), tried: hands.trail.len() };
    match done {
        Ok(reached) => reads_back(&mut run, &reached),
        Err(words) => {
            let what = format!("the window panics: {}", without_figures(&words));
            run.faults.push(Fault::new(what, format!("{words}\n{}", hands.trail.join("\n"))));
        }
    }
    Round { faults: run.faults, input, tried: hands.trail.len() }
}

/// Puts files into a folder: a rack, a merchant's list, a shop's figures, a job.
fn lay_steel(corpus: &Corpus, number: u64, folder: &Path) {
    for (place, name) in ["rack.json", "merchant.json", "shop.json", "a.job.json"].into_iter().enumerate() {
        let text = steel::input_of(corpus, number, place);
        // Where it cannot be written there is none.
        let _ = std::fs::write(folder.join(name), text);
    }
}

/// A plan, half of the time a changed one. A picture under it would be read from the disk, and is left out.
fn plan(corpus: &Corpus, random: &mut Random) -> Option<Plan> {
    let tree = random.of(&corpus.trees)?.clone();
    let mut changed = tree.clone();
    let times = random.below(6);
    mutate(&mut changed, &corpus.values, random, times);
    let read = |tree: &serde_json::Value| file::read(tree.to_string().as_bytes()).ok();
    let mut plan = read(&changed).or_else(|| read(&tree))?;
    plan.underlay = None;
    Some(plan)
}

/// Hands at the window.
struct Hands {
    random: Random,
    at: Pos2,
    size: Vec2,
    time: f64,
    trail: Vec<String>,
    texts: &'static [&'static str],
}

impl Hands {
    /// Opens steel, and a part of it.
    fn go_to_steel(&mut self, ctx: &Context, editor: &mut Editor, part: u64) {
        const PARTS: [Key; 7] = [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6, Key::Num7];
        let key = PARTS[(part % PARTS.len() as u64) as usize];
        let press = |pressed| Event::Key { key, physical_key: None, pressed, repeat: false, modifiers: Modifiers::ALT };
        // In the first frame nothing is shown yet.
        self.frame(ctx, editor, Vec::new());
        self.frame(ctx, editor, vec![press(true), press(false)]);
    }

    fn frame(&mut self, ctx: &Context, editor: &mut Editor, events: Vec<Event>) {
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, self.size)),
            time: Some(self.time),
            events,
            focused: true,
            max_texture_side: Some(8192),
            ..RawInput::default()
        };
        let mut shown = ctx.run_ui(input, |ui| editor.show(ui));
        // No screen takes them.
        shown.textures_delta.clear();
        let _ = ctx.tessellate(shown.shapes, shown.pixels_per_point);
    }

    /// Does something, and lets the editor show itself a few times.
    fn turn(&mut self, ctx: &Context, editor: &mut Editor) {
        let mut events = self.events();
        for _ in 0..=self.random.below(3) {
            self.time += *self.random.of(&[0.016, 0.016, 0.2, 1.0, 10.0]).unwrap_or(&0.016);
            self.frame(ctx, editor, std::mem::take(&mut events));
        }
    }

    fn events(&mut self) -> Vec<Event> {
        let what = self.random.below(24);
        let (name, events) = match what {
            0..8 => ("click", self.click()),
            8..11 => ("drag", self.drag()),
            11..17 => ("key", self.key()),
            17..21 => ("text", self.text()),
            21 => ("wheel", self.wheel()),
            22 => ("zoom", vec![Event::Zoom(*self.random.of(&[0.01, 0.5, 2.0, 100.0, 1e6]).unwrap_or(&1.0))]),
            _ => {
                self.size = *self.random.of(&SIZES).unwrap_or(&SIZES[0]);
                ("size", Vec::new())
            }
        };
        self.trail.push(format!("{name} at {:?} of {:?}: {events:?}", self.at, self.size));
        events
    }

    fn somewhere(&mut self) -> Pos2 {
        pos2(self.random.share() as f32 * self.size.x, self.random.share() as f32 * self.size.y)
    }

    fn button(&self, pressed: bool) -> Event {
        let button = PointerButton::Primary;
        Event::PointerButton { pos: self.at, button, pressed, modifiers: Modifiers::NONE }
    }

    fn click(&mut self) -> Vec<Event> {
        self.at = self.somewhere();
        vec![Event::PointerMoved(self.at), self.button(true), self.button(false)]
    }

    fn drag(&mut self) -> Vec<Event> {
        let mut events = vec![Event::PointerMoved(self.at), self.button(true)];
        self.at = self.somewhere();
        events.push(Event::PointerMoved(self.at));
        // Now and then the button stays down.
        if !self.random.one_in(3) {
            events.push(self.button(false));
        }
        events
    }

    fn key(&mut self) -> Vec<Event> {
        let key = *self.random.of(&KEYS).unwrap_or(&Key::Escape);
        let command = Modifiers::COMMAND | Modifiers::CTRL;
        let both = command | Modifiers::SHIFT;
        let held = [Modifiers::NONE, Modifiers::NONE, command, command, both, Modifiers::SHIFT, Modifiers::ALT];
        let modifiers = *self.random.of(&held).unwrap_or(&Modifiers::NONE);
        let mut events = Vec::new();
        match (modifiers == command, key) {
            (true, Key::C) => events.push(Event::Copy),
            (true, Key::X) => events.push(Event::Cut),
            (true, Key::V) => events.push(Event::Paste((*self.random.of(self.texts).unwrap_or(&"")).to_owned())),
            _ => {}
        }
        let press = |pressed| Event::Key { key, physical_key: None, pressed, repeat: false, modifiers };
        events.extend([press(true), press(false)]);
        events
    }

    fn text(&mut self) -> Vec<Event> {
        let text = (*self.random.of(self.texts).unwrap_or(&"")).to_owned();
        let text = if self.random.one_in(12) { text.repeat(500) } else { text };
        let key = *self.random.of(&[Key::Enter, Key::Tab]).unwrap_or(&Key::Tab);
        let modifiers = Modifiers::NONE;
        vec![Event::Text(text), Event::Key { key, physical_key: None, pressed: true, repeat: false, modifiers }]
    }

    fn wheel(&mut self) -> Vec<Event> {
        let delta = vec2(self.random.share() as f32 - 0.5, self.random.share() as f32 - 0.5) * 4000.0;
        vec![
            Event::PointerMoved(self.at),
            Event::MouseWheel {
                unit: egui::MouseWheelUnit::Point,
                delta,
                phase: egui::TouchPhase::Move,
                source: egui::MouseWheelSource::Unknown,
                modifiers: if self.random.one_in(2) { Modifiers::CTRL } else { Modifiers::NONE },
            },
        ]
    }
}

//! An editor to sit at: with a folder of its own, and hands that click and type by name.

use egui::accesskit::Role;
use egui::{Key, Modifiers, Pos2, Vec2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use fh_app::{Answer, Editor, Scripted, Services};
use fh_core::plan::Plan;
use fh_store::Home;
use std::time::{Duration, Instant};
use tempfile::TempDir;

/// An editor at work.
pub(crate) struct Desk {
    pub(crate) harness: Harness<'static, Editor>,
    pub(crate) folder: TempDir,
}

/// A plan of three segments in millimetres.
const SMALL: &str = r#"{
  "firstheat": 1,
  "title": "Bean hook",
  "units": { "length": "mm", "marks": "1 mm" },
  "bars": [ {
    "name": "hook",
    "stock": { "square": "12 mm" },
    "segments": [
      { "name": "point", "form": { "taper": { "length": "60 mm", "to": "point" } } },
      { "name": "shank", "form": { "plain": { "length": "120 mm" } } },
      { "name": "rest", "form": { "hold": { "length": "150 mm" } } }
    ]
  } ]
}"#;

/// The small plan.
pub(crate) fn small_plan() -> Plan {
    fh_core::file::read(SMALL.as_bytes()).unwrap()
}

impl Desk {
    /// With an empty plan: the dialog that asks for the bar is in front.
    pub(crate) fn empty() -> Self {
        Self::with(Vec::new(), |services, _| Editor::new(services))
    }

    /// With a plan.
    pub(crate) fn with_plan(plan: Plan) -> Self {
        Self::with(Vec::new(), |services, _| Editor::with_plan(services, plan))
    }

    /// With system dialogs that answer as they are told, and the tour seen already.
    pub(crate) fn with(answers: Vec<Answer>, editor: impl FnOnce(Services, &std::path::Path) -> Editor) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let settings = format!(r#"{{ "tour_seen": true, "folder": {:?} }}"#, folder.path());
        std::fs::write(folder.path().join("settings.json"), settings).unwrap();
        Self::in_folder(folder, answers, editor)
    }

    /// In a folder that may hold settings and work already.
    pub(crate) fn in_folder(
        folder: TempDir,
        answers: Vec<Answer>,
        editor: impl FnOnce(Services, &std::path::Path) -> Editor,
    ) -> Self {
        let services = Services { home: Some(Home::at(folder.path())), dialogs: Box::new(Scripted::new(answers)) };
        let editor = editor(services, folder.path());
        let mut harness = Harness::builder()
            .with_size([1366.0, 768.0])
            .with_max_steps(24)
            .with_accessibility_check(true)
            .build_ui_state(|ui, editor: &mut Editor| editor.show(ui), editor);
        harness.run();
        Self { harness, folder }
    }

    /// The editor.
    pub(crate) fn editor(&self) -> &Editor {
        self.harness.state()
    }

    /// The plan.
    pub(crate) fn plan(&self) -> &Plan {
        self.editor().plan()
    }

    /// Presses the button of this name; where a dialog has one too, that of the dialog, which stands in front.
    pub(crate) fn press(&mut self, name: &str) {
        let buttons = self.harness.get_all_by_role_and_label(Role::Button, name);
        buttons.last().unwrap().click();
        self.harness.run();
    }

    /// Chooses from a list.
    pub(crate) fn choose(&mut self, list: &str, choice: &str) {
        self.harness.get_by_role_and_label(Role::ComboBox, list).scroll_to_me();
        self.harness.run();
        self.harness.get_by_role_and_label(Role::ComboBox, list).click();
        self.harness.run();
        self.harness.get_by_role_and_label(Role::Button, choice).click();
        self.harness.run();
    }

    /// Types into a field in place of what is in it. Nothing is taken yet.
    pub(crate) fn type_only(&mut self, field: &str, text: &str) {
        self.harness.get_by_role_and_label(Role::TextInput, field).focus();
        self.harness.run();
        self.harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
        self.harness.run();
        self.harness.get_by_role_and_label(Role::TextInput, field).type_text(text);
        self.harness.run();
    }

    /// Types into a field and goes on with Tab.
    pub(crate) fn type_in(&mut self, field: &str, text: &str) {
        self.type_only(field, text);
        self.harness.key_press(Key::Tab);
        self.harness.run();
    }

    /// Waits until what runs beside the window has come so far: it keeps to the clock on the wall, not to that of the frames.
    pub(crate) fn wait(&mut self, until: impl Fn(&Self) -> bool) {
        let begun = Instant::now();
        while !until(self) {
            assert!(begun.elapsed() < Duration::from_secs(300), "nothing came of it");
            std::thread::sleep(Duration::from_millis(20));
            self.harness.run();
        }
    }

    /// Waits until these words are shown.
    pub(crate) fn wait_for(&mut self, words: &str) {
        self.wait(|desk| desk.shows(words));
    }

    /// Clicks at a place.
    pub(crate) fn click_at(&mut self, at: Pos2) {
        self.harness.hover_at(at);
        self.harness.run();
        self.harness.drag_at(at);
        self.harness.drop_at(at);
        self.harness.run();
    }

    /// Double-clicks at a place. A frame of a test is long, so that the time between clicks is lengthened with it.
    pub(crate) fn double_click_at(&mut self, at: Pos2) {
        self.harness.ctx.options_mut(|options| options.input_options.max_double_click_delay = 0.6);
        self.harness.hover_at(at);
        // Long enough after any click before.
        self.harness.run_steps(8);
        for _ in 0..2 {
            for pressed in [true, false] {
                let (button, modifiers) = (egui::PointerButton::Primary, Modifiers::NONE);
                self.harness.event(egui::Event::PointerButton { pos: at, button, pressed, modifiers });
            }
        }
        self.harness.run();
        self.harness.ctx.options_mut(|options| options.input_options.max_double_click_delay = 0.3);
        self.harness.remove_cursor();
        self.harness.run();
    }

    /// Types letters, as if on the keyboard: they go to whoever has it.
    pub(crate) fn letters(&mut self, text: &str) {
        self.harness.event(egui::Event::Text(text.to_owned()));
        self.harness.run();
    }

    /// Where a field is.
    pub(crate) fn field(&self, field: &str) -> egui::Rect {
        self.harness.get_by_role_and_label(Role::TextInput, field).rect()
    }

    /// Whether a field has the keyboard.
    pub(crate) fn has_keyboard(&self, field: &str) -> bool {
        self.harness.get_by_role_and_label(Role::TextInput, field).is_focused()
    }

    /// Where a list to choose from is.
    pub(crate) fn list(&self, list: &str) -> egui::Rect {
        self.harness.get_by_role_and_label(Role::ComboBox, list).rect()
    }

    /// Presses keys.
    pub(crate) fn keys(&mut self, modifiers: Modifiers, key: Key) {
        self.harness.key_press_modifiers(modifiers, key);
        self.harness.run();
    }

    /// What stands in a field.
    pub(crate) fn text_of(&self, field: &str) -> String {
        self.harness.get_by_role_and_label(Role::TextInput, field).value().unwrap_or_default()
    }

    /// Whether words stand anywhere in the window.
    pub(crate) fn shows(&self, words: &str) -> bool {
        self.harness
            .query_all_by(|node| {
                let said = node.label().or_else(|| node.value());
                said.is_some_and(|said| said.contains(words))
            })
            .next()
            .is_some()
    }

    /// Drags what has this name so many points along, and lets go.
    pub(crate) fn drag(&mut self, name: &str, along: f32) {
        self.drag_by(name, vec2(along, 0.0));
    }

    /// Drags something by its name, so far along and down.
    pub(crate) fn drag_by(&mut self, name: &str, by: Vec2) {
        let from = self.harness.get_by_label(name).rect().center();
        self.harness.hover_at(from);
        self.harness.run();
        self.harness.drag_at(from);
        self.harness.run();
        for step in 1..=8 {
            self.harness.hover_at(from + by * (step as f32 / 8.0));
            self.harness.step();
        }
        self.harness.drop_at(from + by);
        self.harness.run();
    }

    /// The middle of what has this name.
    pub(crate) fn place_of(&self, name: &str) -> Pos2 {
        self.harness.get_by_label(name).rect().center()
    }

    /// Drags something by its name, and takes it back with Escape before it is let go: the plan changes, and is as before.
    pub(crate) fn drag_and_escape(&mut self, name: &str, by: Vec2) {
        let (at, before) = (self.place_of(name), self.plan().clone());
        self.harness.hover_at(at);
        self.harness.run();
        self.harness.drag_at(at);
        self.harness.run();
        self.harness.hover_at(at + by);
        self.harness.run();
        assert_ne!(*self.plan(), before);
        self.harness.key_press(Key::Escape);
        self.harness.run();
        assert_eq!(*self.plan(), before);
    }
}

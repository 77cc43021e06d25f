//! A display without a screen, with a pointer and keys.

use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::Duration;

/// Between two moves of the pointer: a hand is no faster.
const PAUSE: Duration = Duration::from_millis(60);

/// A display of its own, closed when it is dropped.
pub(crate) struct Display {
    server: Child,
    name: String,
}

impl Drop for Display {
    fn drop(&mut self) {
        let _ = self.server.kill();
        let _ = self.server.wait();
    }
}

impl Display {
    /// Opens a display on a number that is free.
    pub(crate) fn open() -> Self {
        let mut command = Command::new("Xvfb");
        command.args(["-displayfd", "1", "-screen", "0", "1400x900x24", "-nolisten", "tcp"]);
        let mut server = command.stdout(Stdio::piped()).stderr(Stdio::null()).spawn().unwrap_or_else(|error| {
            panic!("Xvfb does not run ({error}): this test needs it; install the package xvfb")
        });
        let mut number = String::new();
        BufReader::new(server.stdout.take().unwrap()).read_line(&mut number).unwrap();
        assert!(!number.trim().is_empty(), "Xvfb found no free display");
        Self { server, name: format!(":{}", number.trim()) }
    }

    /// What `DISPLAY` is to say.
    pub(crate) fn name(&self) -> &str {
        &self.name
    }

    /// What xdotool answers; none where it finds nothing.
    pub(crate) fn xdotool(&self, arguments: &[&str]) -> Option<String> {
        let output =
            Command::new("xdotool").args(arguments).env("DISPLAY", &self.name).output().unwrap_or_else(|error| {
                panic!("xdotool does not run ({error}): this test needs it; install the package xdotool")
            });
        output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
    }

    /// Width and height of a window.
    pub(crate) fn size_of(&self, window: &str) -> [f32; 2] {
        let told = self.xdotool(&["getwindowgeometry", "--shell", window]).unwrap();
        let number = |key: &str| {
            let line = told.lines().find_map(|line| line.strip_prefix(key)).unwrap();
            line.parse::<f32>().unwrap()
        };
        [number("WIDTH="), number("HEIGHT=")]
    }

    /// Moves the pointer to a place of a window.
    fn point(&self, window: &str, [x, y]: [i32; 2]) {
        self.xdotool(&["mousemove", "--window", window, &x.to_string(), &y.to_string()]).unwrap();
        sleep(PAUSE);
    }

    /// Drags from a place so many pixels along, step by step.
    pub(crate) fn drag(&self, window: &str, [x, y]: [i32; 2], along: i32) {
        const STEPS: i32 = 6;
        self.point(window, [x - 3, y]);
        self.point(window, [x, y]);
        self.xdotool(&["mousedown", "1"]).unwrap();
        sleep(PAUSE);
        for step in 1..=STEPS {
            self.point(window, [x + along * step / STEPS, y]);
        }
        self.xdotool(&["mouseup", "1"]).unwrap();
        sleep(PAUSE);
    }

    /// Presses keys in a window.
    pub(crate) fn keys(&self, window: &str, keys: &str) {
        self.xdotool(&["windowfocus", window]).unwrap();
        sleep(PAUSE);
        self.xdotool(&["key", keys]).unwrap();
        sleep(PAUSE);
    }
}

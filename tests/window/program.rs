//! The program itself, as it is built for the tests, running on a display.

use crate::display::Display;
use crate::wait_for;
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

/// A running program, ended when it is dropped.
pub(crate) struct Program {
    child: Child,
    said: PathBuf,
}

impl Drop for Program {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl Program {
    /// Opens a plan, with a folder to keep settings in.
    pub(crate) fn start(display: &Display, home: &Path, plan: &Path) -> Self {
        let said = home.join("said.txt");
        let child = Command::new(env!("CARGO_BIN_EXE_firstheat"))
            .arg(plan)
            .env("DISPLAY", display.name())
            .env("FIRSTHEAT_HOME", home)
            // What it writes where no window opens is gone with the folder.
            .current_dir(home)
            .env("LIBGL_ALWAYS_SOFTWARE", "1")
            .env_remove("WAYLAND_DISPLAY")
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(File::create(&said).unwrap())
            .spawn()
            .unwrap();
        Self { child, said }
    }

    /// Its window, once it is shown and told what plan it holds.
    pub(crate) fn window(&mut self, display: &Display) -> String {
        let window = wait_for("the window", || {
            self.assert_running();
            let found = display.xdotool(&["search", "--onlyvisible", "--name", "bracket"])?;
            found.lines().next().map(str::to_owned)
        });
        // It is drawn a few times before everything stands where it stays.
        std::thread::sleep(std::time::Duration::from_secs(1));
        window
    }

    /// Fails where the program has ended.
    pub(crate) fn assert_running(&mut self) {
        if let Some(status) = self.child.try_wait().unwrap() {
            panic!("the program ended ({status}): {}", fs::read_to_string(&self.said).unwrap_or_default());
        }
    }

    /// Waits until it has ended well.
    pub(crate) fn assert_closes(&mut self) {
        let status = wait_for("the program to close", || self.child.try_wait().unwrap());
        assert!(status.success(), "{status}: {}", fs::read_to_string(&self.said).unwrap_or_default());
    }
}

//! Work that is done beside the window, on a thread of its own: its news come one after the other, and it can be stopped.

use egui::Context;
use std::cell::Cell;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::thread;
use std::time::{Duration, Instant};

/// How long the window waits between one of many news and the next.
const PAUSE: Duration = Duration::from_millis(100);

/// Work beside the window. What is begun anew stops what was begun before, and nothing more is heard of that.
pub(crate) struct Aside<N> {
    stop: Option<Arc<AtomicBool>>,
    news: Option<Receiver<N>>,
}

impl<N> Default for Aside<N> {
    fn default() -> Self {
        Self { stop: None, news: None }
    }
}

impl<N: Send + 'static> Aside<N> {
    /// Begins work. It is given whether it may go on, and whom to tell what it found; the window is drawn again then.
    pub(crate) fn begin(&mut self, ctx: &Context, work: impl FnOnce(&dyn Fn() -> bool, &dyn Fn(N)) + Send + 'static) {
        self.halt();
        let stop = Arc::new(AtomicBool::new(false));
        let (sender, receiver) = channel();
        let (seen, ctx) = (Arc::clone(&stop), ctx.clone());
        let run = move || {
            let told: Cell<Option<Instant>> = Cell::new(None);
            let tell = |news: N| {
                // Nobody listens any more: the work is about to be stopped.
                let _ = sender.send(news);
                // Many news in a row come into the window together.
                match told.get().and_then(|told| PAUSE.checked_sub(told.elapsed())) {
                    Some(left) => ctx.request_repaint_after(left),
                    None => {
                        told.set(Some(Instant::now()));
                        ctx.request_repaint();
                    }
                }
            };
            work(&|| !seen.load(Ordering::Relaxed), &tell);
            drop(sender);
            ctx.request_repaint();
        };
        let is_begun = thread::Builder::new().name("steel".to_owned()).spawn(run).is_ok();
        (self.stop, self.news) = (Some(stop), is_begun.then_some(receiver));
    }

    /// What was found since it was last asked.
    pub(crate) fn news(&mut self) -> Vec<N> {
        let mut all = Vec::new();
        let Some(news) = &self.news else { return all };
        loop {
            match news.try_recv() {
                Ok(one) => all.push(one),
                Err(TryRecvError::Empty) => return all,
                Err(TryRecvError::Disconnected) => break,
            }
        }
        self.news = None;
        all
    }
}

impl<N> Aside<N> {
    /// Whether the work goes on.
    pub(crate) fn is_running(&self) -> bool {
        self.news.is_some()
    }

    /// Asks the work to stop; what it still has to tell is heard.
    pub(crate) fn halt(&self) {
        if let Some(stop) = &self.stop {
            stop.store(true, Ordering::Relaxed);
        }
    }
}

impl<N> Drop for Aside<N> {
    fn drop(&mut self) {
        self.halt();
    }
}

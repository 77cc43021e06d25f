//! Tries random plans, edits and hands at the window for a while, and keeps what breaks.

use clap::{Parser, ValueEnum};
use fh_fuzz::{Corpus, Kind, Round, input, keep, quiet, round};
use std::collections::BTreeMap;
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::mpsc::{RecvTimeoutError, Sender, channel};
use std::time::{Duration, Instant};

/// A round that takes longer never ends, in seconds.
const ENDLESS: u64 = 180;

/// Tries random plans, edits, hands at the window and files of the rack for a while, and keeps what breaks.
#[derive(Debug, Parser)]
#[command(name = "fh_fuzz")]
struct Args {
    /// What is tried; all in turns where nothing is named.
    #[arg(value_enum)]
    kinds: Vec<KindName>,
    /// How long.
    #[arg(long, default_value_t = 60)]
    seconds: u64,
    /// The number of the first round; each further round has the next.
    #[arg(long, default_value_t = 1)]
    seed: u64,
    /// How many rounds at most.
    #[arg(long)]
    rounds: Option<u64>,
    /// Where what breaks is kept.
    #[arg(long, default_value = "target/fuzz")]
    out: PathBuf,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum KindName {
    Plans,
    Edits,
    Window,
    Steel,
}

impl KindName {
    fn kind(self) -> Kind {
        match self {
            Self::Plans => Kind::Plans,
            Self::Edits => Kind::Edits,
            Self::Window => Kind::Window,
            Self::Steel => Kind::Steel,
        }
    }
}

fn main() -> io::Result<ExitCode> {
    let mut args = Args::parse();
    // Rounds at the window work in folders of their own.
    args.out = std::path::absolute(&args.out)?;
    quiet();
    let corpus = Corpus::new();
    let kinds: Vec<Kind> = args.kinds.iter().map(|kind| kind.kind()).collect();
    let kinds = if kinds.is_empty() { Kind::ALL.to_vec() } else { kinds };
    let watched = watch(args.out.clone());
    let (began, mut tally) = (Instant::now(), Tally::default());
    for (number, kind) in (args.seed..).zip(kinds.into_iter().cycle()) {
        let rounds = number - args.seed;
        if began.elapsed().as_secs() >= args.seconds || args.rounds.is_some_and(|most| rounds >= most) {
            break;
        }
        let tried = input(&corpus, kind, number);
        // The watch ends only with this program.
        let _ = watched.send((kind, number, tried));
        let round = round(&corpus, kind, number);
        tally.count(&args.out, kind, number, &round)?;
    }
    tally.tell(began.elapsed().as_secs())
}

/// Ends the program where a round never ends, with its input kept.
fn watch(out: PathBuf) -> Sender<(Kind, u64, Vec<u8>)> {
    let (sender, coming) = channel::<(Kind, u64, Vec<u8>)>();
    std::thread::spawn(move || {
        let mut last = None;
        loop {
            match (coming.recv_timeout(Duration::from_secs(ENDLESS)), &last) {
                (Ok(next), _) => last = Some(next),
                (Err(RecvTimeoutError::Timeout), Some((kind, number, input))) => {
                    let round = Round { input: input.clone(), ..Round::default() };
                    let kept = keep(&out, *kind, *number, &round);
                    let _ = writeln!(io::stderr(), "{} {number} never ends: {kept:?}", kind.name());
                    std::process::exit(1);
                }
                (Err(RecvTimeoutError::Timeout), None) => {}
                (Err(RecvTimeoutError::Disconnected), _) => return,
            }
        }
    });
    sender
}

/// What was done and what was found.
#[derive(Default)]
struct Tally {
    rounds: BTreeMap<&'static str, (u64, usize)>,
    faults: BTreeMap<String, (u64, String)>,
}

impl Tally {
    fn count(&mut self, out: &Path, kind: Kind, number: u64, round: &Round) -> io::Result<()> {
        let (rounds, tried) = self.rounds.entry(kind.name()).or_default();
        (*rounds, *tried) = (*rounds + 1, *tried + round.tried);
        for fault in &round.faults {
            let (count, first) = self.faults.entry(fault.what.clone()).or_default();
            *count += 1;
            if *count == 1 {
                *first = format!("{} {number}", kind.name());
                let kept = keep(out, kind, number, round)?;
                writeln!(io::stderr(), "{first}: {} ({})", fault.what, kept.display())?;
            }
        }
        Ok(())
    }

    fn tell(&self, seconds: u64) -> io::Result<ExitCode> {
        let mut to = io::stdout().lock();
        for (kind, (rounds, tried)) in &self.rounds {
            writeln!(to, "{kind}: {rounds} rounds, {tried} things tried")?;
        }
        writeln!(to, "{seconds} s, {} faults", self.faults.len())?;
        for (what, (count, first)) in &self.faults {
            writeln!(to, "{count:6} × {what} (first: {first})")?;
        }
        Ok(if self.faults.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
    }
}

//! What holds for any plan and any sequence of edits: metal is kept, marks run forward, undo and redo are exact, what is
//! written is read again, and nothing panics, whatever the sizes.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

mod agreement;
mod boundaries;
mod edits;
mod files;
mod fixed_bars;
mod forms;
mod histories;
mod laws;
mod orders;
mod pieces;
mod plans;
mod plates;
mod repeats;
mod sizes;

use proptest::test_runner::{Config, RngSeed};

/// So many random cases, the same in every run: what is landed fails for its own reasons, not by chance. To look for new
/// ones, set `PROPTEST_RNG_SEED`. Failures are found again from the numbers in their message, so none are kept in files.
fn cases(count: u32) -> Config {
    let from_environment = Config::default();
    let rng_seed = match from_environment.rng_seed {
        RngSeed::Random => RngSeed::Fixed(0x1F0E6E),
        given => given,
    };
    Config { cases: count, failure_persistence: None, max_shrink_iters: 2000, rng_seed, ..from_environment }
}

//! The metal from outside.

mod asked_laws;
mod asked_sizes;
mod block_laws;
mod blocks;
mod edits;
mod findings;
mod free_branches;
mod ladder;
mod laid_off;
mod leeway;
mod metal_findings;
mod odd_fraction;
mod plan_file;
mod reach;
mod spread;

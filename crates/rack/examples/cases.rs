//! Times the cut list on a file of cases such as `tests/data/cutting.json`: a line for each, to be held against another solver.

#![allow(clippy::print_stdout, clippy::unwrap_used, reason = "a tool of the bench, run by hand")]

use fh_rack::cut::cut;
use fh_rack::lengths;
use serde_json::Value;
use std::time::Instant;

/// Each case is cut so often, and the best time counts.
const TIMES: usize = 3;

fn main() {
    let path = std::env::args().nth(1).unwrap();
    let file: Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    for case in file["cases"].as_array().unwrap() {
        let problem = lengths::read(&case.to_string()).unwrap().problem;
        let (mut seconds, mut answer) = (f64::INFINITY, None);
        for _ in 0..TIMES {
            let start = Instant::now();
            answer = Some(cut(&problem, &|| true, &mut |_| ()));
            seconds = seconds.min(start.elapsed().as_secs_f64());
        }
        let answer = answer.unwrap();
        let left: u64 = answer.left.iter().map(|left| left.count).sum();
        let (bars, bound, proven) = (answer.worth.bars, answer.bound.first, answer.bound.proven);
        println!("{}\t{bars}\t{left}\t{bound}\t{proven}\t{seconds:.6}", case["id"].as_str().unwrap());
    }
}

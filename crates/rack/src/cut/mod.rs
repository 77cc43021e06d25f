//! The cut list: which pieces from which bar, with as few bars, as little length or as little money as can be.
//!
//! A bar of length `B` with an unusable end `u` gives pieces `l` with a kerf `k` when `Σ(l + k) ≤ B − u + k`: the last cut may fall
//! into the end that is held. With `w = l + k` and the room `B − u + k` this is one-dimensional cutting stock.
//!
//! In turn: best fit (`fit`), at once; small jobs by every state of what is left to cut (`states`), exact for all goals;
//! else column generation (P. C. Gilmore and R. E. Gomory, *A linear programming approach to the cutting-stock problem*,
//! Operations Research 9, 1961) with a bound in whole numbers (`columns`, `knapsack`), and diving (`dive`) to a plan.

mod answer;
mod columns;
mod dive;
mod fit;
mod knapsack;
mod model;
mod problem;
mod simplex;
mod states;

pub use answer::{Answer, BarCut, Bound, LeftOver, Worth, cut, first_plan};
pub use problem::{Demand, Goal, Problem, Supply, Way};

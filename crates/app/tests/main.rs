//! The editor’s tests from outside: what the strips draw.

mod canvas;
mod canvas_branches;

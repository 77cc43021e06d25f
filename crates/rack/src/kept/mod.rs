//! What the smith keeps beside the plans, each in a file that people can read: the rack, the merchant's list, the shop's
//! figures, and jobs.

pub mod booking;
pub mod checks;
pub mod job;
pub mod merchant;
pub mod rack;
pub mod shop;

//! The physics of a heat, from outside: against published figures, closed forms and absurd inputs.

mod absurd;
mod analytic;
mod growth;
mod hammering;
mod reference;

//! The ride against other solvers.
//!
//! The second formulation shares no code with the ride: it reads the ground's pieces and the
//! masses, and works out everything else by itself. It is judged by closed forms first.

mod body;
mod closed;
mod constrained;
mod duel;
mod motion;
mod riders;
mod rigid;
mod track;

//! Where each figure stands: it may come nearer to its bar, and never fall back.
//!
//! Shares over lines that were drawn lie some two standard errors below what was measured on the seeds for
//! tuning, as other lines are drawn for judging. None is a figure that has no floor.

/// Calm: share of steps that slow the first lip by more than 0.5 %, per cent.
pub const CALM_HALF: Option<f64> = Some(2.0);
/// Calm: the same by more than 2 %.
pub const CALM_TWO: Option<f64> = Some(0.3);
/// Calm: share of steps that slow a later lip by more than 1 %, per cent.
pub const CALM_LATER: Option<f64> = Some(24.0);

/// Order: share of lines on which the styles come in order at the first lip, per cent.
pub const ORDER_STYLES: Option<f64> = Some(96.0);
/// Order: share of steps of a tenth of skill that are not slower by more than 0.5 %, per cent.
pub const ORDER_SKILL: Option<f64> = Some(97.5);
/// Order: riders who crash pumping where they do not soaking up, per cent.
pub const ORDER_CRASHES: Option<f64> = Some(12.0);

/// Cleared: share of the jumps that end without a crash, in line and past the knuckle, per cent.
pub const CLEARED: Option<f64> = Some(91.0);
/// Cleared: share of rear wheels within 0.25 m of the estimate, per cent.
pub const CLEARED_NEAR: Option<f64> = Some(84.0);
/// Cleared: share of the jumps drawn that can be placed by riding, per cent.
pub const PLACED: Option<f64> = Some(78.0);
/// Cleared: share of far too long gaps that are cleared, per cent.
pub const TOO_LONG: Option<f64> = Some(5.0);
/// Cleared: share of them that end without a crash and in line, per cent.
pub const TOO_LONG_WELL: Option<f64> = Some(80.0);
/// Cleared: how far past the aim a gap for a mere point brings the rear wheel, m.
pub const POINT: Option<f64> = Some(0.0);

/// Pump track: slowest steady speeds of the adult on the first three sizes of rollers and of the child
/// on the first two, m/s.
pub const TRACK_STEADY: [[Option<f64>; 3]; 2] = [[None; 3], [None; 3]];
/// The same of those that enter at 4.5 m/s and more.
pub const TRACK_STEADY_RIDDEN: [[Option<f64>; 3]; 2] = [
    [Some(6.4), Some(7.7), Some(8.8)],
    [Some(5.8), Some(6.5), None],
];
/// Pump track: rides with a crash, per cent.
pub const TRACK_CRASHES: Option<f64> = Some(0.0);
/// Pump track: most net work a roller of who only soaks up, m of head.
pub const TRACK_SOAKING: Option<f64> = Some(0.011);
/// Pump track: share of gains between 0.4 and 1.5 of the reduced optimum, per cent.
pub const TRACK_OPTIMUM: Option<f64> = Some(100.0);
/// Pump track, adult and child: greatest push while stretching, body weights.
pub const TRACK_PUSH: [Option<f64>; 2] = [Some(2.5), Some(2.0)];
/// The same: greatest push while giving way, body weights.
pub const TRACK_HOLD: [Option<f64>; 2] = [Some(4.5), Some(4.5)];
/// The same: mean power, what legs give less what they take, W/kg.
pub const TRACK_POWER: [Option<f64>; 2] = [Some(6.0), Some(4.0)];

/// Flight: share of take-offs with the bike within 8° of the lip's angle, per cent.
pub const FLIGHT_PITCH: Option<f64> = Some(96.0);
/// Flight: whether the median of the pitch against the lip is held within its bar: any number does.
pub const FLIGHT_PITCH_MEDIAN: Option<f64> = Some(0.0);
/// Flight: median direction of the mass centre against the lip's angle, degrees.
pub const FLIGHT_DIRECTION: Option<f64> = Some(-4.0);
/// Flight: median of how much steeper skill leaves the lip, degrees.
pub const FLIGHT_POP: Option<f64> = Some(0.0);
/// Flight: share of flights with the body's lean within its limits, per cent.
pub const FLIGHT_LEAN: Option<f64> = Some(88.0);

/// Landing: share of clean landings that take no more than they may, per cent.
pub const LANDING: Option<f64> = Some(58.0);
/// Landing: share of what a landing takes that a skilled rider gets back, median.
pub const LANDING_BACK: Option<f64> = Some(0.2);

/// Tall gap: lowest start that clears it, m.
pub const TALL_START: Option<f64> = Some(3.2);
/// Tall gap: whether the first try's miss is held within its bar: any number does.
pub const TALL_FIRST: Option<f64> = Some(0.0);

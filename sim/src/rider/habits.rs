//! What the rider does by habit, and what a person can.
//!
//! Pure numbers, rates and angles, or counts in body weights, wheelbases or statures: none is set for a
//! line or a rider.

use crate::body::Mount;
use crate::num;

// --- The plan over the ground.

/// Share of the legs' travel that is planned with, each way.
pub const TRAVEL_SHARE: f64 = 0.75;
/// Weight of standing at ease, 1/m².
pub const AT_EASE: f64 = 1.5;
/// Weight of the standing height in a lip, 1/m².
pub const IN_LIP: f64 = 300.0;
/// Weight of travel beyond what is planned with, 1/m².
pub const BEYOND_TRAVEL: f64 = 4000.0;
/// Weight of load beyond what is planned with.
pub const BEYOND_LOAD: f64 = 6.0;
/// Least load planned with, in body weights.
pub const LEAST_LOAD: f64 = 0.15;
/// Steps toward the optimum, at most.
pub const PASSES: usize = 12;
/// Move in a step below which the optimum is found, m.
pub const SETTLED: f64 = 1e-10;
/// Steepest way of a body that is begun with, dz/dx.
pub const STEEPEST: f64 = 3.0;
/// Most that a body is thought of as leaning over the bike, rad.
pub const MOST_TILT: f64 = 0.8;
/// Share of the sight, counted down from its end, over which pumping comes in: one in this.
pub const TAPER: f64 = 3.0;
/// Share of the stroke that somebody without skill uses.
pub const LEAST_STROKE: f64 = 0.8;
/// Slowest speed foreseen, m/s.
pub const SLOWEST: f64 = 0.5;
/// How heavy a skilled pumping rider means to be where the ground falls, as far as strength goes.
pub const PUMP: f64 = 12.0;
/// The same for who only soaks up, with no skill and with all of it: a little lighter there than even, as
/// soaking up may give nothing and the body's swing puts in a little, the more the shorter the stroke.
pub const SOAK: [f64; 2] = [-2.0, -0.6];
/// How late pumping comes at no skill, in wheelbases: a quarter of a roller (common practice, no source).
pub const LATE: f64 = 0.6;
/// Share of the mean power that is planned with: rides turn out a little livelier than planned.
pub const POWER_SHARE: f64 = 0.66;
/// Least share of pumping that is left where strength is short.
pub const LEAST_PUMP: f64 = 0.02;

/// Mean power that legs keep up for some seconds, W/kg of the body: 4 for a child of ten, 6 for an adult
/// (common practice, no source).
pub fn mean_power(m: &Mount) -> f64 {
    num::clamp(4.0 + 2.0 * (m.stature - 1.39) / 0.39, 2.5, 6.5)
}
/// Least and most load that the body's place is balanced for, in body weights.
pub const BALANCED: [f64; 2] = [0.5, 2.5];
/// Weight of being in place for the launch, against standing in balance.
pub const IN_PLACE: f64 = 100.0;
/// Longest time between two plans on the ground, s.
pub const LOOK: f64 = 0.07;
/// Way between two plans, m.
pub const WAY: f64 = 0.3;
/// Time in which the body goes over from one plan to the next, s: with that between two plans, about a tenth of
/// a second from what calls for a change to the change (common practice, no source).
pub const GO_OVER: f64 = 0.05;
/// How heavy every rider means to be where a landing falls.
pub const LANDING: f64 = 30.0;
/// Weight of standing at ease behind a landing, 1/m².
pub const AFTER_LANDING: f64 = 10.0;
/// Deceleration that legs giving way at a touch-down are reckoned with, in g.
pub const STOPPING: f64 = 2.0;
/// How much taller than usual the most skilled body is as the rear wheel leaves a lip, in statures.
pub const POP: f64 = 0.04;
/// Way of the bike over which it comes to that, in wheelbases.
pub const POP_WAY: f64 = 1.5;

/// Most that stretching legs push, in body weights: 2 for a child of ten, 2.5 for an adult
/// (common practice, no source).
pub fn most_push(m: &Mount) -> f64 {
    num::clamp(1.96 + 0.5 * (m.stature - 1.39) / 0.39, 1.5, 2.6)
}

/// Most that a launch reckons with, in body weights: legs that should push more give way a little, and bear some
/// more as they do.
pub fn most_launch(m: &Mount) -> f64 {
    1.4 * most_push(m)
}

/// Most that legs hold as they give way, in body weights.
pub const MOST_HOLD_UP: f64 = 4.5;
/// Speed of giving way at which they hold the most, m/s.
pub const YIELD: f64 = 0.5;

// --- On the ground.

/// Rate at which the body returns to its path, rad/s.
pub const PATH_RATE: f64 = 10.0;
/// Share of critical damping in that return.
pub const PATH_DAMPING: f64 = 0.8;
/// Rate at which the body returns to its place over the bike, rad/s.
pub const OVER_RATE: f64 = 20.0;
/// Share of critical damping in that return.
pub const OVER_DAMPING: f64 = 1.2;
/// Rate at which the body returns to its attitude, rad/s.
pub const LEAN_RATE: f64 = 9.0;
/// Share of critical damping in that return.
pub const LEAN_DAMPING: f64 = 0.9;
/// How far the body leans with its angle about the middle.
pub const LEAN_WITH_SLOPE: f64 = 0.6;
/// Most pull of hands and feet, in body weights: only a little (common practice, no source).
pub const MOST_PULL: f64 = 0.6;
/// Most force across the legs, in body weights (common practice, no source).
pub const MOST_HOLD: f64 = 1.6;
/// Most push of the legs with no ground under the wheels, in body weights: it presses the bike down
/// behind a crest.
pub const MOST_ALOFT: f64 = 1.0;
/// The same as the wheels leave the edge of a lip.
pub const AT_EDGE: f64 = 0.15;
/// Stretch of the legs before their end, in statures, over which the push fades.
pub const FADE: f64 = 0.028;
/// Most couple of legs and arms, in body weight times stature: hands that pull or push with some
/// 0.6 of the body's weight, half a stature from the feet (common practice, no source).
pub const MOST_COUPLE: f64 = 0.3;
/// Share of the wheels' load, times half the wheelbase, that keeping the attitude may shift from
/// wheel to wheel: less than all of it leaves both wheels on the ground.
pub const SHIFT_SHARE: f64 = 0.8;
/// Range of the body's rotation against the bike, rad: 63° either way (common practice, no source).
pub const TWIST: f64 = 1.1;
/// Load on a wheel, in weights of rider and bike, that counts as rolling on it.
pub const LOADED: f64 = 0.08;

/// Rate at which the bike comes in line with the ground under it while both wheels are off, rad/s.
pub const IN_LINE: f64 = 12.0;

// --- The launch.

/// How fast the body leans with its angle about the middle as the front wheel passes an edge: it has
/// some of its way yet to make good.
pub const LEAN_RATE_WITH: f64 = 0.8;
/// How much flatter than the lip a launch is meant to go, rad.
pub const FLATTER: f64 = 0.035;
/// How far the mass centre is ahead of the rear wheel then, in wheelbases.
pub const AHEAD: f64 = 0.35;
/// How often a place for the launch is tried, beside both ends of the range.
pub const REHEARSALS: usize = 4;
/// Farthest place behind the middle, in wheelbases.
pub const FARTHEST_BACK: f64 = 0.55;
/// Turning that the flight is left short of, rad/s: what lacks is made good more easily than what is over.
pub const RESERVE: f64 = 0.3;
/// Rate at which body and bike come to turn alike in the launch, 1/s.
pub const AS_ONE: f64 = 15.0;

/// Rate at which the body comes to its place over the bike in the launch, 1/s.
pub const IN_LAUNCH: f64 = 8.0;
/// Most that the load is changed by in the launch for the sake of turning, of itself.
pub const MOST_EXTRA: f64 = 0.5;
/// How much more than what is lacking is made up for, as the bike bears a part of the load itself.
pub const EAGER: f64 = 1.5;
/// Way to the edge from which on it is too late to change anything, in wheelbases.
pub const TOO_LATE: f64 = 0.1;

// --- The flight.

/// Pitch aimed at, beyond the landing's slope, rad.
pub const NOSE: f64 = -0.05;
/// Share of the landing's slope that the body's attitude turns to.
pub const LEAN_DOWN: f64 = 0.8;
/// Share of the landing's slope that the body's place over the bike turns to.
pub const SWING_DOWN: f64 = 0.6;
/// Most that the body swings farther back or forward to use up turning, rad.
pub const MOST_SWING: f64 = 0.4;
/// Share of the stretch left in the legs that is reached down with.
pub const REACH_DOWN: f64 = 0.35;
/// Time that it takes to reach down with the legs, s.
pub const REACHING: f64 = 0.25;
/// Most force between body and bike in the air, in body weights.
pub const MOST_IN_AIR: f64 = 0.6;
/// Shortest time to go that is acted on, s: no hand is quicker.
pub const SHORTEST: f64 = 0.06;

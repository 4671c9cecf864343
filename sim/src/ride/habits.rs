//! What the rider does by habit: the constants of the rider's control.
//!
//! Every one is a pure number, a rate or an angle, or counts in body weights, wheelbases or
//! statures, so that none is set for a line or a rider. Where no source is named, the value came
//! from a search over the tuning half of a seeded family of lines (`tests/family`), for jumps
//! landed in line with the slope and for little speed lost on rollers; the judging half was kept
//! apart. The ride changes smoothly with each, within a tenth or so of its value.

// --- On the ground.

/// Rate at which the body returns to its path, rad/s. Softer, the legs give way in a lip; stiffer,
/// they copy every roller.
pub const PATH_RATE: f64 = 12.36;
/// Share of critical damping in that return.
pub const PATH_DAMPING: f64 = 0.635;

/// Rate at which the body returns to its place along the bike, rad/s.
pub const OVER_RATE: f64 = 15.4;
/// Share of critical damping in that return.
pub const OVER_DAMPING: f64 = 0.7;

/// Rate at which the body returns to its attitude, rad/s.
pub const LEAN_RATE: f64 = 9.36;
/// Share of critical damping in that return.
pub const LEAN_DAMPING: f64 = 0.962;

/// How far the body leans with the path's slope: 0 stays upright, 1 turns with the bike.
pub const LEAN_WITH_SLOPE: f64 = 0.54;

/// Push on a body coming down, beyond what stops it within the legs' travel, m/s². Without such a
/// limit every landing is met with the full push at once.
pub const GENTLE: f64 = 6.96;

/// Most push of the legs, in body weights.
///
/// Peak forces of jumping and hopping children are 2.5 to 4 body weights (Lang et al. 2013, J.
/// Musculoskelet. Neuronal Interact. 13:213, gives 2.5 for a two-legged jump); giving way, legs
/// hold more than they push.
pub const MOST_PUSH: f64 = 4.5;
/// Most pull of hands and feet, in body weights: only a little (common practice, no source).
pub const MOST_PULL: f64 = 0.6;

/// Most force along the path, in body weights (common practice, no source).
pub const MOST_HOLD: f64 = 1.0;

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
pub const LOADED: f64 = 0.079;

// --- Seeing what comes.

/// Half the stretch that the ground is averaged over, in wheelbases: twice it is near a roller's
/// length, so that rollers even out.
pub const LOOK: f64 = 2.21;

/// The least half stretch, in wheelbases: in a lip the body follows the curve.
pub const LEAST_LOOK: f64 = 0.23;

/// Share of the legs' travel that smoothing may use up, each way.
pub const TRAVEL_SHARE: f64 = 0.8;

/// How far the legs go beyond evening the ground out: 1 would even it out.
pub const ABSORB: f64 = 1.135;

// --- The launch.

/// How far before the edge the body begins to move back, in wheelbases of the front wheel's way.
pub const BEGIN_BACK: f64 = 2.5;

/// Share of the load of riding the lip out that is left on the rear wheel once the front is off.
pub const LOAD_LEFT: f64 = 0.7;

/// How much of the needed shift of the body is made: the push makes up for the rest.
pub const SHIFT_MADE: f64 = 0.44;
/// A shift added to it, in wheelbases.
pub const SHIFT_ADDED: f64 = 0.015;

/// By how much of a wheelbase's turn of the lip the mass centre leaves flatter than the edge.
pub const FLATTER: f64 = 0.315;

/// Least way to the edge that the push is still planned for, in wheelbases: nearer than this it is
/// too late to make up for anything.
pub const TOO_LATE: f64 = 0.3;

/// Least push in the launch, in body weights.
pub const LEAST_PUSH: f64 = 0.187;
/// Most push in the launch, in pushes that would ride the lip out.
pub const POP: f64 = 1.5;

// --- The flight.

/// Pitch aimed at, beyond the landing's slope, rad; a little nose-down, as what goes wrong on a
/// steep lip leaves the nose high.
pub const NOSE: f64 = -0.086;

/// Share of the landing's slope that the body's attitude turns to.
pub const LEAN_DOWN: f64 = 0.8;
/// Share of the landing's slope that the body's place over the bike turns to.
pub const SWING_DOWN: f64 = 0.9;

/// Most that the body swings farther back or forward to use up turning, rad.
pub const MOST_SWING: f64 = 0.4;

/// Share of the stretch left in the legs that is reached down with.
pub const REACH_DOWN: f64 = 0.5;

/// Most force between body and bike in the air, in body weights.
pub const MOST_IN_AIR: f64 = 1.27;

/// Shortest time to go that is acted on, s: no hand is quicker.
pub const SHORTEST: f64 = 0.06;

// --- Pumping.

/// How far behind evening the ground out a skilled pumping rider's legs are, in wheelbases. Someone who
/// is learning pumps too early by what is lacking in skill, and so mostly only soaks up.
pub const PUMP_BEHIND: f64 = 0.4;
/// How much of evening the ground out a pumping rider's legs do.
pub const PUMP: f64 = 1.0;

//! The most that legs can gain over a train of rollers: a reduced optimum by another solver.
//!
//! The rider is a point of mass m on legs of variable length over the ground as both wheels take it,
//! the mean z̄ of the heights half a wheelbase ahead and behind. He travels at one speed v, and his
//! movement repeats with the rollers. With u the height of the body, the legs push with n = 1 + v² u″/g
//! body weights and gain −m v² ∮ z̄′ u″ dx a roller. That is linear in u, and so are the limits of push
//! and travel and the least load of the wheels: a linear programme, solved by the interior-point method
//! of the crate `clarabel`. Model: Luginbühl et al. 2023, Sports 11:31, without flight. The bike's
//! pitch is not in it.
//!
//! u is a sum of harmonics of the roller. A few of them make a movement as smooth as a person's; many
//! tell what no movement can exceed.

use clarabel::algebra::CscMatrix;
use clarabel::solver::{
    DefaultSettingsBuilder, DefaultSolver, IPSolver, NonnegativeConeT, SolverStatus,
};
use sim::constants::GRAVITY;
use sim::profile::Profile;
use sim::ride::Mount;
use std::f64::consts::TAU;

/// Places at which a roller is looked at.
const PLACES: usize = 120;

/// Least load of the wheels, in shares of what they carry standing.
const LEAST_LOAD: f64 = 0.1;

/// Harmonics of a smooth movement.
pub const SMOOTH: usize = 3;

/// Harmonics of any movement at all.
pub const ANY: usize = 40;

/// A row of rollers, one of them seen as often as it likes.
pub struct Train<'a> {
    /// The ground.
    pub profile: &'a Profile,
    /// Where a roller in the midst of the row begins, m.
    pub from: f64,
    /// Its length, m.
    pub length: f64,
}

/// What the legs may do.
#[derive(Clone, Copy, Debug)]
pub struct Legs {
    /// Rider's mass, kg.
    pub rider: f64,
    /// Bike's mass, kg.
    pub bike: f64,
    /// Distance between the wheels, m.
    pub wheelbase: f64,
    /// How far the legs fold and stretch from where they are held, m: the first is negative.
    pub travel: [f64; 2],
    /// Greatest push, body weights; the least is none.
    pub push: f64,
}

impl Legs {
    /// Those of a rider on a bike, with a greatest push in body weights.
    pub fn of(m: &Mount, push: f64) -> Self {
        Self {
            rider: m.rider_mass,
            bike: m.bike_mass,
            wheelbase: m.wheelbase,
            travel: [m.reach_low - m.reach_usual, m.reach_high - m.reach_usual],
            push,
        }
    }
}

/// The movement at one place, as rows over its harmonics: height in m, and v² u″/g.
struct Movement {
    height: Vec<f64>,
    heavy: Vec<f64>,
}

impl Movement {
    fn at(place: usize, harmonics: usize, train: &Train, speed: f64) -> Self {
        let angle = TAU * place as f64 / PLACES as f64;
        let wave = TAU / train.length;
        let (mut height, mut heavy) = (vec![1.0], vec![0.0]);
        for k in 1..=harmonics {
            let k = k as f64;
            let bent = -(speed * k * wave).powi(2) / GRAVITY;
            let (sin, cos) = (k * angle).sin_cos();
            height.extend([cos, sin]);
            heavy.extend([bent * cos, bent * sin]);
        }
        Self { height, heavy }
    }
}

/// Limits as rows of A c ≤ b over the harmonics.
#[derive(Default)]
struct Limits {
    rows: Vec<Vec<f64>>,
    bounds: Vec<f64>,
}

impl Limits {
    /// `sign` times a row is no more than `bound`.
    fn keep(&mut self, row: &[f64], sign: f64, bound: f64) {
        self.rows.push(row.iter().map(|v| sign * v).collect());
        self.bounds.push(bound);
    }
}

/// The most net work that legs can do on one roller of a train at a speed, m of head of rider and
/// bike; none where no such movement keeps the wheels on the ground.
pub fn gain(train: &Train, legs: &Legs, speed: f64, harmonics: usize) -> Option<f64> {
    let dx = train.length / PLACES as f64;
    let ground = averaged(train, legs.wheelbase, dx);
    let share = legs.bike / legs.rider;
    let mut limits = Limits::default();
    let mut cost = vec![0.0; 2 * harmonics + 1];
    for i in 0..PLACES {
        let [before, after] = [(i + PLACES - 1) % PLACES, (i + 1) % PLACES].map(|i| ground[i]);
        let Movement { height, heavy } = Movement::at(i, harmonics, train, speed);
        limits.keep(&heavy, 1.0, legs.push - 1.0);
        limits.keep(&heavy, -1.0, 1.0);
        let bent = speed * speed * (before - 2.0 * ground[i] + after) / (GRAVITY * dx * dx);
        let load = 1.0 + share * (1.0 + bent) - LEAST_LOAD * (1.0 + share);
        limits.keep(&heavy, -1.0, load);
        limits.keep(&height, 1.0, ground[i] + legs.travel[1]);
        limits.keep(&height, -1.0, -(ground[i] + legs.travel[0]));
        // The legs gain −m g Σ (n − 1) z̄′ dx: what is sought is the least of its negative.
        let rise = 0.5 * (after - before);
        cost.iter_mut()
            .zip(&heavy)
            .for_each(|(c, n)| *c += n * rise);
    }
    let lost = solve(&cost, &limits)?;
    Some(-lost * legs.rider / (legs.rider + legs.bike))
}

/// The ground as both wheels take it, over where a roller begins, m.
fn averaged(train: &Train, wheelbase: f64, dx: f64) -> Vec<f64> {
    let height = |x: f64| {
        train
            .profile
            .height_at(x)
            .expect("the train goes on on both sides")
    };
    let mean = |x: f64| 0.5 * (height(x - 0.5 * wheelbase) + height(x + 0.5 * wheelbase));
    let level = height(train.from);
    (0..PLACES)
        .map(|i| mean(train.from + i as f64 * dx) - level)
        .collect()
}

/// The least of a cost within limits.
fn solve(cost: &[f64], limits: &Limits) -> Option<f64> {
    let settings = DefaultSettingsBuilder::default().verbose(false).build();
    let cones = [NonnegativeConeT(limits.rows.len())];
    let none = CscMatrix::zeros((cost.len(), cost.len()));
    let (rows, bounds) = (CscMatrix::from(&limits.rows), &limits.bounds);
    let settings = settings.expect("usual settings");
    let mut solver = DefaultSolver::new(&none, cost, &rows, bounds, &cones, settings).ok()?;
    solver.solve();
    let found = [SolverStatus::Solved, SolverStatus::AlmostSolved];
    found
        .contains(&solver.solution.status)
        .then_some(solver.solution.obj_val)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rider::track;

    /// So fast that the body hardly moves, and with no limit but a push of 0 to 2 weights: heavy all
    /// the way down and light all the way up gains the weight times twice the height of the averaged
    /// ground, up and down once each.
    #[test]
    fn without_limits_of_travel_the_legs_gain_twice_the_height() {
        let length = 3.5;
        let profile = track::profile(0.3, length, 10);
        let from = track::BEFORE + 3.0 * length;
        let train = Train {
            profile: &profile,
            from,
            length,
        };
        // Without a bike the wheels would be as light as the legs: a tenth of a weight is kept.
        let (bike, wheelbase, travel) = (1e-9, 1.0, [-9.0, 9.0]);
        let legs = Legs {
            rider: 50.0,
            bike,
            wheelbase,
            travel,
            push: 2.0,
        };
        let ground = averaged(&train, wheelbase, length / PLACES as f64);
        let low = ground.iter().copied().fold(f64::INFINITY, f64::min);
        let high = ground.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let got = gain(&train, &legs, 12.0, ANY).expect("it can be ridden");
        // Light for longer than heavy, since the mean is one weight.
        let [least, most] = [1.0 - LEAST_LOAD, 1.0].map(|light| 2.0 * light * (high - low));
        assert!(
            (0.97 * least..=most).contains(&got),
            "{got} m, between {least} and {most}"
        );
        let smooth = gain(&train, &legs, 12.0, SMOOTH).expect("it can be ridden");
        assert!(
            (0.6 * got..got).contains(&smooth),
            "{smooth} m smooth, {got} m any"
        );
    }

    #[test]
    fn low_rollers_give_little_and_stiff_legs_gain_nothing() {
        let profile = track::profile(0.02, 4.0, 10);
        let train = Train {
            profile: &profile,
            from: track::BEFORE + 12.0,
            length: 4.0,
        };
        let travel = [-0.2, 0.2];
        let legs = Legs {
            rider: 50.0,
            bike: 10.0,
            wheelbase: 1.0,
            travel,
            push: 2.0,
        };
        let got = gain(&train, &legs, 5.0, ANY).expect("it can be ridden");
        assert!((0.0..0.04).contains(&got), "{got} m");
        let stiff = Legs {
            travel: [-1e-3, 1e-3],
            ..legs
        };
        let got = gain(&train, &stiff, 5.0, ANY).expect("it can be ridden");
        assert!(got.abs() < 2e-3, "{got} m");
    }

    /// Prints the case of an adult that is written about the model: 78 kg on 12.5 kg, 0.4 by 4 m.
    #[test]
    fn speed_adds_to_the_gain() {
        let profile = track::profile(0.4, 4.0, 10);
        let train = Train {
            profile: &profile,
            from: track::BEFORE + 16.0,
            length: 4.0,
        };
        let travel = [-0.21, 0.14];
        let legs = Legs {
            rider: 78.0,
            bike: 12.5,
            wheelbase: 1.07,
            travel,
            push: 2.5,
        };
        for harmonics in [SMOOTH, ANY] {
            let got = [4.0, 5.0, 6.0].map(|v| gain(&train, &legs, v, harmonics));
            println!("{harmonics} harmonics: {got:?} m at 4, 5 and 6 m/s");
            let [a, b, c] = got.map(|g| g.expect("it can be ridden"));
            assert!(a < b && b < c);
        }
    }
}

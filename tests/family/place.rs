//! Where the gap goes: a plain ballistic estimate, without drag, from the model's own lip speed.

use sim::constants::GRAVITY;
use sim::plan::{Jump, Mount, Weather};
use sim::ride::EventKind;
use sim::setup::Ridden;

/// Smallest gap worth building, m.
const LEAST_GAP: f64 = 0.3;

/// Least height of the front wheel's path over the knuckle, m.
const CLEAR: f64 = 0.02;

/// Least steep landing of the family, degrees.
const LEAST_ANGLE: f64 = 18.0;

/// What is thrown from the edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Estimate {
    /// The mass centre, from where it is; the bike then stands square on the slope under it, the
    /// rider over its middle, and the rear wheel comes down `aim` past the knuckle plus this, m.
    MassCentre(f64),
    /// A mere point, from the edge to the slope: as who knows nothing of bikes would reckon.
    Point,
}

/// A jump as it was left, seen from the edge.
#[derive(Clone, Copy, Debug)]
pub struct Left {
    /// Velocity of the common mass centre, along the line and up, m/s.
    pub velocity: [f64; 2],
    /// The mass centre ahead of the edge and above it, m.
    pub centre: [f64; 2],
}

impl Left {
    /// How lip `index` was left in a ride.
    pub fn over(ridden: &Ridden, index: usize) -> Option<Self> {
        let edge = ridden.profile.lips[index].edge;
        ridden.run.events.iter().find_map(|e| match e.kind {
            EventKind::LipLeft {
                lip,
                speed,
                direction,
                centre_x,
                centre_z,
                ..
            } if lip == index => Some(Self {
                velocity: [speed * direction.cos(), speed * direction.sin()],
                centre: [centre_x - edge.x, centre_z - edge.y],
            }),
            _ => None,
        })
    }
}

/// The bike as the estimate has it: mass centre over the ground, half the wheelbase.
struct Stance {
    stand: f64,
    half: f64,
}

impl Estimate {
    /// Places a jump's gap; none where there is no jump to build.
    ///
    /// Over a landing too steep for the flight the front wheel would strike the knuckle before the
    /// rear wheel could come down past it: such a landing is laid back until the front wheel passes
    /// over, but not below the family's least steepness.
    pub fn fit(
        self,
        jump: &mut Jump,
        left: Left,
        aim: f64,
        grade: f64,
        rider: &Mount,
    ) -> Option<f64> {
        let (stance, left, aim) = match self {
            Self::MassCentre(more) => (stance(rider), left, aim + more),
            Self::Point => {
                let centre = [0.0; 2];
                (
                    Stance {
                        stand: 0.0,
                        half: 0.0,
                    },
                    Left { centre, ..left },
                    aim,
                )
            }
        };
        loop {
            let (gap, over) = gap_for(jump, &left, aim, grade, &stance)?;
            if over >= CLEAR {
                return Some(gap);
            }
            jump.landing.angle_deg -= 1.0;
            if jump.landing.angle_deg < LEAST_ANGLE {
                return None;
            }
        }
    }
}

fn stance(rider: &Mount) -> Stance {
    let m = sim::setup::mount(rider, &Weather::default());
    // Legs are nearly long as they come down.
    let reach = m.reach_usual + 0.7 * (m.reach_high - m.reach_usual);
    let moment = m.rider_mass * reach + m.bike_mass * m.bike_rise;
    Stance {
        stand: m.tyre.radius + moment / m.mass(),
        half: 0.5 * m.wheelbase,
    }
}

/// The gap whose slope is met with the rear wheel `aim` past the knuckle; beside it, how far over
/// the knuckle the front wheel passes.
fn gap_for(jump: &Jump, left: &Left, aim: f64, grade: f64, stance: &Stance) -> Option<(f64, f64)> {
    // The landing's angle counts from the ground's own slope.
    let slope = jump.landing.angle_deg.to_radians() - grade.atan();
    let (sin, cos) = slope.sin_cos();
    let past = aim + stance.half * cos;
    let front = aim + 2.0 * stance.half * cos;
    let [vx, vz] = left.velocity;
    let (mut gap, mut over) = (1.0, 0.0);
    for _ in 0..20 {
        // Height of the knuckle over the edge depends on the gap through the yard's grade.
        let knuckle = jump.landing.height + grade * gap - jump.lip.height;
        let target = knuckle - past * slope.tan() + stance.stand * cos;
        let root = vz * vz + 2.0 * GRAVITY * (left.centre[1] - target);
        if root < 0.0 || vx <= 0.0 {
            return None;
        }
        let back = front / vx;
        over = (root.sqrt() - 0.5 * GRAVITY * back) * back - front * slope.tan();
        let flown = vx * (vz + root.sqrt()) / GRAVITY;
        gap = left.centre[0] + flown - past - stance.stand * sin;
    }
    (gap >= LEAST_GAP).then_some((gap, over))
}

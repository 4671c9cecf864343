//! What happens on the way: edges passed, flights, touch-downs, stalls, crashes, the end.

use super::forces::World;
use super::ground::Touch;
use super::run::{CrashKind, Event, EventKind, Outcome, Wheel};
use super::step::Point;
use crate::body::{LEAN, Mount, PITCH, Pose, RIDER, Y, vec};
use crate::constants::GRAVITY;
use crate::num;
use crate::profile::{Piece, Profile};
use glam::DVec2;

/// Shortest time off the ground that counts as flight, s. Shorter hops are not worth a word.
const SHORTEST_FLIGHT: f64 = 0.06;

/// Speed below which the rider counts as standing, m/s.
const STANDING: f64 = 0.03;

/// Speed at which somebody who brakes puts a foot down, m/s. A locked wheel creeps on a slope, as grip is
/// rounded off.
const FOOT_DOWN: f64 = 0.2;

/// How far the rear wheel rolls back from where it started before the rider has certainly rolled back, m: less than
/// there is ground behind it.
const BACK: f64 = 0.03;

/// Pitch against the ground beyond which nobody recovers, rad: 75°.
const BEYOND: f64 = 1.3;

/// Longest rise looked along for its crest where no lip ends it, m.
const LONGEST_RISE: f64 = 10.0;

/// Load beyond which legs and arms give in, in body weights.
///
/// Twice the peak of a drop landing from knee height (common practice, no source).
const TOO_HARD: f64 = 9.0;

/// Least share of up in a normal of ground that a wheel can stand on: no wall.
const UPRIGHT: f64 = 0.17;

/// Keeps track of contacts and collects the events.
pub struct Watch {
    pub events: Vec<Event>,
    /// Index of the next lip to be left.
    pub lip: usize,
    /// When both wheels were last seen leaving the ground, and the speed then.
    left_ground: Option<(f64, f64, f64)>,
    in_air: bool,
    bottomed: bool,
    /// Speed at the last low point of the mass centre, for what was missing at a stall.
    foot_speed: f64,
    last_rise: f64,
    /// How far back the rear axle may come, and where the line ends, m, ...
    back_x: f64,
    pub end_x: f64,
    /// ... and a height that no part of it comes down to, m.
    under: f64,
    brake_x: f64,
}

impl Watch {
    /// Watches a ride over a profile from a pose, braking from `brake_x` on.
    pub fn new(profile: &Profile, pose: &Pose, brake_x: f64) -> Self {
        let last = profile.pieces.last();
        let lowest = |low, p: &Piece| num::min(low, num::min(p.start.y, p.end.y) - p.length);
        Self {
            events: Vec::with_capacity(64),
            lip: 0,
            left_ground: None,
            in_air: false,
            bottomed: false,
            foot_speed: 0.0,
            last_rise: 0.0,
            back_x: pose.axle[0].x - BACK,
            end_x: last.map_or(0.0, |p| p.end.x),
            under: profile.pieces.iter().fold(f64::INFINITY, lowest),
            brake_x,
        }
    }

    /// Looks at one step; tells how the ride ended, if it did.
    pub fn step(&mut self, world: &World, a: &Point, b: &Point) -> Option<Outcome> {
        let pose = Pose::of(world.m, &b.y);
        if !b.y.iter().all(|v| v.is_finite()) {
            return Some(self.crash(a, &pose, CrashKind::Lost));
        }
        self.lips(world, a, b);
        self.flight(world, a, b, &pose);
        self.travel(world.m, b, &pose);
        if self.last_rise <= 0.0 && pose.v_centre.y > 0.0 {
            self.foot_speed = num::length(pose.v_centre);
        }
        self.last_rise = pose.v_centre.y;
        if let Some(why) = self.crashed(world, b, &pose) {
            return Some(self.crash(b, &pose, why));
        }
        self.ended(world, b, &pose)
    }

    fn push(&mut self, t: f64, x: f64, kind: EventKind) {
        self.events.push(Event { t, x, kind });
    }

    fn crash(&mut self, at: &Point, pose: &Pose, why: CrashKind) -> Outcome {
        self.push(at.t, pose.middle.x, EventKind::Crashed { why });
        Outcome::Crashed
    }

    fn lips(&mut self, world: &World, a: &Point, b: &Point) {
        let m = world.m;
        while let Some(lip) = world.sight.lips.get(self.lip) {
            let past = |y: &Y| (Pose::of(m, y).axle[0] - lip.edge).dot(lip.along);
            if past(&b.y) < 0.0 {
                return;
            }
            let t = crossing(a, b, past);
            let y = a.between(b, t);
            let pose = Pose::of(m, &y);
            let v = pose.v_centre;
            self.push(
                t,
                lip.edge.x,
                EventKind::LipLeft {
                    lip: self.lip,
                    speed: num::length(v),
                    direction: num::atan2(v.y, v.x),
                    pitch: y[PITCH],
                    centre_x: pose.centre.x,
                    centre_z: pose.centre.y,
                },
            );
            self.lip += 1;
        }
    }

    fn flight(&mut self, world: &World, a: &Point, b: &Point, pose: &Pose) {
        let off = b.felt.wheels.iter().all(|w| w.load <= 0.0);
        match (off, self.left_ground) {
            (true, None) => {
                let t = crossing(a, b, |y| touch_gap(world, y));
                self.left_ground = Some((t, pose.middle.x, num::length(pose.v_centre)));
            }
            (true, Some((t, x, speed))) => {
                if !self.in_air && b.t - t > SHORTEST_FLIGHT {
                    self.in_air = true;
                    self.push(t, x, EventKind::Airborne { speed });
                }
            }
            (false, Some((t, ..))) => {
                if self.in_air {
                    self.touch_down(world, a, b, t);
                }
                self.in_air = false;
                self.left_ground = None;
            }
            (false, None) => {}
        }
    }

    fn touch_down(&mut self, world: &World, a: &Point, b: &Point, left: f64) {
        let m = world.m;
        let t = crossing(a, b, |y| touch_gap(world, y));
        let y = a.between(b, t);
        let pose = Pose::of(m, &y);
        let wheel = if b.felt.wheels[0].load >= b.felt.wheels[1].load {
            Wheel::Rear
        } else {
            Wheel::Front
        };
        let felt = &b.felt.wheels[usize::from(wheel == Wheel::Front)];
        let normal = felt.normal.normalize_or(DVec2::Y);
        let both = under_both(world, &pose).unwrap_or(normal);
        let slope = num::atan2(-both.x, both.y);
        let foot = |i: usize| pose.axle[i].x - normal.x * m.tyre.radius;
        self.push(
            t,
            foot(usize::from(wheel == Wheel::Front)),
            EventKind::TouchedDown {
                wheel,
                airtime: t - left,
                rear_x: foot(0),
                front_x: foot(1),
                pitch_to_slope: num::wrap(y[PITCH] - slope),
                speed: num::length(pose.v_centre),
                into_ground: num::max(-pose.v_centre.dot(both), 0.0),
            },
        );
    }

    fn travel(&mut self, m: &Mount, b: &Point, pose: &Pose) {
        let reach = num::length(vec(&b.y, RIDER) - pose.middle);
        let at_end = reach < m.reach_low;
        if at_end && !self.bottomed {
            let g = load_on(m, b);
            self.push(b.t, pose.middle.x, EventKind::BottomedOut { g });
        }
        // Armed again only once the legs are well off the stop.
        self.bottomed = at_end || (self.bottomed && reach < m.reach_low + 0.03);
    }

    fn crashed(&self, world: &World, b: &Point, pose: &Pose) -> Option<CrashKind> {
        let m = world.m;
        let keel = pose.middle - pose.along.perp() * (0.4 * m.tyre.radius);
        if world.ground.clearance(keel, m.tyre.radius) < 0.0 {
            return Some(CrashKind::FrameHit);
        }
        let rider = vec(&b.y, RIDER);
        let (s, c) = num::sin_cos(b.y[LEAN]);
        let head = rider + DVec2::new(-s, c) * (0.25 * m.stature);
        if world.ground.clearance(rider, m.stature) < 0.1 * m.stature
            || world.ground.clearance(head, m.stature) < 0.05 * m.stature
        {
            return Some(CrashKind::RiderHit);
        }
        let (_, slope) = world.sight.ground(pose.middle.x);
        let pitch = num::wrap(b.y[PITCH] - num::atan2(slope, 1.0));
        if pitch.abs() > BEYOND {
            let loaded = b.felt.wheels.iter().any(|w| w.load > 0.0);
            if loaded || pitch.abs() > 1.5 * BEYOND {
                return Some(if pitch > 0.0 {
                    CrashKind::LoopedOut
                } else {
                    CrashKind::OverTheBars
                });
            }
        }
        (load_on(m, b) > TOO_HARD).then_some(CrashKind::TooHard)
    }

    /// Speed that was missing at the foot of the rise that the rider rolled back on, m/s.
    fn missing(&self, world: &World, pose: &Pose) -> f64 {
        let here = world.sight.stand(self.lip).read(pose.middle.x).z;
        let rise = num::max(crest_ahead(world, pose.middle.x, self.lip) - here, 0.0);
        let foot = self.foot_speed;
        (foot * foot + 2.0 * GRAVITY * rise).sqrt() - foot
    }

    fn ended(&mut self, world: &World, b: &Point, pose: &Pose) -> Option<Outcome> {
        let speed = num::length(pose.v_centre);
        if pose.axle[1].x > self.end_x - world.m.tyre.radius {
            self.push(b.t, pose.axle[1].x, EventKind::EndOfLine { speed });
            return Some(Outcome::Finished);
        }
        if pose.middle.y < self.under {
            return Some(self.crash(b, pose, CrashKind::FrameHit));
        }
        if pose.middle.x >= self.brake_x && pose.v_centre.x < FOOT_DOWN {
            self.push(b.t, pose.middle.x, EventKind::Stopped);
            return Some(Outcome::Finished);
        }
        let behind = pose.axle[0].x < self.back_x;
        if pose.v_centre.x > STANDING || (b.t < 0.1 && !behind) {
            return None;
        }
        // Behind its beginning a line has no ground to come down on.
        if !behind && b.felt.wheels.iter().all(|w| w.load <= 0.0) {
            return None;
        }
        let missing = self.missing(world, pose);
        self.push(b.t, pose.middle.x, EventKind::RolledBack { missing });
        Some(Outcome::Stalled)
    }
}

/// Height of the body's path at the next crest before the next lip's edge, from `x` on, m.
fn crest_ahead(world: &World, x: f64, lip: usize) -> f64 {
    let end = world
        .sight
        .lips
        .get(lip)
        .map_or(x + LONGEST_RISE, |l| l.edge.x);
    let (mut at, mut top) = (x, world.sight.stand(lip).read(x).z);
    while at < end {
        at += 0.05;
        let z = world.sight.stand(lip).read(at).z;
        if z < top {
            break;
        }
        top = z;
    }
    top
}

/// Load the rider feels, in body weights.
pub fn load_on(m: &Mount, p: &Point) -> f64 {
    num::length(p.felt.rider.force) / (m.rider_mass * GRAVITY)
}

/// The point of the ground nearest to an axle, of those less than `reach` m away that count; none where there is none.
fn nearest(
    world: &World,
    axle: DVec2,
    reach: f64,
    counts: impl Fn(&Touch) -> bool,
) -> Option<Touch> {
    let mut nearest: Option<Touch> = None;
    world.ground.touches(axle, reach, |t| {
        if counts(&t) && nearest.is_none_or(|n| t.distance < n.distance) {
            nearest = Some(t);
        }
    });
    nearest
}

/// How far the nearer tyre is off the ground, m; negative once it is pressed in.
fn touch_gap(world: &World, y: &Y) -> f64 {
    let radius = world.m.tyre.radius;
    let reach = 2.0 * radius;
    let axles = Pose::of(world.m, y).axle.into_iter();
    let touches = axles.filter_map(|axle| nearest(world, axle, reach, |_| true));
    touches.fold(reach, |least, t| num::min(least, t.distance)) - radius
}

/// Normal of the ground as the bike will stand on it, from the foot of one wheel to the other's: what follows from
/// it hardly hangs on which of them was down first. None where one has no ground to stand on near by.
fn under_both(world: &World, pose: &Pose) -> Option<DVec2> {
    let radius = world.m.tyre.radius;
    let foot = |axle: DVec2| {
        let touch = nearest(world, axle, 3.0 * radius, |t| t.normal.y > UPRIGHT)?;
        Some(axle - touch.normal * touch.distance)
    };
    let [rear, front] = pose.axle.map(foot);
    let chord = front? - rear?;
    (chord.x > 0.5 * world.m.wheelbase * UPRIGHT).then(|| chord.normalize().perp())
}

/// Time between two points at which a measure changes sign, by halving; `b`'s where it does not.
fn crossing(a: &Point, b: &Point, measure: impl Fn(&Y) -> f64) -> f64 {
    let rising = measure(&b.y) > 0.0;
    let (mut low, mut high) = (a.t, b.t);
    for _ in 0..40 {
        let mid = 0.5 * (low + high);
        if (measure(&a.between(b, mid)) > 0.0) == rising {
            high = mid;
        } else {
            low = mid;
        }
    }
    high
}

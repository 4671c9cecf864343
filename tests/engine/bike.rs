//! A rider and bike as one rigid body on two wheels.

use glam::DVec2;
use sim::constants::GRAVITY;
use sim::ride::Mount;
use tests::curve::Curve;
use tests::lines;
use tests::rigid::{on_hard_tyres, rigid};

/// Masses and lengths, SI.
#[derive(Clone)]
pub struct Bike {
    pub mass: f64,
    /// Height of the mass centre over the line through the axles.
    pub rise: f64,
    /// About the mass centre, wheels counted as points.
    pub inertia: f64,
    pub wheelbase: f64,
    pub radius: f64,
    pub wheel_inertia: f64,
    /// Coefficient of friction.
    pub grip: f64,
}

/// Where a bike is let go and how it moves.
pub struct Start {
    /// Middle between the axles, and its velocity.
    pub middle: DVec2,
    pub velocity: DVec2,
    pub pitch: f64,
    pub turning: f64,
    /// Speed of each wheel's rim against its axle.
    pub rims: [f64; 2],
}

/// One of the family's riders without losses, as the ride knows it: one rigid body on hard tyres.
pub fn lossless(rider: usize) -> Mount {
    let mut m = on_hard_tyres(rigid(&lines::mount(rider)));
    (m.rolling, m.bearings) = ([0.0; 6], [0.0; 2]);
    m
}

impl Bike {
    /// A mount that is one rigid body.
    pub fn of(m: &Mount) -> Self {
        Self {
            mass: m.mass(),
            rise: m.bike_rise,
            inertia: m.bike_inertia,
            wheelbase: m.wheelbase,
            radius: m.tyre.radius - m.tyre.depth_under(0.5 * m.mass() * GRAVITY),
            wheel_inertia: m.wheel_inertia,
            grip: m.tyre.grip,
        }
    }

    /// On both wheels, the rear one's centre at `rear` along its path and rolling at `speed`.
    pub fn standing(&self, curve: &Curve, rear: f64, speed: f64) -> Start {
        let stand = curve.stand(rear, speed, self.wheelbase);
        let spot = curve.at(rear);
        let half = DVec2::from_angle(stand.pitch) * (0.5 * self.wheelbase);
        Start {
            middle: spot.point + half,
            velocity: spot.tangent * speed + half.perp() * stand.turning,
            pitch: stand.pitch,
            turning: stand.turning,
            rims: [speed, stand.front_speed],
        }
    }

    /// From the middle between the axles to the mass centre.
    fn arm(&self, pitch: f64) -> DVec2 {
        DVec2::from_angle(pitch).perp() * self.rise
    }

    /// Velocity of the mass centre.
    pub fn velocity(&self, s: &Start) -> DVec2 {
        s.velocity + self.arm(s.pitch).perp() * s.turning
    }

    /// Kinetic energy over weight, m.
    pub fn moving_head(&self, s: &Start) -> f64 {
        let rims = s.rims.map(|rim| rim / self.radius);
        let spins = self.wheel_inertia * (rims[0] * rims[0] + rims[1] * rims[1]);
        let moving = self.mass * self.velocity(s).length_squared();
        0.5 * (moving + self.inertia * s.turning * s.turning + spins) / (self.mass * GRAVITY)
    }

    /// Height of the mass centre over where it stands on level ground at height 0, m.
    pub fn height(&self, s: &Start) -> f64 {
        (s.middle + self.arm(s.pitch)).y - self.rise - self.radius
    }

    /// Energy over weight, m: 0 where it stands still on level ground at height 0.
    pub fn head(&self, s: &Start) -> f64 {
        self.moving_head(s) + self.height(s)
    }
}

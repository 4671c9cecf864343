//! The bike in the picture: wheels where the ride has them, and a frame drawn between them.
//!
//! The ride knows wheelbase and wheels; the rest of the frame is drawn in proportions that fit
//! (common practice, no source). Feet and hands are where pedals and grips are.

use super::moment::Moment;
use super::sheet::{Ink, Sheet};
use super::view::Strip;
use glam::DVec2;
use sim::plan::Mount;

/// Spokes drawn in each wheel: few enough to see it turn.
const SPOKES: u32 = 5;

/// A bike's measures, m, in its own frame: x from the middle between the axles toward the front,
/// y square to the line through the axles.
#[derive(Clone, Copy, Debug)]
pub struct Bike {
    half: f64,
    wheel: f64,
    tyre: f64,
    cranks: DVec2,
    crank: f64,
    seat: DVec2,
    head_low: DVec2,
    head_high: DVec2,
    grip: DVec2,
}

/// A bike placed in the world.
#[derive(Clone, Copy, Debug)]
pub struct Placed {
    middle: DVec2,
    /// Cosine and sine of the pitch.
    turn: DVec2,
}

impl Bike {
    /// The measures of a plan's bike, its cranks and bars fitted to the rider.
    pub fn new(mount: &Mount) -> Self {
        let (bike, stature) = (&mount.bike, mount.rider.stature);
        let half = 0.5 * bike.wheelbase;
        let wheel = bike.wheel_radius();
        let crank = 0.095 * stature;
        let fork = wheel + 0.035;
        // 72° from level, leaning back.
        let steering = DVec2::new(-0.31, 0.95);
        let head_low = DVec2::new(half, 0.0) + steering * fork;
        let rise = 0.57 * stature - wheel;
        Self {
            half,
            wheel,
            tyre: bike.tyre_width,
            cranks: DVec2::new(-0.2 * half, crank + 0.16 - wheel),
            crank,
            // Low, as a bike for jumping has it: knees go over the top tube.
            seat: DVec2::new(-0.34 * half, 0.35 * wheel + 0.04),
            head_low,
            head_high: head_low + steering * 0.11,
            grip: DVec2::new(half - 0.31 * rise + 0.02, rise),
        }
    }

    /// The bike at one moment.
    pub fn place(&self, moment: &Moment) -> Placed {
        Placed {
            middle: moment.bike,
            turn: DVec2::from_angle(moment.pitch),
        }
    }

    /// The pedals' axles, rear foot first: cranks level, as a rider holds them who does not pedal.
    pub fn pedals(&self, at: &Placed) -> [DVec2; 2] {
        [-self.crank, self.crank].map(|x| at.world(self.cranks + DVec2::new(x, 0.0)))
    }

    /// The middle of the grips.
    pub fn grip(&self, at: &Placed) -> DVec2 {
        at.world(self.grip)
    }

    /// The rear axle, in the bike's own frame.
    pub fn rear(&self) -> DVec2 {
        DVec2::new(-self.half, 0.0)
    }

    /// The front axle, in the bike's own frame.
    pub fn front(&self) -> DVec2 {
        DVec2::new(self.half, 0.0)
    }

    /// Where the bar is clamped, in the bike's own frame.
    pub fn stem(&self) -> DVec2 {
        self.head_high + DVec2::new(0.03, 0.02)
    }

    /// Radius of the circle in the middle of a tyre, m.
    pub fn tyre_middle(&self) -> f64 {
        self.wheel - 0.5 * self.tyre
    }

    /// Width of a tyre, m.
    pub fn tyre_width(&self) -> f64 {
        self.tyre
    }

    /// The cranks' axle, in the bike's own frame.
    #[cfg(test)]
    pub fn cranks(&self) -> DVec2 {
        self.cranks
    }

    /// The ends of the frame's top tube, in the bike's own frame: seat and neck.
    #[cfg(test)]
    pub fn top_tube(&self) -> [DVec2; 2] {
        [self.seat, self.head_low]
    }

    /// Lays the bike on the sheet.
    pub fn draw(&self, at: &Placed, turned: [f64; 2], strip: &Strip, sheet: &mut Sheet) {
        self.wheel(at, -self.half, turned[0], strip, sheet);
        self.wheel(at, self.half, turned[1], strip, sheet);
        let tube = (0.036 * strip.scale).max(1.4);
        let px = |p: DVec2| strip.place(at.world(p));
        let (rear, front) = (self.rear(), self.front());
        let frame = [rear, self.cranks, self.head_low, self.seat, rear].map(px);
        sheet.line(Ink::Frame, tube, frame);
        sheet.line(Ink::Frame, tube, [self.cranks, self.seat].map(px));
        let stem = self.stem();
        sheet.line(
            Ink::Frame,
            tube,
            [front, self.head_low, self.head_high, stem, self.grip].map(px),
        );
        let saddle = [DVec2::new(-0.11, 0.035), DVec2::new(0.1, 0.05)].map(|d| px(self.seat + d));
        sheet.line(Ink::Frame, 1.6 * tube, saddle);
        let arm = DVec2::new(self.crank, 0.0);
        sheet.line(
            Ink::Frame,
            0.8 * tube,
            [self.cranks - arm, self.cranks + arm].map(px),
        );
        for side in [-arm, arm] {
            let half = DVec2::new(0.045, 0.0);
            let pedal = [-half, half].map(|d| px(self.cranks + side + d));
            sheet.line(Ink::Frame, 1.2 * tube, pedal);
        }
        sheet.ring(Ink::Frame, 0.6 * tube, px(self.cranks), 0.06 * strip.scale);
    }

    fn wheel(&self, at: &Placed, x: f64, turned: f64, strip: &Strip, sheet: &mut Sheet) {
        let centre = strip.place(at.world(DVec2::new(x, 0.0)));
        let tyre = self.tyre * strip.scale;
        let rim = (self.wheel - self.tyre) * strip.scale;
        for spoke in 0..SPOKES {
            // Rolling forward turns clockwise, and the sheet's y runs down.
            let angle = turned + f64::from(spoke) * std::f64::consts::TAU / f64::from(SPOKES);
            let rim = centre + DVec2::from_angle(angle) * rim;
            sheet.line(Ink::Tyre, 0.8, [centre, rim]);
        }
        sheet.ring(Ink::Tyre, tyre.max(1.5), centre, rim + 0.5 * tyre);
        sheet.disc(Ink::Tyre, centre, (0.035 * strip.scale).max(1.2));
    }
}

impl Placed {
    /// A point of the world in the bike's own frame.
    #[cfg(test)]
    pub fn own(&self, world: DVec2) -> DVec2 {
        DVec2::new(self.turn.x, -self.turn.y).rotate(world - self.middle)
    }

    /// A point of the bike's own frame in the world.
    pub fn world(&self, own: DVec2) -> DVec2 {
        self.middle + self.turn.rotate(own)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::made_up;
    use sim::plan;

    #[test]
    fn axles_are_a_wheelbase_apart_and_pitch_lifts_the_front() {
        let mount = &plan::demo().riders[0];
        let bike = Bike::new(mount);
        let mut moment = Moment::at(&made_up::rolling(5.0, 1.0), 0.5).unwrap();
        moment.pitch = 0.3;
        let at = bike.place(&moment);
        let rear = at.world(DVec2::new(-bike.half, 0.0));
        let front = at.world(DVec2::new(bike.half, 0.0));
        assert!((rear.distance(front) - mount.bike.wheelbase).abs() < 1e-12);
        assert!(front.y > rear.y);
    }

    #[test]
    fn pedals_clear_the_ground_and_grips_stand_over_the_front_half() {
        for mount in &plan::demo().riders {
            let bike = Bike::new(mount);
            let at = bike.place(&Moment::at(&made_up::rolling(5.0, 1.0), 0.0).unwrap());
            let ground = 0.253 - mount.bike.wheel_radius();
            let [rear, front] = bike.pedals(&at);
            assert!(rear.y > ground + 0.1 && rear.x < front.x);
            assert!(bike.grip(&at).x > 0.0 && bike.grip(&at).x < 0.5 * mount.bike.wheelbase);
        }
    }
}

//! From a plan to what the ride needs.

use crate::error::{Fault, Quantity, Why};
use crate::num;
use crate::plan::{Bike, Feature, Line, Mount as Planned, Plan, Rider, Style, Surface, Weather};
use crate::profile::Profile;
use crate::ride::{self, Accuracy, Legs, Mount, Run, Tyre};

/// Radius of gyration of a rider crouched over a bike, about the mass centre, in statures.
///
/// Between 0.127 sitting and 0.219 standing: Santschi, DuBois and Omoto 1963, AMRL-TDR-63-36.
const GYRATION: f64 = 0.17;

/// Height of a standing body's mass centre over the soles, in statures.
///
/// 0.559 measured by Santschi et al. 1963; the pedals are taken level with the axles.
const STANDING: f64 = 0.56;

/// Travel of the legs, in statures: 0.28 m for a child of ten, 0.36 m for an adult
/// (common practice, no source).
const TRAVEL: f64 = 0.2;

/// Height of the frame's mass centre over the axles and its radius of gyration, in wheelbases
/// (common practice, no source).
const FRAME_RISE: f64 = 0.17;
const FRAME_GYRATION: f64 = 0.33;

/// Drag of both wheels' bearings at the rim, N, and what it gains with speed, N s/m.
///
/// Martin et al. 1998, J. Appl. Biomech. 14:276-291: power V (91 + 8.7 V) mW.
const BEARINGS: [f64; 2] = [0.091, 0.0087];

/// A plan's ground and the ride over it.
#[derive(Clone, Debug)]
pub struct Ridden {
    /// The ground.
    pub profile: Profile,
    /// The ride.
    pub run: Run,
}

/// Rides a plan's line with one of its riders.
///
/// # Errors
/// Every fault of the plan, or that it has no such rider.
pub fn ride_plan(plan: &Plan, rider: usize) -> Result<Ridden, Vec<Fault>> {
    ride_plan_to(plan, rider, |_| f64::INFINITY)
}

/// As [`ride_plan`], up to a place of its profile, m along the line.
///
/// # Errors
/// As there.
pub(crate) fn ride_plan_to(
    plan: &Plan,
    rider: usize,
    place: impl FnOnce(&Profile) -> f64,
) -> Result<Ridden, Vec<Fault>> {
    let profile = Profile::build(plan)?;
    let mount = mount(self::rider(plan, rider)?, &plan.weather);
    let (start, accuracy) = (start_speed(plan), Accuracy::default());
    let run = ride::ride_to(&profile, &mount, start, &accuracy, place(&profile));
    Ok(Ridden { profile, run })
}

/// One of a plan's riders.
///
/// # Errors
/// That the plan has no such rider.
pub fn rider(plan: &Plan, rider: usize) -> Result<&Planned, Vec<Fault>> {
    plan.riders.get(rider).ok_or_else(|| {
        vec![Fault {
            field: "rider".to_owned(),
            given: Some(rider as f64),
            least: Some(0.0),
            most: Some(plan.riders.len() as f64 - 1.0),
            quantity: Quantity::Count,
            why: Why::NoSuchRider,
        }]
    })
}

/// Speed at the start of the line, m/s.
pub fn start_speed(plan: &Plan) -> f64 {
    let ramp = match &plan.line {
        Line::Features(features) => features.first(),
        Line::Surveyed { .. } => None,
    };
    let push_off = match ramp {
        Some(Feature::StartRamp(r)) => r.push_off,
        _ => 0.0,
    };
    plan.initial_speed.unwrap_or(push_off)
}

/// What the ride needs to know of a rider, a bike and the day.
pub fn mount(planned: &Planned, weather: &Weather) -> Mount {
    let (rider, bike) = (&planned.rider, &planned.bike);
    let radius = 0.5 * bike.bead_seat + bike.tyre_width;
    let [reach_low, reach_usual, reach_high] = reaches(rider);
    let (frame_mass, wheels) = (bike.mass - 2.0 * bike.wheel_mass, 2.0 * bike.wheel_mass);
    let frame_rise = FRAME_RISE * bike.wheelbase;
    let bike_rise = frame_rise * frame_mass / bike.mass;
    let half = 0.5 * bike.wheelbase;
    let gyration = FRAME_GYRATION * bike.wheelbase;
    Mount {
        rider_mass: rider.mass,
        rider_inertia: rider.mass * (GYRATION * rider.stature) * (GYRATION * rider.stature),
        stature: rider.stature,
        reach_low,
        reach_usual,
        reach_high,
        legs: match rider.style {
            Style::Passive => Legs::Passive,
            Style::Absorbing => Legs::Absorbing,
            Style::Pumping => Legs::Pumping,
        },
        skill: rider.skill,
        stiff: 0.0,
        bike_mass: bike.mass,
        bike_inertia: frame_mass
            * (gyration * gyration + (frame_rise - bike_rise) * (frame_rise - bike_rise))
            + wheels * (half * half + bike_rise * bike_rise),
        bike_rise,
        wheelbase: bike.wheelbase,
        wheel_inertia: bike.wheel_inertia,
        tyre: tyre(bike, radius),
        rolling: Surface::ALL.map(|s| bike.rolling.on(s) * weather.ground.factor()),
        bearings: BEARINGS,
        drag: 0.5 * air_density(weather) * rider.drag_area,
        tailwind: weather.tailwind,
    }
}

fn tyre(bike: &Bike, radius: f64) -> Tyre {
    match bike.tyre_stiffness {
        Some(k) => Tyre::from_stiffness(radius, bike.tyre_width, k),
        None => Tyre::from_pressure(radius, bike.tyre_width, bike.tyre_pressure),
    }
}

/// Reach from the axles to the rider's mass centre: folded, usual, stretched, m.
fn reaches(rider: &Rider) -> [f64; 3] {
    let high = 0.97 * STANDING * rider.stature;
    let low = high - TRAVEL * rider.stature;
    // Posture 0.5 stands at 0.6 of the travel: more to fold than to stretch.
    let usual = low + (0.35 + 0.5 * rider.posture) * (high - low);
    [low, usual, high]
}

/// Air density, kg/m³: the pressure of the standard atmosphere at an altitude, at a temperature.
///
/// # References
/// ISO 2533:1975, geopotential altitude, below 11 km.
pub fn air_density(weather: &Weather) -> f64 {
    let standard = 288.15 - 0.0065 * weather.altitude;
    let pressure = 101_325.0 * num::pow(standard / 288.15, 5.255_88);
    pressure / (287.052_87 * (weather.temperature + 273.15))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rider_who_is_not_there_is_a_fault() {
        let faults = ride_plan(&crate::plan::demo(), 2).expect_err("there are two");
        assert_eq!(
            faults[0].to_string(),
            "rider: the plan has no such rider; the first is number nought; given 2; accepted 0 to 1"
        );
    }
}

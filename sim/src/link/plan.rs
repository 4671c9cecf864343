//! The plan's own structs in a link.
//!
//! The order of the fields, the usual values and the tags are the format: links made with them
//! are about. A field added to a struct is one more line here, and a new format, since which it is
//! read; links made before have its usual value.

use super::LinkError;
use super::pack::{
    Pack, Reader, Writer, choice, put_last, put_unusual, record, take_last, take_unusual,
};
use crate::plan::{
    Bike, Clocked, Feature, Flat, Ground, GroundPoint, Jump, Landed, Landing, LeadIn, Lie, Line,
    Lip, Mount, Observation, Plan, Rider, Roller, Rolling, RunOut, Soil, StartRamp, Stopped, Style,
    Surface, Timed, Turn, USUAL_WIDTH, Weather, Yard,
};
use bitstream_io::{BitRead, BitWrite};
use std::io;

record!(Plan {
    name,
    yard,
    line,
    riders,
    weather = USUAL_WEATHER,
    initial_speed = None,
    seed since 2 = 0,
    width since 4 = USUAL_WIDTH,
} then seen);

record!(Yard { length, lie, tallest since 2 = None, soil since 4 = Soil::Loam });
choice!(Soil in 3 bits { 0: Sand, 1: Gravel, 2: Loam, 3: Clay });
choice!(Lie in 2 bits { 0: Grade(rise), 1: Surveyed(points) });
record!(GroundPoint { station, elevation });

impl Pack for Line {
    fn put(&self, bits: &mut Writer) -> io::Result<()> {
        match self {
            Line::Features(features) => {
                bits.write::<2, u8>(0)?;
                features.put(bits)
            }
            Line::Surveyed { points, surface } => {
                bits.write::<2, u8>(1)?;
                points.put(bits)?;
                surface.put(bits)
            }
        }
    }
    fn take(bits: &mut Reader) -> Result<Self, LinkError> {
        Ok(match bits.read::<2, u8>()? {
            0 => Line::Features(Pack::take(bits)?),
            1 => Line::Surveyed {
                points: Pack::take(bits)?,
                surface: Pack::take(bits)?,
            },
            _ => return Err(LinkError::Newer),
        })
    }
}
choice!(Feature in 4 bits {
    0: StartRamp(ramp),
    1: Flat(flat),
    2: Roller(roller),
    3: Jump(jump),
    4: Turn(turn),
    5: RunOut(run_out),
});
record!(StartRamp {
    platform_height,
    angle_deg,
    bottom_radius,
    edge_radius = 0.8,
    push_off,
    surface = Surface::Wood,
    width since 4 = None,
});
record!(Flat { length, surface = Surface::Packed });
record!(Roller { height, length, count, surface = Surface::Packed, width since 4 = None });
record!(Turn { radius, sweep_deg, bank_deg, surface = Surface::Packed, width since 4 = None });
record!(RunOut { length, surface = Surface::Packed });

record!(Jump {
    lip,
    gap,
    decked,
    landing
});
record!(Lip {
    height,
    radius,
    lead_in,
    surface = Surface::Wood,
    straight_end since 2 = None,
    width since 4 = None,
});
record!(LeadIn { angle_deg, length });
record!(Landing {
    height,
    angle_deg,
    knuckle_radius,
    bottom_radius,
    length,
    surface = Surface::Packed,
    boxed since 4 = false,
    width since 4 = None,
});

record!(Mount { label, rider, bike });
// Skill's usual value here is that of the first format, whatever a plan's is: links made then leave it out.
record!(Rider {
    mass,
    stature,
    posture = 0.5,
    drag_area,
    style,
    skill = 0.8,
});
choice!(Style in 2 bits { 0: Absorbing, 1: Passive, 2: Pumping });
record!(Bike {
    mass,
    wheelbase,
    bead_seat,
    tyre_width,
    tyre_pressure,
    tyre_stiffness,
    wheel_mass,
    wheel_inertia,
    rolling = USUAL_ROLLING,
});
choice!(Surface in 4 bits { 0: Wood, 1: Paved, 2: Packed, 3: Gravel, 4: Grass, 5: Soft });
const USUAL_ROLLING: Rolling = Rolling {
    wood: 0.006,
    paved: 0.005,
    packed: 0.016,
    gravel: 0.02,
    grass: 0.045,
    soft: 0.07,
};
record!(Rolling {
    wood,
    paved,
    packed,
    gravel,
    grass,
    soft
});

const USUAL_WEATHER: Weather = Weather {
    altitude: 0.0,
    temperature: 15.0,
    tailwind: 0.0,
    ground: Ground::Dry,
};
record!(Weather {
    altitude = 0.0,
    temperature = 15.0,
    tailwind = 0.0,
    ground,
});
choice!(Ground in 2 bits { 0: Dry, 1: Damp, 2: Soft });

choice!(Observation in 3 bits {
    0: Time(seen),
    1: Speed(seen),
    2: Landed(seen),
    3: Stopped(seen),
});
record!(Timed { from, to, seconds, give_or_take = 0.1, rider = 0, carried since 3 = false });
record!(Clocked { at, speed, give_or_take = 0.2, rider = 0, carried since 3 = false });
record!(Landed { jump, past_knuckle, give_or_take = 0.1, rider = 0, carried since 3 = false });
record!(Stopped { at, give_or_take = 0.3, rider = 0, carried since 3 = false });

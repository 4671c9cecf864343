//! The four riders of the family.

use sim::plan::{Bike, Mount, Rider, Rolling, Style};

/// Children of 6, 10 and 14 with the medians of the CDC 2000 growth charts (boys, month of the
/// birthday), and an adult, on wheels that fit. Bikes: common practice, no source.
pub fn all() -> [Mount; 4] {
    [
        mount("6", 20.78, 1.157, 0.29, [7.5, 0.78, 0.305, 0.047, 0.9]),
        mount("10", 32.09, 1.388, 0.35, [9.5, 0.90, 0.406, 0.050, 1.3]),
        mount("14", 51.23, 1.641, 0.42, [11.5, 1.00, 0.507, 0.054, 1.7]),
        mount("adult", 78.0, 1.78, 0.50, [12.5, 1.07, 0.559, 0.057, 2.0]),
    ]
}

fn mount(label: &str, mass: f64, stature: f64, drag_area: f64, bike: [f64; 5]) -> Mount {
    let [bike_mass, wheelbase, bead_seat, tyre_width, wheel_mass] = bike;
    let radius = 0.5 * bead_seat + tyre_width;
    Mount {
        label: label.into(),
        rider: Rider {
            mass,
            stature,
            posture: 0.5,
            drag_area,
            style: Style::Absorbing,
            skill: 0.8,
        },
        bike: Bike {
            mass: bike_mass,
            wheelbase,
            bead_seat,
            tyre_width,
            tyre_pressure: 250_000.0,
            tyre_stiffness: None,
            wheel_mass,
            wheel_inertia: 0.8 * wheel_mass * radius * radius,
            rolling: Rolling::default(),
        },
    }
}

/// One of the four, with a style and a skill of 0 to 1.
pub fn who(rider: usize, style: Style, skill: f64) -> Mount {
    let mut mount = all()[rider].clone();
    (mount.rider.style, mount.rider.skill) = (style, skill);
    mount
}

//! Riders and bikes to start from, each number with where it comes from.
//!
//! A preset is a whole [`Mount`] made from an age and a size of wheel. It is offered as a start: a
//! rider who stands beside the line is measured, not looked up.

mod bike;
mod charts;
mod drag;
mod ground;
mod rider;
#[cfg(test)]
mod tests;

pub use bike::{Wheel, bike};
pub use drag::{drag_area, frontal_area};
pub use ground::{Tread, rolling};
pub use rider::{AGES, Sex, Usual, mass, stature};

use crate::error::{Fault, Quantity};
use crate::plan::{self, Mount, Rider, Style};
use serde::{Deserialize, Serialize};

/// What a preset is made from.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Choice {
    /// What the rider is to be called.
    pub label: String,
    /// Age in whole years, within [`AGES`]; the last stands for every adult.
    pub age: u32,
    /// Whose charts are read.
    #[serde(default)]
    pub sex: Sex,
    /// Size of the wheels; left out, the one that fits.
    #[serde(default)]
    pub wheel: Option<Wheel>,
    /// The tread of the tyres.
    #[serde(default)]
    pub tread: Tread,
    /// How upright the rider stands over the bike: 0 low, 1 tall; left out, between the two.
    #[serde(default)]
    pub posture: Option<f64>,
    /// What the legs do; left out, what they do where a plan says nothing.
    #[serde(default)]
    pub style: Style,
    /// How well it is done, 0 to 1; left out, what is usual.
    #[serde(default)]
    pub skill: Option<f64>,
}

/// A rider on a bike, and where every number of theirs comes from.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Preset {
    /// The rider and the bike.
    pub mount: Mount,
    /// The size of wheel that fits, whichever was chosen.
    pub fitting: Wheel,
    /// Where the numbers come from, one note for each field.
    pub notes: Vec<Note>,
}

/// Where the number in one field comes from.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Note {
    /// The field's path within the mount, as in `rider.mass`.
    pub field: &'static str,
    /// Where its number comes from.
    pub source: Source,
    /// Between these lie eight in ten of that age, where that is known; in the field's unit.
    pub likely: Option<[f64; 2]>,
}

/// Where a number comes from; the full citations stand where the numbers do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// The CDC growth charts of 2000.
    GrowthCharts,
    /// The formula of Bassett et al. 1999, and a drag coefficient of Gross et al. 1983.
    FrontalArea,
    /// ISO 5775.
    BeadSeat,
    /// Gross, Kyle and Malewicki 1983: a knobby tyre on pavement.
    KnobbyTyre,
    /// Maier et al. 2018: tyres on a cross-country course.
    Course,
    /// Between the last two.
    KnobbyToCourse,
    /// Wilson, *Bicycling Science*, from memory.
    Handbook,
    /// Common practice, no source.
    CommonPractice,
}

/// Posture and skill where nothing is chosen: as where a plan says nothing.
const POSTURE: f64 = 0.5;
const SKILL: f64 = 0.8;

/// Makes a rider on a bike from a choice. Masses are rounded to 0.1 kg, statures to 1 cm and drag
/// areas to 0.005 m²: finer than anybody knows them.
///
/// # Errors
/// That the charts have no such age.
pub fn preset(choice: &Choice) -> Result<Preset, Fault> {
    let (Some(mass), Some(stature)) = (
        rider::mass(choice.age, choice.sex),
        rider::stature(choice.age, choice.sex),
    ) else {
        return Err(no_such_age(choice.age));
    };
    let fitting = Wheel::fitting(stature.middle);
    let posture = choice.posture.unwrap_or(POSTURE);
    let drag_area = drag::drag_area(stature.middle, mass.middle, posture);
    let mount = Mount {
        label: choice.label.clone(),
        rider: Rider {
            mass: rounded(mass.middle, 10.0),
            stature: rounded(stature.middle, 100.0),
            posture,
            drag_area: rounded(drag_area, 200.0),
            style: choice.style,
            skill: choice.skill.unwrap_or(SKILL),
        },
        bike: bike(choice.wheel.unwrap_or(fitting), rolling(choice.tread)),
    };
    Ok(Preset {
        mount,
        fitting,
        notes: notes(choice.tread, mass, stature),
    })
}

fn no_such_age(age: u32) -> Fault {
    let range = (Some(f64::from(*AGES.start())), Some(f64::from(*AGES.end())));
    plan::fault(
        "age".to_owned(),
        Quantity::Count,
        f64::from(age),
        range,
        "the growth charts have no such age",
    )
}

fn notes(tread: Tread, mass: Usual, stature: Usual) -> Vec<Note> {
    let likely = |usual: Usual| Some([usual.low, usual.high]);
    let (hard, dirt, gravel) = match tread {
        Tread::Smooth => (Source::Handbook, Source::KnobbyToCourse, Source::Handbook),
        Tread::Knobby => (Source::KnobbyTyre, Source::Course, Source::Course),
    };
    let all = [
        ("rider.mass", Source::GrowthCharts, likely(mass)),
        ("rider.stature", Source::GrowthCharts, likely(stature)),
        ("rider.posture", Source::CommonPractice, None),
        ("rider.drag_area", Source::FrontalArea, None),
        ("rider.skill", Source::CommonPractice, None),
        ("bike.mass", Source::CommonPractice, None),
        ("bike.wheelbase", Source::CommonPractice, None),
        ("bike.bead_seat", Source::BeadSeat, None),
        ("bike.tyre_width", Source::CommonPractice, None),
        ("bike.tyre_pressure", Source::CommonPractice, None),
        ("bike.wheel_mass", Source::CommonPractice, None),
        ("bike.wheel_inertia", Source::CommonPractice, None),
        ("bike.rolling.wood", hard, None),
        ("bike.rolling.paved", hard, None),
        ("bike.rolling.packed", dirt, None),
        ("bike.rolling.gravel", gravel, None),
        ("bike.rolling.grass", Source::Handbook, None),
        ("bike.rolling.soft", Source::Handbook, None),
    ];
    let note = |(field, source, likely)| Note {
        field,
        source,
        likely,
    };
    all.map(note).into()
}

/// A number to the nearest part of one.
fn rounded(value: f64, parts: f64) -> f64 {
    (value * parts).round() / parts
}

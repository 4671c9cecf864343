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

use crate::error::{Fault, Quantity, Why};
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
    /// How upright the rider stands over the bike: 0 low, 1 tall; left out, as where a plan says nothing.
    #[serde(default)]
    pub posture: Option<f64>,
    /// What the legs do; left out, what they do where a plan says nothing.
    #[serde(default)]
    pub style: Style,
    /// How well it is done, 0 to 1; left out, as where a plan says nothing.
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
    /// Where the numbers come from, one note for each that was not chosen.
    pub notes: Vec<Note>,
}

/// Where the number in one field comes from.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Note {
    /// The field's path within the mount, as in `rider.mass`.
    pub field: &'static str,
    /// Where its number comes from.
    pub source: Source,
    /// The fields that it was worked out from: where one of them has changed, it no longer fits.
    pub follows: &'static [&'static str],
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
    let posture = choice.posture.unwrap_or_else(Rider::usual_posture);
    let drag_area = drag::drag_area(stature.middle, mass.middle, posture);
    let mount = Mount {
        label: choice.label.clone(),
        rider: Rider {
            mass: rounded(mass.middle, 10.0),
            stature: rounded(stature.middle, 100.0),
            posture,
            drag_area: rounded(drag_area, 200.0),
            style: choice.style,
            skill: choice.skill.unwrap_or_else(Rider::usual_skill),
        },
        bike: bike(choice.wheel.unwrap_or(fitting), rolling(choice.tread)),
    };
    Ok(Preset {
        mount,
        fitting,
        notes: notes(choice, mass, stature),
    })
}

fn no_such_age(age: u32) -> Fault {
    let range = (Some(f64::from(*AGES.start())), Some(f64::from(*AGES.end())));
    plan::fault(
        "age".to_owned(),
        Quantity::Count,
        f64::from(age),
        range,
        Why::NoSuchAge,
    )
}

/// A note for each number that was not chosen.
fn notes(choice: &Choice, mass: Usual, stature: Usual) -> Vec<Note> {
    use Source::{BeadSeat, CommonPractice, FrontalArea, GrowthCharts, Handbook};
    let (hard, packed, gravel) = match choice.tread {
        Tread::Smooth => (Handbook, Source::KnobbyToCourse, Handbook),
        Tread::Knobby => (Source::KnobbyTyre, Source::Course, Source::Course),
    };
    let all = [
        ("rider.mass", GrowthCharts),
        ("rider.stature", GrowthCharts),
        ("rider.posture", CommonPractice),
        ("rider.drag_area", FrontalArea),
        ("rider.skill", CommonPractice),
        ("bike.mass", CommonPractice),
        ("bike.wheelbase", CommonPractice),
        ("bike.bead_seat", BeadSeat),
        ("bike.tyre_width", CommonPractice),
        ("bike.tyre_pressure", CommonPractice),
        ("bike.wheel_mass", CommonPractice),
        ("bike.wheel_inertia", CommonPractice),
        ("bike.rolling.wood", hard),
        ("bike.rolling.paved", hard),
        ("bike.rolling.packed", packed),
        ("bike.rolling.gravel", gravel),
        ("bike.rolling.grass", Handbook),
        ("bike.rolling.soft", Handbook),
    ];
    let unchosen = all.into_iter().filter(|(field, _)| match *field {
        "rider.posture" => choice.posture.is_none(),
        "rider.skill" => choice.skill.is_none(),
        _ => true,
    });
    let note = |(field, source)| Note {
        field,
        source,
        follows: match field {
            "rider.drag_area" => &["rider.mass", "rider.stature", "rider.posture"],
            "bike.wheel_inertia" => &["bike.wheel_mass", "bike.bead_seat", "bike.tyre_width"],
            _ => &[],
        },
        likely: match field {
            "rider.mass" => Some([mass.low, mass.high]),
            "rider.stature" => Some([stature.low, stature.high]),
            _ => None,
        },
    };
    unchosen.map(note).collect()
}

/// A number to the nearest part of one.
fn rounded(value: f64, parts: f64) -> f64 {
    (value * parts).round() / parts
}

//! The trade's tall gap: a lip of some 4.5 ft, a gap of some 8 ft and a landing of some 5 ft behind two
//! rollers (common practice, no source).

use super::draw::{flat, rollers};
use super::figures::{Bar, Table};
use super::landed::{Landed, Wrong};
use super::place::ride;
use super::{floors, riders, seeds};
use sim::plan::{
    Feature, Jump, Landing, Line, Lip, Plan, RunOut, StartRamp, Style, Surface, USUAL_WIDTH,
    Weather, Yard,
};

/// A foot, m.
const FOOT: f64 = 0.3048;

/// Start heights that are tried, m: from, to, step.
const STARTS: (f64, f64, f64) = (2.0, 4.2, 0.05);

/// Tallest start that counts, m.
const TALLEST: f64 = 3.3;

/// Grades of the ground.
const GRADES: [f64; 3] = [0.0, -0.015, -0.03];

/// The child of ten, by place among the riders.
const CHILD: usize = 1;

/// Radius of the lip's circle, m (common practice, no source).
const RADIUS: f64 = 3.6;

fn plan(start: f64, grade: f64, style: Style, skill: f64) -> Plan {
    let ramp = StartRamp {
        platform_height: start,
        angle_deg: 38.0,
        bottom_radius: 3.5,
        edge_radius: 0.8,
        push_off: 1.5,
        surface: Surface::Wood,
        width: None,
    };
    let lip = Lip {
        height: 4.5 * FOOT,
        radius: RADIUS,
        lead_in: None,
        straight_end: None,
        surface: Surface::Wood,
        width: None,
    };
    let landing = Landing {
        height: 5.0 * FOOT,
        angle_deg: 30.0,
        knuckle_radius: 0.5,
        bottom_radius: 3.0,
        length: None,
        surface: Surface::Packed,
        boxed: false,
        width: None,
    };
    let features = vec![
        Feature::StartRamp(ramp),
        flat(1.5),
        rollers(0.25, 3.0, 2),
        flat(2.0),
        Feature::Jump(Jump {
            lip,
            gap: 8.0 * FOOT,
            decked: false,
            landing,
        }),
        flat(3.0),
        Feature::RunOut(RunOut {
            length: 14.0,
            surface: Surface::Packed,
        }),
    ];
    Plan {
        name: "Tall gap".into(),
        yard: Yard::even(80.0, grade),
        line: Line::Features(features),
        riders: vec![riders::who(CHILD, style, skill)],
        weather: Weather::default(),
        initial_speed: None,
        seen: Vec::new(),
        seed: 0,
        width: USUAL_WIDTH,
    }
}

fn landed(start: f64, grade: f64, style: Style, skill: f64) -> Landed {
    Landed::over(&ride(&plan(start, grade, style, skill)), 0)
}

/// The lowest start from which a skilled child clears the gap, and stays clear from a tenth more.
fn lowest(grade: f64) -> Option<f64> {
    let (from, to, step) = STARTS;
    let count = ((to - from) / step).round() as usize;
    let starts: Vec<f64> = (0..=count).map(|i| from + step * i as f64).collect();
    let cleared = seeds::each(&starts, |&start| {
        let landed = landed(start, grade, Style::Pumping, 1.0);
        landed.wrong().is_none() && landed.past().is_some_and(|past| past > 0.15)
    });
    let stays = |i: usize| cleared[i..(i + 3).min(cleared.len())].iter().all(|c| *c);
    (0..cleared.len()).find(|&i| stays(i)).map(|i| starts[i])
}

fn told(landed: &Landed) -> String {
    let past = landed
        .past()
        .map_or("nowhere".into(), |past| format!("{past:+.2} m"));
    format!(
        "{past}, {}",
        landed.wrong().map_or("cleared".into(), Wrong::words)
    )
}

/// The table.
pub fn table() -> Table {
    let mut table =
        Table::new("The tall gap: lip 4.5 ft, gap 8 ft, landing 5 ft, two rollers, child of ten");
    let mut best = f64::INFINITY;
    for grade in GRADES {
        let start = lowest(grade);
        best = best.min(start.unwrap_or(f64::INFINITY));
        let fall = 100.0 * grade.abs();
        table.shown(
            format!("fall {fall} %: lowest start that clears, pumping at 1"),
            start.unwrap_or(f64::NAN),
            "m",
        );
        for start in [start, Some(TALLEST)].into_iter().flatten() {
            let each = [
                (Style::Pumping, 1.0),
                (Style::Absorbing, 0.3),
                (Style::Passive, 0.3),
            ];
            let told = each.map(|(style, skill)| told(&landed(start, grade, style, skill)));
            table.note(format!(
                "from {start:.2} m: pumping 1 {}; soaking up 0.3 {}; stiff {}",
                told[0], told[1], told[2]
            ));
        }
    }
    table.figure(
        "lowest start that clears, pumping at 1, no more than 3 % of fall",
        best,
        "m",
        Bar::AtMost(TALLEST),
        floors::TALL_START,
    );
    let steepest = GRADES[GRADES.len() - 1];
    let start = lowest(steepest);
    let first = start.and_then(|start| landed(start, steepest, Style::Absorbing, 0.3).past());
    table.figure(
        "first try from there, soaking up at 0.3: rear wheel past the knuckle",
        first.unwrap_or(f64::NAN),
        "m",
        Bar::Within(-1.0, 0.0),
        floors::TALL_FIRST,
    );
    table
}

//! A first line from four answers: how long the yard is, how far it falls, who rides, and how tall
//! anything may be. Every jump in it was ridden, and lands clean with a little to spare.

use crate::error::{Fault, Quantity, Why};
use crate::judge::{How, JumpRow, jumps, stands};
use crate::num;
use crate::plan::{
    Feature, Flat, Jump, Landing, Lie, Line, Lip, Mount, Plan, Roller, RunOut, Soil, StartRamp,
    Surface, TALLEST, USUAL_WIDTH, Weather, Yard,
};
use crate::setup::ride_plan;
use serde::Deserialize;

/// The four answers.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Answers {
    /// What the line is to be called.
    pub name: String,
    /// Length of the yard, m.
    pub length: f64,
    /// How far it falls from the start to the end, m.
    pub fall: f64,
    /// Height of the tallest thing that is to be built, m.
    pub tallest: f64,
    /// Who rides.
    pub mount: Mount,
}

/// Shortest and longest run-out, m.
const RUN_OUT: [f64; 2] = [3.0, 18.0];

/// Most jumps in a first line; nobody digs more at once.
const MOST_JUMPS: usize = 3;

/// Gaps come in such steps, m, and one step more has to land clean as well.
const STEP: f64 = 0.1;

/// Shortest and longest gap, m.
const GAPS: [f64; 2] = [0.4, 3.0];

/// Where the rear wheel is to come down, m past the knuckle: what is tried, one after the other.
const AIMS: [f64; 3] = [0.5, 0.35, 0.7];

/// Heights of the start platform that are tried, as shares of the tallest that may be: a rider too fast
/// for any landing starts lower.
const STARTS: [f64; 4] = [1.0, 0.8, 0.65, 0.5];

/// Shapes tried, the first that works is taken: lip's height as a share of the usual, radius in
/// heights, steepness of the landing in degrees (common practice, no source).
const SHAPES: [(f64, f64, f64); 8] = [
    (1.0, 5.0, 17.0),
    (1.0, 6.0, 14.0),
    (0.75, 6.0, 15.0),
    (0.75, 8.0, 12.0),
    (0.5, 8.0, 12.0),
    (1.0, 4.0, 21.0),
    (0.6, 6.0, 19.0),
    (0.5, 12.0, 9.0),
];

/// A first line.
///
/// # Errors
/// The faults of the answers: a yard too short for anything, or an answer out of its range.
pub fn draft(answers: &Answers) -> Result<Plan, Vec<Fault>> {
    check(answers)?;
    let (mut plan, mut most) = (opening(answers, 1.0), 0);
    for share in STARTS {
        let mut trial = opening(answers, share);
        let mut count = 0;
        while let Some(longer) = (count < MOST_JUMPS)
            .then(|| with_jump(&trial, answers))
            .flatten()
        {
            trial = longer;
            count += 1;
        }
        if count > most {
            (plan, most) = (trial, count);
        }
        if most == MOST_JUMPS {
            break;
        }
    }
    let run_out = run_out(&plan);
    push(&mut plan, [run_out]);
    // Rounded up, it may reach a little over the yard's end.
    match ride_plan(&plan, 0) {
        Ok(_) => Ok(plan),
        Err(faults) => Err(faults),
    }
}

/// Whether each answer lies in its range.
fn check(answers: &Answers) -> Result<(), Vec<Fault>> {
    let within = |field: &str, given: f64, least: f64, most: f64, why: Why| {
        let fine = given >= least && given <= most;
        (!fine).then(|| Fault {
            field: field.to_owned(),
            given: given.is_finite().then_some(given),
            least: Some(least),
            most: Some(most),
            quantity: Quantity::Length,
            why,
        })
    };
    let steepest = 0.35 * num::max(answers.length, 0.0);
    let faults: Vec<Fault> = [
        within("length", answers.length, 20.0, 200.0, Why::DraftLength),
        within(
            "fall",
            answers.fall,
            -0.5 * steepest,
            steepest,
            Why::DraftFall,
        ),
        within(
            "tallest",
            answers.tallest,
            TALLEST[0],
            TALLEST[1],
            Why::Tallest,
        ),
    ]
    .into_iter()
    .flatten()
    .collect();
    if faults.is_empty() {
        Ok(())
    } else {
        Err(faults)
    }
}

/// The start, at a share of the tallest, and the rollers, as many as leave room for a jump.
fn opening(answers: &Answers, share: f64) -> Plan {
    let tallest = share * answers.tallest;
    let mut features = vec![
        Feature::StartRamp(StartRamp {
            platform_height: tallest,
            angle_deg: 30.0,
            bottom_radius: num::clamp(1.2 * tallest, 1.5, 3.0),
            edge_radius: 0.8,
            push_off: 1.0,
            surface: Surface::Wood,
            width: None,
        }),
        flat(1.5),
    ];
    if answers.length > 34.0 && tallest >= 1.5 {
        features.push(Feature::Roller(Roller {
            height: 0.2,
            length: 3.0,
            count: if answers.length > 48.0 { 2 } else { 1 },
            surface: Surface::Packed,
            width: None,
        }));
    }
    features.push(flat(2.0));
    Plan {
        name: answers.name.clone(),
        yard: Yard {
            length: answers.length,
            lie: Lie::Grade(-answers.fall / answers.length),
            tallest: Some(answers.tallest),
            soil: Soil::default(),
        },
        line: Line::Features(features),
        riders: vec![answers.mount.clone()],
        weather: Weather::default(),
        initial_speed: None,
        seen: Vec::new(),
        seed: 0,
        width: USUAL_WIDTH,
    }
}

fn flat(length: f64) -> Feature {
    Feature::Flat(Flat {
        length,
        surface: Surface::Packed,
    })
}

fn push<const N: usize>(plan: &mut Plan, more: [Feature; N]) {
    if let Line::Features(features) = &mut plan.line {
        features.extend(more);
    }
}

/// The plan with one jump more, in the first shape that lands clean with a step to spare; `None`
/// where the rider comes too slow or too fast for any, or the yard ends.
fn with_jump(plan: &Plan, answers: &Answers) -> Option<Plan> {
    SHAPES.iter().find_map(|&shape| {
        let built = |gap: f64| {
            let mut longer = plan.clone();
            let jump = Feature::Jump(jump(answers, shape, gap));
            push(&mut longer, [jump, flat(3.5)]);
            longer
        };
        let gap = gap_that_works(|gap| ridden(&built(gap)))?;
        Some(built(gap))
    })
}

/// A run-out as long as the yard gives, but nobody packs more than a rider needs.
fn run_out(plan: &Plan) -> Feature {
    let left = plan.yard.length - end_of(plan).unwrap_or(plan.yard.length);
    Feature::RunOut(RunOut {
        length: num::clamp(left, RUN_OUT[0], RUN_OUT[1]),
        surface: Surface::Grass,
    })
}

/// The jumps of an unfinished plan as they are ridden, and whether the rider stands before its end.
fn ridden(plan: &Plan) -> Option<(Vec<JumpRow>, bool)> {
    let mut whole = plan.clone();
    push(&mut whole, [run_out(plan)]);
    let ridden = ride_plan(&whole, 0).ok()?;
    Some((jumps(&ridden.profile, &ridden.run), stands(&ridden.run)))
}

/// A gap of the last jump at which all of them land clean and the rider stands behind them, and with a step
/// more as well.
fn gap_that_works(ridden: impl Fn(f64) -> Option<(Vec<JumpRow>, bool)>) -> Option<f64> {
    let clean = |gap| {
        let done = ridden(gap);
        done.is_some_and(|(rows, stands)| stands && rows.iter().all(|r| r.how == How::Clean))
    };
    let whole = |gap: f64| (gap / STEP).round() / (1.0 / STEP).round();
    let mut gap = 1.0;
    AIMS.iter().find_map(|aim| {
        // The flight hardly depends on the gap: what it is off by, the gap is changed by.
        for _ in 0..2 {
            let past = ridden(gap)?.0.last()?.rear_past_knuckle?;
            gap = num::clamp(whole(gap + past - aim), GAPS[0], GAPS[1]);
        }
        (clean(gap) && clean(gap + STEP)).then_some(gap)
    })
}

/// A jump fit for the rider and for what may be built: a deck over its gap forgives.
fn jump(answers: &Answers, (share, radii, angle_deg): (f64, f64, f64), gap: f64) -> Jump {
    let usual = num::clamp(
        0.22 * answers.tallest,
        0.25,
        0.35 * answers.mount.rider.stature,
    );
    let height = num::max(share * usual, 0.2);
    Jump {
        lip: Lip {
            height,
            radius: num::max(radii * height, 1.8),
            lead_in: None,
            straight_end: None,
            surface: Surface::Wood,
            width: None,
        },
        gap,
        decked: true,
        landing: Landing {
            height: num::max(1.2 * height, 0.3),
            angle_deg,
            knuckle_radius: 0.5,
            bottom_radius: 2.5,
            length: None,
            surface: Surface::Packed,
            boxed: false,
            width: None,
        },
    }
}

/// Where the last feature ends, m.
fn end_of(plan: &Plan) -> Option<f64> {
    let profile = crate::profile::Profile::build(plan).ok()?;
    Some(profile.pieces.last()?.end.x)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::demo;
    use crate::presets::{Choice, preset};

    fn answers(length: f64, fall: f64, tallest: f64, mount: &Mount) -> Answers {
        Answers {
            name: "Behind the press house".into(),
            length,
            fall,
            tallest,
            mount: mount.clone(),
        }
    }

    fn rider(age: u32) -> Mount {
        let choice: Choice =
            serde_json::from_value(serde_json::json!({ "label": "r", "age": age }))
                .expect("it is a choice");
        preset(&choice).expect("an age of the charts").mount
    }

    #[test]
    fn every_draft_is_sound_and_all_its_jumps_land_clean() {
        let mut with_jumps = 0;
        for (length, fall) in [(25.0, 1.5), (60.0, 4.8)] {
            for tallest in [1.2, 2.0, 3.0] {
                for age in [6, 14] {
                    let answers = answers(length, fall, tallest, &rider(age));
                    let plan = draft(&answers)
                        .unwrap_or_else(|f| panic!("{length} {tallest} {age}: {}", f[0]));
                    let ridden = ride_plan(&plan, 0).expect("it is sound");
                    let rows = jumps(&ridden.profile, &ridden.run);
                    println!("{length} m, {tallest} m, {age}: {} jumps", rows.len());
                    assert!(
                        rows.iter().all(|r| r.how == How::Clean),
                        "{length} {tallest} {age}"
                    );
                    assert!(
                        stands(&ridden.run) || rows.is_empty(),
                        "{length} {tallest} {age}"
                    );
                    with_jumps += usize::from(!rows.is_empty());
                }
            }
        }
        assert!(
            with_jumps >= 10,
            "only {with_jumps} of 12 drafts have a jump"
        );
    }

    #[test]
    fn an_answer_out_of_range_is_a_fault_of_its_own() {
        let mount = demo().riders[0].clone();
        let faults = draft(&answers(8.0, 90.0, f64::NAN, &mount)).expect_err("none is in range");
        let fields: Vec<_> = faults.iter().map(|f| f.field.as_str()).collect();
        assert_eq!(fields, ["length", "fall", "tallest"]);
    }
}

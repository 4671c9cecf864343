use super::*;
use sim::build::job::{self, Job};
use sim::plan::{Feature, Line, Surface};

/// Lines to draw: landings in boxes, lips of wood.
fn lines() -> Vec<(&'static str, Plan)> {
    let texts = [
        ("orchard", include_str!("../../../sim/plans/orchard.json")),
        (
            "tables",
            include_str!("../../../sim/plans/three_tables.json"),
        ),
        ("steps", include_str!("../../../sim/plans/steps.json")),
    ];
    texts.map(|(name, text)| (name, built(text))).into()
}

fn built(text: &str) -> Plan {
    let mut plan = Plan::from_json(text).expect("a plan file of ours");
    let Line::Features(features) = &mut plan.line else {
        return plan;
    };
    for feature in features {
        match feature {
            Feature::Jump(jump) => {
                jump.lip.surface = Surface::Wood;
                jump.landing.boxed = true;
            }
            Feature::StartRamp(ramp) => ramp.surface = Surface::Wood,
            _ => {}
        }
    }
    plan
}

fn wants(system: System) -> Wants {
    Wants {
        system,
        decimal: '.',
        readings: Vec::new(),
        _tolerances: None,
    }
}

/// A line with everything that it takes to draw it.
struct Case {
    name: &'static str,
    plan: Plan,
    profile: Profile,
    supplies: Supplies,
    wants: Wants,
}

impl Case {
    fn all() -> Vec<Case> {
        let case = |(name, plan): (&'static str, Plan)| {
            let profile = Profile::build(&plan).expect("it can be built");
            let system = if name == "steps" {
                System::Feet
            } else {
                System::Metric
            };
            let mut wants = wants(system);
            wants.readings = readings(&profile);
            Case {
                name,
                plan,
                profile,
                supplies: Supplies::default(),
                wants,
            }
        };
        lines().into_iter().map(case).collect()
    }

    fn asked(&self) -> Asked<'_> {
        let Case {
            plan,
            profile,
            supplies,
            wants,
            ..
        } = self;
        Asked {
            plan,
            profile,
            supplies,
            wants,
        }
    }

    fn job(&self) -> Job {
        job::job(&self.plan, &self.profile, &self.supplies)
    }

    /// Everything that there is to draw of it.
    fn drawings(&self) -> Vec<(String, What)> {
        let job = self.job();
        let mut all = vec![
            (
                "section".to_owned(),
                What::Section {
                    from: None,
                    to: None,
                },
            ),
            ("ramp".to_owned(), What::Ramp {}),
            ("built".to_owned(), What::Built {}),
        ];
        for (i, [from, to]) in works::parts(&self.profile, &job.stakes)
            .into_iter()
            .enumerate()
        {
            all.push((
                format!("section{i}"),
                What::Section {
                    from: Some(from),
                    to: Some(to),
                },
            ));
        }
        for (sheet, lip) in job.lips.iter().enumerate() {
            all.push((format!("lip{sheet}"), What::Lip { sheet }));
            all.push((format!("panels{sheet}"), What::Panels { sheet }));
            all.push((format!("curve{sheet}"), What::Curve { sheet }));
            all.push((format!("cutting{sheet}"), What::Cutting { sheet }));
            let pages = lip
                .lip_box
                .as_ref()
                .map_or(0, |b| b.panels.tiling.pages.len());
            for page in 0..pages {
                all.push((format!("tile{sheet}_{page}"), What::Tile { sheet, page }));
            }
        }
        for sheet in 0..job.boxes.len() {
            all.push((format!("box{sheet}"), What::Box { sheet }));
        }
        for index in 0..job.dirt.boxed.len() {
            all.push((format!("mounds{index}"), What::Mounds { index }));
        }
        all
    }
}

/// A line built up to 6 cm off.
fn readings(profile: &Profile) -> Vec<[f64; 2]> {
    let at = |i: u32| {
        let x = 0.7 * f64::from(i) + 0.3;
        let off = 0.06 * sim::num::sin(2.3 * f64::from(i));
        Some([x, profile.height_at(x)? + off])
    };
    (0..90).filter_map(at).collect()
}

#[test]
fn leaves_them_to_be_looked_at() {
    let Ok(to) = std::env::var("DRAWINGS") else {
        return;
    };
    for case in Case::all() {
        for (kind, what) in case.drawings() {
            let svg = case.asked().svg(what).expect("there is such a sheet");
            std::fs::write(format!("{to}/{}_{kind}.svg", case.name), svg).unwrap();
        }
    }
}

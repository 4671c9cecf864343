use super::*;
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

#[test]
fn leaves_them_to_be_looked_at() {
    let Ok(to) = std::env::var("DRAWINGS") else {
        return;
    };
    for (name, plan) in lines() {
        let profile = Profile::build(&plan).unwrap();
        let supplies = Supplies::default();
        let earth = Earth::of(plan.yard.soil);
        let stakes = stakes::stakes(&plan, &profile, &earth);
        let system = if name == "steps" {
            System::Feet
        } else {
            System::Metric
        };
        let wants = wants(system);
        let asked = Asked {
            plan: &plan,
            profile: &profile,
            supplies: &supplies,
            wants: &wants,
        };
        let mut all = vec![(
            "section".to_owned(),
            What::Section {
                from: None,
                to: None,
            },
        )];
        for (i, [from, to]) in works::parts(&profile, &stakes).into_iter().enumerate() {
            all.push((
                format!("section{i}"),
                What::Section {
                    from: Some(from),
                    to: Some(to),
                },
            ));
        }
        for sheet in 0..9 {
            all.push((format!("lip{sheet}"), What::Lip { sheet }));
            all.push((format!("panels{sheet}"), What::Panels { sheet }));
        }
        for (kind, what) in all {
            if let Some(svg) = asked.svg(what) {
                std::fs::write(format!("{to}/{name}_{kind}.svg"), svg).unwrap();
            }
        }
    }
}

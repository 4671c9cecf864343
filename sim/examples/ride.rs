<<<<<<< HEAD
//! Rides a plan file and prints the run as JSON: `ride PLAN.json [--rider N] [--trace]`.
//!
//! For scripts, and for comparing with the page. Without `--trace` the even trace is left out.

use serde_json::json;
use sim::plan::Plan;
use sim::setup::ride_plan;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut args = std::env::args().skip(1);
    let (mut file, mut rider, mut trace) = (None, 0, false);
    while let Some(arg) = args.next() {
        match arg.as_str() {
            "--trace" => trace = true,
            "--rider" => rider = args.next().ok_or("--rider takes a number")?.parse()?,
            _ => file = Some(arg),
=======
//! Rides a plan file and prints the run.
use sim::ride::EventKind;
fn main() {
    let arg = std::env::args().nth(1).unwrap();
    let plan: sim::plan::Plan =
        serde_json::from_str(&std::fs::read_to_string(arg).unwrap()).unwrap();
    for r in 0..plan.riders.len() {
        let done = sim::setup::ride_plan(&plan, r).unwrap();
        println!(
            "{} {:?} {} samples",
            plan.riders[r].label,
            done.run.outcome,
            done.run.samples.len()
        );
        for l in &done.profile.lips {
            println!(
                "lip {:?} exit {:.1} knuckle {:?} slope {:.1}",
                l.edge,
                l.exit.to_degrees(),
                l.knuckle,
                l.slope.to_degrees()
            );
        }
        for e in &done.run.events {
            if let EventKind::LipLeft {
                speed,
                direction,
                pitch,
                ..
            } = e.kind
            {
                println!(
                    "{:.2} {:.2} LIP v {:.2} dir {:.1} pitch {:.1}",
                    e.t,
                    e.x,
                    speed,
                    direction.to_degrees(),
                    pitch.to_degrees()
                );
            } else {
                println!("{:.2} {:.2} {:?}", e.t, e.x, e.kind);
            }
        }
        if std::env::args().nth(2).is_some() {
            for (i, s) in done.run.samples.iter().enumerate() {
                if i % 5 == 0 {
                    println!(
                        "t {:.2} x {:.2} z {:.2} th {:.0} rx {:.2} rz {:.2} lean {:.0} v {:.2} N {:.0} {:.0} g {:.2} reach {:.2} head {:.2}",
                        s.t,
                        s.bike_x,
                        s.bike_z,
                        s.pitch.to_degrees(),
                        s.rider_x - s.bike_x,
                        s.rider_z,
                        s.lean.to_degrees(),
                        s.speed,
                        s.rear_load,
                        s.front_load,
                        s.g,
                        s.reach,
                        s.head
                    );
                }
            }
>>>>>>> link
        }
    }
    let file = file.ok_or("usage: ride PLAN.json [--rider N] [--trace]")?;
    let plan: Plan = serde_json::from_str(&std::fs::read_to_string(file)?)?;
    let ridden = ride_plan(&plan, rider).map_err(|faults| {
        let lines: Vec<String> = faults.iter().map(ToString::to_string).collect();
        lines.join("\n")
    })?;
    let mut out = json!({
        "plan": plan.name,
        "rider": plan.riders[rider].label,
        "outcome": ridden.run.outcome,
        "events": ridden.run.events,
        "lips": ridden.profile.lips,
    });
    if trace {
        out["trace"] = serde_json::to_value(&ridden.run.samples)?;
    }
    println!("{}", serde_json::to_string_pretty(&out)?);
    Ok(())
}

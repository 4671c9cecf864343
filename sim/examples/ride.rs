//! Rides a plan file and prints the run as JSON: `ride PLAN.json [--rider N] [--trace]`.
//!
//! For scripts, and for comparing with the page. Without `--trace` the even trace is left out.

use serde_json::json;
use sim::constants::MODEL_VERSION;
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
        }
    }
    let file = file.ok_or("usage: ride PLAN.json [--rider N] [--trace]")?;
    let plan = Plan::from_json(&std::fs::read_to_string(file)?).map_err(|f| f.to_string())?;
    let ridden = ride_plan(&plan, rider).map_err(|faults| {
        let lines: Vec<String> = faults.iter().map(ToString::to_string).collect();
        lines.join("\n")
    })?;
    let mut out = json!({
        "plan": plan.name,
        "rider": plan.riders[rider].label,
        "model": MODEL_VERSION,
        "outcome": ridden.run.outcome,
        "events": ridden.run.told(),
        "ledger": ridden.run.ledger,
        "lips": ridden.profile.lips,
    });
    if trace {
        out["trace"] = serde_json::to_value(&ridden.run.samples)?;
    }
    println!("{}", serde_json::to_string_pretty(&out)?);
    Ok(())
}

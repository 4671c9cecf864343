//! Works out what a plan file takes to build and prints it as JSON: `job PLAN.json [SUPPLIES.json]`.
//!
//! For scripts, and for comparing with the page of sheets.

use sim::build::job::job;
use sim::build::supplies::Supplies;
use sim::plan::Plan;
use sim::profile::Profile;
use std::error::Error;
use std::fs::read_to_string;

fn main() -> Result<(), Box<dyn Error>> {
    let mut args = std::env::args().skip(1);
    let file = args.next().ok_or("usage: job PLAN.json [SUPPLIES.json]")?;
    let plan = Plan::from_json(&read_to_string(file)?).map_err(|f| f.to_string())?;
    let given = args.next().map(read_to_string).transpose()?;
    let supplies: Supplies = match given {
        Some(text) => sim::json::from_text(&text).map_err(|f| f.to_string())?,
        None => Supplies::default(),
    };
    let told = |faults: Vec<sim::error::Fault>| {
        let lines: Vec<String> = faults.iter().map(ToString::to_string).collect();
        lines.join("\n")
    };
    let faults = supplies.validate();
    if !faults.is_empty() {
        return Err(told(faults).into());
    }
    let profile = Profile::build(&plan).map_err(told)?;
    println!(
        "{}",
        serde_json::to_string_pretty(&job(&plan, &profile, &supplies))?
    );
    Ok(())
}

//! Rides every plan of a list of links, one to a line on standard input, and prints a line for each
//! ride: plan, rider, samples, digest. The same list gives the same lines on every machine.

use sim::link;
use sim::setup::ride_plan;
use std::io::stdin;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    for (i, line) in stdin().lines().enumerate() {
        let plan = link::decode(&line?)?.plan;
        for rider in 0..plan.riders.len() {
            let run = match ride_plan(&plan, rider) {
                Ok(ridden) => ridden.run,
                Err(faults) => return Err(faults[0].to_string().into()),
            };
            println!("{i} {rider} {} {:016x}", run.samples.len(), run.digest());
        }
    }
    Ok(())
}

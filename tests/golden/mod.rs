//! The list of plans whose rides are kept to the last bit.

use sim::link;
use sim::setup::ride_plan;
use std::fmt::Write;
use std::fs;

fn kept(name: &str) -> String {
    let path = crate::repository().join("tests/golden").join(name);
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The plans, as links.
pub fn links() -> Vec<String> {
    kept("links.txt").lines().map(str::to_owned).collect()
}

/// What came out of each ride when the list was made.
pub fn digests() -> String {
    kept("digests.txt")
}

/// Rides every rider of every plan: a line each, as in `digests.txt`.
pub fn ride_all() -> String {
    let mut lines = String::new();
    for (i, link) in links().iter().enumerate() {
        let plan = link::decode(link)
            .expect("a link of the list is whole")
            .plan;
        for rider in 0..plan.riders.len() {
            let run = ride_plan(&plan, rider)
                .expect("a plan of the list is sound")
                .run;
            writeln!(
                lines,
                "{i} {rider} {} {:016x}",
                run.samples.len(),
                run.digest()
            )
            .expect("text takes every line");
        }
    }
    lines
}

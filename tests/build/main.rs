//! What is built, against published worked examples, tables, and solutions that share no code with it.

mod dirt;
mod earth;
mod haul;
mod job;
mod lips;
mod nested;
mod ramps;
mod stakes;
mod walls;

use tests::checks::{Table, judge_all};

#[test]
fn every_row_holds() {
    let table = |title, checks| Table { title, checks };
    judge_all(&[
        table("Templates of lips", lips::templates()),
        table("Plywood and people", lips::stock()),
        table("Panels on a sheet", nested::checks()),
        table("Dirt next to a library of solids", dirt::checks()),
        table("Haul next to other solvers", haul::checks()),
        table("Earth, hours and logs as published", earth::checks()),
        table("Stakes by hand", stakes::checks()),
        table("The whole job adds up", job::checks()),
    ]);
}

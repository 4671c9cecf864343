//! What is built, against published worked examples, tables, and solutions that share no code with it.

mod lips;
mod nested;
mod ramps;
mod walls;

use tests::checks::{Table, judge_all};

#[test]
fn every_row_holds() {
    let table = |title, checks| Table { title, checks };
    judge_all(&[
        table("Templates of lips", lips::templates()),
        table("Plywood and people", lips::stock()),
        table("Panels on a sheet", nested::checks()),
    ]);
}

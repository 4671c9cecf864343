//! What is built, against geometry, tables and searches that share no code with it.

mod lips;
mod nested;

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

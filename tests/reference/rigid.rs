//! Rider and bike as one rigid body on hard tyres, so that both describe the same thing.

use crate::duel::Duel;
use tests::checks::judge;
use tests::lines::{self, RIDERS};
use tests::rigid::{on_hard_tyres, rigid};

const WAY: &str = "the ride's grip slips where axles speed up, 0.2 J a roller; hard wheels hop";
const LIP: &str = "the front tyre pushes for a moment longer as it rolls off the edge";

#[test]
fn one_rigid_body() {
    let lines = [
        lines::ramp(2.0),
        lines::rollers(1.2, 0.15, 4.0, 4),
        lines::rollers(1.0, 0.08, 2.5, 6),
        lines::lip(1.6, 0.6, 5.0),
        lines::lip(1.2, 0.4, 3.5),
        lines::lip(1.6, 0.9, 4.0),
    ];
    let mut checks = Vec::new();
    for line in &lines {
        for (rider, name) in RIDERS.iter().enumerate() {
            let m = on_hard_tyres(rigid(&lines::mount(rider)));
            let duel = Duel::rigid(line, name, &m);
            checks.push(duel.on_the_way(1.2e-3, WAY));
            checks.push(duel.at_the_end(2e-3, LIP));
        }
    }
    judge("One rigid body against wheels bound to the ground", checks);
}

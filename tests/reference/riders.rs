//! Riders who move, their motion against the bike taken from the ride itself: what is compared is
//! the speed that follows from it.

use crate::duel::{Against, Duel};
use sim::ride::Legs;
use tests::checks::judge;
use tests::lines::{self, Named, RIDERS};
use tests::rigid::on_hard_tyres;

const SEEN: &str = "the motion is seen at each step, and smoothed between";
const LIP: &str = "as on the way; the front tyre pushes on as it rolls off the edge";
const TYRES: &str = "tyres give 5 to 20 mm, the bound wheels' do not";

/// Lines whose lip a stiff adult leaves otherwise than in the second solver.
const STIFF_OUT: [&str; 2] = [
    "ramp 2.4 m, lip 0.6 m on R 5 m",
    "ramp 2.4 m, lip 0.9 m on R 4 m",
];

fn all_lines() -> [Named; 6] {
    [
        lines::ramp(2.0),
        lines::rollers(1.2, 0.2, 4.0, 4),
        lines::rollers(1.0, 0.08, 2.5, 6),
        lines::lip(2.4, 0.6, 5.0),
        lines::lip(2.4, 0.6, 3.0),
        lines::lip(2.4, 0.9, 4.0),
    ]
}

#[test]
fn riders_on_hard_tyres() {
    let mut checks = Vec::new();
    for line in &all_lines() {
        for (rider, name) in RIDERS.iter().enumerate() {
            let m = on_hard_tyres(lines::mount(rider));
            let duel = Duel::moving(line, name, &m, Against::TheBike);
            checks.push(duel.on_the_way(2.5e-3, SEEN));
            checks.push(duel.at_the_end(4e-3, LIP));
        }
    }
    judge("Absorbing riders on hard tyres", checks);
}

#[test]
fn passive_riders_on_hard_tyres() {
    let mut checks = Vec::new();
    for line in &all_lines() {
        for rider in [1, 3] {
            let mut m = on_hard_tyres(lines::mount(rider));
            m.legs = Legs::Passive;
            let duel = Duel::moving(line, RIDERS[rider], &m, Against::TheBike);
            checks.push(duel.on_the_way(2.5e-3, SEEN));
            let end = duel.at_the_end(4e-3, LIP);
            // A stiff adult leaves two of the lips 0.8 % slower than the second solver has it: why is not
            // found out.
            let known = rider == 3 && STIFF_OUT.contains(&line.name.as_str());
            checks.push(if known { end.known_out() } else { end });
        }
    }
    judge("Passive riders on hard tyres", checks);
}

#[test]
fn riders_on_their_own_tyres() {
    let mut checks = Vec::new();
    for line in &all_lines() {
        for (rider, name) in RIDERS.iter().enumerate() {
            let duel = Duel::moving(line, name, &lines::mount(rider), Against::TheBound);
            checks.push(duel.on_the_way(4e-3, TYRES));
        }
    }
    judge(
        "Absorbing riders on their own tyres, both wheels down",
        checks,
    );
}

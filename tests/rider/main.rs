//! Does the rider ride like a person, on lines and by riders that nobody tuned on?

use sim::plan::Style;
use std::sync::LazyLock;
use tests::rider::place::Member;
use tests::rider::{calm, cleared, flight, landing, order, rollers, seeds, tall, track};

/// The family's lines, placed by riding once for all tables about jumps.
static FAMILY: LazyLock<Vec<Member>> = LazyLock::new(|| cleared::family(&seeds::judging()));

#[test]
fn small_changes_that_help_never_slow_down() {
    calm::table(&seeds::judging()).judge();
}

#[test]
fn more_skill_and_more_work_are_never_worse() {
    order::table(&seeds::judging()).judge();
}

#[test]
fn level_pump_tracks_are_ridden_round() {
    track::table().judge();
}

#[test]
fn jumps_at_fitting_speeds_are_cleared() {
    cleared::table(&seeds::judging(), &FAMILY).judge();
}

#[test]
fn too_slow_comes_to_grief() {
    let slow = cleared::too_slow(&seeds::many());
    println!(
        "of {} gaps 1.3 m too long {:.1} % are cleared, {:.1} % end in line, if short",
        slow.jumps, slow.cleared, slow.well
    );
    assert!(slow.jumps >= 100, "too little was ridden to judge");
    assert!(slow.cleared < 5.0, "what cannot be cleared is cleared");
    assert!(slow.well < 75.0, "they come down as if nothing were");
}

#[test]
fn bikes_leave_in_line_and_bodies_stay_bodies() {
    flight::table(&FAMILY).judge();
}

#[test]
fn landings_take_what_they_must() {
    landing::table(&FAMILY, &landing::pumpers(&seeds::judging())).judge();
}

#[test]
fn the_tall_gap_is_cleared_with_skill() {
    tall::table().judge();
}

#[test]
fn legs_decide_what_rollers_cost() {
    let [passive, absorbing, pumping] =
        [Style::Passive, Style::Absorbing, Style::Pumping].map(|s| rollers::loss(s, 6.5));
    println!(
        "a roller costs {passive:.3} m passive, {absorbing:.3} m absorbing, {pumping:.3} m pumping"
    );
    assert!(
        passive > 1.3 * absorbing,
        "soaking rollers up spares little"
    );
    assert!(pumping < absorbing, "pumping gains nothing over soaking up");
}

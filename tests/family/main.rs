//! Does the rider manage lines that nobody tuned on, and fail where failing is right?

use sim::plan::Style;
use tests::family::{Estimate, Tally, rollers, tally};

/// Seeds of the family: half of them for tuning, half for judging.
const SEEDS: u64 = 600;

/// Least share of the judging half's jumps that go well. It may only rise.
const FLOOR: f64 = 0.97;

fn half(odd: u64, estimate: Estimate) -> Tally {
    tally((0..SEEDS).filter(|s| s % 2 == odd), estimate)
}

#[test]
fn jumps_at_the_right_speed_go_well() {
    let tuning = half(0, Estimate::MassCentre(0.0));
    println!("tuning half: {tuning}");
    let judging = half(1, Estimate::MassCentre(0.0));
    println!("judging half: {judging}");
    assert!(
        judging.lines >= 300 && judging.jumps >= 200,
        "too little was ridden to judge"
    );
    assert!(
        judging.rate() >= FLOOR,
        "{:.3} of the jumps went well",
        judging.rate()
    );
}

/// Gaps set by throwing a point from the edge are too long for a bike, which comes down with its
/// mass centre ahead of its rear wheel: a figure to know, not one to reach.
#[test]
fn point_estimate_is_printed() {
    let judging = half(1, Estimate::Point);
    println!("judging half, gaps placed for a mere point: {judging}");
    let short = judging.misses[judging.misses.len() / 2];
    assert!(
        short < 0.0,
        "a point flies no farther than a rear wheel does: {short}"
    );
}

/// Knuckles 1.3 m farther than right: the rear wheel strikes before them, whatever the rider does.
/// Whoever still cleared such gaps could not fail at all.
#[test]
fn too_slow_comes_to_grief() {
    let judging = half(1, Estimate::MassCentre(-1.3));
    println!("judging half, gaps 1.3 m too long: {judging}");
    let cleared = f64::from(judging.cleared) / f64::from(judging.jumps);
    assert!(judging.jumps >= 100, "too little was ridden to judge");
    assert!(
        cleared < 0.05,
        "{cleared:.3} cleared what cannot be cleared"
    );
    assert!(
        judging.rate() < 0.75,
        "{:.3} came down as if nothing were",
        judging.rate()
    );
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

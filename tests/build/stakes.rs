//! Stakes by hand: a ramp, rollers, a turn and a jump on a three-four-five slope.

use sim::build::heap::Earth;
use sim::build::stakes::{Mark, Stake, stakes};
use sim::plan::{Feature, GroundPoint, Lie, Line, Plan, Roller, RunOut, Soil, Surface, Turn, demo};
use sim::profile::Profile;
use tests::checks::{Bound, Check};

const HAND: &str = "trigonometry by hand";

fn plan() -> Plan {
    let mut plan = demo();
    let Line::Features(features) = &plan.line else {
        panic!("it has features")
    };
    let jump = features.iter().find(|f| matches!(f, Feature::Jump(_)));
    let mut jump = jump.expect("it has a jump").clone();
    if let Feature::Jump(jump) = &mut jump {
        jump.lip.surface = Surface::Packed;
        (jump.lip.height, jump.lip.radius) = (0.5, 2.5);
        (jump.lip.lead_in, jump.lip.straight_end) = (None, None);
        (jump.gap, jump.decked) = (2.0, false);
        jump.landing.height = 0.8;
        (jump.landing.boxed, jump.landing.length) = (false, None);
        (jump.landing.angle_deg, jump.landing.knuckle_radius) = (30.0, 1.0);
        jump.landing.bottom_radius = 1.0;
        jump.landing.width = Some(2.0);
    }
    let roller = Roller {
        height: 0.4,
        length: 3.0,
        count: 2,
        surface: Surface::Packed,
        width: None,
    };
    let turn = Turn {
        radius: 5.0,
        sweep_deg: 60.0,
        bank_deg: 0.0,
        surface: Surface::Packed,
        width: None,
    };
    let run_out = RunOut {
        length: 6.0,
        surface: Surface::Packed,
    };
    plan.line = Line::Features(vec![
        Feature::Roller(roller),
        jump,
        Feature::Turn(turn),
        Feature::RunOut(run_out),
    ]);
    plan.width = 1.2;
    plan.initial_speed = Some(4.0);
    plan.yard.length = 40.0;
    plan.yard.lie = Lie::Grade(0.0);
    plan
}

fn driven(plan: &Plan) -> Vec<Stake> {
    let profile = Profile::build(plan).expect("it can be built");
    stakes(plan, &profile, &Earth::of(Soil::Loam))
}

fn find(all: &[Stake], mark: Mark, nth: usize) -> &Stake {
    all.iter()
        .filter(|s| s.mark == mark)
        .nth(nth)
        .expect("it is driven")
}

fn row(what: &str, expected: f64, got: f64) -> Check {
    let pair = [expected, got];
    Check::new(what, HAND, "m", pair, Bound::Within(1e-9), "rounding")
}

/// On level ground.
fn level() -> Vec<Check> {
    use Mark::*;
    let all = driven(&plan());
    let cosine = 3.0_f64.sqrt() / 2.0;
    // Two rollers of 3 m; then a lip of radius 2.5 m and height 0.5 m: its run is √(0.5 · (5 − 0.5)) = 1.5 m.
    let edge = 6.0 + 1.5;
    let knuckle = edge + 2.0;
    // Down 0.8 m over two arcs of 1 m and a slope of 30°.
    let straight = (0.8 - 2.0 * (1.0 - cosine)) / 0.5;
    let foot = knuckle + 0.5 + straight * cosine;
    let end = foot + 0.5;
    let round = end + 5.0 * std::f64::consts::FRAC_PI_3;
    let stations = [
        ("first roller's top", RollerTop, 0, 1.5),
        ("trough between", RollerTrough, 1, 3.0),
        ("second roller's top", RollerTop, 1, 4.5),
        ("lip's edge", LipEdge, 0, edge),
        ("middle of the gap", Gap, 0, edge + 1.0),
        ("knuckle", Knuckle, 0, knuckle),
        ("landing's foot", LandingFoot, 0, foot),
        ("landing's end", LandingEnd, 0, end),
        ("turn's end", TurnTo, 0, round),
        ("run-out's end", RunOutEnd, 0, round + 6.0),
    ];
    let heights = [
        ("height of a roller's top", RollerTop, 0.4),
        ("height of the gap's floor", Gap, 0.0),
        ("height of the landing's foot", LandingFoot, 1.0 - cosine),
    ];
    let station = |(what, mark, nth, expected)| row(what, expected, find(&all, mark, nth).station);
    let height = |(what, mark, expected)| row(what, expected, find(&all, mark, 0).height);
    let mut checks: Vec<Check> = stations.into_iter().map(station).collect();
    checks.extend(heights.into_iter().map(height));
    let knuckle = find(&all, Knuckle, 0);
    checks.push(row("edge beside the knuckle", 1.0, knuckle.edge));
    checks.push(row("toe beside the knuckle", 1.0 + 1.5 * 0.8, knuckle.toe));
    let turn = find(&all, TurnFrom, 0).turn.expect("it is set out");
    checks.push(row("chord of a sixth of a circle", 5.0, turn.chord));
    checks.push(row("its rise", 5.0 * (1.0 - cosine), turn.rise));
    checks
}

/// Uphill first, then level: a tape of 5 for each 4 along, and as much as along.
fn uphill() -> Vec<Check> {
    let mut plan = plan();
    let readings = [(0.0, 0.0), (4.0, 3.0), (60.0, 3.0)];
    plan.yard.lie = Lie::Surveyed(readings.map(GroundPoint::from).into());
    plan.yard.length = 60.0;
    let all = driven(&plan);
    let knuckle = find(&all, Mark::Knuckle, 0);
    let top = find(&all, Mark::RollerTop, 0);
    assert!(top.station < 4.0, "it is on the slope");
    let back = |pair: &[Stake]| (pair[0].station - pair[1].station).max(0.0);
    vec![
        row("tape to the knuckle", knuckle.station + 1.0, knuckle.tape),
        row("ground under it", 3.0, knuckle.ground),
        row("tape to a roller's top", 1.25 * top.station, top.tape),
        row("stakes out of order", 0.0, all.windows(2).map(back).sum()),
    ]
}

pub fn checks() -> Vec<Check> {
    [level(), uphill()].concat()
}

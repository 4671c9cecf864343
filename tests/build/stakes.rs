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

pub fn checks() -> Vec<Check> {
    let row = |what: &str, unit, expected: f64, got: f64| {
        Check::new(
            what,
            HAND,
            unit,
            [expected, got],
            Bound::Within(1e-9),
            "rounding",
        )
    };
    let mut plan = plan();
    let all = driven(&plan);
    // Two rollers of 3 m; then a lip of radius 2.5 m and height 0.5 m: its run is √(0.5 · (5 − 0.5)) = 1.5 m.
    let edge = 6.0 + 1.5;
    let knuckle = edge + 2.0;
    // Down 0.8 m over two arcs of 1 m and a slope of 30°.
    let (sine, cosine) = (0.5, 3.0_f64.sqrt() / 2.0);
    let straight = (0.8 - 2.0 * (1.0 - cosine)) / sine;
    let foot = knuckle + sine + straight * cosine;
    let end = foot + sine;
    let round = end + 5.0 * std::f64::consts::FRAC_PI_3;
    let mut checks = vec![
        row(
            "first roller's top",
            "m",
            1.5,
            find(&all, Mark::RollerTop, 0).station,
        ),
        row(
            "its height",
            "m",
            0.4,
            find(&all, Mark::RollerTop, 0).height,
        ),
        row(
            "trough between",
            "m",
            3.0,
            find(&all, Mark::RollerTrough, 1).station,
        ),
        row(
            "second roller's top",
            "m",
            4.5,
            find(&all, Mark::RollerTop, 1).station,
        ),
        row(
            "lip's edge",
            "m",
            edge,
            find(&all, Mark::LipEdge, 0).station,
        ),
        row(
            "middle of the gap",
            "m",
            edge + 1.0,
            find(&all, Mark::Gap, 0).station,
        ),
        row("its floor", "m", 0.0, find(&all, Mark::Gap, 0).height),
        row(
            "knuckle",
            "m",
            knuckle,
            find(&all, Mark::Knuckle, 0).station,
        ),
        row(
            "edge beside it",
            "m",
            1.0,
            find(&all, Mark::Knuckle, 0).edge,
        ),
        row(
            "toe of its slope",
            "m",
            1.0 + 1.5 * 0.8,
            find(&all, Mark::Knuckle, 0).toe,
        ),
        row(
            "landing's foot",
            "m",
            foot,
            find(&all, Mark::LandingFoot, 0).station,
        ),
        row(
            "its height",
            "m",
            1.0 - cosine,
            find(&all, Mark::LandingFoot, 0).height,
        ),
        row(
            "landing's end",
            "m",
            end,
            find(&all, Mark::LandingEnd, 0).station,
        ),
        row(
            "turn's end",
            "m",
            round,
            find(&all, Mark::TurnTo, 0).station,
        ),
        row(
            "run-out's end",
            "m",
            round + 6.0,
            find(&all, Mark::RunOutEnd, 0).station,
        ),
    ];
    let turn = find(&all, Mark::TurnFrom, 0).turn.expect("it is set out");
    checks.push(row("chord of a sixth of a circle", "m", 5.0, turn.chord));
    checks.push(row("its rise", "m", 5.0 * (1.0 - cosine), turn.rise));
    // Uphill first, then level: a tape of 5 for each 4 along, and as much as along.
    let point = |station: f64, elevation: f64| GroundPoint { station, elevation };
    plan.yard.lie = Lie::Surveyed(vec![point(0.0, 0.0), point(4.0, 3.0), point(60.0, 3.0)]);
    plan.yard.length = 60.0;
    let all = driven(&plan);
    let knuckle = find(&all, Mark::Knuckle, 0);
    checks.push(row(
        "tape to the knuckle",
        "m",
        knuckle.station + 1.0,
        knuckle.tape,
    ));
    checks.push(row("ground under it", "m", 3.0, knuckle.ground));
    let top = find(&all, Mark::RollerTop, 0);
    let level = (top.station < 4.0).then_some(1.25 * top.station);
    checks.push(row(
        "tape to the first roller's top",
        "m",
        level.expect("on the slope"),
        top.tape,
    ));
    let order: f64 = all
        .windows(2)
        .map(|pair| (pair[0].station - pair[1].station).max(0.0))
        .sum();
    checks.push(row("stakes out of order", "m", 0.0, order));
    checks
}

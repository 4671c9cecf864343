//! What holds a rider back on the road, in watts and newtons: the ledger's rates against published
//! figures.

use super::rig::{loaded_radius, passive, run};
use sim::ride::{Mount, Sample};
use tests::bare::ground;
use tests::checks::{
    Bound::{self, Share, Within},
    Check,
};
use tests::rigid::on_hard_tyres;

const MARTIN: &str = "Martin et al. 1998, J. Appl. Biomech. 14:276, worked example (from memory; its arithmetic agrees)";

/// Rates of loss as a rider who coasts passes a speed, W.
struct Rates {
    speed: f64,
    rolling: f64,
    drag: f64,
    climb: f64,
    /// Kinetic energy that goes.
    slowing: f64,
}

impl Rates {
    /// On ground with a rise over its length.
    fn new(m: &Mount, rise: f64, from: f64, speed: f64) -> Self {
        let run = run(&ground(rise.atan(), &[(80.0, 0.0)]), m, from);
        let at = run
            .samples
            .iter()
            .position(|s| s.speed < speed && s.t > 1.0);
        // A fifth of a second around that moment.
        let at = at.expect("it slows down");
        let [a, b] = [run.samples[at - 10], run.samples[at + 10]];
        let rate = |of: fn(&Sample) -> f64| (of(&b) - of(&a)) / (b.t - a.t);
        let weight = run.ledger.weight;
        Self {
            speed: (b.bike_x - a.bike_x) / (b.t - a.t) * (1.0 + rise * rise).sqrt(),
            rolling: rate(|s| s.spent.rolling_rear + s.spent.rolling_front),
            drag: rate(|s| s.spent.drag),
            climb: weight * rate(|s| s.height),
            slowing: -weight * rate(|s| s.head - s.height),
        }
    }
}

/// A rider whose bike and body have a mass together, kg, on tyres as hard as a road's.
fn of_mass(mass: f64) -> Mount {
    let mut m = on_hard_tyres(passive());
    m.rider_mass = mass - m.bike_mass;
    // Two wheels of 0.14 kg m² on 0.311 m.
    let radius = loaded_radius(&m);
    m.wheel_inertia = 0.5 * 0.14 / (0.311 * 0.311) * radius * radius;
    m
}

/// 90 kg at 8.36 m/s up 0.3 % against 2.55 m/s of wind.
fn road() -> Vec<Check> {
    let mut m = of_mass(90.0);
    m.rolling = [0.0032; 6];
    m.drag = 0.5 * 1.2234 * (0.2565 + 0.0044);
    m.tailwind = -2.546;
    let only = |change: fn(&mut Mount)| {
        let mut m = m.clone();
        change(&mut m);
        Rates::new(&m, 0.003, 8.9, 8.3623)
    };
    let all = only(|_| {});
    let row = |what: &str, pair, bound: Bound, why| {
        Check::new(
            format!("on the road at 8.36 m/s: {what}"),
            MARTIN,
            "W",
            pair,
            bound,
            why,
        )
    };
    const SECOND: &str = "mean of a fifth of a second around that speed; the paper's last digit";
    vec![
        row(
            "drag of body and spokes",
            [158.8, all.drag],
            Within(0.2),
            SECOND,
        ),
        row(
            "rolling",
            [23.6, only(|m| m.bearings = [0.0; 2]).rolling],
            Within(0.06),
            "the paper's last digit, and its g of 9.81 m/s²",
        ),
        row(
            "bearings",
            [1.4, only(|m| m.rolling = [0.0; 6]).rolling],
            Within(0.06),
            "the paper's last digit",
        ),
        row("climb", [22.1, all.climb], Within(0.1), SECOND),
        row(
            "all, taken from the speed",
            [158.8 + 23.6 + 1.4 + 22.1, all.slowing],
            Within(0.3),
            "as each of them; what the legs take",
        ),
    ]
}

/// 72 kg at 6 m/s up 7.5 %: the second set of figures.
fn hill() -> Vec<Check> {
    const SOURCE: &str =
        "the equations of Martin et al. 1998 with the figures of Sports Eng. 24:6 (2021), table 1";
    let mut m = of_mass(72.0);
    m.rolling = [0.0032; 6];
    m.drag = 0.5 * 1.225 * (0.473 + 0.0044);
    let at = Rates::new(&m, 0.075, 7.5, 6.0);
    let row = |what: &str, pair, share| {
        Check::new(
            format!("uphill at 6 m/s: {what}"),
            SOURCE,
            "W",
            pair,
            Share(share),
            "mean of a fifth of a second around that speed",
        )
    };
    vec![
        row("drag", [63.16, at.drag], 2e-3),
        row("rolling and bearings", [13.52 + 0.859, at.rolling], 2e-3),
        row("climb", [317.0, at.climb], 2e-3),
    ]
}

/// A youth's off-road racer at 20 mph: 5.52 lbf of air and 2.10 lbf of rolling on 150 lbf.
fn racer() -> [Check; 2] {
    const SOURCE: &str =
        "Gross, Kyle and Malewicki 1983, Sci. Am. 249(6) (from memory; its arithmetic agrees)";
    let pound = 4.4482216;
    let mut m = of_mass(150.0 * 0.45359237);
    m.rolling = [0.014; 6];
    m.bearings = [0.0; 2];
    m.drag = 0.5 * 1.225 * 1.1 * 4.9 * 0.3048 * 0.3048;
    let at = Rates::new(&m, 0.0, 9.7, 8.9408);
    let row = |what: &str, pair| {
        Check::new(
            format!("off-road racer, 20 inch, at 20 mph: {what}"),
            SOURCE,
            "N",
            pair,
            Share(2e-3),
            "its last digit; its own arithmetic gives 5.512 lbf",
        )
    };
    [
        row("air", [5.52 * pound, at.drag / at.speed]),
        row("rolling", [2.10 * pound, at.rolling / at.speed]),
    ]
}

/// The table's rows.
pub fn checks() -> Vec<Check> {
    let mut checks = road();
    checks.extend(hill());
    checks.extend(racer());
    checks
}

//! Haul next to a solver for cones, and next to every way there is.

use clarabel::algebra::CscMatrix;
use clarabel::solver::{DefaultSettings, DefaultSolver, IPSolver, SupportedConeT};
use fastrand::Rng;
use sim::build::haul::{Haul, Place, haul};
use tests::checks::{Bound, Check};

fn place(rng: &mut Rng, bank: f64) -> Place {
    Place {
        x: 60.0 * rng.f64(),
        y: 12.0 * rng.f64() - 6.0,
        bank,
        feature: None,
    }
}

fn apart(a: &Place, b: &Place) -> f64 {
    ((a.x - b.x).powi(2) + (a.y - b.y).powi(2)).sqrt()
}

/// Least haulage by an interior point method: what is cut goes first, then as much as is wanted.
fn by_cones(cuts: &[Place], borrow: &[Place], wanted: &[Place]) -> f64 {
    let from: Vec<Place> = cuts.iter().chain(borrow).copied().collect();
    let sum = |places: &[Place]| places.iter().map(|p| p.bank).sum::<f64>();
    let [cut, want] = [sum(cuts), sum(wanted)];
    let (n, m) = (from.len(), wanted.len());
    let move_all = (cut + sum(borrow)).min(want);
    let mut rows: Vec<(Vec<f64>, f64)> = Vec::new();
    let over = |is: &dyn Fn(usize, usize) -> bool| -> Vec<f64> {
        (0..n * m).map(|k| f64::from(is(k / m, k % m))).collect()
    };
    // Equal: the whole, and what is cut.
    rows.push((over(&|_, _| true), move_all));
    rows.push((over(&|i, _| i < cuts.len()), cut.min(want)));
    let equal = rows.len();
    for (i, place) in from.iter().enumerate() {
        rows.push((over(&|a, _| a == i), place.bank));
    }
    for (j, place) in wanted.iter().enumerate() {
        rows.push((over(&|_, b| b == j), place.bank));
    }
    for k in 0..n * m {
        rows.push((
            (0..n * m)
                .map(|l| if l == k { -1.0 } else { 0.0 })
                .collect(),
            0.0,
        ));
    }
    let dense: Vec<Vec<f64>> = rows.iter().map(|r| r.0.clone()).collect();
    let a = CscMatrix::from(&dense);
    let b: Vec<f64> = rows.iter().map(|r| r.1).collect();
    let costs: Vec<f64> = (0..n * m)
        .map(|k| apart(&from[k / m], &wanted[k % m]))
        .collect();
    let cones = [
        SupportedConeT::ZeroConeT(equal),
        SupportedConeT::NonnegativeConeT(rows.len() - equal),
    ];
    let settings = DefaultSettings {
        verbose: false,
        ..DefaultSettings::default()
    };
    let none = CscMatrix::zeros((n * m, n * m));
    let mut solver = DefaultSolver::new(&none, &costs, &a, &b, &cones, settings)
        .expect("the problem is well formed");
    solver.solve();
    solver.solution.obj_val
}

/// Least haulage of single barrows, by trying every order in which they may be given out.
fn by_trying(from: &[Place], wanted: &[Place]) -> f64 {
    fn least(from: &[Place], open: &mut Vec<usize>, wanted: &[Place]) -> f64 {
        let Some((first, rest)) = from.split_first() else {
            return 0.0;
        };
        let mut best = f64::INFINITY;
        for i in 0..open.len() {
            let to = open.swap_remove(i);
            let haulage = apart(first, &wanted[to]) + least(rest, open, wanted);
            best = best.min(haulage);
            open.push(to);
            let last = open.len() - 1;
            open.swap(i, last);
        }
        best
    }
    least(from, &mut (0..wanted.len()).collect(), wanted)
}

fn row(what: String, source: &'static str, [expected, got]: [f64; 2]) -> Check {
    let why = "distances in whole millimetres, and the other solver's own accuracy";
    Check::new(
        what,
        source,
        "m⁴",
        [expected, got],
        Bound::Within(5e-3),
        why,
    )
}

/// Nothing is taken that is not there, and nothing comes where it is not wanted.
fn keeps_within(haul: &Haul, cuts: &[Place], borrow: &[Place], wanted: &[Place]) {
    let from = [cuts, borrow].concat();
    let sum = |is: &dyn Fn(&sim::build::haul::Move) -> bool| -> f64 {
        haul.moves.iter().filter(|m| is(m)).map(|m| m.bank).sum()
    };
    for (i, place) in from.iter().enumerate() {
        assert!(sum(&|m| m.from == i) <= place.bank + 1e-9);
    }
    let mut missing = 0.0;
    for (j, place) in wanted.iter().enumerate() {
        let came = sum(&|m| m.to == j);
        assert!(came <= place.bank + 1e-9);
        missing += place.bank - came;
    }
    assert!((missing - haul.missing).abs() < 1e-6, "{missing} {haul:?}");
    let cut: f64 = cuts.iter().map(|p| p.bank).sum();
    let spare = cut - sum(&|m| m.from < cuts.len());
    assert!((spare - haul.spare).abs() < 1e-6, "{spare} {haul:?}");
}

pub fn checks() -> Vec<Check> {
    let mut rng = Rng::with_seed(16);
    let mut checks = Vec::new();
    for (cut, pits, fills) in [
        (2, 1, 3),
        (4, 2, 6),
        (0, 3, 5),
        (6, 0, 4),
        (8, 3, 12),
        (5, 2, 2),
    ] {
        let mut places = |count: usize, most: f64| -> Vec<Place> {
            (0..count)
                .map(|_| {
                    let bank = 0.1 + most * rng.f64();
                    place(&mut rng, bank)
                })
                .collect()
        };
        let [cuts, borrow, wanted] = [places(cut, 1.0), places(pits, 4.0), places(fills, 2.0)];
        let got = haul(&cuts, &borrow, &wanted);
        keeps_within(&got, &cuts, &borrow, &wanted);
        let expected = by_cones(&cuts, &borrow, &wanted);
        let what = format!("{cut} cuts, {pits} borrow pits, {fills} fills");
        checks.push(row(
            what,
            "Clarabel, interior point",
            [expected, got.haulage],
        ));
    }
    for size in [3, 5, 7] {
        let mut barrows = |_| place(&mut rng, 1.0);
        let from: Vec<Place> = (0..size).map(&mut barrows).collect();
        let wanted: Vec<Place> = (0..size).map(&mut barrows).collect();
        let got = haul(&from, &[], &wanted).haulage;
        let what = format!("{size} barrows to {size} places");
        checks.push(row(
            what,
            "every way tried",
            [by_trying(&from, &wanted), got],
        ));
    }
    checks
}

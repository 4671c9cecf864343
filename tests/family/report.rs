//! Prints how the family's jumps go: `family [FROM] [TO] [tuning|judging]`, or one seed in full.

use std::collections::BTreeMap;
use tests::family::{How, member, score};

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let number = |i: usize, or: u64| args.get(i).and_then(|a| a.parse().ok()).unwrap_or(or);
    let (from, to) = (number(0, 0), number(1, 600));
    let parity = u64::from(args.get(2).is_some_and(|a| a == "judging"));
    let verbose = args.get(3).is_some();
    let mut quality = 0.0;
    let mut misses: Vec<f64> = Vec::new();
    let (mut well, mut all, mut finished, mut lines) = (0, 0, 0, 0);
    let mut kinds: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for seed in (from..to).filter(|s| s % 2 == parity) {
        let m = member(seed);
        let s = score(&m);
        lines += 1;
        misses.extend(s.misses.iter().copied());
        finished += u32::from(m.ridden.run.outcome == sim::ride::Outcome::Finished);
        if let Some(why) = s.elsewhere {
            kinds
                .entry(format!("elsewhere {why:?}"))
                .or_default()
                .push(format!("{seed}"));
        }
        for (k, how) in s.jumps.iter().enumerate() {
            all += 1;
            let label = &m.plan.riders[0].label;
            match how {
                How::Well(p) => {
                    well += 1;
                    quality += 1.0 - 3.0 * p * p;
                }
                How::Askew(p) => {
                    let kind = if *p > 0.0 { "nose up" } else { "nose down" };
                    kinds
                        .entry(kind.into())
                        .or_default()
                        .push(format!("{seed}.{k}({label} {:.0})", p.to_degrees()));
                }
                other => {
                    quality -= 0.3;
                    kinds
                        .entry(format!("{other:?}"))
                        .or_default()
                        .push(format!("{seed}.{k}({label})"));
                }
            }
        }
        if verbose {
            println!(
                "{seed} {} {:?} {:?}",
                m.plan.riders[0].label, m.ridden.run.outcome, s.jumps
            );
        }
    }
    println!(
        "{well} of {all} jumps went well: {:.1} %; {finished} of {lines} lines finished",
        100.0 * f64::from(well) / f64::from(all)
    );
    misses.sort_by(f64::total_cmp);
    let at = |q: usize| misses[(misses.len() - 1) * q / 100];
    let lost: f64 = misses
        .iter()
        .map(|m| (m.abs() - 0.15).max(0.0).min(0.5))
        .sum::<f64>()
        / f64::from(all);
    let q = quality / f64::from(all)
        + 0.3 * f64::from(finished) / f64::from(lines)
        + 0.3 * f64::from(all) / f64::from(lines * 2)
        - 0.2 * lost;
    let soak = tests::family::rollers::loss(sim::plan::Style::Absorbing, 6.5);
    let pump = tests::family::rollers::loss(sim::plan::Style::Pumping, 6.5);
    let held = tests::family::rollers::loss(sim::plan::Style::Passive, 6.5);
    println!("a roller costs {soak:.3} m absorbing, {pump:.3} m pumping, {held:.3} m passive");
    let q = q - 1.2 * soak;
    println!("quality {q:.4}");
    println!(
        "rear wheel against the ballistic aim, m: 5 % {:.2}, median {:.2}, 95 % {:.2}",
        at(5),
        at(50),
        at(95)
    );
    for (k, v) in kinds {
        println!(
            "{:4} {k}: {}",
            v.len(),
            v.iter().take(12).cloned().collect::<Vec<_>>().join(" ")
        );
    }
}

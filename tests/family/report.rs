//! Prints how the family goes: `family [FROM] [TO] [tuning|judging]`.

use sim::plan::Style;
use tests::family::{Estimate, rollers, tally};

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let number = |i: usize, or: u64| args.get(i).and_then(|a| a.parse().ok()).unwrap_or(or);
    let odd = u64::from(args.get(2).is_some_and(|a| a == "judging"));
    let seeds = (number(0, 0)..number(1, 600)).filter(|s| s % 2 == odd);
    print!("{}", tally(seeds, Estimate::MassCentre(0.0)));
    for style in [Style::Passive, Style::Absorbing, Style::Pumping] {
        println!(
            "a roller costs {:.3} m of head, {style:?}",
            rollers::loss(style, 6.5)
        );
    }
}

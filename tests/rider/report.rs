//! Prints how the rider does on the seeds for tuning in a range: `rider FROM TO [table ...]`. Or the
//! plan of one line, to be looked at: `rider plan SEED [rollers|family] [STYLE] [SKILL]`.

use sim::plan::Style;
use std::cell::OnceCell;
use std::time::Instant;
use tests::rider::draw::Drawn;
use tests::rider::place::{How, Member};
use tests::rider::{calm, cleared, flight, landing, order, seeds, tall, track};

/// The plan of a line as the tables have it, its gaps placed by the estimate.
fn show(args: &[String]) -> Option<()> {
    let seed = args.get(1)?.parse().ok()?;
    let family = args.get(2).is_some_and(|a| a == "family");
    let drawn = if family {
        Drawn::family(seed)
    } else {
        Drawn::rollers(seed)
    };
    let style = match args.get(3).map(String::as_str) {
        Some("passive") => Style::Passive,
        Some("pumping") => Style::Pumping,
        Some(_) => Style::Absorbing,
        None => drawn.style,
    };
    let skill = args
        .get(4)
        .and_then(|a| a.parse().ok())
        .unwrap_or(drawn.skill);
    let member = Member::new(seed, drawn.ridden_by(drawn.who, style, skill), How::Anyway);
    println!("{}", serde_json::to_string_pretty(&member.plan).ok()?);
    Some(())
}

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    if args.first().is_some_and(|a| a == "plan") {
        show(&args).expect("a seed, a kind of line, a style and a skill");
        return;
    }
    let number = |i: usize, or: u64| args.get(i).and_then(|a| a.parse().ok()).unwrap_or(or);
    let seeds = seeds::tuning(number(0, 0), number(1, 150));
    let wanted = |name: &str| args.len() < 3 || args[2..].iter().any(|a| a == name);
    println!("{} seeds\n", seeds.len());
    // Placed by riding, which takes longest, and only where it is asked for.
    let family = OnceCell::new();
    let family = || -> &[Member] { family.get_or_init(|| cleared::family(&seeds)) };
    let timed = |name: &str, table: &dyn Fn() -> tests::rider::figures::Table| {
        if wanted(name) {
            let begun = Instant::now();
            print!("{}", table());
            println!("  {name} took {:.1} s\n", begun.elapsed().as_secs_f64());
        }
    };
    timed("calm", &|| calm::table(&seeds));
    timed("order", &|| order::table(&seeds));
    timed("track", &track::table);
    timed("cleared", &|| cleared::table(&seeds, family()));
    timed("flight", &|| flight::table(family()));
    timed("landing", &|| {
        landing::table(family(), &landing::pumpers(&seeds))
    });
    timed("tall", &tall::table);
}

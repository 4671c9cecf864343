//! Prints the plan of one member of the family: `dump SEED`.

fn main() {
    let seed = std::env::args()
        .nth(1)
        .and_then(|a| a.parse().ok())
        .unwrap_or(0);
    let member = tests::family::member(seed, tests::family::Estimate::MassCentre(0.0));
    println!(
        "{}",
        serde_json::to_string(&member.plan).expect("a plan is plain data")
    );
}

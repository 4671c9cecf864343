//! What the table says is what the simulator says without a browser.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Screen, cargo};
use serde_json::Value;
use sim::error::Quantity;
use sim::units::{System, format};

/// Speed at each lip of the demonstration's first rider, by the example program, m/s.
fn from_example() -> Result<Vec<Option<f64>>> {
    let arguments = [
        "run",
        "--release",
        "--quiet",
        "-p",
        "sim",
        "--example",
        "ride",
        "--",
        "sim/plans/orchard.json",
    ];
    let output = cargo().args(arguments).output()?;
    ensure!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let run: Value = serde_json::from_slice(&output.stdout)?;
    let lips = run["lips"]
        .as_array()
        .context("the example names no lips")?
        .len();
    ensure!(
        lips >= 3,
        "the demonstration has {lips} lips; at least three are needed"
    );
    let events = run["events"]
        .as_array()
        .context("the example names no events")?;
    let speed = |lip: usize| {
        let left = events
            .iter()
            .find(|e| e["kind"] == "lip_left" && e["lip"] == lip);
        left.and_then(|e| e["speed"].as_f64())
    };
    Ok((0..lips).map(speed).collect())
}

fn compare(ground: &Ground, system: System) -> Result<()> {
    let expected = from_example()?;
    ensure!(
        expected.iter().all(Option::is_some),
        "a lip of the demonstration is not left: {expected:?}"
    );
    let write = |speed: &f64| format(*speed, Quantity::Speed, system);
    let expected: Vec<_> = expected.iter().flatten().map(write).collect();
    let table = ground.visit(Screen::Phone, "", async |page| {
        let name = serde_json::to_string(&system)?;
        page.click(&format!("#units label:has([value={name}])"))
            .await?;
        page.texts("#lips tbody [data-what=speed]").await
    })?;
    println!("speeds at the lips: {table:?}");
    ensure!(
        table == expected,
        "the table says {table:?}, the example {expected:?}"
    );
    Ok(())
}

pub fn are_those_of_the_example(ground: &Ground) -> Result<()> {
    compare(ground, System::Metric)
}

pub fn are_the_same_in_feet(ground: &Ground) -> Result<()> {
    compare(ground, System::Feet)
}

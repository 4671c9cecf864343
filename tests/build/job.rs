//! The whole job: what is heaped, dug, hauled and bought is the same earth and the same wood on every sheet.

use sim::build::haul::Place;
use sim::build::job::{Job, job};
use sim::build::lip::Deck;
use sim::build::materials::{AtHand, Grade, Per, Price};
use sim::build::supplies::Supplies;
use sim::plan::{Feature, Line, Plan, Soil, demo};
use sim::profile::Profile;
use tests::checks::{Bound, Check};

const BALANCE: &str = "balance by hand";

const LINES: [(&str, &str); 3] = [
    ("orchard", include_str!("../../sim/plans/orchard.json")),
    (
        "three tables",
        include_str!("../../sim/plans/three_tables.json"),
    ),
    ("steps", include_str!("../../sim/plans/steps.json")),
];

/// A line with boxed landings, in clay, and half of what it wants to be had beside it.
fn built(text: &str) -> (Job, Supplies) {
    let mut plan = Plan::from_json(text).expect("a plan file");
    plan.yard.soil = Soil::Clay;
    if let Line::Features(features) = &mut plan.line {
        for feature in features {
            if let Feature::Jump(jump) = feature {
                jump.landing.boxed = true;
            }
        }
    }
    let profile = Profile::build(&plan).expect("it can be built");
    let place = Place {
        x: 10.0,
        y: -6.0,
        bank: 2.5,
        feature: None,
    };
    let supplies = Supplies {
        borrow: vec![place],
        ..Supplies::default()
    };
    (job(&plan, &profile, &supplies), supplies)
}

fn earth(name: &str, job: &Job) -> Vec<Check> {
    let row = |what: &str, values| {
        let why = "sums of a few dozen volumes";
        Check::new(
            format!("{name}: {what}"),
            BALANCE,
            "m³",
            values,
            Bound::Within(1e-9),
            why,
        )
    };
    let dirt = &job.dirt;
    let sum =
        |of: &dyn Fn(&sim::build::job::Moved) -> f64| dirt.features.iter().map(of).sum::<f64>();
    let hauled: f64 = dirt.ways.iter().map(|way| way.earth.bank).sum();
    let own: f64 = dirt
        .ways
        .iter()
        .filter(|way| way.from.feature.is_some())
        .map(|way| way.earth.bank)
        .sum();
    vec![
        row(
            "heaps of all features are what is heaped",
            [dirt.fill.packed, sum(&|m| m.heap.fill)],
        ),
        row(
            "hauled and missing is what is heaped",
            [dirt.fill.bank, hauled + dirt.missing.bank],
        ),
        row(
            "hauled from cuts and spare is what is dug",
            [dirt.cut.bank, own + dirt.spare.bank],
        ),
    ]
}

fn wood(name: &str, job: &Job, supplies: &Supplies) -> Vec<Check> {
    let [thick, wide] = supplies.frame;
    let ramp = job.ramp.iter().flat_map(|sheet| &sheet.pieces);
    let boxes = job.boxes.iter().flat_map(|sheet| &sheet.pieces);
    let framed = ramp
        .chain(boxes)
        .filter(|piece| piece.section == supplies.frame);
    let framed: f64 = framed
        .map(|piece| piece.length * f64::from(piece.count))
        .sum();
    let lips = job.lips.iter().flat_map(|sheet| &sheet.pieces);
    let lips = lips.filter(|piece| piece.section == supplies.frame);
    let lips: f64 = lips
        .map(|piece| piece.length * f64::from(piece.count))
        .sum();
    let of = |grade: Grade| {
        job.bill
            .lines
            .iter()
            .filter(move |line| line.grade == grade)
    };
    let line = of(Grade::Timber).find(|line| line.section == [thick, wide]);
    let sheets: usize = job
        .lips
        .iter()
        .map(|sheet| {
            let panels = sheet
                .lip_box
                .as_ref()
                .map_or(0, |b| b.panels.layout.sheets.len());
            panels
                + match &sheet.deck {
                    Deck::Skin(skin) => skin.layout.sheets.len(),
                    Deck::Boards(_) => 0,
                }
        })
        .sum();
    let bought: u32 = of(Grade::Sheet).map(|line| line.pieces).sum();
    let why = "sums of lengths";
    vec![
        Check::new(
            format!("{name}: timber of the frame"),
            BALANCE,
            "m",
            [framed + lips, line.map_or(0.0, |l| l.length)],
            Bound::Within(1e-9),
            why,
        ),
        Check::new(
            format!("{name}: sheets of plywood"),
            BALANCE,
            "",
            [sheets as f64, f64::from(bought)],
            Bound::Within(0.0),
            "a count",
        ),
    ]
}

/// A price, wood that lies around and earth that is bought come out of the bill as by hand.
fn money() -> Vec<Check> {
    let plan = demo();
    let profile = Profile::build(&plan).expect("it can be built");
    let mut supplies = Supplies::default();
    let bare = job(&plan, &profile, &supplies);
    let find = |job: &Job| {
        job.bill
            .lines
            .iter()
            .find(|l| l.section == supplies.frame)
            .cloned()
            .expect("there is a frame")
    };
    let before = find(&bare);
    let price = Price {
        grade: Grade::Timber,
        section: Some(before.section),
        per: Per::Metre,
        price: 2.5,
    };
    let lying = AtHand {
        grade: Grade::Timber,
        section: before.section,
        length: 10.0,
    };
    let mut paid = supplies.clone();
    paid.buying.prices.push(price);
    paid.buying.at_hand.push(lying);
    paid.buying.earth_price = Some(30.0);
    let after = job(&plan, &profile, &paid);
    let line = find(&after);
    // A share of what is bought is lost, of what lies around the same share.
    let by_hand = 2.5 * (before.length / 0.9 - 10.0);
    let loose = after.dirt.missing.loose / 0.95;
    supplies.buying.earth_price = None;
    vec![
        Check::new(
            "frame, ten metres lie around, at 2.5 a metre",
            BALANCE,
            "",
            [by_hand, line.cost.unwrap_or(0.0)],
            Bound::Share(1e-9),
            "one product",
        ),
        Check::new(
            "earth that is missing, at 30 a cubic metre",
            BALANCE,
            "",
            [30.0 * loose, after.bill.earth_cost.unwrap_or(0.0)],
            Bound::Share(1e-9),
            "one product",
        ),
    ]
}

pub fn checks() -> Vec<Check> {
    let mut rows = Vec::new();
    for (name, text) in LINES {
        let (job, supplies) = built(text);
        rows.extend(earth(name, &job));
        rows.extend(wood(name, &job, &supplies));
    }
    rows.extend(money());
    rows
}

//! The sheet of a lip against exact circle geometry and published tables.

use sim::build::lip::{Grain, LipSheet, Place, Stock, least_radius, lips};
use sim::plan::{Feature, LeadIn, Lie, Line, Lip, Plan};
use sim::profile::Profile;
use tests::checks::{Bound::Within, Check};
use tests::lines;

const CIRCLE: &str = "circle tangent to the ground line, cut by halving (own computation)";
const CHORD: &str = "angle arccos(1 − h/R), run √(2Rh − h²), arc Rθ (any textbook of geometry)";
const TENTH: &str = "a tenth of a millimetre, as asked of a template";

/// A lip on ground of a grade.
#[derive(Clone, Copy)]
struct Case {
    grade: f64,
    height: f64,
    radius: f64,
    /// Angle, degrees, and length of a dirt lead-in, m.
    lead: Option<(f64, f64)>,
    end: f64,
}

fn plain(height: f64, radius: f64) -> Case {
    Case {
        grade: 0.0,
        height,
        radius,
        lead: None,
        end: 0.0,
    }
}

/// A line with one lip, changed.
pub fn line(grade: f64, change: impl FnOnce(&mut Lip)) -> Plan {
    let mut plan = lines::lip(1.5, 0.6, 2.5).plan;
    plan.yard.lie = Lie::Grade(grade);
    plan.yard.length = 300.0;
    let Line::Features(features) = &mut plan.line else {
        panic!("it has features")
    };
    let jump = features.iter_mut().find_map(|f| match f {
        Feature::Jump(jump) => Some(jump),
        _ => None,
    });
    change(&mut jump.expect("a jump").lip);
    plan
}

/// The sheet of a line's only lip.
pub fn sheet(plan: &Plan, stock: &Stock) -> LipSheet {
    let profile = Profile::build(plan).expect("a sound line");
    let mut all = lips(plan, &profile, stock);
    assert_eq!(all.len(), 1);
    all.remove(0)
}

impl Case {
    fn sheet(&self) -> LipSheet {
        let plan = line(self.grade, |lip| {
            lip.height = self.height;
            lip.radius = self.radius;
            lip.straight_end = (self.end > 0.0).then_some(self.end);
            lip.lead_in = self
                .lead
                .map(|(angle_deg, length)| LeadIn { angle_deg, length });
        });
        sheet(&plan, &Stock::default())
    }

    fn name(&self) -> String {
        let Self {
            grade,
            height,
            radius,
            end,
            ..
        } = self;
        let lead = self
            .lead
            .map_or(String::new(), |(a, l)| format!(", lead {a}° {l} m"));
        format!("h {height} R {radius} m, grade {grade}{lead}, end {end} m")
    }

    /// Where the wooden arc begins, and where it would end for some turn, in the ground's own frame.
    fn arc(&self, turn: f64) -> [(f64, f64); 2] {
        let (r, (lead, long)) = (self.radius, self.lead.unwrap_or((0.0, 0.0)));
        let lead = lead.to_radians();
        let from = (
            r * lead.sin() + long * lead.cos(),
            r - r * lead.cos() + long * lead.sin(),
        );
        let to = (
            from.0 + r * (turn.sin() - lead.sin()),
            from.1 + r * (lead.cos() - turn.cos()),
        );
        [from, to]
    }

    fn edge(&self, turn: f64) -> (f64, f64) {
        let (x, z) = self.arc(turn)[1];
        (x + self.end * turn.cos(), z + self.end * turn.sin())
    }

    /// The turn at which the edge is as high, plumb over the ground, as asked.
    fn turn(&self) -> f64 {
        let slope = self.grade.atan();
        let (mut low, mut high) = (0.0, 80_f64.to_radians());
        for _ in 0..100 {
            let turn = 0.5 * (low + high);
            // Plumb over the ground line: the rise square to it over the cosine of its slope.
            if self.edge(turn).1 / slope.cos() < self.height {
                low = turn;
            } else {
                high = turn;
            }
        }
        low
    }

    fn checks(&self) -> Vec<Check> {
        let sheet = self.sheet();
        let t = &sheet.template;
        let (turn, slope) = (self.turn(), self.grade.atan());
        let [from, to] = self.arc(turn);
        let edge = self.edge(turn);
        let lead = self.lead.map_or(0.0, |l| l.0.to_radians());
        let r = self.radius;
        let centre = (from.0 - r * lead.sin(), from.1 + r * lead.cos());
        let string = t
            .stretches
            .iter()
            .rev()
            .find_map(|s| s.string.map(|g| (g, s)));
        let (string, arc) = string.expect("an arc");
        let row = |what: &str, expected, got| {
            let what = format!("{what}: {}", self.name());
            Check::new(what, CIRCLE, "m", [expected, got], Within(1e-4), TENTH)
        };
        // Tilted into level and plumb, from the foot.
        let level = |(x, z): (f64, f64)| x * slope.cos() - z * slope.sin();
        let plumb = |(x, z): (f64, f64)| x * slope.sin() + z * slope.cos();
        let mut rows = vec![
            row("string", r, string.radius),
            row("centre along", centre.0, string.centre.along),
            row("centre square", centre.1, string.centre.rise),
            row("centre level", level(centre), string.centre.level),
            row("centre plumb", plumb(centre), string.centre.plumb),
            row(
                "centre from edge",
                centre.0 - edge.0,
                string.centre_from_edge.along,
            ),
            row("run", level(edge), t.run),
            row(
                "edge over ground",
                self.height,
                plumb(edge) - level(edge) * self.grade,
            ),
            row("arc", r * (turn - lead), arc.length),
            row("wood", r * (turn - lead) + self.end, t.wood),
            row("wood from", from.0, t.takeover.at.along),
            row("worst rise at a station", 0.0, self.worst(t, centre, turn)),
            row(
                "worst height of a panel",
                0.0,
                self.worst_panel(&sheet, centre),
            ),
        ];
        rows.extend(t.straight_from.map(|p| row("straight from", to.0, p.along)));
        rows.push(Check::new(
            format!("exit: {}", self.name()),
            CIRCLE,
            "°",
            [(turn + slope).to_degrees(), t.exit.to_degrees()],
            Within(1e-6),
            "halved to the last bit",
        ));
        rows
    }

    fn rise(&self, along: f64, centre: (f64, f64), turn: f64) -> f64 {
        let (x, z) = self.arc(turn)[1];
        if along > x {
            return z + (along - x) * turn.tan();
        }
        let d = along - centre.0;
        centre.1 - (self.radius * self.radius - d * d).sqrt()
    }

    fn worst(&self, t: &sim::build::lip::Template, centre: (f64, f64), turn: f64) -> f64 {
        let off = |p: Place| (p.rise - self.rise(p.along, centre, turn)).abs();
        t.stations.iter().map(|s| off(s.at)).fold(0.0, f64::max)
    }

    /// On the arc the panel's top is a circle about the same centre, larger by the deck.
    fn worst_panel(&self, sheet: &LipSheet, centre: (f64, f64)) -> f64 {
        let deck = sheet.deck.thickness(&Stock::default());
        let r = self.radius + deck;
        let ends = self.arc(self.turn())[1].0;
        let t = &sheet.template;
        let on = t
            .stations
            .iter()
            .filter(|s| s.panel > 0.0 && s.at.along < ends);
        let off = on.map(|s| {
            let d = s.at.along - centre.0;
            (s.panel - (centre.1 - (r * r - d * d).sqrt())).abs()
        });
        off.fold(0.0, f64::max)
    }
}

/// The lip's figures as textbooks give them, lengths in some unit of so many metres.
fn textbook(height: f64, radius: f64, unit: f64, expected: [f64; 3]) -> Vec<Check> {
    let case = plain(height * unit, radius * unit);
    let t = case.sheet().template;
    let got = [t.exit.to_degrees(), t.run / unit, t.arc / unit];
    let names = ["angle", "run", "arc"];
    let row = |i: usize| {
        let what = format!("{}, h {height} R {radius} units of {unit} m", names[i]);
        Check::new(
            what,
            CHORD,
            "",
            [expected[i], got[i]],
            Within(1e-5),
            "digits given",
        )
    };
    (0..3).map(row).collect()
}

/// Templates against exact circle geometry.
pub fn templates() -> Vec<Check> {
    let mut rows = textbook(1.2, 2.4, 1.0, [60.0, 2.078461, 2.513274]);
    rows.extend(textbook(0.9, 2.4, 1.0, [51.31781, 1.873499, 2.149596]));
    rows.extend(textbook(4.0, 7.5, 0.3048, [62.18186, 6.63325, 8.13959]));
    let slope = |grade| Case {
        grade,
        ..plain(0.6, 2.5)
    };
    let lead = |grade, end| Case {
        lead: Some((10.0, 0.4)),
        end,
        ..Case {
            grade,
            ..plain(0.9, 2.2)
        }
    };
    let end = Case {
        end: 0.3,
        ..plain(0.7, 2.0)
    };
    let cases = [
        plain(0.45, 2.5),
        slope(-0.2),
        slope(0.15),
        lead(0.0, 0.0),
        lead(-0.08, 0.2),
        end,
    ];
    rows.extend(cases.iter().flat_map(Case::checks));
    rows
}

/// Plywood's least radii, m, as the association's European page has them in mm.
fn bending() -> Vec<Check> {
    let across = [0.610, 0.610, 0.915, 1.828, 2.438, 3.658];
    let along = [1.524, 1.828, 2.438, 3.658, 4.877, 6.096];
    let thick = [0.0064, 0.0079, 0.0095, 0.0127, 0.0159, 0.0191];
    let row = |(i, grain, expected): (usize, Grain, f64)| {
        let got = least_radius(thick[i], grain).unwrap_or(f64::NAN);
        Check::new(
            format!("least radius of {:.1} mm, {grain:?}", thick[i] * 1e3),
            "APA, minimum bending radii for Plyform, metric column",
            "m",
            [expected, got],
            Within(1e-3),
            "millimetres rounded from feet",
        )
    };
    let across = across
        .iter()
        .enumerate()
        .map(|(i, r)| (i, Grain::Across, *r));
    let along = along.iter().enumerate().map(|(i, r)| (i, Grain::Along, *r));
    across.chain(along).map(row).collect()
}

/// A team's share, as a training course reckons it for people who lift 50 kg each.
fn team() -> Vec<Check> {
    let stock = Stock {
        lifters: [50.0, 50.0],
        ..Stock::default()
    };
    let weight = sheet(&line(0.0, |_| {}), &stock).weight;
    let row = |people: &str, expected, got| {
        Check::new(
            format!("what {people} lift who lift 50 kg each"),
            "HSE L23, team handling, as worked by a training course: 66 kg and 75 kg",
            "kg",
            [expected, got],
            Within(1.0),
            "whole kilograms, cut off",
        )
    };
    vec![
        row("two", 66.0, weight.two),
        row("three", 75.0, weight.three),
    ]
}

/// Tables of stock.
pub fn stock() -> Vec<Check> {
    let mut rows = bending();
    rows.extend(team());
    rows
}

//! Lines and riders drawn from seeds. Nothing of a draw hangs on any ride.

use super::riders;
use fastrand::Rng;
use sim::plan::{
    Feature, Flat, Jump, Landing, Line, Lip, Mount, Plan, Roller, RunOut, StartRamp, Style,
    Surface, USUAL_WIDTH, Weather, Yard,
};

/// Radius over which every knuckle is rounded, m.
const KNUCKLE: f64 = 0.3;

/// Most of a landing's height that its two arcs may take: the rest is slope.
const ARCS: f64 = 0.35;

/// Tightest hollow that anybody digs under a landing, m.
const TIGHTEST: f64 = 1.8;

/// Least way from the knuckle to the end of the slope, m, where the landing is high enough for it: half a metre, the
/// longest bike and a hand's breadth, or the front wheel comes down in the hollow; and the flattest slope that it is
/// laid back to for that, degrees.
const SLOPE: f64 = 1.8;
const FLATTEST: f64 = 14.0;

/// Least height of a landing, m.
const LEAST_LANDING: f64 = 0.45;

/// How a jump is built.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// An open gap, the landing about as high as the lip.
    Gap,
    /// The same with a deck.
    Deck,
    /// The landing is higher than the lip, and may end on a raised bed.
    StepUp,
    /// The landing is lower than the lip.
    StepDown,
    /// No gap at all. Its height is what is fitted to the speed.
    Spine,
}

/// A jump that was drawn; its gap, or a spine's height, is still to be fitted to the speed.
#[derive(Clone, Debug)]
pub struct DrawnJump {
    /// What it is.
    pub kind: Kind,
    /// The jump; a gap of 0.
    pub jump: Jump,
    /// A spine's angle at the edge, rad.
    pub exit: f64,
    /// Where the rear wheel is meant to come down past the knuckle, m.
    pub aim: f64,
    /// Flat behind it, m.
    pub behind: f64,
}

impl DrawnJump {
    /// The jump with what is fitted: the gap, or a spine's height.
    pub fn with(&self, fitted: f64) -> Jump {
        let mut jump = self.jump.clone();
        if self.kind != Kind::Spine {
            jump.gap = fitted;
            return jump;
        }
        jump.lip.height = fitted;
        jump.lip.radius = fitted / (1.0 - self.exit.cos());
        jump.landing.height = fitted;
        fit_arcs(&mut jump.landing);
        jump
    }

    /// What may be fitted, m: least and most.
    pub fn range(&self) -> [f64; 2] {
        match self.kind {
            Kind::Spine => [0.35, 1.5],
            _ => [0.3, 9.0],
        }
    }
}

/// A line, and who rides it.
#[derive(Clone, Debug)]
pub struct Drawn {
    /// Which of the four riders.
    pub who: usize,
    /// What the legs do.
    pub style: Style,
    /// How well.
    pub skill: f64,
    /// Fall of the yard, as a grade: negative downhill.
    pub grade: f64,
    /// What comes before the first jump.
    pub opening: Vec<Feature>,
    /// The jumps.
    pub jumps: Vec<DrawnJump>,
    /// One of the rollers, by place among the features; none where there is none.
    pub a_roller: Option<usize>,
}

impl Drawn {
    /// A line of the family: up to four rollers, jumps of every kind, riders who soak up or pump with
    /// skills of 0.3 to 1.
    pub fn family(seed: u64) -> Self {
        Self::draw(seed, 0x0CA2_217E, 0, true)
    }

    /// A line of one to four rollers before open gaps.
    pub fn rollers(seed: u64) -> Self {
        Self::draw(seed, 0x5EED_0F11, 1, false)
    }

    fn draw(seed: u64, salt: u64, least_rollers: usize, every_kind: bool) -> Self {
        let mut rng = Rng::with_seed(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ salt);
        let rng = &mut rng;
        let (who, pumps) = (rng.usize(0..4), rng.bool());
        let skill = pick(rng, 0.3, 1.0);
        let grade = -pick(rng, 0.0, 0.04);
        let rollers = rng.usize(least_rollers..=4);
        let opening = opening(rng, rollers);
        let a_roller = (rollers > 0).then(|| 2 + rng.usize(0..rollers));
        let count = 1 + rng.usize(0..3);
        let jumps = (0..count).map(|_| jump(rng, every_kind)).collect();
        Self {
            who,
            style: if pumps {
                Style::Pumping
            } else {
                Style::Absorbing
            },
            skill,
            grade,
            opening,
            jumps,
            a_roller,
        }
    }

    /// Who rides.
    pub fn mount(&self) -> Mount {
        riders::who(self.who, self.style, self.skill)
    }

    /// The same line with another rider on it.
    pub fn ridden_by(&self, who: usize, style: Style, skill: f64) -> Self {
        Self {
            who,
            style,
            skill,
            ..self.clone()
        }
    }

    /// The plan of some features on this line's yard, with its rider.
    pub fn plan(&self, mut features: Vec<Feature>) -> Plan {
        features.push(Feature::RunOut(RunOut {
            length: 10.0,
            surface: Surface::Packed,
        }));
        Plan {
            name: "Drawn".into(),
            yard: Yard::even(200.0, self.grade),
            line: Line::Features(features),
            riders: vec![self.mount()],
            weather: Weather::default(),
            initial_speed: None,
            seen: Vec::new(),
            seed: 0,
            width: USUAL_WIDTH,
        }
    }
}

/// A stretch of packed dirt.
pub fn flat(length: f64) -> Feature {
    Feature::Flat(Flat {
        length,
        surface: Surface::Packed,
    })
}

/// Rollers in a row, of packed dirt.
pub fn rollers(height: f64, length: f64, count: u32) -> Feature {
    Feature::Roller(Roller {
        height,
        length,
        count,
        surface: Surface::Packed,
        width: None,
    })
}

fn pick(rng: &mut Rng, low: f64, high: f64) -> f64 {
    low + rng.f64() * (high - low)
}

fn opening(rng: &mut Rng, count: usize) -> Vec<Feature> {
    let ramp = StartRamp {
        platform_height: pick(rng, 2.2, 3.6),
        angle_deg: pick(rng, 25.0, 40.0),
        bottom_radius: pick(rng, 2.5, 4.0),
        edge_radius: 0.8,
        push_off: pick(rng, 0.8, 1.6),
        surface: Surface::Wood,
        width: None,
    };
    let mut features = vec![Feature::StartRamp(ramp), flat(pick(rng, 1.0, 3.0))];
    for _ in 0..count {
        let length = pick(rng, 2.2, 4.2);
        features.push(rollers(length * pick(rng, 0.06, 0.13), length, 1));
    }
    features.push(flat(pick(rng, 1.5, 4.0)));
    features
}

fn jump(rng: &mut Rng, every_kind: bool) -> DrawnJump {
    let kinds = [
        Kind::Gap,
        Kind::Gap,
        Kind::Gap,
        Kind::Deck,
        Kind::Deck,
        Kind::StepUp,
        Kind::StepDown,
        Kind::Spine,
    ];
    let kind = kinds[rng.usize(0..if every_kind { kinds.len() } else { 3 })];
    let height = pick(rng, 0.35, 0.8);
    let lip = Lip {
        height,
        radius: pick(rng, 1.8, 4.0),
        lead_in: None,
        straight_end: (rng.u8(0..4) == 0).then(|| pick(rng, 0.15, 0.5)),
        surface: Surface::Wood,
        width: None,
    };
    let landing = match kind {
        Kind::Gap | Kind::Deck | Kind::Spine => height * pick(rng, 0.8, 1.25),
        Kind::StepUp => height + pick(rng, 0.1, 0.35),
        Kind::StepDown => height * pick(rng, 0.4, 0.7),
    };
    let landing = landing_of(rng, kind, landing.max(LEAST_LANDING));
    let mut drawn = DrawnJump {
        kind,
        jump: Jump {
            lip,
            gap: 0.0,
            decked: kind == Kind::Deck,
            landing,
        },
        exit: pick(rng, 42.0, 58.0).to_radians(),
        aim: pick(rng, 0.3, 0.8),
        behind: pick(rng, 2.0, 5.0),
    };
    if kind == Kind::Spine {
        drawn.jump.lip.straight_end = None;
        drawn.jump = drawn.with(height);
    }
    drawn
}

fn landing_of(rng: &mut Rng, kind: Kind, height: f64) -> Landing {
    let mut landing = Landing {
        height,
        angle_deg: pick(rng, 18.0, 35.0),
        knuckle_radius: KNUCKLE,
        bottom_radius: pick(rng, 2.5, 4.0),
        length: None,
        surface: Surface::Packed,
        boxed: false,
        width: None,
    };
    fit_arcs(&mut landing);
    let (share, raised) = (pick(rng, 0.6, 0.9), rng.bool());
    if kind == Kind::StepUp && raised {
        let angle = landing.angle_deg.to_radians();
        let arcs = (landing.knuckle_radius + landing.bottom_radius) * (1.0 - angle.cos());
        landing.length = Some(share * (height - arcs).max(0.0) / angle.sin());
    }
    landing
}

/// A low landing is laid back until its slope is long enough to land on, and its hollow is made no
/// wider than it has room for.
fn fit_arcs(landing: &mut Landing) {
    let (height, drawn) = (landing.height, landing.bottom_radius);
    let bottom = |angle: f64| drawn.min(ARCS * height / (1.0 - angle.cos()) - KNUCKLE);
    let slope = |angle: f64| {
        let arcs = (KNUCKLE + bottom(angle)) * (1.0 - angle.cos());
        KNUCKLE * angle.sin() + (height - arcs) / angle.tan()
    };
    let mut angle = landing.angle_deg;
    let short = |a: f64| bottom(a.to_radians()) < TIGHTEST || slope(a.to_radians()) < SLOPE;
    while angle > FLATTEST && short(angle) {
        angle -= 0.5;
    }
    landing.angle_deg = angle;
    landing.bottom_radius = bottom(angle.to_radians());
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_draw_can_be_built() {
        for seed in 0..400 {
            for drawn in [Drawn::family(seed), Drawn::rollers(seed)] {
                let mut features = drawn.opening.clone();
                for jump in &drawn.jumps {
                    let [least, most] = jump.range();
                    features.push(Feature::Jump(jump.with(0.5 * (least + most))));
                    features.push(flat(jump.behind));
                }
                assert_eq!(drawn.plan(features).validate(), [], "{seed}");
                if let Some(i) = drawn.a_roller {
                    assert!(matches!(drawn.opening[i], Feature::Roller(_)));
                }
            }
        }
    }

    #[test]
    fn every_kind_and_a_straight_end_is_drawn() {
        let jumps: Vec<_> = (0..200).flat_map(|s| Drawn::family(s).jumps).collect();
        for kind in [
            Kind::Gap,
            Kind::Deck,
            Kind::StepUp,
            Kind::StepDown,
            Kind::Spine,
        ] {
            assert!(
                jumps.iter().filter(|j| j.kind == kind).count() > 20,
                "{kind:?}"
            );
        }
        assert!(jumps.iter().any(|j| j.jump.lip.straight_end.is_some()));
        assert!(jumps.iter().any(|j| j.jump.landing.length.is_some()));
    }
}

//! Lines whose jumps are fitted to the rider's own speed: by the ballistic estimate, or by riding.

use super::draw::{Drawn, DrawnJump, Kind, flat};
use super::estimate::{Stance, Throw, fit};
use super::landed::{Landed, Left, Wrong};
use sim::plan::{Feature, Plan};
use sim::setup::{Ridden, ride_plan};

/// Where the rear wheel is to come down past the knuckle on lines placed by riding, m.
pub const PAST: f64 = 0.5;

/// How near to that it has to come, m.
const NEAR: f64 = 0.05;

/// Gap of the trial that tells how a lip is left, m.
const TRIAL: f64 = 3.0;

/// A gap for who is too slow for any, m.
const SHORT: f64 = 0.6;

/// Step of the search for what fits, m.
const STEP: f64 = 0.25;

/// A jump that stands on a line.
#[derive(Clone, Debug)]
pub struct Placed {
    /// Which of the jumps drawn.
    pub index: usize,
    /// What it is.
    pub kind: Kind,
    /// Where the rear wheel is meant to come down past the knuckle, m.
    pub aim: f64,
}

/// A line with its jumps fitted, and its ride.
pub struct Member {
    /// Its seed.
    pub seed: u64,
    /// What was drawn.
    pub drawn: Drawn,
    /// The jumps on it.
    pub placed: Vec<Placed>,
    /// Jumps that found no place, and why.
    pub left_out: Vec<(usize, String)>,
    /// The plan.
    pub plan: Plan,
    /// The ride over it.
    pub ridden: Ridden,
}

/// Rides a plan with its first rider.
///
/// # Panics
/// Where the plan cannot be ridden.
pub fn ride(plan: &Plan) -> Ridden {
    ride_plan(plan, 0).unwrap_or_else(|faults| panic!("{faults:?}"))
}

/// How jumps are fitted.
#[derive(Clone, Copy, Debug)]
pub enum How {
    /// By the estimate, this much too long, m: each jump for the aim drawn with it.
    Estimate(f64),
    /// By the estimate of who knows nothing of bikes, and throws a mere point from the edge.
    Point,
    /// By the estimate; where it finds no place, with a short gap all the same, which ends the line.
    Anyway,
    /// By riding, for [`PAST`].
    Riding,
}

impl Member {
    /// Fits the jumps of a line one after the other. One that finds no place is left out.
    pub fn new(seed: u64, drawn: Drawn, how: How) -> Self {
        let mut features = drawn.opening.clone();
        let (mut placed, mut left_out) = (Vec::new(), Vec::new());
        for (index, jump) in drawn.jumps.iter().enumerate() {
            let site = Site {
                drawn: &drawn,
                before: &features,
                lip: placed.len(),
                point: false,
            };
            let (aim, fitted) = match how {
                How::Estimate(longer) => (jump.aim, site.estimate(jump, jump.aim - longer)),
                How::Anyway => (jump.aim, site.estimate(jump, jump.aim)),
                How::Point => (
                    jump.aim,
                    Site {
                        point: true,
                        ..site
                    }
                    .estimate(jump, jump.aim),
                ),
                How::Riding => (PAST, site.search(jump)),
            };
            let last = fitted.is_err() && matches!(how, How::Anyway);
            let fitted = if last { Ok(jump.with(SHORT)) } else { fitted };
            match fitted {
                Ok(fitted) => {
                    features.push(Feature::Jump(fitted));
                    features.push(flat(jump.behind));
                    placed.push(Placed {
                        index,
                        kind: jump.kind,
                        aim,
                    });
                }
                Err(why) => left_out.push((index, why)),
            }
            if last {
                break;
            }
        }
        let plan = drawn.plan(features);
        let ridden = ride(&plan);
        Self {
            seed,
            drawn,
            placed,
            left_out,
            plan,
            ridden,
        }
    }

    /// How each of the jumps on the line went, in riding order.
    pub fn landed(&self) -> Vec<(&Placed, Landed)> {
        let one = |(i, placed)| (placed, Landed::over(&self.ridden, i));
        self.placed.iter().enumerate().map(one).collect()
    }

    /// The jump on the line that a lip belongs to.
    ///
    /// # Panics
    /// Where there is no such lip.
    pub fn jump(&self, lip: usize) -> &sim::plan::Jump {
        let sim::plan::Line::Features(features) = &self.plan.line else {
            panic!("a line that was drawn has features");
        };
        match &features[self.ridden.profile.lips[lip].feature] {
            Feature::Jump(jump) => jump,
            other => panic!("no jump: {other:?}"),
        }
    }
}

/// Where a jump is to stand.
#[derive(Clone, Copy)]
struct Site<'a> {
    drawn: &'a Drawn,
    before: &'a [Feature],
    lip: usize,
    /// Whether the estimate takes the bike for a point.
    point: bool,
}

/// One fit that was tried.
#[derive(Clone, Copy)]
struct Try {
    fitted: f64,
    landed: Landed,
}

impl Try {
    /// How far too far the rear wheel came down, m.
    fn off(&self) -> Option<f64> {
        Some(self.landed.past()? - PAST)
    }

    fn works(&self) -> bool {
        self.landed.crash.is_none() && self.off().is_some_and(|off| off.abs() <= NEAR)
    }
}

impl Site<'_> {
    fn ride(&self, jump: &DrawnJump, fitted: f64) -> Landed {
        let mut features = self.before.to_vec();
        features.push(Feature::Jump(jump.with(fitted)));
        features.push(flat(jump.behind));
        Landed::over(&ride(&self.drawn.plan(features)), self.lip)
    }

    fn stance(&self) -> Stance {
        if self.point {
            return Stance {
                stand: 0.0,
                half: 0.0,
            };
        }
        Stance::usual(&self.drawn.mount())
    }

    /// How a lip was left, as the estimate takes it.
    fn left(&self, left: Left) -> Left {
        let centre = if self.point { [0.0; 2] } else { left.centre };
        Left { centre, ..left }
    }

    /// The jump fitted by the estimate.
    fn estimate(&self, jump: &DrawnJump, past: f64) -> Result<sim::plan::Jump, String> {
        if jump.kind == Kind::Spine {
            let height = self.spine(jump, past)?;
            return Ok(jump.with(height));
        }
        let trial = self.ride(jump, TRIAL);
        let Some(off) = trial.off else {
            return Err(trial.wrong().map_or("no lip".into(), Wrong::words));
        };
        let mut fitted = jump.jump.clone();
        let gap = fit(
            &mut fitted,
            self.left(off.left),
            self.stance(),
            self.drawn.grade,
            past,
        );
        fitted.gap = gap.ok_or("too slow for any gap")?;
        Ok(fitted)
    }

    /// The height of a spine over which the estimate has no gap left: the higher, the slower.
    fn spine(&self, jump: &DrawnJump, past: f64) -> Result<f64, String> {
        let gap = |height: f64| {
            let left = self.left(self.ride(jump, height).off?.left);
            let jump = jump.with(height);
            let (stance, grade) = (self.stance(), self.drawn.grade);
            let throw = Throw {
                left,
                stance,
                grade,
                jump: &jump,
            };
            throw.gap(past).map(|(gap, _)| gap)
        };
        let [mut low, mut high] = jump.range();
        if gap(low).is_none_or(|gap| gap < 0.0) {
            return Err("too slow for a spine".into());
        }
        if gap(high).is_some_and(|gap| gap > 0.0) {
            return Err("too fast for a spine".into());
        }
        for _ in 0..7 {
            let mid = 0.5 * (low + high);
            if gap(mid).is_some_and(|gap| gap > 0.0) {
                low = mid;
            } else {
                high = mid;
            }
        }
        Ok(low)
    }

    /// The jump fitted by riding: from the estimate by a few steps of the secant kind, else by trying
    /// all there is and halving between two that have it between them.
    fn search(&self, drawn: &DrawnJump) -> Result<sim::plan::Jump, String> {
        let guess = self.estimate(drawn, PAST);
        // A landing that the estimate laid back stays so.
        let mut jump = drawn.clone();
        if let (Ok(guess), true) = (&guess, drawn.kind != Kind::Spine) {
            jump.jump.landing.angle_deg = guess.landing.angle_deg;
        }
        let start = guess.as_ref().map(|g| self.fitted(drawn.kind, g)).ok();
        let mut tried = Vec::new();
        let found = start
            .and_then(|start| self.steps(&jump, start, &mut tried))
            .or_else(|| self.scan(&jump, &mut tried));
        match found {
            Some(fitted) => Ok(jump.with(fitted)),
            None => Err(reason(&tried)),
        }
    }

    fn fitted(&self, kind: Kind, jump: &sim::plan::Jump) -> f64 {
        match kind {
            Kind::Spine => jump.lip.height,
            _ => jump.gap,
        }
    }

    fn try_out(&self, jump: &DrawnJump, fitted: f64, tried: &mut Vec<Try>) -> Try {
        let landed = self.ride(jump, fitted);
        tried.push(Try { fitted, landed });
        Try { fitted, landed }
    }

    fn steps(&self, jump: &DrawnJump, start: f64, tried: &mut Vec<Try>) -> Option<f64> {
        let [least, most] = jump.range();
        let mut at = start;
        for _ in 0..4 {
            let done = self.try_out(jump, at, tried);
            if done.works() {
                return Some(at);
            }
            // A longer gap brings the knuckle nearer by as much; a higher spine by about as much too.
            at = (at + done.off()?).clamp(least, most);
        }
        None
    }

    fn scan(&self, jump: &DrawnJump, tried: &mut Vec<Try>) -> Option<f64> {
        let [least, most] = jump.range();
        let mut last: Option<Try> = None;
        let count = ((most - least) / STEP).ceil() as usize;
        let mut beyond = 0;
        for i in 0..=count {
            let at = least + i as f64 * STEP;
            let now = self.try_out(jump, at.min(most), tried);
            if now.works() {
                return Some(now.fitted);
            }
            // Who does not come to the lip does not come to a longer gap's either.
            if now.landed.off.is_none() && jump.kind != Kind::Spine {
                return None;
            }
            if let Some(before) = last
                && let Some(found) = self.halve(jump, before, now, tried)
            {
                return Some(found);
            }
            // Once so short, nobody flies farther over a longer gap.
            beyond += usize::from(now.off().is_none_or(|off| off < -2.0));
            if beyond > 4 {
                break;
            }
            last = Some(now);
        }
        None
    }

    /// Between two tries, one too far and one too short.
    fn halve(&self, jump: &DrawnJump, a: Try, b: Try, tried: &mut Vec<Try>) -> Option<f64> {
        let (mut long, mut short) = (a, b);
        if long.off()? < 0.0 || short.off()? > 0.0 {
            return None;
        }
        for _ in 0..6 {
            let mid = self.try_out(jump, 0.5 * (long.fitted + short.fitted), tried);
            if mid.works() {
                return Some(mid.fitted);
            }
            if mid.off()? > 0.0 {
                long = mid;
            } else {
                short = mid;
            }
        }
        None
    }
}

/// Why nothing that was tried worked: what became of the try that came nearest.
fn reason(tried: &[Try]) -> String {
    let near = |t: &Try| t.off().map_or(f64::INFINITY, f64::abs);
    let best = tried.iter().min_by(|a, b| near(a).total_cmp(&near(b)));
    let Some(best) = best else {
        return "nothing to try".into();
    };
    let wrong = best.landed.crash.map(Wrong::words);
    match (wrong, best.off()) {
        (Some(wrong), Some(off)) if off.abs() <= 2.0 * NEAR => wrong,
        (Some(wrong), None) => wrong,
        (_, Some(off)) if off > 0.0 => "comes down too far at any fit".into(),
        (_, Some(_)) => "comes down too short at any fit".into(),
        (None, None) => "no flight".into(),
    }
}

//! The body's angle about the bike's middle over the ground ahead, as near to balance as may be.

use super::super::band::{Band, MOST};
use super::super::habits;
use super::super::sight::{Row, STEP};
use super::{Task, Times, around};
use crate::body::Mount;
use crate::constants::GRAVITY;
use crate::num;

/// The angle with its rates, at the knots.
#[derive(Clone)]
pub struct Swing {
    pub angle: [f64; MOST],
    pub rate: [f64; MOST],
    pub acc: [f64; MOST],
}

impl Swing {
    /// Upright.
    pub fn none() -> Self {
        Self {
            angle: [0.0; MOST],
            rate: [0.0; MOST],
            acc: [0.0; MOST],
        }
    }

    /// From how it is and moves, as near to balance as may be with the body at heights `z`, and
    /// `task.back` behind the middle as the front wheel passes the edge.
    pub fn solve(
        &mut self,
        m: &Mount,
        rows: &[Row],
        (times, z): (&Times, &[f64; MOST]),
        origin: f64,
        task: &Task,
    ) {
        let n = rows.len();
        let reach = m.reach_usual;
        // ν² a body weight of load.
        let one = m.rider_mass * GRAVITY / (m.reduced_mass() * reach);
        let [angle, rate, acc] = task.swing;
        let first = [0.0, STEP].map(|step| {
            let t = (origin + step - task.body.x) * times.dt[0] / STEP;
            angle + (rate + 0.5 * acc * t) * t
        });
        let mut band = Band::new(n);
        for (i, row) in rows.iter().enumerate() {
            if i > 0 && i + 1 < n {
                let w = times.second(i);
                let a = around(&w, z, i);
                let [low, high] = habits::BALANCED;
                let nu2 = one * num::clamp(1.0 + a / GRAVITY, low, high);
                let w = w.map(|w| -w / nu2);
                band.three(i, [w[0], 1.0 + w[1], w[2]], 1.0, row.bike);
            }
            let held = launched(row, task);
            if held > 0.0 {
                band.one(i, habits::IN_PLACE * held, row.bike + task.back / reach);
            }
            if i + 1 == n {
                band.one(i, 1.0, row.bike);
            }
        }
        band.solve(first, &mut self.angle);
        self.derive(n, times);
    }

    /// The plan at a share of the way from one to another, at the first `n` knots.
    pub fn between(&mut self, from: &Self, to: &Self, share: f64, n: usize) {
        let mix = |v: &mut [f64; MOST], a: &[f64; MOST], b: &[f64; MOST]| {
            for i in 0..n {
                v[i] = a[i] + share * (b[i] - a[i]);
            }
        };
        mix(&mut self.angle, &from.angle, &to.angle);
        mix(&mut self.rate, &from.rate, &to.rate);
        mix(&mut self.acc, &from.acc, &to.acc);
    }

    fn derive(&mut self, n: usize, times: &Times) {
        for i in 1..n - 1 {
            self.acc[i] = around(&times.second(i), &self.angle, i);
            let turned = self.angle[i + 1] - self.angle[i - 1];
            self.rate[i] = turned / (times.dt[i - 1] + times.dt[i]);
        }
        self.acc[0] = self.acc[1];
        self.acc[n - 1] = 0.0;
        self.rate[0] = (self.angle[1] - self.angle[0]) / times.dt[0];
        self.rate[n - 1] = self.rate[n - 2];
    }
}

/// How much the front wheel is over the edge at a row, 0 to 1.
fn launched(row: &Row, task: &Task) -> f64 {
    num::smooth((row.middle.x - task.lip[1]) / STEP + 1.0)
}

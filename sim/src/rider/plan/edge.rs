//! How the edge of the next lip is come to, and the body's place for it.

use super::super::habits;
use super::super::launch::{Off, Rehearsal};
use super::super::secants::crossing;
use super::super::sight::{Row, STEP, Sight};
use super::swing::Swing;
use super::{Plan, Task, around};
use crate::body::Mount;
use crate::constants::GRAVITY;
use crate::num;
use glam::DVec2;

/// The plan as the front wheel passes the edge, but for the body's angle.
pub(super) struct Edge {
    /// Between this row and the next, at a share of the step.
    row: usize,
    share: f64,
    reach: f64,
    pitch: f64,
    push: f64,
    speed: f64,
}

impl Edge {
    /// With the body at an angle and its rate there.
    fn off(&self, [swing, swing_rate]: [f64; 2]) -> Off {
        Off {
            reach: self.reach,
            back: self.reach * num::sin(swing - self.pitch),
            push: self.push,
            speed: self.speed,
            swing_rate,
        }
    }

    /// The angle and its rate as planned.
    fn swing(&self, swing: &Swing) -> [f64; 2] {
        let (i, f) = (self.row, self.share);
        [&swing.angle, &swing.rate].map(|v| v[i] + f * (v[i + 1] - v[i]))
    }
}

impl Plan {
    /// The plan as the front wheel passes the edge; none where that is not within sight, or too near to be
    /// planned for.
    fn edge(&self, m: &Mount, rows: &[Row], task: &Task) -> Option<Edge> {
        let x = task.lip[1];
        let i = rows.iter().position(|r| r.middle.x > x)?;
        if i < 3 || i + 2 >= rows.len() {
            return None;
        }
        let j = i - 1;
        let f = (x - rows[j].middle.x) / (rows[i].middle.x - rows[j].middle.x);
        let mix = |a: f64, b: f64| a + f * (b - a);
        let middle = rows[j].middle + (rows[i].middle - rows[j].middle) * f;
        let body = DVec2::new(
            self.origin + (j as f64 + f) * STEP,
            mix(self.z[j], self.z[i]),
        );
        let share = m.rider_mass / m.mass();
        let velocity = |k: usize| {
            let body = DVec2::new(2.0 * STEP, self.z[k + 1] - self.z[k - 1]);
            let bike = rows[k + 1].middle - rows[k - 1].middle;
            (body * share + bike * (1.0 - share)) / (self.times.dt[k - 1] + self.times.dt[k])
        };
        Some(Edge {
            row: j,
            share: f,
            reach: num::length(body - middle),
            pitch: mix(rows[j].bike, rows[i].bike),
            push: num::min(self.push_to_edge(rows, task), habits::most_launch(m))
                * m.rider_mass
                * GRAVITY,
            speed: num::length(velocity(j) * (1.0 - f) + velocity(i) * f),
        })
    }

    /// Mean load of the legs between the front wheel's passing of the edge and the rear wheel's, in body
    /// weights, along the lip's normal.
    fn push_to_edge(&self, rows: &[Row], task: &Task) -> f64 {
        let [_, from, to] = task.lip;
        let (mut sum, mut way) = (0.0, 0.0);
        for i in 1..rows.len() - 1 {
            let low = num::max(0.5 * (rows[i - 1].middle.x + rows[i].middle.x), from);
            let high = num::min(0.5 * (rows[i].middle.x + rows[i + 1].middle.x), to);
            if high > low {
                let a = around(&self.times.second(i), &self.z, i);
                sum += (1.0 + a / GRAVITY) * (high - low);
                way += high - low;
            }
        }
        let sec = (1.0 + task.exit * task.exit).sqrt();
        num::max(sec * sum / num::max(way, STEP), 0.0)
    }

    /// Finds the place over the bike that leaves the turning which the flight needs, where the edge is
    /// within sight, and how it all moves there then.
    pub(super) fn seek(
        &mut self,
        m: &Mount,
        (sight, lip): (&Sight, usize),
        rows: &[Row],
        task: &mut Task,
    ) -> Option<Off> {
        let edge = self.edge(m, rows, task)?;
        let rehearsal = Rehearsal::new(m, sight, lip, &edge.off(edge.swing(&self.swing)));
        // The plan of the angle is linear in the place: two of them tell all.
        let places = rehearsal.places();
        let [near, far] = places.map(|back| {
            task.back = back;
            let mut swing = self.swing.clone();
            swing.solve(m, rows, (&self.times, &self.z), self.origin, task);
            swing
        });
        let ends = [edge.swing(&near), edge.swing(&far)];
        let at = |share: f64| [0, 1].map(|k| ends[0][k] + share * (ends[1][k] - ends[0][k]));
        let share = least(|share| rehearsal.over(&edge.off(at(share))) + habits::RESERVE);
        task.back = places[0] + share * (places[1] - places[0]);
        self.swing.between(&near, &far, share, rows.len());
        Some(edge.off(at(share)))
    }
}

/// The share, 0 to 1, at which what grows with it passes nought; the nearer end where it does not.
fn least(over: impl Fn(f64) -> f64) -> f64 {
    let ends = [over(0.0), over(1.0)];
    if ends[0] >= 0.0 {
        0.0
    } else if ends[1] <= 0.0 {
        1.0
    } else {
        crossing(ends, habits::REHEARSALS, over)
    }
}

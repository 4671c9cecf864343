//! From metres to pixels: one strip that follows the rider, or the whole line folded into rows.
//!
//! A long section is wider than any sheet. On paper it is cut into rows that are read like lines
//! of text, and so it is here: as many rows as give the largest scale that fits.

use glam::DVec2;
use sim::num;

/// A stretch of the line on a part of the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strip {
    /// First station shown, m.
    pub from: f64,
    /// Last station shown, m.
    pub to: f64,
    /// How far lines go on beyond these, so that none ends in sight, m.
    pub beyond: f64,
    /// Pixels to the metre.
    pub scale: f64,
    /// Where the station 0 at the height 0 falls, px.
    pub origin: DVec2,
    /// Upper edge of the strip's part of the sheet, px.
    pub top: f64,
    /// Lower edge, px.
    pub bottom: f64,
}

impl Strip {
    /// Where a point of the world falls, px.
    pub fn place(&self, p: DVec2) -> DVec2 {
        DVec2::new(
            self.origin.x + p.x * self.scale,
            self.origin.y - p.y * self.scale,
        )
    }

    /// The station at a pixel, m.
    pub fn station(&self, x: f64) -> f64 {
        (x - self.origin.x) / self.scale
    }

    /// Whether a station is shown.
    pub fn holds(&self, x: f64) -> bool {
        x >= self.from - self.beyond && x <= self.to + self.beyond
    }

    /// Whether any of the stations from `a` to `b` is shown.
    pub fn shows(&self, a: f64, b: f64) -> bool {
        b >= self.from - self.beyond && a <= self.to + self.beyond
    }
}

/// How much of the line is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// The rider and what comes next.
    Follow,
    /// All of it.
    Whole,
}

/// Margin to the left and right of the rows, px.
const MARGIN: f64 = 14.0;
/// Room over the ground in each row, m: a rider in the air.
const HEADROOM: f64 = 1.9;
/// Room under the ground in each row for its figures and names, px.
const FOOTROOM: f64 = 58.0;
/// Most rows; smaller scales than these give would show nothing.
const MOST_ROWS: usize = 6;

/// Where across the sheet the rider is kept: more is seen ahead than behind.
const PLACE: f64 = 0.36;
/// The view that follows never shows things smaller than this, in times of the usual.
const SMALLEST: f64 = 0.62;

/// Pixels to the metre of the view that follows, where nothing has to be framed.
fn usual(size: DVec2) -> f64 {
    (size.x / (4.4 + size.x / 140.0)).min((size.y - FOOTROOM).max(60.0) / 4.0)
}

/// The strip that follows a rider at `rider`, on a sheet of `size` px, `zoom` times as near as usual, and
/// stepping back so far that `ahead` m are in sight before the rider.
pub fn follow(size: DVec2, rider: DVec2, ahead: f64, zoom: f64) -> Strip {
    let usual = usual(size);
    let framed = (1.0 - PLACE) * size.x / ahead.max(1e-3);
    let scale = num::clamp(framed, SMALLEST * usual, usual) * zoom;
    let origin = DVec2::new(
        size.x * PLACE - rider.x * scale,
        (size.y - FOOTROOM) * 0.62 + rider.y * scale,
    );
    Strip {
        from: -origin.x / scale,
        to: (size.x - origin.x) / scale,
        beyond: 0.5,
        scale,
        origin,
        top: 0.0,
        bottom: size.y,
    }
}

/// Room over the rider's helmet and under the wheels that a view which comes near keeps, px: figures stand on top.
const OVER: f64 = 30.0;
const UNDER: f64 = 12.0;

/// The strip moved up or down, and drawn smaller if need be, until a rider is wholly on it, from the ground under the
/// wheels to the top of the helmet, m.
pub fn hold(strip: Strip, [low, high]: [DVec2; 2]) -> Strip {
    let room = (strip.bottom - strip.top - OVER - UNDER).max(1.0);
    let scale = strip.scale.min(room / (high.y - low.y).max(1e-3));
    let width = (strip.to - strip.from) * strip.scale;
    // The rider keeps the place across the sheet.
    let mut strip = Strip {
        origin: DVec2::new(
            strip.place(low).x - low.x * scale,
            strip.place(low).y + low.y * scale,
        ),
        scale,
        ..strip
    };
    let over = strip.top + OVER - strip.place(high).y;
    strip.origin.y += over.max(0.0);
    let under = strip.place(low).y - (strip.bottom - UNDER);
    strip.origin.y -= under.max(0.0);
    strip.from = strip.station(0.0);
    strip.to = strip.station(width);
    strip
}

/// The place that a view keeps in sight that stands still while a rider at station `x` goes by, `zoom` times as near
/// as usual, m.
pub fn stand(size: DVec2, x: f64, zoom: f64) -> f64 {
    let step = 0.5 * size.x / (usual(size) * zoom);
    ((x / step).floor() + 0.2) * step
}

/// The whole line in rows on a sheet of `size` px. The rows break only at `seams`, which begin
/// with the first station and end with the last; `relief(a, b)` gives the lowest and highest
/// ground between two stations.
pub fn whole(
    size: DVec2,
    seams: impl Iterator<Item = f64> + Clone,
    relief: impl Fn(f64, f64) -> (f64, f64),
    rows: &mut Vec<Strip>,
) {
    let mut best = (0.0, [0.0; MOST_ROWS + 1], 1);
    for count in 1..=MOST_ROWS {
        let cuts = cuts(seams.clone(), count);
        let scale = scale_of(size, &cuts[..=count], &relief);
        if scale > best.0 {
            best = (scale, cuts, count);
        }
    }
    let (scale, cuts, count) = best;
    let cuts = &cuts[..=count];
    let used = cuts
        .windows(2)
        .map(|c| tall(relief(c[0], c[1])) * scale + FOOTROOM);
    let spare = (size.y - used.sum::<f64>()) / count as f64;
    let mut top = 0.0;
    rows.clear();
    for cut in cuts.windows(2) {
        let (from, to) = (cut[0], cut[1]);
        let (low, high) = relief(from, to);
        let bottom = top + tall((low, high)) * scale + FOOTROOM + spare;
        let left = (size.x - (to - from) * scale) * 0.5;
        let base = bottom - 0.5 * spare - FOOTROOM;
        rows.push(Strip {
            from,
            to,
            beyond: 0.0,
            scale,
            origin: DVec2::new(left - from * scale, base + low * scale),
            top,
            bottom,
        });
        top = bottom;
    }
}

/// Height of a row with a relief, m.
fn tall((low, high): (f64, f64)) -> f64 {
    high - low + HEADROOM
}

/// The ends of `count` rows: at the seams nearest to where rows of one length would end.
fn cuts(seams: impl Iterator<Item = f64> + Clone, count: usize) -> [f64; MOST_ROWS + 1] {
    let ends = |ends: (f64, f64), s: f64| (ends.0.min(s), ends.1.max(s));
    let (start, end) = seams.clone().fold((f64::INFINITY, f64::NEG_INFINITY), ends);
    let mut cuts = [end; MOST_ROWS + 1];
    for (i, cut) in cuts.iter_mut().enumerate().take(count) {
        let even = start + (end - start) * i as f64 / count as f64;
        let nearer = |a: f64, b: f64| {
            if (b - even).abs() < (a - even).abs() {
                b
            } else {
                a
            }
        };
        *cut = seams.clone().fold(start, nearer);
    }
    cuts
}

/// The largest scale at which rows with these ends fit; 0 where a row would be empty.
fn scale_of(size: DVec2, cuts: &[f64], relief: &impl Fn(f64, f64) -> (f64, f64)) -> f64 {
    let rows = || cuts.windows(2).map(|c| (c[0], c[1]));
    if rows().any(|(a, b)| b - a < 0.5) {
        return 0.0;
    }
    let longest = rows().map(|(a, b)| b - a).fold(0.0, f64::max);
    let height: f64 = rows().map(|(a, b)| tall(relief(a, b))).sum();
    let across = (size.x - 2.0 * MARGIN) / longest;
    across.min((size.y - FOOTROOM * rows().count() as f64) / height)
}

#[cfg(test)]
mod tests {
    use super::*;

    const PHONE: DVec2 = DVec2::new(360.0, 290.0);

    fn rows(size: DVec2, length: f64) -> Vec<Strip> {
        let mut rows = Vec::new();
        let seams = (0..=20).map(|i| length * f64::from(i) / 20.0);
        whole(size, seams, |_, _| (-1.0, 0.5), &mut rows);
        rows
    }

    #[test]
    fn a_long_line_folds_on_a_phone_and_lies_flat_where_there_is_width() {
        assert!(rows(PHONE, 60.0).len() > 1);
        assert_eq!(rows(DVec2::new(1800.0, 300.0), 60.0).len(), 1);
    }

    #[test]
    fn rows_cover_the_line_once_and_stay_on_the_sheet() {
        let rows = rows(PHONE, 60.0);
        for pair in rows.windows(2) {
            assert!((pair[0].to - pair[1].from).abs() < 1e-9);
            assert_eq!(pair[0].bottom, pair[1].top);
        }
        assert_eq!(rows[0].from, 0.0);
        assert!((rows[rows.len() - 1].to - 60.0).abs() < 1e-9);
        for row in &rows {
            for x in [row.from, row.to] {
                let px = row.place(DVec2::new(x, 0.5 + HEADROOM - 0.01));
                assert!(px.x >= 0.0 && px.x <= PHONE.x, "{px}");
                assert!(
                    px.y >= row.top - 1e-9 && px.y <= row.bottom,
                    "{px} in {row:?}"
                );
            }
        }
    }

    #[test]
    fn rows_break_only_at_seams_and_a_line_without_any_lies_in_one() {
        let mut rows = Vec::new();
        for seams in [vec![0.0, 11.0, 29.0, 52.0, 60.0], vec![0.0, 60.0]] {
            whole(PHONE, seams.iter().copied(), |_, _| (-1.0, 0.5), &mut rows);
            assert!(
                rows.iter()
                    .all(|r| seams.contains(&r.from) && seams.contains(&r.to))
            );
            assert!(rows.len() < seams.len());
        }
    }

    #[test]
    fn the_rider_keeps_a_place_and_more_is_seen_ahead_than_behind() {
        let rider = DVec2::new(12.0, -0.7);
        let strip = follow(PHONE, rider, 0.0, 1.0);
        let px = strip.place(rider);
        assert!((px.x - 0.36 * PHONE.x).abs() < 1e-9);
        assert!(strip.to - rider.x > rider.x - strip.from);
        assert!((strip.station(px.x) - rider.x).abs() < 1e-9);
    }

    #[test]
    fn it_steps_back_for_a_jump_but_not_without_end() {
        let rider = DVec2::new(12.0, -0.7);
        let usual = follow(PHONE, rider, 0.0, 1.0).scale;
        let framed = follow(PHONE, rider, 6.0, 1.0);
        assert!(framed.scale < usual);
        assert!((framed.to - rider.x - 6.0).abs() < 1e-9);
        assert!((follow(PHONE, rider, 30.0, 1.0).scale - SMALLEST * usual).abs() < 1e-9);
    }

    #[test]
    fn a_view_that_stands_still_has_the_rider_in_sight_and_moves_on_in_steps() {
        let mut places: Vec<f64> = Vec::new();
        for i in 0..400 {
            let x = 0.1 * f64::from(i);
            let place = stand(PHONE, x, 1.0);
            let px = follow(PHONE, DVec2::new(place, 0.0), 0.0, 1.0).place(DVec2::new(x, 0.0));
            assert!(px.x > 0.2 * PHONE.x && px.x < 0.8 * PHONE.x, "{px} at {x}");
            if places.last() != Some(&place) {
                places.push(place);
            }
        }
        assert!(places.len() < 15, "{places:?}");
    }
}

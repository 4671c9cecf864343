//! A stretch cut out of a profile, to be ridden by itself.

use super::{Piece, Profile};

impl Profile {
    /// The pieces from one station to another, with the lips whose foot and landing lie within.
    /// `None` where the profile has no ground at the first station.
    pub fn stretch(&self, from: f64, to: f64) -> Option<Profile> {
        let spot = self.spot(from)?;
        let first = &self.pieces[spot.piece];
        let mut pieces = vec![Piece::new(
            spot.point,
            spot.heading,
            first.length - spot.along,
            first.curvature,
            0.0,
            first.character,
        )];
        for piece in &self.pieces[spot.piece + 1..] {
            if piece.start.x > to {
                break;
            }
            let last = &pieces[pieces.len() - 1];
            let before = last.before + last.length;
            pieces.push(Piece { before, ..*piece });
        }
        let within = |x: f64| x >= from && x <= to;
        let lips = self.lips.iter();
        Some(Profile {
            pieces,
            lips: lips
                .filter(|l| within(l.foot.x) && within(l.landing_end.x))
                .copied()
                .collect(),
            spans: Vec::new(),
            yard: self.yard.clone(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan;

    #[test]
    fn a_stretch_is_the_same_ground() {
        let whole = Profile::build(&plan::demo()).expect("the demonstration is sound");
        let lip = whole.lips[1];
        let part = whole
            .stretch(lip.foot.x - 2.0, lip.landing_end.x + 1.0)
            .expect("there is ground");
        assert_eq!(part.lips, [lip]);
        assert!((part.pieces[0].start.x - (lip.foot.x - 2.0)).abs() < 1e-9);
        for pair in part.pieces.windows(2) {
            assert!(pair[0].end.distance(pair[1].start) < 1e-9);
            assert!((pair[0].before + pair[0].length - pair[1].before).abs() < 1e-12);
        }
        for step in 0..40 {
            let x = lip.foot.x - 1.9 + 0.2 * f64::from(step);
            assert_eq!(
                part.height_at(x).map(|z| (z * 1e9).round()),
                whole.height_at(x).map(|z| (z * 1e9).round()),
                "{x}"
            );
        }
    }

    #[test]
    fn nothing_begins_where_there_is_no_ground() {
        let whole = Profile::build(&plan::demo()).expect("the demonstration is sound");
        assert!(whole.stretch(-50.0, 10.0).is_none());
    }
}

//! How wide each piece of the ground is.

use super::{Intent, Piece};
use crate::num::PI;
use crate::plan::Feature;

/// Gives the pieces of a feature their widths, on a line of some width, m.
pub(super) fn widen(pieces: &mut [Piece], feature: &Feature, line: f64) {
    let front = front(pieces);
    for (i, piece) in pieces.iter_mut().enumerate() {
        let own = match feature {
            Feature::StartRamp(ramp) => ramp.width,
            Feature::Roller(roller) => roller.width,
            Feature::Turn(turn) => turn.width,
            Feature::Jump(jump) => match piece.character.intent {
                Intent::Land => jump.landing.width,
                _ if front == Some(i) => jump.landing.width,
                _ => jump.lip.width,
            },
            Feature::Flat(_) | Feature::RunOut(_) => None,
        };
        piece.character.width = own.unwrap_or(line);
    }
}

/// The landing's plumb front, where there is one: the last that is nothing to ride, and rises.
fn front(pieces: &[Piece]) -> Option<usize> {
    let clear = |p: &Piece| p.character.intent == Intent::Clear;
    let last = pieces.iter().rposition(clear)?;
    (pieces[last].heading >= 0.5 * PI - 1e-9).then_some(last)
}

#[cfg(test)]
mod tests {
    use crate::plan::{self, Feature, Line};
    use crate::profile::{Intent, Profile};

    #[test]
    fn lip_and_landing_have_their_own_widths_and_all_else_the_lines() {
        let mut plan = plan::one_jump();
        plan.width = 1.5;
        let Line::Features(features) = &mut plan.line else {
            panic!("features")
        };
        for feature in features {
            if let Feature::Jump(jump) = feature {
                (jump.lip.width, jump.landing.width) = (Some(1.0), Some(2.0));
            }
        }
        let profile = Profile::build(&plan).expect("it can be built");
        let edge = profile.lips[0];
        let mut seen = [0; 3];
        for piece in &profile.pieces {
            let (i, expected) = match piece.character.intent {
                Intent::Launch => (0, 1.0),
                Intent::Land => (1, 2.0),
                // The front below the knuckle belongs to the landing.
                Intent::Clear if piece.start.x >= edge.knuckle.x - 1e-9 => (1, 2.0),
                Intent::Clear => (0, 1.0),
                Intent::Roll | Intent::Brake => (2, 1.5),
            };
            assert_eq!(piece.character.width, expected, "{piece:?}");
            seen[i] += 1;
        }
        assert!(seen.iter().all(|&n| n > 0), "{seen:?}");
    }
}

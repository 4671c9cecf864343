mod plans;

use super::*;
use crate::plan::{self, Plan};

/// The chain's own promises: every piece begins where the one before ends, and holds numbers.
fn assert_whole(profile: &Profile) {
    let mut before = 0.0;
    for piece in &profile.pieces {
        let all = [piece.start.x, piece.start.y, piece.end.x, piece.end.y];
        assert!(all.iter().all(|v| v.is_finite()), "{piece:?}");
        assert!(piece.heading.is_finite() && piece.length > 0.0, "{piece:?}");
        assert!((piece.before - before).abs() < 1e-12, "{piece:?}");
        assert!(
            piece.point(piece.length).distance(piece.end) < 1e-9,
            "{piece:?}"
        );
        before += piece.length;
    }
    for pair in profile.pieces.windows(2) {
        assert_eq!(pair[0].end, pair[1].start);
    }
}

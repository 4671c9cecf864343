//! How tyres roll on each ground.

use crate::plan::Rolling;
use serde::{Deserialize, Serialize};

/// What the tyre's tread is like.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Tread {
    /// Smooth or with low blocks.
    #[default]
    Smooth,
    /// With high knobs.
    Knobby,
}

/// Rolling resistance coefficients of a tyre by surface, on dry ground.
///
/// A smooth tyre has what a plan has where it says nothing. High knobs cost on hard ground; on grass
/// and on loose dirt it is the ground that gives way, whatever the tread.
///
/// # References
/// Knobs on wood and on pavement: 0.014, a 20-inch knobby tyre at 40 psi of Gross, Kyle and Malewicki
/// 1983, Sci. Am. 249(6) (`from memory`; the paper's forces follow from it). Knobs on packed dirt and
/// gravel: 0.0214, which follows from an error of 0.0006 being 2.8 % in Maier et al. 2018, J. Sports
/// Sci. 36:156, on a cross-country course. The rest: see [`Rolling`].
pub fn rolling(tread: Tread) -> Rolling {
    let smooth = Rolling::default();
    match tread {
        Tread::Smooth => smooth,
        Tread::Knobby => Rolling {
            wood: 0.014,
            paved: 0.014,
            packed: 0.0214,
            gravel: 0.0214,
            ..smooth
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The BMX racer of Gross, Kyle and Malewicki 1983 weighs 150 lb and rolls with 2.10 lb.
    /// Maier et al. 2018 call 0.0006 a share of 2.8 %.
    #[test]
    fn knobs_roll_as_published() {
        let knobby = rolling(Tread::Knobby);
        assert!((knobby.paved * 150.0 - 2.10).abs() < 0.005);
        assert!((knobby.packed * 0.028 - 0.0006).abs() < 1e-5);
    }

    /// Nobody gains by knobs.
    #[test]
    fn knobs_never_roll_better() {
        use crate::plan::Surface;
        let [smooth, knobby] = [Tread::Smooth, Tread::Knobby].map(rolling);
        for surface in Surface::ALL {
            assert!(knobby.on(surface) >= smooth.on(surface), "{surface:?}");
        }
    }
}

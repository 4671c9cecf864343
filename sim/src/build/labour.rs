//! Hours of work by hand, from timed work.

use super::heap::Volumes;
use crate::plan::Soil;
use serde::{Deserialize, Serialize};

/// Cubic metres in a cubic foot, by definition of the foot.
const CUBIC_FOOT: f64 = 0.3048 * 0.3048 * 0.3048;

/// Metres in a hundred feet.
const HUNDRED_FEET: f64 = 30.48;

/// How long the steps of digging take one grown person.
///
/// # References
/// Thompson's time study of excavation with wheelbarrows (Taylor 1911, Shop Management, page 151; again in Clark and
/// Wyatt 1911, Making Both Ends Meet), minutes: filling a barrow with sand 1.240, with hard clay 1.948; picking the
/// clay 1.67 a barrow, rests included; starting 0.182; wheeling full 0.450 for each 100 feet; dumping and turning
/// 0.172; returning empty 0.520 for each 100 feet; dropping the barrow 0.16; about 27 % of that for rests. A barrow
/// took 2.32 cubic feet of sand or 2.15 of clay as measured in the ground. Loam: the mean of sand and clay; gravel:
/// picked and filled as clay (common practice, no source).
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Labour {
    /// Loosening with a pick, s for each m³ in the ground, rests included.
    pub loosen: f64,
    /// Filling the barrow, s for each m³ in the ground.
    pub fill: f64,
    /// Starting, dumping, turning and taking up the shovel again, s for each load.
    pub handle: f64,
    /// Wheeling there and back, s for each metre between the places.
    pub wheel: f64,
    /// Rests, as a share of filling and wheeling.
    pub rest: f64,
    /// How many times as long whole days take as the minutes timed.
    pub pace: f64,
    /// Spreading, shaping and packing, s for each m³ packed; paced already.
    pub shape: f64,
}

/// Whole days against minutes. A man digs and carries 5 cubic yards 50 yards far in a day of 12 hours (Jefferson's
/// Farm Book, page 66): 1.7 times as long as the hard clay of the time study.
const PACE: f64 = 1.7;

/// An hour for each cubic metre that is shaped and packed with a shovel's back and a hand tamper, s (common
/// practice, no source).
const SHAPE: f64 = 3600.0;

impl Labour {
    /// Of one soil.
    pub fn of(soil: Soil) -> Self {
        let per_volume = |minutes: f64, load: f64| 60.0 * minutes / (load * CUBIC_FOOT);
        let sand = [0.0, per_volume(1.240, 2.32)];
        let clay = [per_volume(1.67, 2.15), per_volume(1.948, 2.15)];
        let [loosen, fill] = match soil {
            Soil::Sand => sand,
            Soil::Gravel | Soil::Clay => clay,
            Soil::Loam => [0, 1].map(|i| (sand[i] + clay[i]) / 2.0),
        };
        Self {
            loosen,
            fill,
            handle: 60.0 * (0.182 + 0.172 + 0.16),
            wheel: 60.0 * (0.450 + 0.520) / HUNDRED_FEET,
            rest: 0.27,
            pace: PACE,
            shape: SHAPE,
        }
    }

    /// Seconds to dig earth and bring it so far in a barrow that takes so much loose earth, m³; nothing shaped.
    pub fn move_seconds(&self, earth: &Volumes, distance: f64, barrow: f64) -> f64 {
        let loads = earth.loose / barrow;
        let moved = self.fill * earth.bank + loads * (self.handle + self.wheel * distance);
        self.pace * (self.loosen * earth.bank + (1.0 + self.rest) * moved)
    }

    /// Seconds to shape and pack earth where it lies.
    pub fn shape_seconds(&self, earth: &Volumes) -> f64 {
        self.shape * earth.packed
    }
}

//! What a soil weighs and how it stands, for walls that hold it.
//!
//! # References
//! Compacted soils: U.S. Bureau of Reclamation 1977, average effective shear strength of compacted soils, as
//! table 3.1 of Huang 1983, Stability Analysis of Earth Slopes: greatest dry density of the Proctor test, its
//! moisture, friction angle with its spread. Loose soils: table 3-1 of EM 1110-2-2504, U.S. Army Corps of
//! Engineers 1994. Earth and clay heaped loose: U.S. Army FM 5-434 (from memory). Bearing against posts
//! and under footings: International Building Code 2012, table 1806.2.

use crate::num;
use crate::plan::Soil;
use serde::{Deserialize, Serialize};

/// A pound to the cubic foot, N/m³; also a pound to the square foot for each foot of depth, Pa/m.
const POUND_PER_CUBIC_FOOT: f64 = 157.087;

/// A pound to the square foot, Pa.
const POUND_PER_SQUARE_FOOT: f64 = 47.880_3;

/// Unit weight of water, N/m³ (1000 kg/m³ under standard gravity).
pub const WATER: f64 = 9806.65;

/// Weight of earth tamped by hand for that of earth tamped as it tamps best (common practice, no source).
const BY_HAND: f64 = 0.9;

/// Weight of the grains for that of water (2.65 to 2.7 in any textbook of soil mechanics).
const GRAINS: f64 = 2.67;

/// Properties of a soil.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Earth {
    /// Unit weight heaped loose, N/m³.
    pub loose: f64,
    /// Unit weight tamped, moist as it tamps best, N/m³.
    pub compacted: f64,
    /// Unit weight tamped, every pore full of water, N/m³.
    pub saturated: f64,
    /// Friction angle as tamped by hand, rad.
    pub friction: f64,
    /// Friction angle when wet through, rad.
    pub friction_wet: f64,
    /// Lateral bearing that a post may use, Pa for each metre of depth.
    pub bearing: f64,
    /// Pressure that it may bear under a footing, Pa.
    pub footing: f64,
}

/// Row of the tables: pounds and feet, degrees, as printed.
struct Row {
    loose: f64,
    dry_density: f64,
    moisture: f64,
    friction: f64,
    friction_wet: f64,
    bearing: f64,
    footing: f64,
}

/// What a soil weighs and how it stands.
///
/// A yard is tamped by hand, so friction is the lower end of what the tables give: loose sand 28° to 30°; silty
/// gravel (GM) over 34° and clayey gravel (GC) over 31°; silt (ML) 32° ± 2° and clayey sand (SC) 31° ± 3°; lean
/// clay (CL) 28° ± 2° and fat clay (CH) 19° ± 5°, its mean.
pub fn earth(soil: Soil) -> Earth {
    let row = match soil {
        Soil::Sand => Row {
            loose: 95.0,
            dry_density: 110.0,
            moisture: 0.124,
            friction: 30.0,
            friction_wet: 28.0,
            bearing: 150.0,
            footing: 2000.0,
        },
        Soil::Gravel => Row {
            loose: 110.0,
            dry_density: 114.0,
            moisture: 0.145,
            friction: 34.0,
            friction_wet: 31.0,
            bearing: 150.0,
            footing: 2000.0,
        },
        Soil::Loam => Row {
            loose: 82.0,
            dry_density: 103.0,
            moisture: 0.192,
            friction: 30.0,
            friction_wet: 28.0,
            bearing: 100.0,
            footing: 1500.0,
        },
        Soil::Clay => Row {
            loose: 78.0,
            dry_density: 108.0,
            moisture: 0.173,
            friction: 26.0,
            friction_wet: 19.0,
            bearing: 100.0,
            footing: 1500.0,
        },
    };
    let dry = row.dry_density * POUND_PER_CUBIC_FOOT;
    Earth {
        loose: row.loose * POUND_PER_CUBIC_FOOT,
        compacted: dry * (1.0 + row.moisture),
        saturated: dry + WATER - dry / GRAINS,
        friction: num::radians(row.friction),
        friction_wet: num::radians(row.friction_wet),
        bearing: row.bearing * POUND_PER_CUBIC_FOOT,
        footing: row.footing * POUND_PER_SQUARE_FOOT,
    }
}

/// How wet a fill is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Wetness {
    /// Moist as it was tamped.
    Dry,
    /// Wet through, the water running off through the joints of the boards.
    Wet,
    /// Water standing to the top: what drainage is to keep away.
    Flooded,
}

impl Wetness {
    /// Every wetness.
    pub const ALL: [Wetness; 3] = [Wetness::Dry, Wetness::Wet, Wetness::Flooded];
}

/// What a fill is reckoned with.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Fill {
    /// Unit weight that pushes, N/m³: as heavy as it gets.
    pub weight: f64,
    /// Unit weight that holds, N/m³: as light as it gets.
    pub holding: f64,
    /// Friction angle, rad.
    pub friction: f64,
    /// Unit weight of the water that stands in it, N/m³; 0 where it drains.
    pub water: f64,
}

/// A soil in a state of wetness: what pushes is tamped as well as it can be, and full of water in a wet fill; what
/// holds is tamped by hand, and moist. Under standing water grains push and hold with their weight less that of
/// the water they displace, and the water pushes besides.
pub fn fill(soil: Soil, wetness: Wetness) -> Fill {
    let earth = earth(soil);
    let under_water = earth.saturated - WATER;
    match wetness {
        Wetness::Dry => Fill {
            weight: earth.compacted,
            holding: BY_HAND * earth.compacted,
            friction: earth.friction,
            water: 0.0,
        },
        Wetness::Wet => Fill {
            weight: earth.saturated,
            holding: BY_HAND * earth.compacted,
            friction: earth.friction_wet,
            water: 0.0,
        },
        Wetness::Flooded => Fill {
            weight: under_water,
            holding: BY_HAND * under_water,
            friction: earth.friction_wet,
            water: WATER,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn soils_get_heavier_and_weaker_from_loose_to_wet() {
        for soil in Soil::ALL {
            let e = earth(soil);
            println!("{soil:?} {e:?}");
            assert!(e.loose < e.compacted && e.compacted < e.saturated);
            assert!(e.friction_wet < e.friction);
        }
    }

    /// EM 1110-2-2504, table 3-1: medium compact soils weigh 110 to 130 lb/ft³ moist, 60 to 70 under water.
    #[test]
    fn sand_weighs_as_tabulated() {
        let e = earth(Soil::Sand);
        let pounds = |weight: f64| weight / POUND_PER_CUBIC_FOOT;
        assert!((110.0..=130.0).contains(&pounds(e.compacted)));
        assert!((60.0..=70.0).contains(&pounds(e.saturated - WATER)));
    }

    /// Grains under water weigh less by the water they displace (Archimedes): with the water that stands between
    /// them, a flooded fill weighs as much as a saturated one.
    #[test]
    fn under_water_grains_and_water_weigh_as_saturated() {
        for soil in Soil::ALL {
            let flooded = fill(soil, Wetness::Flooded);
            let both = flooded.weight + flooded.water;
            assert!((both - earth(soil).saturated).abs() < 1e-9);
            assert!(flooded.holding < fill(soil, Wetness::Dry).holding);
        }
    }
}

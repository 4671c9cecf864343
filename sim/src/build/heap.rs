//! How each soil stands and changes its bulk, from published tables.

use crate::plan::Soil;
use serde::{Deserialize, Serialize};

/// What a soil does when it is dug, heaped and packed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Earth {
    /// Run of the side of a heap for each metre of its height.
    pub slope: f64,
    /// How much more room it takes loose than it took in the ground, as a share of that.
    pub swell: f64,
    /// How much less room it takes packed than it took in the ground, as a share of that.
    pub shrinkage: f64,
}

impl Earth {
    /// A soil as the tables have it. Soils differ from yard to yard by half of each figure: the builder's own are
    /// better, from one barrow dug, heaped and packed.
    ///
    /// # References
    /// Slopes, run over rise. Sand: 34° is typical of dry sand (Carter 1950, US Bureau of Reclamation, HYD-299), so
    /// 1.5. Gravel: 1½ (Vose 1857, Handbook of Railroad Construction, §111; Newman 1890, Earthwork Slips and
    /// Subsidences: seldom flatter). Loam: fills at 1½ or flatter (Keller and Sherar 2003, Low-Volume Roads
    /// Engineering, US Forest Service, chapter 11). Clay: 1½ to 2½ where it is firm (Newman 1890), so 2.
    ///
    /// Swell: 12 % of sand and of gravel, 25 % of earth and loam, 40 % of clay (Roseke, Swell Factors for Various
    /// Soils).
    ///
    /// Shrinkage: 10 to 12 % of ordinary soil, 8 to 9 % of gravel or sand (Spalding 1908, Textbook on Roads and
    /// Pavements), the middle of each; clay: 10 % (Vose 1857, §114, clayey earth).
    pub fn of(soil: Soil) -> Self {
        let [slope, swell, shrinkage] = match soil {
            Soil::Sand | Soil::Gravel => [1.5, 0.12, 0.085],
            Soil::Loam => [1.5, 0.25, 0.11],
            Soil::Clay => [2.0, 0.40, 0.10],
        };
        Self {
            slope,
            swell,
            shrinkage,
        }
    }

    /// The volumes of earth that takes so much room in the ground, m³.
    pub fn dug(&self, bank: f64) -> Volumes {
        Volumes {
            bank,
            loose: bank * (1.0 + self.swell),
            packed: bank * (1.0 - self.shrinkage),
        }
    }

    /// The volumes of earth that takes so much room packed, m³.
    pub fn placed(&self, packed: f64) -> Volumes {
        self.dug(packed / (1.0 - self.shrinkage))
    }

    /// The volumes of earth that takes so much room loose, m³.
    pub fn hauled(&self, loose: f64) -> Volumes {
        self.dug(loose / (1.0 + self.swell))
    }
}

/// The same earth in its three states, m³.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Volumes {
    /// As it lies in the ground.
    pub bank: f64,
    /// Dug, in a barrow or heaped without packing.
    pub loose: f64,
    /// Heaped in layers and packed.
    pub packed: f64,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn earth_keeps_its_mass_from_state_to_state() {
        for soil in Soil::ALL {
            let earth = Earth::of(soil);
            let dug = earth.dug(3.0);
            assert!(dug.packed < dug.bank && dug.bank < dug.loose, "{soil:?}");
            for same in [earth.placed(dug.packed), earth.hauled(dug.loose)] {
                assert!((same.bank - 3.0).abs() < 1e-12, "{soil:?}");
            }
        }
    }
}

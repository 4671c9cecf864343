//! Loads: how often a barrow, a bucket or a truck goes.

use super::heap::Volumes;
use serde::{Deserialize, Serialize};

/// What earth is carried in, m³ of loose earth a load.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Carriers {
    /// A wheelbarrow, level full.
    pub barrow: f64,
    /// A loader's bucket.
    pub bucket: f64,
    /// A truck.
    pub truck: f64,
}

impl Default for Carriers {
    /// A builder's barrow of 80 litres, a compact loader's bucket, a truck of five cubic yards (common practice, no
    /// source).
    fn default() -> Self {
        Self {
            barrow: 0.08,
            bucket: 0.4,
            truck: 3.8,
        }
    }
}

/// Whole loads of each, the last one not always full.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Loads {
    /// Of the barrow.
    pub barrows: u32,
    /// Of the bucket.
    pub buckets: u32,
    /// Of the truck.
    pub trucks: u32,
}

/// So little earth is a rounding error, not a load, m³: a thousandth of a handful.
const NOTHING: f64 = 1e-6;

impl Carriers {
    /// How many loads of each would carry the earth.
    pub fn loads(&self, earth: &Volumes) -> Loads {
        let count = |load: f64| {
            if earth.loose <= NOTHING {
                0
            } else {
                ((earth.loose - NOTHING) / load).ceil() as u32
            }
        };
        Loads {
            barrows: count(self.barrow),
            buckets: count(self.bucket),
            trucks: count(self.truck),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_load_counts_and_no_load_beyond_it() {
        let carriers = Carriers::default();
        let loads = |loose| {
            carriers.loads(&Volumes {
                loose,
                ..Volumes::default()
            })
        };
        let [barrows, buckets, trucks] = [50, 10, 2];
        let expected = Loads {
            barrows,
            buckets,
            trucks,
        };
        assert_eq!(loads(50.0 * 0.08), expected);
        assert_eq!(loads(50.0 * 0.08 + 0.01).barrows, 51);
        assert_eq!(loads(0.0), Loads::default());
    }
}

//! One number that stands for every bit of a run, to compare runs across machines.

use super::run::{Run, Sample};
use crc::{CRC_64_XZ, Crc};

impl Run {
    /// A checksum of every value of the trace, every event and the outcome: two runs that differ in
    /// one bit anywhere have different ones, but for one chance in 2⁶⁴.
    pub fn digest(&self) -> u64 {
        // Made here, its table is worked out and need not be fetched.
        let checksum = Crc::<u64>::new(&CRC_64_XZ);
        let mut digest = checksum.digest();
        for value in self.samples.iter().flat_map(Sample::values) {
            digest.update(&value.to_bits().to_le_bytes());
        }
        // As text, in which serde_json writes numbers to the last bit, the kinds count as well.
        let rest = serde_json::to_vec(&(&self.events, self.outcome));
        // Plain data can always be written.
        digest.update(&rest.unwrap_or_default());
        digest.finalize()
    }
}

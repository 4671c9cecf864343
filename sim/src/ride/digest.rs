//! One number that stands for every bit of a run, to compare runs across machines.

use super::run::{Run, Sample};
use crc::{CRC_64_XZ, Crc};

const CHECKSUM: Crc<u64> = Crc::<u64>::new(&CRC_64_XZ);

impl Run {
    /// A checksum of every value of the trace, every event and the outcome: two runs that differ in
    /// one bit anywhere have different ones, but for one chance in 2⁶⁴.
    pub fn digest(&self) -> u64 {
        let mut digest = CHECKSUM.digest();
        for value in self.samples.iter().flat_map(Sample::values) {
            digest.update(&value.to_bits().to_le_bytes());
        }
        // As text, in which serde_json writes numbers to the last bit, the kinds count as well.
        let rest = serde_json::to_vec(&(&self.events, self.outcome));
        digest.update(&rest.expect("memory takes every text"));
        digest.finalize()
    }
}

#[cfg(test)]
mod tests {
    use crate::plan;
    use crate::setup::ride_plan;

    #[test]
    fn a_bit_changed_anywhere_shows() {
        let run = ride_plan(&plan::demo(), 0)
            .expect("the demonstration is sound")
            .run;
        let mut other = run.clone();
        assert_eq!(run.digest(), other.digest());
        let middle = other.samples.len() / 2;
        let head = &mut other.samples[middle].head;
        *head = f64::from_bits(head.to_bits() ^ 1);
        assert_ne!(run.digest(), other.digest());
        let mut other = run.clone();
        other.events[0].x = f64::from_bits(other.events[0].x.to_bits() ^ 1);
        assert_ne!(run.digest(), other.digest());
    }
}

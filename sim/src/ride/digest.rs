//! One number that stands for every bit of a run, to compare runs across machines.

use super::run::{EventKind, Run, Sample};
use crc::{CRC_64_XZ, Crc};

/// Numbers of the kind of event that has the most.
const MOST: usize = 7;

impl Run {
    /// A checksum of every value of the trace, every event and the outcome: two runs that differ in
    /// one bit anywhere have different ones, but for one chance in 2⁶⁴.
    pub fn digest(&self) -> u64 {
        // Made here, its table is worked out and need not be fetched.
        let checksum = Crc::<u64>::new(&CRC_64_XZ);
        let mut digest = checksum.digest();
        let mut add = |value: f64| digest.update(&value.to_bits().to_le_bytes());
        self.samples
            .iter()
            .flat_map(Sample::values)
            .for_each(&mut add);
        for event in &self.events {
            let (kind, numbers) = values(&event.kind);
            let head = [event.t, event.x, f64::from(kind)];
            head.into_iter().chain(numbers).for_each(&mut add);
        }
        add(f64::from(self.outcome as u8));
        digest.finalize()
    }
}

/// What kind of event it is, and all its numbers.
#[rustfmt::skip]
fn values(kind: &EventKind) -> (u8, [f64; MOST]) {
    let of = |kind, numbers: &[f64]| {
        let mut all = [0.0; MOST];
        all[..numbers.len()].copy_from_slice(numbers);
        (kind, all)
    };
    match *kind {
        EventKind::LipLeft { lip, speed, direction, pitch, centre_x, centre_z } =>
            of(0, &[lip as f64, speed, direction, pitch, centre_x, centre_z]),
        EventKind::Airborne { speed } => of(1, &[speed]),
        EventKind::TouchedDown { wheel, airtime, rear_x, front_x, pitch_to_slope, speed, into_ground } =>
            of(2, &[f64::from(wheel as u8), airtime, rear_x, front_x, pitch_to_slope, speed, into_ground]),
        EventKind::RolledBack { missing } => of(3, &[missing]),
        EventKind::Stopped => of(4, &[]),
        EventKind::Crashed { why } => of(5, &[f64::from(why as u8)]),
        EventKind::EndOfLine { speed } => of(6, &[speed]),
        EventKind::BottomedOut { g } => of(7, &[g]),
    }
}

//! What the features of a line are called, counted by kind.

use crate::plan::Feature;

/// Counts so far.
#[derive(Default)]
pub(super) struct Names {
    flats: u32,
    rollers: u32,
    jumps: u32,
    turns: u32,
}

impl Names {
    /// The name of the next feature. Rollers are counted one by one, also those in a row.
    pub fn name(&mut self, feature: &Feature) -> String {
        match feature {
            Feature::StartRamp(_) => "Start ramp".to_owned(),
            Feature::RunOut(_) => "Run-out".to_owned(),
            Feature::Flat(_) => numbered("Flat", &mut self.flats, 1),
            Feature::Jump(_) => numbered("Jump", &mut self.jumps, 1),
            Feature::Turn(_) => numbered("Turn", &mut self.turns, 1),
            Feature::Roller(r) => numbered("Roller", &mut self.rollers, r.count),
        }
    }
}

fn numbered(word: &str, so_far: &mut u32, more: u32) -> String {
    let first = *so_far + 1;
    *so_far += more;
    if more > 1 {
        format!("{word}s {first}–{so_far}")
    } else {
        format!("{word} {first}")
    }
}

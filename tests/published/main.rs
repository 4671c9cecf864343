//! The model against formulas and figures that others have published.
//!
//! Each check names its source. Where a formula speaks of a point or a rigid body, the ride is
//! brought as near to it as it goes: losses off, a passive rider, ground that bends little.

mod arcs;
mod coasting;
mod figures;
mod flight;
mod grade;
mod landing;
mod people;
mod power;
mod practice;
mod pumping;
mod rig;
mod slides;
mod soft;
mod standing;

use tests::checks::{Table, judge_all};

#[test]
fn every_row_holds() {
    let table = |title, checks| Table { title, checks };
    judge_all(&[
        table("Hollows and crests", arcs::checks()),
        table("Sliding next to a point", slides::checks()),
        table("Rolling down a grade", grade::checks()),
        table("Coasting", coasting::checks()),
        table("Standing, and riding through a hollow", standing::checks()),
        table("Pumping", pumping::checks()),
        table("Flights", flight::checks()),
        table("Landings", landing::checks()),
        table("A landing as soft everywhere", soft::checks()),
        table("On the road", power::checks()),
        table("Figures and geometry", figures::checks()),
        table("People and surfaces", people::checks()),
        table("Rules of thumb", practice::checks()),
    ]);
}

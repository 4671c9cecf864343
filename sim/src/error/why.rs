//! Why a field of a plan is at fault.

use core::fmt;
use serde::Serialize;

/// Makes the enum, its list and its words from one table.
macro_rules! reasons {
    ($($name:ident: $text:literal,)*) => {
        /// The reason for a fault, as a clause without figures. A page that speaks another language has
        /// words of its own for each.
        #[derive(Clone, Debug, PartialEq, Eq, Serialize)]
        #[serde(rename_all = "snake_case")]
        pub enum Why {
            $(#[doc = concat!("\"", $text, "\"")] $name,)*
            /// What is read says something that no plan says.
            Unreadable {
                /// What, in short.
                what: Unreadable,
                /// What, in the words of who reads it.
                told: String,
            },
        }

        impl Why {
            /// Every reason but the last.
            pub const ALL: &[Why] = &[$(Why::$name,)*];
        }

        impl fmt::Display for Why {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(match self {
                    $(Why::$name => $text,)*
                    Why::Unreadable { told, .. } => told,
                })
            }
        }
    };
}

reasons! {
    NoNumber: "this is no number",
    ControlCharacter: "a text holds a control character",
    LongText: "a text is too long",
    YardLength: "too short for a line or too long for a yard",
    YardGrade: "steeper than a line is dug on",
    SurveyCount: "a survey has at least two points and not too many",
    SurveyStart: "the survey begins behind the start of the yard",
    SurveyEnd: "the survey ends before the yard does",
    Backward: "stations have to run forward",
    SteepGround: "the ground is steeper than one to one here",
    FarStation: "too far away",
    FarHeight: "too high or too low; count heights from a point in the yard",
    PointCount: "a line has at least two points and not too many",
    SamePoint: "this is the point before once more, or all but",
    FacePoints: "a face has only two points, its foot and its top",
    FeatureCount: "a line has at least one feature and not too many",
    RampFirst: "a start ramp can only come first",
    RunOutLast: "a run-out can only come last",
    FeatureLength: "too short to notice or too long for a yard",
    PlatformHeight: "too low to start from or too high to climb on safely",
    RampAngle: "too flat to gain speed or too steep to ride",
    HollowRadius: "no hollow is drawn with a string this long or short",
    EdgeRadius: "no edge is rounded like this",
    PushOff: "nobody is pushed off backward or so fast",
    RollerHeight: "too low to notice or too high to roll over",
    RollerLength: "no roller is so short or so long",
    RollerCount: "a row has at least one roller and not too many",
    TurnRadius: "no turn in a yard is so tight or so wide",
    TurnSweep: "too little to be a turn, or more than once round",
    TurnBank: "a bank leans inward, and short of a wall",
    Gap: "no yard jump has such a gap",
    LipHeight: "too low to throw anybody or too high for a yard",
    LipRadius: "no lip is drawn with a string this long or short",
    LeadAngle: "too flat to lead anywhere or too steep for dirt",
    LeadLength: "too short to be a ramp or too long for a yard",
    StraightEnd: "less than nothing, or a straight ramp rather than a lip",
    LandingHeight: "no yard jump lands so high, nor below its own ground",
    LandingAngle: "too flat to land down or too steep to ride",
    KnuckleRadius: "no knuckle is rounded like this",
    LandingLength: "too long for a yard, or less than nothing",
    RiderCount: "a plan has at least one rider and not too many",
    RiderMass: "no rider weighs so much or so little",
    RiderStature: "no rider is so small or so tall",
    Posture: "the posture runs from crouched to tall",
    DragArea: "no rider stands so wide in the wind",
    Skill: "skill runs from nothing to perfect",
    Wheelbase: "no bike is so short or so long",
    BeadSeat: "no rim has this bead seat",
    TyreWidth: "no tyre is so narrow or so wide",
    TyrePressure: "a tyre is flat or bursts at this pressure",
    TyreStiffness: "no tyre is so soft or so hard",
    BikeMass: "no bike weighs so much or so little",
    WheelMass: "no wheel weighs so much or so little",
    WheelInertia: "no wheel is so easy or so hard to turn",
    WheelsOverlap: "the wheels would overlap",
    NoFrame: "two such wheels leave nothing for the frame",
    OverHoop: "harder to turn than a hoop of the wheel's mass",
    UnderHoop: "easier to turn than any wheel of such a mass and size",
    Rolling: "no ground that is ridden rolls like this",
    Altitude: "no yard lies so low or so high",
    Temperature: "nobody rides in such cold or heat",
    Wind: "nobody rides in such a wind",
    InitialSpeed: "nobody starts backward or so fast",
    NoStart: "a line without a start ramp needs a speed to start with",
    SeenCount: "more than a test day tells",
    NoSuchRider: "the plan has no such rider; the first is number nought",
    NoFlag: "no flag stands there",
    FlagsClose: "the second flag has to stand well behind the first",
    Seconds: "nobody takes so short or so long",
    SeenSpeed: "nobody rides so slowly or so fast here",
    NoSuchJump: "no line has so many jumps; the first is number nought",
    FarLanding: "nobody lands so far from a knuckle",
    NoStand: "nobody comes to a stand there",
    GiveOrTake: "nothing is measured so finely, or it tells nothing",
    LipOverCircle: "the lip is higher than its circle allows: its edge would be all but plumb",
    LeadOverLip: "the arc that leads to this angle is higher than the whole lip",
    LeadTooLong: "the lead-in alone rises higher than the whole lip",
    StraightTooLong: "so long a straight end leaves next to nothing of the arc at this height",
    RollerTooShort: "the roller is too short for its height: a wheel would not fit its hollow or its flank",
    Plumb: "the slope would be all but plumb",
    TightHollow: "a wheel would not fit this hollow",
    LongLine: "the line is longer than the yard",
    ShortLine: "no bike stands on a line that is shorter than itself",
    StartSteep: "no bike stands where the line begins like this",
    StartBent: "where the line begins, a wheel of a bike that stands there would be this deep in the ground",
    LandingUnderground: "the landing would end below the ground",
    LandingOverlap: "the knuckle's arc and the hollow overlap: together they need more height",
    RisingGround: "the ground rises all but as steeply as the ramp falls",
    RampOverlap: "the rounded edge and the hollow overlap: together they need more height",
    Seed: "a seed has six digits at most",
    DraftLength: "too short for a jump, or longer than a yard",
    DraftFall: "no yard to ride lies so steep",
    Tallest: "too low to gain speed from, or too high to build like this",
    Width: "nobody rides so narrow a line, or digs so wide a one",
    StockSize: "nobody sells or uses it in such a size",
    StockCount: "too few or too many for one list",
    NoSuchAge: "the growth charts have no such age",
}

/// What is wrong with what is read, in short.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Unreadable {
    /// It is no JSON.
    NotJson,
    /// A field is missing.
    Missing,
    /// There is no such field.
    Unknown,
    /// A field stands there twice.
    Twice,
    /// A value is of another kind than its field.
    Kind,
}

impl Unreadable {
    /// Every one.
    pub const ALL: [Self; 5] = [
        Self::NotJson,
        Self::Missing,
        Self::Unknown,
        Self::Twice,
        Self::Kind,
    ];
}

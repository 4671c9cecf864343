//! The whole job: everything that is to be known before a line is built, from one plan.

use super::dirt::{self, Boxed, Heap};
use super::haul::{self, Place};
use super::heap::{Earth, Volumes};
use super::labour::Labour;
use super::lip::{self, Deck, LipSheet};
use super::loads::Loads;
use super::logs::Sawn;
use super::materials::{self, Bill, Grade, Wanted};
use super::piece::{Piece, PieceKind, SheetKind};
use super::ramp::{self, RampSheet};
use super::stakes::{self, Stake};
use super::supplies::Supplies;
use super::upkeep::{self, Low};
use super::walls::{self, BoxSheet, Kind};
use crate::plan::Plan;
use crate::profile::Profile;
use serde::Serialize;

/// Seconds in an hour.
const HOUR: f64 = 3600.0;

/// The dirt of one feature.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Moved {
    /// Its heap.
    pub heap: Heap,
    /// What lies on the yard, in the three states, m³.
    pub fill: Volumes,
    /// What is dug out of it, m³.
    pub cut: Volumes,
    /// Loads of what lies on the yard.
    pub loads: Loads,
}

/// Earth that goes from one place to another.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Way {
    /// Where it is taken.
    pub from: Place,
    /// Where it goes.
    pub to: Place,
    /// How much, m³.
    pub earth: Volumes,
    /// How far, m.
    pub distance: f64,
    /// Loads of it.
    pub loads: Loads,
}

/// All the dirt of a line.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Dirt {
    /// How the soil stands and changes its bulk.
    pub earth: Earth,
    /// Feature by feature, those without dirt too.
    pub features: Vec<Moved>,
    /// All that is heaped, m³.
    pub fill: Volumes,
    /// All that is dug out of the line, m³.
    pub cut: Volumes,
    /// What is wanted besides, from elsewhere, m³.
    pub missing: Volumes,
    /// What is dug out and wanted nowhere, m³.
    pub spare: Volumes,
    /// Loads of what is missing.
    pub loads: Loads,
    /// What goes where, by the least haulage.
    pub ways: Vec<Way>,
    /// Hours of work by hand of one grown person: digging, wheeling, shaping and packing. What is missing is only
    /// shaped.
    pub hours: f64,
    /// What walls of timber save at each landing of dirt.
    pub boxed: Vec<Boxed>,
}

/// Rods of one length.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Rods {
    /// Diameter, m.
    pub diameter: f64,
    /// Length, m.
    pub length: f64,
    /// How many.
    pub count: u32,
}

/// What the builder's own logs give in boards of one section.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Own {
    /// Thickness and width, m.
    pub section: [f64; 2],
    /// What they give.
    pub sawn: Sawn,
}

/// The whole job.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Job {
    /// Stakes, from the start on.
    pub stakes: Vec<Stake>,
    /// The start ramp, where it is of wood.
    pub ramp: Option<RampSheet>,
    /// Wooden lips, alike ones together.
    pub lips: Vec<LipSheet>,
    /// Boxed landings.
    pub boxes: Vec<BoxSheet>,
    /// The dirt.
    pub dirt: Dirt,
    /// Wood and earth to be bought.
    pub bill: Bill,
    /// Rods of iron.
    pub rods: Vec<Rods>,
    /// What the builder's logs give, in boards of each section that is wanted; empty without logs.
    pub own: Vec<Own>,
    /// Low points, where water gathers.
    pub lows: Vec<Low>,
    /// The share of its height that a heap of dirt loses until it has settled.
    pub settling: f64,
}

/// The job of a plan, on its own profile.
pub fn job(plan: &Plan, profile: &Profile, supplies: &Supplies) -> Job {
    let earth = Earth::of(plan.yard.soil);
    let ramp = ramp::start_ramp(plan, profile, &supplies.of_ramps());
    let lips = lip::lips(plan, profile, &supplies.of_lips());
    let boxes = walls::boxes(plan, profile, &supplies.of_boxes());
    let dirt = dirt(plan, profile, &earth, supplies);
    let (wanted, rods) = wanted(ramp.as_ref(), &lips, &boxes, supplies);
    let bill = materials::bill(wanted.iter().copied(), &dirt.missing, &supplies.buying);
    Job {
        stakes: stakes::stakes(plan, profile, &earth),
        own: own(&bill, supplies),
        lows: upkeep::low_points(profile),
        settling: upkeep::settling(supplies.placing),
        ramp,
        lips,
        boxes,
        dirt,
        bill,
        rods,
    }
}

fn dirt(plan: &Plan, profile: &Profile, earth: &Earth, supplies: &Supplies) -> Dirt {
    let carriers = &supplies.carriers;
    let heaps = dirt::heaps(plan, profile, earth);
    let sum = |of: &dyn Fn(&Heap) -> f64| heaps.iter().map(of).sum::<f64>();
    let fill = earth.placed(sum(&|h| h.fill));
    let (cuts, fills) = (haul::cuts(&heaps), haul::fills(&heaps, earth));
    let hauled = haul::haul(&cuts, &supplies.borrow, &fills);
    let from: Vec<Place> = cuts.iter().chain(&supplies.borrow).copied().collect();
    let way = |m: &haul::Move| {
        let moved = earth.dug(m.bank);
        Way {
            from: from[m.from],
            to: fills[m.to],
            earth: moved,
            distance: m.distance,
            loads: carriers.loads(&moved),
        }
    };
    let ways: Vec<Way> = hauled.moves.iter().map(way).collect();
    let labour = Labour::of(plan.yard.soil);
    let wheeled = ways.iter();
    let wheeled = wheeled.map(|w| labour.move_seconds(&w.earth, w.distance, carriers.barrow));
    let seconds = wheeled.sum::<f64>() + labour.shape_seconds(&fill);
    let missing = earth.dug(hauled.missing);
    let feature = |heap: &Heap| {
        let fill = earth.placed(heap.fill);
        Moved {
            heap: heap.clone(),
            fill,
            cut: earth.dug(heap.cut),
            loads: carriers.loads(&fill),
        }
    };
    Dirt {
        earth: *earth,
        features: heaps.iter().map(feature).collect(),
        fill,
        cut: earth.dug(sum(&|h| h.cut)),
        spare: earth.dug(hauled.spare),
        loads: carriers.loads(&missing),
        missing,
        ways,
        hours: seconds / HOUR,
        boxed: dirt::boxed(plan, profile, earth),
    }
}

/// Everything that is cut, as it is bought; and rods apart, as they are no wood.
fn wanted(
    ramp: Option<&RampSheet>,
    lips: &[LipSheet],
    boxes: &[BoxSheet],
    supplies: &Supplies,
) -> (Vec<Wanted>, Vec<Rods>) {
    let mut wanted: Vec<Wanted> = Vec::new();
    let mut rods: Vec<Rods> = Vec::new();
    for sheet in lips {
        for piece in &sheet.pieces {
            let board = matches!(
                piece.kind,
                PieceKind::DeckBoard | PieceKind::RippedDeckBoard
            );
            wanted.push(bought(
                if board { Grade::Board } else { Grade::Timber },
                piece,
            ));
        }
        wanted.extend(plywood(sheet, supplies));
    }
    let built = ramp.iter().flat_map(|r| &r.pieces);
    for piece in built.chain(boxes.iter().flat_map(|b| &b.pieces)) {
        let grade = match piece.kind {
            Kind::CrossTie | Kind::AnchorTie => {
                rods.push(Rods {
                    diameter: piece.section[0],
                    length: piece.length,
                    count: piece.count,
                });
                continue;
            }
            Kind::Sheeting | Kind::Deck => Grade::Board,
            _ => Grade::Timber,
        };
        wanted.push(bought(grade, piece));
    }
    (wanted, rods)
}

fn bought<K>(grade: Grade, piece: &Piece<K>) -> Wanted {
    Wanted {
        grade,
        section: piece.section,
        length: piece.length,
        count: piece.count,
    }
}

/// The sheets that the panels and the skin of a lip are laid out on: whole ones, nothing more is lost on them.
fn plywood(sheet: &LipSheet, supplies: &Supplies) -> Vec<Wanted> {
    let whole = |kind: SheetKind, count: usize| {
        let piece = sheet.sheets.iter().find(|piece| piece.kind == kind)?;
        Some(Wanted {
            grade: Grade::Sheet,
            section: [piece.thickness, supplies.sheet[1]],
            length: supplies.sheet[0],
            count: count as u32,
        })
    };
    let panels = sheet
        .lip_box
        .as_ref()
        .map_or(0, |b| b.panels.layout.sheets.len());
    let skin = match &sheet.deck {
        Deck::Skin(skin) => skin.layout.sheets.len(),
        Deck::Boards(_) => 0,
    };
    [(SheetKind::Panel, panels), (SheetKind::Skin, skin)]
        .into_iter()
        .filter_map(|(kind, count)| whole(kind, count))
        .collect()
}

/// What the builder's logs give, in boards of each section that is on the bill.
fn own(bill: &Bill, supplies: &Supplies) -> Vec<Own> {
    if supplies.logs.is_empty() {
        return Vec::new();
    }
    let wood = bill.lines.iter().filter(|line| line.grade != Grade::Sheet);
    let give = |line: &materials::Line| Own {
        section: line.section,
        sawn: supplies.log_rule.sawn(&supplies.logs, line.section),
    };
    wood.map(give).collect()
}

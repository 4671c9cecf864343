//! How panels and skins are cut from sheets of plywood.

use super::plate::{Plate, TYPE, WIDE, letter};
use super::reader::Reader;
use super::shapes::{at, round};
use crate::scene::sheet::{Align, Ink};
use crate::scene::view::Strip;
use glam::DVec2;
use sim::build::lip::{Deck, Grain, LipSheet, Stock};
use sim::build::outline::{Edge, Outline};
use sim::num;

/// Room at the left of a sheet, and between two, px.
const ROOM: [f64; 2] = [108.0, 26.0];

/// Most height of a sheet, px: two go on a page.
const HIGHEST: f64 = 320.0;

/// A part on a sheet.
#[derive(Clone, PartialEq)]
struct Laid {
    part: usize,
    outline: Outline,
}

/// Every sheet with what is cut from it, alike ones once with their number. On a sheet stand the letters of parts, and
/// at its edges where each part's low corner lies.
///
/// Letters: the parts of a side panel in their order from A; then the piece of skin.
pub fn panels(lip: &LipSheet, stock: &Stock, reader: Reader) -> Plate {
    let mut plate = Plate::new(WIDE, reader);
    let sheets = grouped(of_panels(lip).into_iter().chain(of_skin(lip)));
    let columns = if sheets.len() > 2 { 2 } else { 1 };
    let wide = if columns == 2 {
        (WIDE - 2.0 * ROOM[0] - ROOM[1]) / 2.0
    } else {
        WIDE - 2.0 * ROOM[0]
    };
    let scale = (wide / stock.sheet[0]).min(HIGHEST / stock.sheet[1]);
    let mut top = 0.0;
    for row in sheets.chunks(columns) {
        let base = top + 24.0 + stock.sheet[1] * scale;
        for (column, (parts, count)) in row.iter().enumerate() {
            let left = ROOM[0] + column as f64 * (wide + ROOM[0] + ROOM[1] - 20.0);
            let origin = DVec2::new(left, base);
            draw(parts, *count, stock.sheet, at(origin, scale), &mut plate);
        }
        top = plate.lowest() + 18.0;
    }
    plate.done()
}

fn of_panels(lip: &LipSheet) -> Vec<Vec<Laid>> {
    let Some(panels) = lip.lip_box.as_ref().map(|b| &b.panels) else {
        return Vec::new();
    };
    let laid = |on: &Vec<_>| {
        let laid = on.iter().map(|l: &sim::build::dropping::Laid| Laid {
            part: l.part,
            outline: panels.parts[l.part].laid(l.at, l.quarters),
        });
        laid.collect()
    };
    panels.layout.sheets.iter().map(laid).collect()
}

fn of_skin(lip: &LipSheet) -> Vec<Vec<Laid>> {
    let Deck::Skin(skin) = &lip.deck else {
        return Vec::new();
    };
    let part = lip.lip_box.as_ref().map_or(0, |b| b.panels.parts.len());
    // On the sheet the grain runs along its length.
    let [long, wide] = match skin.bend.grain {
        Grain::Along => skin.size,
        Grain::Across => [skin.size[1], skin.size[0]],
    };
    let laid = |on: &Vec<sim::build::packing::Placed>| {
        let laid = on.iter().map(|p| Laid {
            part,
            outline: rectangle(p.at.into(), DVec2::new(long, wide)),
        });
        laid.collect()
    };
    skin.layout.sheets.iter().map(laid).collect()
}

fn rectangle(low: DVec2, size: DVec2) -> Outline {
    let corners = [
        DVec2::ZERO,
        DVec2::new(size.x, 0.0),
        size,
        DVec2::new(0.0, size.y),
    ];
    let edge = |i: usize| Edge::straight(low + corners[i], low + corners[(i + 1) % 4]);
    Outline {
        edges: (0..4).map(edge).collect(),
    }
}

/// Sheets that are alike, once with their number.
fn grouped(sheets: impl Iterator<Item = Vec<Laid>>) -> Vec<(Vec<Laid>, u32)> {
    let mut groups: Vec<(Vec<Laid>, u32)> = Vec::new();
    for sheet in sheets {
        match groups.iter_mut().find(|(known, _)| *known == sheet) {
            Some((_, count)) => *count += 1,
            None => groups.push((sheet, 1)),
        }
    }
    groups
}

fn draw(parts: &[Laid], count: u32, [long, wide]: [f64; 2], strip: Strip, plate: &mut Plate) {
    let reader = plate.reader;
    let px = |p: DVec2| strip.place(p);
    for part in parts {
        let points: Vec<_> = round(&part.outline, strip.scale)
            .into_iter()
            .map(px)
            .collect();
        plate.sheet.area(Ink::Built, points.iter().copied());
        plate.sheet.line(Ink::Wood, 1.2, points);
    }
    let sheet = rectangle(DVec2::ZERO, DVec2::new(long, wide));
    plate
        .sheet
        .line(Ink::Wood, 1.8, round(&sheet, 1.0).into_iter().map(px));
    for part in parts {
        let [low, high] = part.outline.bounds();
        let name = letter(part.part);
        let middle = px(low.lerp(high, 0.5));
        // A part that rises has its letter where it is high.
        let area = part.outline.area() / (high - low).element_product();
        let at = if area > 0.9 {
            middle
        } else {
            px(thick(&part.outline))
        };
        plate.put(
            name,
            at,
            &[(at + DVec2::new(0.0, 0.36 * TYPE), Align::Middle)],
        );
    }
    let along: Vec<_> = edges(parts, 0, long)
        .into_iter()
        .map(|x| {
            let foot = px(DVec2::new(x, 0.0));
            (foot, vec![reader.fine(x)])
        })
        .collect();
    let up: Vec<_> = edges(parts, 1, wide)
        .into_iter()
        .map(|y| (px(DVec2::new(0.0, y)), reader.fine(y)))
        .collect();
    let corner = px(DVec2::ZERO);
    plate.row_between(
        corner.y + 12.0,
        [
            (corner.x - ROOM[0]).max(6.0),
            px(DVec2::new(long, 0.0)).x + 30.0,
        ],
        &along,
    );
    plate.column(corner.x - 16.0, &up);
    outside(count, [long, wide], &strip, plate);
}

/// Where parts lie along one axis, m, but for what lies at the sheet's own edges: their low corners, and of
/// rectangles, which have no template, the other ends.
fn edges(parts: &[Laid], axis: usize, end: f64) -> Vec<f64> {
    const SAME: f64 = 5e-4;
    let ends = parts.iter().flat_map(|p| {
        let [low, high] = p.outline.bounds();
        let plain = p.outline.area() > 0.999 * (high - low).element_product();
        [Some(low[axis]), plain.then_some(high[axis])]
    });
    let mut all: Vec<f64> = ends.flatten().collect();
    all.sort_by(f64::total_cmp);
    all.dedup_by(|a, b| (*a - *b).abs() < SAME);
    all.retain(|v| *v > SAME && *v < end - SAME);
    all
}

/// The sheet's own measures and how many there are.
fn outside(count: u32, [long, wide]: [f64; 2], strip: &Strip, plate: &mut Plate) {
    let reader = plate.reader;
    let text = format!("{count} × ({} × {})", reader.fine(long), reader.fine(wide));
    let over = strip.place(DVec2::new(0.0, wide)) - DVec2::new(0.0, 6.0);
    plate.write(over, Align::Right, text);
}

/// The middle of a part's largest circle, about: where there is room for a letter.
fn thick(outline: &Outline) -> DVec2 {
    let points = round(outline, 100.0);
    let [low, high] = outline.bounds();
    let mut best = (0.0, low);
    for i in 1..20 {
        for j in 1..20 {
            let p = low + (high - low) * DVec2::new(f64::from(i), f64::from(j)) / 20.0;
            let room = inside(&points, p);
            if room > best.0 {
                best = (room, p);
            }
        }
    }
    best.1
}

/// How far within a closed line a point is; 0 outside.
fn inside(points: &[DVec2], p: DVec2) -> f64 {
    let mut within = false;
    let mut nearest = f64::INFINITY;
    for (i, &a) in points.iter().enumerate() {
        let b = points[(i + 1) % points.len()];
        if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y) {
            within = !within;
        }
        let way = b - a;
        let share = num::clamp((p - a).dot(way) / way.length_squared().max(1e-12), 0.0, 1.0);
        nearest = nearest.min((a + way * share - p).length());
    }
    if within { nearest } else { 0.0 }
}

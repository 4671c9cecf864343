//! Where to take earth from and where to put it, so that least is hauled far.

use super::dirt::Heap;
use super::heap::Earth;
use crate::num;
use petgraph::algo::bellman_ford;
use petgraph::graph::{DiGraph, EdgeIndex, NodeIndex};
use serde::{Deserialize, Serialize};

/// A place that has earth, or wants it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// Station along the line, m.
    pub x: f64,
    /// How far to the left of the line, m; negative to the right.
    #[serde(default)]
    pub y: f64,
    /// Earth there, m³ as it lies in the ground.
    pub bank: f64,
    /// Index of the feature that it belongs to; none of a place beside the line.
    #[serde(default)]
    pub feature: Option<usize>,
}

/// So much of the earth at one place goes to another.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Move {
    /// Index of the place it comes from: the cuts of the line first, then the borrow places.
    pub from: usize,
    /// Index of the place it goes to.
    pub to: usize,
    /// m³ as it lay in the ground.
    pub bank: f64,
    /// From one to the other in a straight line, m.
    pub distance: f64,
}

/// What goes where.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Haul {
    /// Each move, by place of origin and destination.
    pub moves: Vec<Move>,
    /// Earth that is still wanted, m³ as it lies in the ground: to be bought or dug elsewhere.
    pub missing: f64,
    /// Earth from cuts that nobody wants, m³ as it lay in the ground.
    pub spare: f64,
    /// Earth times distance over all moves, m⁴.
    pub haulage: f64,
}

/// The places that the line itself gives earth at.
pub fn cuts(heaps: &[Heap]) -> Vec<Place> {
    let place = |h: &Heap| Some(at(h, h.cut_at?, h.cut)).filter(|p| p.bank > 0.0);
    heaps.iter().filter_map(place).collect()
}

/// The places that the line itself wants earth at, as it lies in the ground before it is dug.
pub fn fills(heaps: &[Heap], earth: &Earth) -> Vec<Place> {
    let place = |h: &Heap| Some(at(h, h.fill_at?, earth.placed(h.fill).bank));
    let places = heaps.iter().filter_map(place);
    places.filter(|p| p.bank > 0.0).collect()
}

fn at(heap: &Heap, x: f64, bank: f64) -> Place {
    Place {
        x,
        y: 0.0,
        bank,
        feature: Some(heap.feature),
    }
}

/// Distances count in whole millimetres, so that lengths of ways add up without rounding and no round trip seems to
/// be shorter than none.
const GRAIN: f64 = 1e-3;

/// Earth that is cut anyway is taken before any that would be dug besides: as if it lay nearer by so many grains, more
/// than all ways in a yard together.
const CUT_FIRST: f64 = 1e9;

/// Less earth than this is rounding, m³.
const NOTHING: f64 = 1e-9;

/// The moves with the least haulage: all that is wanted comes, as far as there is earth; first what is cut anyway,
/// then what is borrowed.
///
/// # References
/// The transportation problem of Hitchcock 1941, solved as a flow of least cost by ways of least cost, one after the
/// other (Busacker and Gowen 1960).
pub fn haul(cuts: &[Place], borrow: &[Place], wanted: &[Place]) -> Haul {
    let from: Vec<Place> = cuts.iter().chain(borrow).copied().collect();
    let mut flow = Flow::new(&from, cuts.len(), wanted);
    while flow.push() {}
    let mut haul = Haul {
        missing: left(wanted, flow.reached(wanted.len())),
        spare: left(cuts, flow.left_from(cuts.len())),
        ..Haul::default()
    };
    for (i, a) in from.iter().enumerate() {
        for (j, b) in wanted.iter().enumerate() {
            let bank = flow.along(i, j);
            if bank > NOTHING {
                let distance = apart(a, b);
                haul.haulage += bank * distance;
                haul.moves.push(Move {
                    from: i,
                    to: j,
                    bank,
                    distance,
                });
            }
        }
    }
    haul
}

fn apart(a: &Place, b: &Place) -> f64 {
    num::hypot(a.x - b.x, a.y - b.y)
}

fn left(places: &[Place], moved: f64) -> f64 {
    let all: f64 = places.iter().map(|p| num::max(p.bank, 0.0)).sum();
    let left = all - moved;
    if left > NOTHING { left } else { 0.0 }
}

/// An arc as it is and turned back: what may still go, and what went and may come back.
#[derive(Clone, Copy)]
struct Arc {
    ends: [usize; 2],
    cost: f64,
    room: f64,
    used: f64,
}

/// Flow from one source by way of the places that have earth and those that want it to one sink.
struct Flow {
    arcs: Vec<Arc>,
    counts: [usize; 2],
}

impl Flow {
    fn new(from: &[Place], cuts: usize, to: &[Place]) -> Self {
        let (n, m) = (from.len(), to.len());
        let sink = n + m + 1;
        let mut arcs = Vec::new();
        let mut arc = |ends, cost, room| {
            arcs.push(Arc {
                ends,
                cost,
                room,
                used: 0.0,
            });
        };
        for (i, a) in from.iter().enumerate() {
            arc([0, 1 + i], if i < cuts { -CUT_FIRST } else { 0.0 }, a.bank);
        }
        for (j, b) in to.iter().enumerate() {
            arc([1 + n + j, sink], 0.0, b.bank);
        }
        for (i, a) in from.iter().enumerate() {
            for (j, b) in to.iter().enumerate() {
                let cost = (apart(a, b) / GRAIN).round();
                arc([1 + i, 1 + n + j], cost, f64::INFINITY);
            }
        }
        Self {
            arcs,
            counts: [n, m],
        }
    }

    /// Sends as much as goes along the cheapest way that is left; whether there was one.
    fn push(&mut self) -> bool {
        let nodes = self.counts[0] + self.counts[1] + 2;
        let mut graph = DiGraph::<(), f64>::new();
        for _ in 0..nodes {
            graph.add_node(());
        }
        // Which arc an edge stands for, and whether turned back.
        let mut meant = Vec::new();
        for (i, arc) in self.arcs.iter().enumerate() {
            let [a, b] = arc.ends.map(NodeIndex::new);
            if arc.room > NOTHING {
                graph.add_edge(a, b, arc.cost);
                meant.push((i, false));
            }
            if arc.used > NOTHING {
                graph.add_edge(b, a, -arc.cost);
                meant.push((i, true));
            }
        }
        let Ok(paths) = bellman_ford(&graph, NodeIndex::new(0)) else {
            return false;
        };
        let mut way = Vec::new();
        let mut node = NodeIndex::new(nodes - 1);
        while let Some(before) = paths.predecessors[node.index()] {
            way.push(cheapest(&graph, before, node));
            node = before;
        }
        let room = |&edge: &EdgeIndex| {
            let (i, back) = meant[edge.index()];
            if back {
                self.arcs[i].used
            } else {
                self.arcs[i].room
            }
        };
        let most = way.iter().map(room).fold(f64::INFINITY, num::min);
        for edge in &way {
            let (i, back) = meant[edge.index()];
            let by = if back { -most } else { most };
            self.arcs[i].room -= by;
            self.arcs[i].used += by;
        }
        !way.is_empty()
    }

    fn left_from(&self, count: usize) -> f64 {
        self.arcs[..count].iter().map(|a| a.used).sum()
    }

    fn reached(&self, count: usize) -> f64 {
        let first = self.counts[0];
        self.arcs[first..first + count].iter().map(|a| a.used).sum()
    }

    fn along(&self, i: usize, j: usize) -> f64 {
        let [n, m] = self.counts;
        self.arcs[n + m + i * m + j].used
    }
}

/// Of the edges from one node to another, the cheapest.
fn cheapest(graph: &DiGraph<(), f64>, from: NodeIndex, to: NodeIndex) -> EdgeIndex {
    let edges = graph.edges_connecting(from, to);
    let least = edges.min_by(|a, b| a.weight().total_cmp(b.weight()));
    least
        .map(|e| petgraph::visit::EdgeRef::id(&e))
        .unwrap_or_default()
}

//! What the page's own thread worked, by the browser's trace of it: processor time, task by task.
//!
//! It is what the page needs, whatever else the machine does meanwhile: time that other programs have is no
//! part of it, and waiting is none either.

use anyhow::{Context, Result, ensure};
use serde::Deserialize;
use serde_json::Value;

/// What of the trace is looked at: tasks, what they do, and marks that the page sets.
pub(crate) const CATEGORIES: &str =
    "disabled-by-default-devtools.timeline,devtools.timeline,blink.user_timing";

/// How much slower the processor of a cheap phone is than this one.
pub const SLOWER: f64 = 4.0;

/// A piece of work that is always the same, done ten times a second: it takes longer where the machine has other
/// things to do with its memory and with the other half of a processor.
pub(crate) const GAUGE: &str = "\
    function carrylinePiece() { \
      let x = 0.5, sum = 0; \
      for (let i = 0; i < 200000; i++) { x = 3.9 * x * (1 - x); sum += Math.sqrt(x); } \
      return sum; \
    } \
    setInterval(carrylinePiece, 100); return true";

/// The piece's name in the trace.
const PIECE: &str = "carrylinePiece";

/// What the piece takes on the machine that the bars were set on when nothing disturbs it, ms: the least of some
/// hundreds.
const CALM: f64 = 0.44;

/// Fewest pieces by which the machine is judged.
const PIECES: usize = 8;

/// One event of the trace; times in µs.
#[derive(Deserialize)]
struct Event {
    name: String,
    pid: i64,
    tid: i64,
    ts: f64,
    #[serde(default)]
    dur: f64,
    tdur: Option<f64>,
    #[serde(default)]
    args: Value,
}

#[derive(Deserialize)]
struct Entry {
    message: Message,
}

#[derive(Deserialize)]
struct Message {
    method: String,
    params: Event,
}

/// A task of the page's thread: from when until when, and how much of that the processor was at it, ms.
#[derive(Clone, Copy, Debug)]
pub struct Task {
    /// Its begin.
    pub from: f64,
    /// Its end.
    pub until: f64,
    /// What it would have taken of the processor of a calm machine.
    pub worked: f64,
}

/// From when on work is looked at.
#[derive(Clone, Copy, Debug)]
pub enum Since<'a> {
    /// From a mark on that the page has set.
    Mark(&'a str),
    /// From so many ms before the last mark on.
    Before(f64),
}

/// What the page's thread did between two marks.
#[derive(Clone, Debug)]
pub struct Work {
    /// When the marks were set, ms.
    pub span: [f64; 2],
    /// All tasks, one after the other.
    pub tasks: Vec<Task>,
    /// When the page's frames began, ms.
    frames: Vec<f64>,
    /// When it got moves of a finger or a mouse, ms.
    moves: Vec<f64>,
    /// How much longer the processor needs for the same now than on a calm machine.
    pub slowness: f64,
}

/// Whether an event is the piece of work that gauges the machine.
fn is_piece(event: &Event) -> bool {
    event.name == "FunctionCall" && event.args["data"]["functionName"] == PIECE
}

/// How much longer the piece takes than on a calm machine.
fn slowness<'a>(events: impl Iterator<Item = &'a Event>) -> Result<f64> {
    let mut pieces: Vec<_> = events
        .filter(|e| is_piece(e))
        .filter_map(|e| e.tdur)
        .collect();
    pieces.sort_by(f64::total_cmp);
    ensure!(
        pieces.len() >= PIECES,
        "the machine was gauged only {} times",
        pieces.len()
    );
    Ok(pieces[pieces.len() / 2] / 1e3 / CALM)
}

impl Work {
    /// Reads a trace up to a mark.
    pub(crate) fn read(trace: &[String], since: &Since<'_>, until: &str) -> Result<Self> {
        let begin = match since {
            Since::Mark(name) => name,
            Since::Before(_) => until,
        };
        let events = events(trace, [begin, until])?;
        let last = events.iter().rfind(|e| e.name == until);
        let last = last.with_context(|| format!("the page never set {until}"))?;
        let thread = |e: &&Event| (e.pid, e.tid) == (last.pid, last.tid);
        let slowness = slowness(events.iter().filter(thread))?;
        let own = |e: &&Event| thread(e) && e.ts <= last.ts;
        let first = match since {
            Since::Before(ms) => last.ts - ms * 1e3,
            Since::Mark(name) => {
                let set = events.iter().filter(own).find(|e| e.name == *name);
                set.with_context(|| format!("the page never set {name}"))?
                    .ts
            }
        };
        let ours = events.iter().filter(own).filter(|e| e.ts + e.dur >= first);
        let ours: Vec<_> = ours.collect();
        let named = |name: &'static str| ours.iter().copied().filter(move |e| e.name == name);
        let pieces: Vec<_> = ours.iter().copied().filter(|e| is_piece(e)).collect();
        let tasks = named("RunTask").map(|task| {
            let inside = |e: &&&Event| e.ts >= task.ts && e.ts <= task.ts + task.dur;
            let gauging: f64 = pieces.iter().filter(inside).filter_map(|e| e.tdur).sum();
            let worked = task.tdur.context("the trace has no processor times")? - gauging;
            Ok(Task {
                from: task.ts / 1e3,
                until: (task.ts + task.dur) / 1e3,
                worked: worked / 1e3 / slowness,
            })
        });
        let moved = |e: &&Event| e.args["data"]["type"] == "pointermove";
        Ok(Self {
            span: [first / 1e3, last.ts / 1e3],
            tasks: tasks.collect::<Result<_>>()?,
            slowness,
            frames: named("FireAnimationFrame").map(|e| e.ts / 1e3).collect(),
            moves: named("EventDispatch")
                .filter(moved)
                .map(|e| e.ts / 1e3)
                .collect(),
        })
    }

    /// How long it would have taken up to the last mark, ms, on a processor so many times slower: each task begins
    /// when it did, as what it waited for comes no later, or once those before it have ended.
    pub fn on_slower(&self, times: f64) -> f64 {
        let [from, until] = self.span;
        let end = self.tasks.iter().fold(from, |before, task| {
            // The last of them sets the mark on its way.
            let share = (until - task.from) / (task.until - task.from).max(1e-6);
            before.max(task.from) + times * task.worked * share.min(1.0)
        });
        end - from
    }

    /// What each frame took of the processor, ms: all that was done since the one before.
    pub fn frames(&self) -> Vec<f64> {
        let ends: Vec<_> = self.frame_tasks().collect();
        ends.windows(2)
            .map(|pair| self.worked(pair[0] + 1, pair[1]))
            .collect()
    }

    /// What was worked, ms, for each move from when the page got it until its frame was drawn.
    pub fn moves(&self) -> Vec<f64> {
        let frames: Vec<_> = self.frame_tasks().collect();
        let drawn = |moved: &f64| {
            let got = self.tasks.iter().position(|task| task.until >= *moved)?;
            let frame = frames.iter().find(|&&frame| frame >= got)?;
            Some(self.worked(got, *frame))
        };
        self.moves.iter().filter_map(drawn).collect()
    }

    /// What the tasks from one to another took of the processor, ms.
    fn worked(&self, first: usize, last: usize) -> f64 {
        self.tasks[first..=last]
            .iter()
            .map(|task| task.worked)
            .sum()
    }

    /// The tasks that draw a frame, by their places.
    fn frame_tasks(&self) -> impl Iterator<Item = usize> {
        let holds = |task: &Task| {
            self.frames
                .iter()
                .any(|&at| (task.from..=task.until).contains(&at))
        };
        self.tasks
            .iter()
            .enumerate()
            .filter(move |(_, task)| holds(task))
            .map(|(i, _)| i)
    }
}

/// The events of a trace that are asked for, and those of the marks, by when they began.
fn events(trace: &[String], marks: [&str; 2]) -> Result<Vec<Event>> {
    let [begin, until] = marks;
    let names = [
        "RunTask",
        "FireAnimationFrame",
        "EventDispatch",
        "FunctionCall",
        begin,
        until,
    ];
    let names = names.map(|name| format!("\"name\":\"{name}\""));
    let wanted = |text: &&String| names.iter().any(|name| text.contains(name));
    let mut events = Vec::new();
    for text in trace.iter().filter(wanted) {
        let Entry { message } = serde_json::from_str(text)?;
        ensure!(
            message.method == "Tracing.dataCollected",
            "no trace: {text}"
        );
        events.push(message.params);
    }
    events.sort_by(|a, b| a.ts.total_cmp(&b.ts));
    Ok(events)
}

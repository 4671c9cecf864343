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

/// Work of which a piece, always the same, is done ten times a second: it takes longer where the machine is
/// another one, or has other things to do with its memory and with the other half of a processor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gauge {
    /// Reckoning, as in a page that starts.
    Reckoning,
    /// Lines and areas laid on a canvas, as in a frame of the ride.
    Painting,
}

impl Gauge {
    const ALL: [Self; 2] = [Self::Reckoning, Self::Painting];

    /// The piece's name in the trace.
    const fn piece(self) -> &'static str {
        match self {
            Self::Reckoning => "carrylineReckons",
            Self::Painting => "carrylinePaints",
        }
    }

    /// What the piece takes on the machine that the bars were set on when nothing disturbs it, ms: the least of
    /// some hundreds.
    const fn calm(self) -> f64 {
        match self {
            Self::Reckoning => 0.44,
            Self::Painting => 4.04,
        }
    }

    /// What makes a page do the piece now and then.
    pub(crate) fn script(self) -> String {
        let piece = self.piece();
        let work = match self {
            Self::Reckoning => {
                "let x = 0.5, sum = 0; \
                 for (let i = 0; i < 200000; i++) { x = 3.9 * x * (1 - x); sum += Math.sqrt(x); } \
                 return sum;"
            }
            // What is read back has been painted.
            Self::Painting => {
                "pen.clearRect(0, 0, 400, 300); \
                 const line = (k, points, far) => { pen.beginPath(); \
                   for (let i = 0; i < points; i++) pen.lineTo(far * i, 150 + (20 + 5 * k) * Math.sin(0.3 * i + k)); }; \
                 for (let k = 0; k < 24; k++) { \
                   pen.strokeStyle = `rgb(${9 * k}, 90, 120)`; pen.lineWidth = 0.6 + (k % 4); line(k, 60, 6.5); pen.stroke(); \
                   pen.fillStyle = `rgb(90, ${9 * k}, 120)`; line(k + 1, 14, 4 + k % 5); pen.fill(); } \
                 return pen.getImageData(0, 0, 1, 1).data[0];"
            }
        };
        format!(
            "const sheet = document.createElement('canvas'); [sheet.width, sheet.height] = [400, 300]; \
             const pen = sheet.getContext('2d'); \
             function {piece}() {{ {work} }} \
             window.gauging = setInterval({piece}, 100); return true"
        )
    }
}

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
    /// How often it laid the page out anew.
    pub layouts: usize,
    /// How much longer the processor needs for the same now than on a calm machine.
    pub slowness: f64,
}

/// The piece of work by which the machine is gauged that an event is.
fn piece(event: &Event) -> Option<Gauge> {
    let name = &event.args["data"]["functionName"];
    Gauge::ALL
        .into_iter()
        .find(|gauge| event.name == "FunctionCall" && name == gauge.piece())
}

/// How much longer the pieces take than on a calm machine.
fn slowness<'a>(events: impl Iterator<Item = &'a Event>) -> Result<f64> {
    let times = events.filter_map(|e| Some(e.tdur? / 1e3 / piece(e)?.calm()));
    let mut times: Vec<_> = times.collect();
    times.sort_by(f64::total_cmp);
    ensure!(
        times.len() >= PIECES,
        "the machine was gauged only {} times",
        times.len()
    );
    Ok(times[times.len() / 2])
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
        let pieces: Vec<_> = ours
            .iter()
            .copied()
            .filter(|e| piece(e).is_some())
            .collect();
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
            layouts: named("Layout").count(),
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
        "Layout",
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

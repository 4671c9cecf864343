//! A program that runs beside the checks and is ended with them.

use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader};
use std::net::TcpStream;
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

/// How long a program may take to answer.
const PATIENCE: Duration = Duration::from_secs(120);

/// A running program; dropping it ends it.
pub struct Running(Child);

impl Running {
    /// Starts a program and waits for a line of its output in which `find` finds something.
    pub fn start<T>(command: &mut Command, find: impl Fn(&str) -> Option<T>) -> Result<(Self, T)> {
        let mut child = command
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .with_context(|| format!("cannot start {command:?}"))?;
        let output = child.stdout.take().context("its output is piped")?;
        let running = Self(child);
        let mut lines = BufReader::new(output).lines();
        let mut said = String::new();
        for line in lines.by_ref() {
            let line = line?;
            if let Some(found) = find(&line) {
                // Read on, so that the program never waits for a full pipe.
                thread::spawn(move || lines.for_each(drop));
                return Ok((running, found));
            }
            said.push_str(&line);
            said.push('\n');
        }
        bail!("{command:?} ended and said only: {said}")
    }

    /// Starts a program that says nothing, and waits until it answers on its port.
    pub fn silent(command: &mut Command, port: u16) -> Result<Self> {
        let child = command
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .spawn()
            .with_context(|| format!("cannot start {command:?}"))?;
        let running = Self(child);
        let begun = Instant::now();
        while TcpStream::connect(("127.0.0.1", port)).is_err() {
            if begun.elapsed() > PATIENCE {
                bail!("{command:?} does not answer on port {port}");
            }
            thread::sleep(Duration::from_millis(50));
        }
        Ok(running)
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        // It may have ended by itself.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

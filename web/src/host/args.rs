//! What the command line asks for.

use anyhow::{Context, Result, bail};
use lexopt::prelude::*;
use std::path::PathBuf;

/// The port used when none is asked for.
const USUAL_PORT: u16 = 7327;

/// What `--help` prints.
pub const HELP: &str = "\
Builds the Carryline page and serves it on this machine.

  cargo run --release                       build, then serve on port 7327
  cargo run --release -- --port N           serve on port N; 0 takes any free one
  cargo run --release -- --out FOLDER       only build, into FOLDER, for any static host
";

/// What to do.
#[derive(Debug, PartialEq)]
pub enum Args {
    /// Say how the program is used.
    Help,
    /// Build the page into a folder and stop.
    Build {
        /// Where it goes.
        out: PathBuf,
    },
    /// Build the page and serve it on loopback.
    Serve {
        /// The port; 0 takes any free one.
        port: u16,
    },
}

impl Args {
    /// Reads the program's own command line.
    pub fn from_command_line() -> Result<Self> {
        Self::read(lexopt::Parser::from_env())
    }

    fn read(mut parser: lexopt::Parser) -> Result<Self> {
        let (mut port, mut out) = (None, None);
        while let Some(arg) = parser.next()? {
            match arg {
                Long("help") | Short('h') => return Ok(Self::Help),
                Long("port") => {
                    let given = parser.value()?.string()?;
                    port = Some(given.parse().with_context(|| {
                        format!("--port: given {given:?}; accepted a number from 0 to 65535")
                    })?);
                }
                Long("out") => out = Some(PathBuf::from(parser.value()?)),
                _ => bail!("{}; see --help", arg.unexpected()),
            }
        }
        match (out, port) {
            (Some(_), Some(_)) => bail!("--out only builds, so --port has no use beside it"),
            (Some(out), None) => Ok(Self::Build { out }),
            (None, port) => Ok(Self::Serve {
                port: port.unwrap_or(USUAL_PORT),
            }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(args: &[&str]) -> Result<Args> {
        Args::read(lexopt::Parser::from_args(args))
    }

    #[test]
    fn nothing_asked_serves_on_the_usual_port() {
        assert_eq!(read(&[]).unwrap(), Args::Serve { port: USUAL_PORT });
    }

    #[test]
    fn a_port_and_a_folder_are_taken() {
        assert_eq!(read(&["--port", "0"]).unwrap(), Args::Serve { port: 0 });
        let out = PathBuf::from("here");
        assert_eq!(read(&["--out", "here"]).unwrap(), Args::Build { out });
    }

    #[test]
    fn what_cannot_be_read_says_what_is_accepted() {
        let error = format!("{:#}", read(&["--port", "70000"]).unwrap_err());
        assert!(
            error.contains("70000") && error.contains("0 to 65535"),
            "{error}"
        );
        assert!(read(&["--out", "x", "--port", "1"]).is_err());
        assert!(read(&["--what"]).is_err());
    }
}

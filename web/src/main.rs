//! Builds the page and serves it on this machine, or writes it out for any static host.

mod host;

use anyhow::Result;
use host::{args::Args, assets::Assets, serve, site};
use std::process::ExitCode;

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("carryline: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<()> {
    match Args::from_command_line()? {
        Args::Help => {
            print!("{}", host::args::HELP);
            Ok(())
        }
        Args::Build { out } => {
            site::build_into(&out)?;
            println!("The page is in {}", out.display());
            Ok(())
        }
        Args::Serve { port } => {
            let folder = site::default_folder();
            // The door is tried before the long build, so that a busy port is known at once.
            let listener = serve::open(port)?;
            site::build_into(&folder)?;
            serve::run(listener, Assets::load(&folder)?)
        }
    }
}

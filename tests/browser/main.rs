//! The page in a real browser: Chromium driven over WebDriver against the served page.

use browser::Ground;
use libtest_mimic::{Arguments, Failed, Trial};
use std::process::ExitCode;
use std::sync::Arc;

type Case = fn(&Ground) -> anyhow::Result<()>;

const CASES: [(&str, Case); 0] = [];

fn main() -> ExitCode {
    let mut arguments = Arguments::from_args();
    // One browser at a time: they would only wait for one another.
    arguments.test_threads = Some(1);
    let ground = match (!arguments.list).then(Ground::start).transpose() {
        Ok(ground) => ground.map(Arc::new),
        Err(error) => {
            eprintln!("the browser checks cannot start: {error:#}");
            return ExitCode::FAILURE;
        }
    };
    let trials = CASES.map(|(name, case)| {
        let ground = ground.clone();
        Trial::test(name, move || match ground {
            Some(ground) => case(&ground).map_err(|error| Failed::from(format!("{error:?}"))),
            None => Err("only listed".into()),
        })
    });
    let conclusion = libtest_mimic::run(&arguments, trials.into());
    // Ends the host program and the driver, which leaving the process would not.
    drop(ground);
    conclusion.exit_code()
}

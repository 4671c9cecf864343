//! What lies where, and how long it may be.

use std::fs;
use std::path::Path;
use std::process::Command;

/// Longest source file, lines.
const LONGEST: usize = 500;

/// What may lie at the top, besides dotfiles.
const TOP: [&str; 9] = [
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "README.md",
    "rust-toolchain.toml",
    "sim",
    "tests",
    "web",
    "www",
];

/// Every file of the repository that git knows or would take.
pub fn files() -> Vec<String> {
    let listed = Command::new("git")
        .args(["ls-files", "--cached", "--others", "--exclude-standard"])
        .current_dir(tests::repository())
        .output()
        .expect("git runs");
    let names = String::from_utf8(listed.stdout).expect("names are UTF-8");
    let known = names.lines().map(str::to_owned);
    let files: Vec<_> = known.filter(|name| path(name).is_file()).collect();
    assert!(files.len() > 20, "only {} files were found", files.len());
    files
}

pub fn path(name: &str) -> std::path::PathBuf {
    tests::repository().join(name)
}

/// Files that people write and read, with their text.
pub fn sources() -> Vec<(String, String)> {
    let read = |name: String| {
        let ending = Path::new(&name).extension()?.to_str()?;
        let written = ["rs", "js", "css", "html", "sh", "md", "toml", "svg", "json"];
        let text = written
            .contains(&ending)
            .then(|| fs::read_to_string(path(&name)))?;
        Some((name, text.expect("sources are UTF-8")))
    };
    files().into_iter().filter_map(read).collect()
}

#[test]
fn the_top_holds_only_what_is_agreed() {
    for name in files() {
        let top = name.split('/').next().unwrap_or_default();
        assert!(
            top.starts_with('.') || TOP.contains(&top),
            "{name} does not belong at the top"
        );
    }
}

#[test]
fn no_source_is_too_long() {
    for (name, text) in sources() {
        let lines = text.lines().count();
        assert!(
            lines <= LONGEST,
            "{name} has {lines} lines; accepted {LONGEST} or less"
        );
    }
}

#[test]
fn nothing_points_at_one_machine() {
    let folders = ["home", "root", "tmp", "work", "Users"].map(|folder| format!("/{folder}/"));
    for (name, text) in sources() {
        for (line, number) in text.lines().zip(1..) {
            let found = folders.iter().find(|folder| line.contains(*folder));
            assert_eq!(found, None, "{name}:{number}: {line}");
        }
    }
}

/// The product asks no other host for anything; a name space is an address nobody asks.
#[test]
fn no_other_host_is_named() {
    let shown = ["www.w3.org/", "127.0.0.1", "{"];
    let product = |name: &str| name.starts_with("www/") || name.contains("/src/");
    for (name, text) in sources().iter().filter(|(name, _)| product(name)) {
        for address in text.split("://").skip(1) {
            let allowed = shown.iter().any(|host| address.starts_with(host));
            let address: String = address.chars().take(40).collect();
            assert!(allowed, "{name} names another host: {address}");
        }
    }
}

//! What the documents name is there.

use super::tree;
use std::fs;

fn read(name: &str) -> String {
    fs::read_to_string(tree::path(name)).expect("the document is there")
}

/// What stands between backticks on one line.
fn quoted(text: &str) -> Vec<&str> {
    let mut words = Vec::new();
    for line in text.lines().filter(|line| !line.starts_with("```")) {
        words.extend(line.split('`').skip(1).step_by(2));
    }
    words
}

fn looks_like_a_path(word: &str) -> bool {
    let endings = [
        ".rs", ".js", ".css", ".html", ".sh", ".md", ".toml", ".json", ".png", ".svg",
    ];
    let file = endings.iter().any(|ending| word.ends_with(ending));
    (word.contains('/') || file) && !word.contains([' ', ':', '<', '*']) && !word.starts_with('/')
}

fn check_paths(document: &str, least: usize) {
    let text = read(document);
    let named: Vec<_> = quoted(&text)
        .into_iter()
        .filter(|w| looks_like_a_path(w))
        .collect();
    assert!(
        named.len() >= least,
        "{document} names only {} paths",
        named.len()
    );
    for name in named {
        assert!(
            tree::path(name).exists(),
            "{document} names {name}, which is not there"
        );
    }
}

#[test]
fn every_path_in_the_documents_exists() {
    check_paths("DEVELOPERS.md", 20);
    check_paths("README.md", 2);
}

#[test]
fn every_picture_in_the_readme_exists() {
    let text = read("README.md");
    let pictures: Vec<_> = text
        .split("](")
        .skip(1)
        .filter_map(|rest| rest.split(')').next())
        .collect();
    assert!(
        pictures.iter().any(|name| name.ends_with(".png")),
        "no picture in {pictures:?}"
    );
    for name in pictures
        .iter()
        .filter(|name| !name.starts_with('#') && !name.starts_with("http"))
    {
        assert!(
            tree::path(name).exists(),
            "README.md shows {name}, which is not there"
        );
    }
}

/// Lines of the documents' blocks of commands.
fn commands(document: &str) -> Vec<String> {
    let text = read(document);
    let blocks = text
        .split("```")
        .skip(1)
        .step_by(2)
        .filter(|block| block.starts_with("sh\n"));
    let lines = blocks.flat_map(|block| block.lines().skip(1));
    lines
        .map(str::trim)
        .filter(|line| !line.is_empty())
        .map(str::to_owned)
        .collect()
}

fn after<'a>(words: &[&'a str], flag: &str) -> Option<&'a str> {
    let at = words.iter().position(|word| *word == flag)?;
    words.get(at + 1).copied()
}

#[test]
fn every_command_in_the_documents_can_be_given() {
    for document in ["README.md", "DEVELOPERS.md"] {
        let commands = commands(document);
        assert!(commands.len() >= 2, "{document} shows {commands:?}");
        for command in commands {
            let line = command.split(" # ").next().unwrap_or_default();
            let words: Vec<_> = line.split_whitespace().collect();
            let there = match words.first() {
                Some(&"bash") => words
                    .get(1)
                    .is_some_and(|script| tree::path(script).is_file()),
                Some(&"cargo") => cargo_can(&words),
                Some(&"git") => true,
                _ => false,
            };
            assert!(there, "{document}: `{command}` cannot be given");
        }
    }
}

fn cargo_can(words: &[&str]) -> bool {
    let package = after(words, "-p");
    let manifest = |folder: &str, name: &str| tree::path(folder).join(name).join("Cargo.toml");
    let known = package.is_none_or(|name| {
        ["", "tests"]
            .iter()
            .any(|folder| manifest(folder, name).is_file())
    });
    let folder = package.unwrap_or("web");
    let example = after(words, "--example");
    let example = example.is_none_or(|name| {
        let told = format!("[[example]]\nname = \"{name}\"");
        tree::path(&format!("{folder}/examples/{name}.rs")).is_file()
            || read(&format!("{folder}/Cargo.toml")).contains(&told)
    });
    let test = after(words, "--test");
    let test = test.is_none_or(|name| tree::path(&format!("tests/{name}/main.rs")).is_file());
    known && example && test
}

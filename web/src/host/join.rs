//! Joins the page's scripts, so that a visitor waits for two answers and not for fifty: each becomes a function
//! that gives what it exports, called in the order in which a browser would run them. A bundler's crate would
//! compile longer than all the rest of this program.

use super::layout::Files;
use anyhow::{Context, Result};
use std::collections::BTreeMap;

type Homes = BTreeMap<String, String>;

/// Puts into each entry all that it imports. What an earlier entry holds, a later one takes from there; those
/// in `apart` stay files of their own. Fails where a script is missing, imports or exports otherwise than ours do.
pub fn join(files: &mut Files, entries: &[&str], apart: &[&str]) -> Result<()> {
    let alone = apart
        .iter()
        .map(|path| (path.to_string(), path.to_string()));
    let mut homes: Homes = alone.collect();
    for entry in entries {
        let mut text = String::new();
        add(files, entry, entry, &mut homes, &mut text)?;
        for (path, _) in homes.iter().filter(|(_, home)| home == entry) {
            files.remove(path);
            text += &format!("export {{ {} }};\n", name(path));
        }
        files.insert((*entry).to_owned(), text.into_bytes());
    }
    Ok(())
}

/// Adds a script to the text of an entry, after all that it imports; `homes` has the file that each is in.
fn add(files: &Files, path: &str, entry: &str, homes: &mut Homes, text: &mut String) -> Result<()> {
    homes.insert(path.to_owned(), entry.to_owned());
    let source = files.get(path).with_context(|| format!("no {path}"))?;
    let (mut body, mut exports) = (String::new(), Vec::new());
    let mut lines = std::str::from_utf8(source)?.lines();
    while let Some(line) = lines.next() {
        let unknown = || format!("{path} cannot be joined for this: {line}");
        if let Some(import) = line.strip_prefix("import ") {
            let (what, from) = import.split_once(" from \"").with_context(unknown)?;
            let from = beside(path, from.trim_end_matches("\";"));
            if !homes.contains_key(&from) {
                add(files, &from, entry, homes, text)?;
            }
            let (home, called) = (&homes[&from], name(&from));
            let what = what.trim_start_matches("* as ").replace(" as ", ": ");
            body += &format!("const {what} = {called};\n");
            let names = [format!("{{ {called} }}"), format!("* as {called}")];
            let names = &names[usize::from(home == &from)];
            let import = format!("import {names} from \"{}{home}\";\n", up(entry));
            if home != entry && !text.contains(&import) {
                text.insert_str(0, &import);
            }
        } else if let Some(export) = line.strip_prefix("export ") {
            let mut export = export.to_owned();
            while export.starts_with("const {") && !export.contains('}') {
                export += lines.next().with_context(unknown)?;
            }
            exports.push(declared(&export).with_context(unknown)?.to_owned());
            body += &(export + "\n");
        } else {
            body += &(line.to_owned() + "\n");
        }
    }
    // A place beside the script, seen from where all of them lie now.
    let here = format!("new URL(\"{}{path}\", import.meta.url)", up(entry));
    let (name, body) = (name(path), body.replace("import.meta.url", &here));
    let exports = exports.join(", ");
    *text += &format!("const {name} = (() => {{\n{body}return {{ {exports} }};\n}})();\n");
    if path == entry && !exports.is_empty() {
        *text += &format!("export const {{ {exports} }} = {name};\n");
    }
    Ok(())
}

/// The names that a declaration gives; none for a variable that changes, which would be copied too early.
fn declared(export: &str) -> Option<&str> {
    let kinds = ["const {", "const ", "async function ", "function "];
    let rest = kinds.iter().find_map(|kind| export.strip_prefix(kind))?;
    let list = export.starts_with("const {");
    let ends = |c| c == '}' || !list && [' ', '('].contains(&c);
    rest.split(ends).next()
}

/// The path that one script calls another by.
fn beside(path: &str, called: &str) -> String {
    let up = called.matches("../").count() + 1;
    let folders = path
        .rsplitn(up + 1, '/')
        .nth(up)
        .map_or(String::new(), |f| format!("{f}/"));
    folders + called.trim_start_matches(['.', '/'])
}

/// From the folder of an entry to that of the page.
fn up(entry: &str) -> String {
    match entry.matches('/').count() {
        0 => "./".to_owned(),
        deep => "../".repeat(deep),
    }
}

/// A script's name among the others.
fn name(path: &str) -> String {
    format!(
        "${}",
        path.replace(|c: char| !c.is_ascii_alphanumeric(), "_")
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(all: &[(&str, &str)]) -> Files {
        let owned = |(path, text): &(&str, &str)| (path.to_string(), text.as_bytes().to_vec());
        all.iter().map(owned).collect()
    }

    #[test]
    fn an_entry_in_a_folder_finds_what_stays_apart() {
        let mut files = files(&[
            ("apart.js", "export const a = 1;"),
            (
                "parts/b.js",
                "import { a } from \"../apart.js\";\nexport const b = () => new URL(\"../w.js\", import.meta.url);",
            ),
            (
                "deep/entry.js",
                "import { b } from \"../parts/b.js\";\nb();",
            ),
        ]);
        join(&mut files, &["deep/entry.js"], &["apart.js"]).unwrap();
        let text = String::from_utf8(files["deep/entry.js"].clone()).unwrap();
        assert!(
            text.starts_with("import * as $apart_js from \"../apart.js\";\n"),
            "{text}"
        );
        assert!(
            text.contains("new URL(\"../parts/b.js\", import.meta.url)"),
            "{text}"
        );
        assert!(!files.contains_key("parts/b.js"));
    }
}

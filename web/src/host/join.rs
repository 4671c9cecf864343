//! Joins the scripts of the page to one, so that a visitor waits for one answer and not for forty.
//!
//! A library for this compiles for minutes. Our own scripts keep to a few forms of `import` and `export`
//! (see `script.rs`), and anything else is refused by name. Every script becomes a function that is called
//! once, in the order in which the browser would run them, and returns what it exports.

use super::layout::Files;
use super::script::Script;
use anyhow::{Context, Result, bail, ensure};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;

type Scripts = BTreeMap<String, Script>;

/// Joins to each entry what it imports, but for scripts that somebody else needs: those keep their names.
/// What an earlier entry holds, a later one takes from there.
///
/// # Errors
/// Where a script imports or exports in a way that is not known here, or two need each other.
pub fn join(files: &mut Files, entries: &[&str]) -> Result<()> {
    let mut scripts = Scripts::new();
    for (path, bytes) in files.iter().filter(|(path, _)| path.ends_with(".js")) {
        let text = std::str::from_utf8(bytes).with_context(|| format!("{path} is no text"))?;
        scripts.insert(path.clone(), Script::read(path, text));
    }
    let outside = outside(&scripts, files, entries);
    let mut joined: Vec<Joined> = Vec::new();
    for entry in entries {
        let mut next = Joined::new(&scripts, &outside, entry);
        next.add(entry, &joined, &mut Vec::new())?;
        joined.push(next);
    }
    for script in joined.iter().flat_map(|j| &j.done) {
        files.remove(*script);
    }
    for one in &joined {
        files.insert(one.entry.to_owned(), one.text(&joined).into_bytes());
    }
    Ok(())
}

/// The scripts that somebody else needs: a page by a `src`, or a script that nobody imports, such as the
/// worker; and all that those import.
fn outside(scripts: &Scripts, files: &Files, entries: &[&str]) -> BTreeSet<String> {
    let imported: BTreeSet<_> = scripts.values().flat_map(Script::needs).collect();
    let pages: Vec<_> = files
        .iter()
        .filter(|(path, _)| path.ends_with(".html"))
        .map(|(_, bytes)| String::from_utf8_lossy(bytes))
        .collect();
    let in_page = |path: &str| {
        let source = format!("src=\"{path}\"");
        pages.iter().any(|page| page.contains(&source))
    };
    let begins =
        |path: &str| !entries.contains(&path) && (!imported.contains(path) || in_page(path));
    let mut left: Vec<&str> = scripts
        .keys()
        .map(String::as_str)
        .filter(|p| begins(p))
        .collect();
    let mut outside = BTreeSet::new();
    while let Some(path) = left.pop() {
        if outside.insert(path.to_owned())
            && let Some(script) = scripts.get(path)
        {
            left.extend(script.needs());
        }
    }
    outside
}

/// One script of several.
struct Joined<'a> {
    scripts: &'a Scripts,
    outside: &'a BTreeSet<String>,
    entry: &'a str,
    /// Scripts that stay files of their own, and are imported.
    imported: BTreeSet<&'a str>,
    /// Scripts that are taken from an earlier one.
    taken: BTreeSet<&'a str>,
    done: BTreeSet<&'a str>,
    body: String,
}

impl<'a> Joined<'a> {
    fn new(scripts: &'a Scripts, outside: &'a BTreeSet<String>, entry: &'a str) -> Self {
        Self {
            scripts,
            outside,
            entry,
            imported: BTreeSet::new(),
            taken: BTreeSet::new(),
            done: BTreeSet::new(),
            body: String::new(),
        }
    }

    /// Adds a script after all that it needs; `around` are those that wait for it.
    fn add(&mut self, path: &'a str, earlier: &[Self], around: &mut Vec<&'a str>) -> Result<()> {
        ensure!(
            !around.contains(&path),
            "{path} needs itself, by way of {around:?}"
        );
        if self.outside.contains(path) {
            self.imported.insert(path);
            return Ok(());
        }
        if earlier.iter().any(|e| e.done.contains(path)) {
            self.taken.insert(path);
            return Ok(());
        }
        if !self.done.insert(path) {
            return Ok(());
        }
        let script = self.scripts.get(path);
        let script = script.with_context(|| format!("there is no {path}"))?;
        if let Some(line) = &script.unknown {
            bail!("{path} cannot be joined for this: {line}");
        }
        around.push(path);
        for need in script.needs() {
            self.add(need, earlier, around)?;
        }
        around.pop();
        self.put(script)
    }

    fn put(&mut self, script: &Script) -> Result<()> {
        let name = variable(&script.path);
        // What an entry exports is what its file exports.
        let outer = if script.path == self.entry {
            "export "
        } else {
            ""
        };
        let names = script.exports.join(", ");
        let result = match (outer, names.as_str()) {
            ("", _) => name,
            (_, "") => String::from("_"),
            _ => format!("{{ {names} }}"),
        };
        writeln!(self.body, "{outer}const {result} = (() => {{")?;
        for import in &script.imports {
            let from = variable(&import.path);
            writeln!(self.body, "const {} = {from};", import.names)?;
        }
        // A place beside the script, seen from where all of them lie now.
        let here = format!("./{}", script.path);
        let here = format!("new URL({here:?}, import.meta.url)");
        self.body
            .push_str(&script.body.replace("import.meta.url", &here));
        writeln!(self.body, "return {{ {names} }};\n}})();")?;
        Ok(())
    }

    fn text(&self, all: &[Self]) -> String {
        let mut text = String::new();
        for path in &self.imported {
            text += &format!("import * as {} from \"./{path}\";\n", variable(path));
        }
        for other in all {
            let from: Vec<_> = self
                .taken
                .intersection(&other.done)
                .map(|p| variable(p))
                .collect();
            if !from.is_empty() {
                text += &format!(
                    "import {{ {} }} from \"./{}\";\n",
                    from.join(", "),
                    other.entry
                );
            }
        }
        text += &self.body;
        let given: BTreeSet<_> = all
            .iter()
            .flat_map(|o| o.taken.intersection(&self.done))
            .collect();
        if !given.is_empty() {
            let names: Vec<_> = given.into_iter().map(|path| variable(path)).collect();
            text += &format!("export {{ {} }};\n", names.join(", "));
        }
        text
    }
}

/// A script's name among the others.
fn variable(path: &str) -> String {
    let name = path.strip_suffix(".js").unwrap_or(path);
    format!(
        "${}",
        name.replace(|c: char| !c.is_ascii_alphanumeric(), "_")
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(given: &[(&str, &str)]) -> Files {
        let files = given.iter();
        files
            .map(|(path, text)| ((*path).to_owned(), text.as_bytes().to_vec()))
            .collect()
    }

    fn text(files: &Files, path: &str) -> String {
        String::from_utf8(files[path].clone()).unwrap()
    }

    #[test]
    fn what_the_entry_needs_alone_is_joined_in_order() {
        let mut page = files(&[
            ("app.js", "import { b } from \"./parts/b.js\";\nb();\n"),
            (
                "parts/b.js",
                "import { a as first } from \"../a.js\";\nexport const b = () => first;\n",
            ),
            ("a.js", "export function a() {}\n"),
        ]);
        join(&mut page, &["app.js"]).unwrap();
        assert_eq!(page.keys().collect::<Vec<_>>(), ["app.js"]);
        assert_eq!(
            text(&page, "app.js"),
            "const $a = (() => {\nfunction a() {}\nreturn { a };\n})();\n\
             const $parts_b = (() => {\nconst { a: first } = $a;\nconst b = () => first;\nreturn { b };\n})();\n\
             export const _ = (() => {\nconst { b } = $parts_b;\nb();\nreturn {  };\n})();\n"
        );
    }

    #[test]
    fn what_others_need_too_keeps_its_name() {
        let mut page = files(&[
            ("index.html", "<script src=\"first.js\"></script>"),
            (
                "app.js",
                "import { a } from \"./a.js\";\nimport { f } from \"./first.js\";\n",
            ),
            (
                "first.js",
                "import { g } from \"./deep.js\";\nexport const f = g;\n",
            ),
            ("deep.js", "export const g = 1;\n"),
            ("worker.js", "import { a } from \"./a.js\";\n"),
            ("a.js", "export const a = 1;\n"),
        ]);
        let before = page.len();
        join(&mut page, &["app.js"]).unwrap();
        assert_eq!(page.len(), before);
        let app = text(&page, "app.js");
        assert!(
            app.starts_with(
                "import * as $a from \"./a.js\";\nimport * as $first from \"./first.js\";\n"
            ),
            "{app}"
        );
        assert!(!app.contains("deep"), "{app}");
    }

    #[test]
    fn a_later_script_takes_from_an_earlier_one() {
        let mut page = files(&[
            ("app.js", "import { a } from \"./a.js\";\na();\n"),
            (
                "late.js",
                "import { a } from \"./a.js\";\nimport { b } from \"./b.js\";\nexport const start = () => a(b);\n",
            ),
            ("a.js", "export const a = 1;\n"),
            ("b.js", "export const b = 1;\n"),
        ]);
        join(&mut page, &["app.js", "late.js"]).unwrap();
        assert_eq!(page.keys().collect::<Vec<_>>(), ["app.js", "late.js"]);
        let (app, late) = (text(&page, "app.js"), text(&page, "late.js"));
        assert!(
            app.contains("const $a = ") && app.ends_with("export { $a };\n"),
            "{app}"
        );
        assert_eq!(
            late,
            "import { $a } from \"./app.js\";\nconst $b = (() => {\nconst b = 1;\nreturn { b };\n})();\n\
             export const { start } = (() => {\nconst { a } = $a;\nconst { b } = $b;\nconst start = () => a(b);\nreturn { start };\n})();\n"
        );
    }

    #[test]
    fn a_place_beside_a_script_stays_where_it_is() {
        let mut page = files(&[
            ("app.js", "import { here } from \"./parts/a.js\";\n"),
            (
                "parts/a.js",
                "export const here = new URL(\"..\", import.meta.url);\n",
            ),
        ]);
        join(&mut page, &["app.js"]).unwrap();
        let app = text(&page, "app.js");
        assert!(
            app.contains("new URL(\"..\", new URL(\"./parts/a.js\", import.meta.url))"),
            "{app}"
        );
    }

    #[test]
    fn two_that_need_each_other_are_refused() {
        let mut page = files(&[
            ("app.js", "import { a } from \"./a.js\";\n"),
            (
                "a.js",
                "import { b } from \"./b.js\";\nexport const a = 1;\n",
            ),
            (
                "b.js",
                "import { a } from \"./a.js\";\nexport const b = 1;\n",
            ),
        ]);
        let error = join(&mut page, &["app.js"]).unwrap_err().to_string();
        assert!(error.contains("a.js needs itself"), "{error}");
    }
}

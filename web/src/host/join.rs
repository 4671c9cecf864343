//! Joins the scripts of the page to one, so that a visitor waits for one answer and not for forty.
//!
//! A library for this compiles for minutes. Our own scripts keep to a few forms of `import` and `export`
//! (see `script.rs`), and anything else is refused by name. Every script becomes a function that is called
//! once, in the order in which the browser would run them, and returns what it exports.

use super::layout::Files;
use super::script::Script;
use anyhow::{Context, Result, ensure};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;

type Scripts = BTreeMap<String, Script>;

/// Joins to `entry` what it imports, but for scripts that others need too: those keep their names.
///
/// # Errors
/// Where a script imports or exports in a way that is not known here, or two need each other.
pub fn join(files: &mut Files, entry: &str) -> Result<()> {
    let mut scripts = Scripts::new();
    for (path, bytes) in files.iter().filter(|(path, _)| path.ends_with(".js")) {
        let text = std::str::from_utf8(bytes).with_context(|| format!("{path} is no text"))?;
        scripts.insert(path.clone(), Script::read(path, text));
    }
    let outside = outside(&scripts, files, entry);
    let mut joined = Joined::new(&scripts, &outside);
    joined.add(entry, &mut Vec::new())?;
    let text = joined.text();
    for path in &joined.done {
        files.remove(path);
    }
    files.insert(entry.to_owned(), text.into_bytes());
    Ok(())
}

/// The scripts that somebody else needs: a page by a `src`, or a script that nobody imports, such as the
/// worker; and all that those import.
fn outside(scripts: &Scripts, files: &Files, entry: &str) -> BTreeSet<String> {
    let imported: BTreeSet<_> = scripts.values().flat_map(Script::needs).collect();
    let pages: Vec<_> = files
        .iter()
        .filter(|(path, _)| path.ends_with(".html"))
        .map(|(_, bytes)| String::from_utf8_lossy(bytes))
        .collect();
    let in_page = |path: &str| {
        pages
            .iter()
            .any(|page| page.contains(&format!("src=\"{path}\"")))
    };
    let begins = |path: &str| path != entry && (!imported.contains(path) || in_page(path));
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

struct Joined<'a> {
    scripts: &'a Scripts,
    outside: &'a BTreeSet<String>,
    /// Scripts that stay files of their own, and are imported.
    imported: BTreeSet<&'a str>,
    done: BTreeSet<String>,
    body: String,
}

impl<'a> Joined<'a> {
    fn new(scripts: &'a Scripts, outside: &'a BTreeSet<String>) -> Self {
        Self {
            scripts,
            outside,
            imported: BTreeSet::new(),
            done: BTreeSet::new(),
            body: String::new(),
        }
    }

    /// Adds a script after all that it needs; `around` are those that wait for it.
    fn add(&mut self, path: &'a str, around: &mut Vec<&'a str>) -> Result<()> {
        if self.outside.contains(path) {
            self.imported.insert(path);
            return Ok(());
        }
        ensure!(
            !around.contains(&path),
            "{path} needs itself, by way of {around:?}"
        );
        if self.done.contains(path) {
            return Ok(());
        }
        let script = self.scripts.get(path);
        let script = script.with_context(|| format!("there is no {path}"))?;
        if let Some(line) = &script.unknown {
            anyhow::bail!("{path} cannot be joined for this: {line}");
        }
        around.push(path);
        for need in script.needs() {
            self.add(need, around)?;
        }
        around.pop();
        self.done.insert(path.to_owned());
        self.put(script)
    }

    fn put(&mut self, script: &Script) -> Result<()> {
        writeln!(self.body, "const {} = (() => {{", variable(&script.path))?;
        for import in &script.imports {
            writeln!(
                self.body,
                "const {} = {};",
                import.names,
                variable(&import.path)
            )?;
        }
        // A place beside the script, seen from where all of them lie now.
        let here = format!(
            "new URL({:?}, import.meta.url)",
            format!("./{}", script.path)
        );
        self.body
            .push_str(&script.body.replace("import.meta.url", &here));
        writeln!(
            self.body,
            "return {{ {} }};\n}})();",
            script.exports.join(", ")
        )?;
        Ok(())
    }

    fn text(&self) -> String {
        let imports = self.imported.iter();
        let imports =
            imports.map(|path| format!("import * as {} from \"./{path}\";\n", variable(path)));
        imports.chain([self.body.clone()]).collect()
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
        join(&mut page, "app.js").unwrap();
        assert_eq!(page.keys().collect::<Vec<_>>(), ["app.js"]);
        assert_eq!(
            text(&page, "app.js"),
            "const $a = (() => {\nfunction a() {}\nreturn { a };\n})();\n\
             const $parts_b = (() => {\nconst { a: first } = $a;\nconst b = () => first;\nreturn { b };\n})();\n\
             const $app = (() => {\nconst { b } = $parts_b;\nb();\nreturn {  };\n})();\n"
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
        join(&mut page, "app.js").unwrap();
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
    fn a_place_beside_a_script_stays_where_it_is() {
        let mut page = files(&[
            ("app.js", "import { here } from \"./parts/a.js\";\n"),
            (
                "parts/a.js",
                "export const here = new URL(\"..\", import.meta.url);\n",
            ),
        ]);
        join(&mut page, "app.js").unwrap();
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
        let error = join(&mut page, "app.js").unwrap_err().to_string();
        assert!(error.contains("a.js needs itself"), "{error}");
    }
}

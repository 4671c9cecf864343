//! Where the files of the page lie: pages at the top, all that they are made of in one folder that is
//! named after the content.
//!
//! Two versions of the page so have no address in common but those of the pages themselves. Whatever a
//! browser, a host or a cache between them keeps of an older version, nothing can be put together from
//! two of them.

use anyhow::{Context, Result, ensure};
use std::collections::BTreeMap;
use std::hash::{DefaultHasher, Hash, Hasher};

/// Files by their paths, with `/` between folders.
pub type Files = BTreeMap<String, Vec<u8>>;

/// The page that an address ending in a stroke stands for.
pub const INDEX: &str = "index.html";

/// The script that keeps the page on the device: it rules over the folder it lies in, and below.
const KEEPER: &str = "sw.js";

/// The picture that others show beside a link to the page: nobody who opens the page needs it.
const CARD: &str = "card.png";

/// What the name of the folder begins with; sixteen hexadecimal digits follow.
const PREFIX: &str = "carryline-";

/// Whether a folder's name is that of a version.
pub fn is_version(folder: &str) -> bool {
    let digits = folder.strip_prefix(PREFIX);
    digits.is_some_and(|d| d.len() == 16 && d.bytes().all(|b| b.is_ascii_hexdigit()))
}

fn lean(path: &str, bytes: Vec<u8>) -> Vec<u8> {
    if path.ends_with(".js") || path.ends_with(".css") {
        without_comments(bytes)
    } else {
        bytes
    }
}

/// A script or style sheet without what stands before its lines and without the lines that are comments
/// alone. They are a seventh of what is fetched; the lines stay empty, so that an error is told with the
/// line where it stands. No text of ours goes over several lines but pieces of page, where blanks say nothing.
fn without_comments(bytes: Vec<u8>) -> Vec<u8> {
    let Ok(text) = std::str::from_utf8(&bytes) else {
        return bytes;
    };
    let mut out = String::with_capacity(text.len());
    let mut inside = false;
    for line in text.lines() {
        let start = line.trim_start();
        inside |= start.starts_with("/*");
        if !inside && !start.starts_with("//") {
            out.push_str(start);
        }
        out.push('\n');
        inside &= !line.trim_end().ends_with("*/");
    }
    out.into_bytes()
}

/// Lays out all files of the page, and writes what lies where into the pages and the keeper.
///
/// # Errors
/// Where a page is no text, or the keeper has no place to write to.
pub fn lay_out(files: Files) -> Result<Files> {
    let lean = |(path, bytes): (String, _)| (path.clone(), lean(&path, bytes));
    let files: Files = files.into_iter().map(lean).collect();
    let version = version(&files);
    let (top, parts): (Files, Files) = files.into_iter().partition(|(path, _)| at_top(path));
    let mut laid = Files::new();
    for (path, bytes) in &top {
        let text = || std::str::from_utf8(bytes).with_context(|| format!("{path} is no text"));
        let bytes = match path.as_str() {
            CARD => bytes.clone(),
            KEEPER => keeper(text()?, &version, &top, &parts)?.into_bytes(),
            _ => page(text()?, &version, &parts).into_bytes(),
        };
        laid.insert(path.clone(), bytes);
    }
    let moved = parts
        .into_iter()
        .map(|(path, bytes)| (format!("{version}/{path}"), bytes));
    laid.extend(moved);
    Ok(laid)
}

fn at_top(path: &str) -> bool {
    path == KEEPER || path == CARD || path.ends_with(".html")
}

/// The name that stands for every byte of the page.
fn version(files: &Files) -> String {
    let mut hasher = DefaultHasher::new();
    files.hash(&mut hasher);
    format!("{PREFIX}{:016x}", hasher.finish())
}

fn page(text: &str, version: &str, parts: &Files) -> String {
    parts.keys().fold(text.to_owned(), |text, part| {
        text.replace(&format!("=\"{part}\""), &format!("=\"{version}/{part}\""))
    })
}

fn keeper(text: &str, version: &str, top: &Files, parts: &Files) -> Result<String> {
    let pages = top.keys().filter(|path| path.ends_with(".html"));
    let pages = pages.map(|path| if path == INDEX { "./" } else { path }.to_owned());
    // Icons are kept by whoever installs the page.
    let parts = parts.keys().filter(|path| !path.ends_with(".png"));
    let parts = parts.map(|path| format!("{version}/{path}"));
    let all: Vec<String> = pages.chain(parts).collect();
    ensure!(
        text.contains("\"VERSION\"") && text.contains("[\"FILES\"]"),
        "{KEEPER} has no place for the version and the list of files"
    );
    Ok(text
        .replace("\"VERSION\"", &format!("{version:?}"))
        .replace("[\"FILES\"]", &format!("{all:?}")))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(app: &str) -> Files {
        let files = [
            (
                "index.html",
                "<a href=\"limits.html\"><script src=\"app.js\"><link href=\"parts/a.js\">",
            ),
            ("limits.html", "<link href=\"style.css\"><a href=\"./\">"),
            ("sw.js", "const VERSION = \"VERSION\", FILES = [\"FILES\"];"),
            ("app.js", app),
            ("parts/a.js", ""),
            ("style.css", ""),
            ("card.png", ""),
        ];
        let files = files.map(|(path, text)| (path.to_owned(), text.as_bytes().to_vec()));
        files.into_iter().collect()
    }

    fn version_of(laid: &Files) -> &str {
        let mut folders = laid.keys().filter_map(|path| path.split('/').next());
        folders.find(|folder| is_version(folder)).unwrap()
    }

    fn text<'a>(files: &'a Files, path: &str) -> &'a str {
        std::str::from_utf8(&files[path]).unwrap()
    }

    #[test]
    fn pages_lead_to_the_parts_of_their_version() {
        let laid = lay_out(files("1")).unwrap();
        let version = version_of(&laid);
        assert_eq!(
            text(&laid, "index.html"),
            format!(
                "<a href=\"limits.html\"><script src=\"{version}/app.js\"><link href=\"{version}/parts/a.js\">"
            )
        );
        assert!(laid.contains_key(&format!("{version}/parts/a.js")));
        assert!(!laid.contains_key("app.js"));
    }

    #[test]
    fn the_keeper_knows_every_file_but_itself_and_the_card() {
        let laid = lay_out(files("1")).unwrap();
        let keeper = text(&laid, "sw.js");
        let kept = |path: &&String| !["sw.js", "card.png"].contains(&path.as_str());
        for path in laid.keys().filter(kept) {
            let path = if path == "index.html" { "./" } else { path };
            assert!(
                keeper.contains(&format!("{path:?}")),
                "{path} is missing in {keeper}"
            );
        }
        assert!(
            !keeper.contains("sw.js") && !keeper.contains("card") && !keeper.contains("VERSION\""),
            "{keeper}"
        );
    }

    #[test]
    fn every_change_is_another_version() {
        let old = lay_out(files("1")).unwrap();
        let new = lay_out(files("2")).unwrap();
        let both: Vec<_> = old.keys().filter(|path| new.contains_key(*path)).collect();
        assert_eq!(both, ["card.png", "index.html", "limits.html", "sw.js"]);
        assert_eq!(old, lay_out(files("1")).unwrap());
        let mut renamed = files("1");
        let moved = renamed.remove("parts/a.js").unwrap();
        renamed.insert("parts/b.js".to_owned(), moved);
        assert_ne!(version(&renamed), version(&files("1")));
    }

    #[test]
    fn comments_go_and_lines_stay() {
        let text = "// About.\na(\"//\"); // stays\n  /** Two\n   * lines. */\nb();\n/* c */\n";
        let out = without_comments(text.as_bytes().to_vec());
        let lean = "\na(\"//\"); // stays\n\n\nb();\n\n";
        assert_eq!(String::from_utf8(out).unwrap(), lean);
    }

    #[test]
    fn a_keeper_without_a_place_for_the_list_is_refused() {
        let mut files = files("1");
        files.insert("sw.js".to_owned(), b"const VERSION = 1;".to_vec());
        assert!(lay_out(files).is_err());
    }
}

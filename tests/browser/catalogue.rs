//! The words of the page: the same things said in every language, and nothing that nobody uses.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen};
use serde::Serialize;
use sim::error::{Quantity, Unreadable, Why};
use sim::link::LinkError;
use sim::units::{RowWrong, Wrong};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

/// Every word of a folder, by its path, with its kind: a text, or a function of so many things.
const SHAPE: &str = "
    const kind = (v) => (typeof v === 'function' ? `function of ${v.length}` : typeof v);
    const shape = (v, path, out) => {
      if (v && typeof v === 'object') for (const [key, inner] of Object.entries(v)) shape(inner, `${path}/${key}`, out);
      else out[path] = kind(v);
      return out;
    };
    const all = files.map((file) => told[file]);
    return all.reduce((out, file, i) => shape({ ...file }, files[i], out), {});
";

fn www() -> std::path::PathBuf {
    tests::repository().join("www")
}

/// Names of what lies in a folder, without their endings.
fn names(folder: &Path) -> Result<BTreeSet<String>> {
    let mut names = BTreeSet::new();
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        let name = path.file_stem().and_then(|name| name.to_str());
        names.insert(name.context("a name")?.to_owned());
    }
    Ok(names)
}

/// Where words stand: those of the page, and those of the sheets to build from.
const FOLDERS: [&str; 2] = ["words", "build/words"];

/// Names of the files in a folder that hold the words of a language.
fn files(folder: &str, language: &str) -> Result<BTreeSet<String>> {
    let mut names = names(&www().join(folder).join(language))?;
    ensure!(names.remove("all"), "{language} has no file of all files");
    Ok(names)
}

/// Asks something of the words of a language, which lie beside the page's own scripts.
pub async fn words<T: serde::de::DeserializeOwned>(
    page: &Page,
    language: &str,
    script: &str,
) -> Result<T> {
    words_in(page, FOLDERS[0], language, script).await
}

async fn words_in<T: serde::de::DeserializeOwned>(
    page: &Page,
    folder: &str,
    language: &str,
    script: &str,
) -> Result<T> {
    let files = Vec::from_iter(files(folder, language)?);
    page.ask(&format!(
        "const language = {language:?}, files = {files:?}; \
         const base = document.querySelector('script[src$=\"language.js\"]').src; \
         return import(new URL(`{folder}/${{language}}/all.js`, base).href).then(async ({{ files: told }}) => {{ {script} }})"
    ))
    .await
}

type Shape = BTreeMap<String, String>;

/// What the list of a kind in `language.js` holds.
fn listed(name: &str) -> Result<BTreeSet<String>> {
    let text = fs::read_to_string(www().join("language.js"))?;
    let (_, rest) = text
        .split_once(&format!("const {name} = ["))
        .context("no list")?;
    let (list, _) = rest.split_once(']').context("no end")?;
    Ok(list
        .split(',')
        .map(|item| item.trim().trim_matches('"').to_owned())
        .collect())
}

pub fn every_language_says_the_same_things(ground: &Ground) -> Result<()> {
    let languages = names(&www().join("words"))?;
    ensure!(
        languages == listed("LANGUAGES")?,
        "there are {languages:?}, others are listed"
    );
    ground.visit(Screen::Phone, "", async |page| {
        for folder in FOLDERS {
            let english = same(page, folder, &languages).await?;
            ensure!(english.len() > 400, "only {} words", english.len());
            used(&english)?;
            if folder == FOLDERS[0] {
                told(&english)?;
            }
        }
        written(page).await
    })
}

/// What a folder of words holds, the same in every language.
async fn same(page: &Page, folder: &str, languages: &BTreeSet<String>) -> Result<Shape> {
    let english: Shape = words_in(page, folder, "en", SHAPE).await?;
    for language in languages {
        ensure!(
            files(folder, language)? == files(folder, "en")?,
            "{folder}: {language} has other files"
        );
        let shape: Shape = words_in(page, folder, language, SHAPE).await?;
        let differ = |(path, kind): &(&String, &String)| shape.get(*path) != Some(kind);
        let missing: Vec<_> = english.iter().filter(differ).collect();
        let extra: Vec<_> = shape.keys().filter(|k| !english.contains_key(*k)).collect();
        ensure!(
            missing.is_empty() && extra.is_empty(),
            "{folder}: {language} lacks or has of another kind {missing:?}; has beside {extra:?}"
        );
    }
    Ok(english)
}

/// Every word of a text.
fn split(text: &str, all: &mut BTreeSet<String>) {
    let words = text.split(|c: char| !c.is_alphanumeric() && c != '_');
    all.extend(words.map(str::to_owned));
}

/// Reads the words of all files of a folder and the folders in it, but for those of languages.
fn read(folder: &Path, all: &mut BTreeSet<String>) -> Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            if !path.ends_with("words") {
                read(&path, all)?;
            }
        } else if !path.ends_with("words.js")
            && let Ok(text) = fs::read_to_string(&path)
        {
            split(&text, all);
        }
    }
    Ok(())
}

/// As a variant of an enum is written in our code, and over to the page.
fn variant(key: &str) -> String {
    let parts = key.split('_').map(|part| {
        let (first, rest) = part.split_at(part.len().min(1));
        first.to_uppercase() + rest
    });
    parts.collect()
}

/// Every key is named by the page, by the stylesheet, or by what the simulator hands over.
fn used(shape: &Shape) -> Result<()> {
    let (mut page, mut code) = (BTreeSet::new(), BTreeSet::new());
    read(&www(), &mut page)?;
    for folder in ["sim/src", "web/src"] {
        read(&tests::repository().join(folder), &mut code)?;
    }
    let plans = [
        include_str!("../../sim/plans/orchard.json"),
        include_str!("../../sim/plans/first_jump.json"),
        include_str!("../../sim/plans/three_tables.json"),
    ]
    .concat();
    let known = |key: &str| {
        page.contains(key) || code.contains(&variant(key)) || key.parse::<usize>().is_ok()
    };
    for path in shape.keys() {
        let mut keys = path.split('/').skip(1);
        let used = match keys.next().context("a path")? {
            "called" => keys.all(|name| plans.contains(&format!("{name:?}"))),
            export => page.contains(export) && keys.all(known),
        };
        ensure!(used, "nobody uses {path}");
    }
    Ok(())
}

fn name<T: Serialize>(value: &T) -> Result<String> {
    Ok(match serde_json::to_value(value)? {
        serde_json::Value::String(name) => name,
        value => value["kind"].as_str().context("a kind")?.to_owned(),
    })
}

/// Whatever the simulator finds wrong has words.
fn told(shape: &Shape) -> Result<()> {
    let mut paths = Vec::new();
    for why in Why::ALL {
        paths.push(format!("faults/reasons/{}", name(why)?));
    }
    for what in Unreadable::ALL {
        paths.push(format!("faults/unreadable/{}", name(&what)?));
    }
    for wrong in wrongs() {
        paths.push(format!("faults/typed/wrong/{}", name(&wrong)?));
    }
    for quantity in quantities() {
        paths.push(format!("faults/typed/metric/{}", name(&quantity)?));
    }
    for error in link_errors() {
        paths.push(format!("faults/links/{}", name(&error)?));
    }
    for wrong in [
        RowWrong::NotTwo,
        RowWrong::TwoWays,
        RowWrong::UnknownUnit(String::new()),
    ] {
        paths.push(format!("faults/rows/{}", name(&wrong)?));
    }
    for path in paths {
        ensure!(shape.contains_key(&path), "there are no words for {path}");
    }
    Ok(())
}

/// Every way in which a text is no number: a new one does not compile before it stands here.
fn wrongs() -> Vec<Wrong> {
    use Wrong::{
        Comma, Empty, Fraction, NotANumber, NotWhole, Order, Text, TooManyDigits, UnknownUnit,
    };
    match Empty {
        Empty | NotANumber | UnknownUnit(_) | Order | Comma | Fraction | TooManyDigits
        | NotWhole | Text => {}
    }
    let unknown = UnknownUnit(String::new());
    vec![
        Empty,
        NotANumber,
        unknown,
        Order,
        Comma,
        Fraction,
        TooManyDigits,
        NotWhole,
        Text,
    ]
}

/// Every quantity, in the same way.
fn quantities() -> [Quantity; 17] {
    use Quantity::{
        Angle, Area, Count, Force, Inertia, Length, Margin, Mass, Number, Pressure, Sawn, Speed,
        Stiffness, Temperature, Text, Time, Volume,
    };
    match Length {
        Length | Margin | Sawn | Area | Volume | Angle | Speed | Time | Mass | Force | Inertia
        | Pressure | Stiffness | Temperature | Number | Count | Text => {}
    }
    [
        Length,
        Margin,
        Sawn,
        Area,
        Volume,
        Angle,
        Speed,
        Time,
        Mass,
        Force,
        Inertia,
        Pressure,
        Stiffness,
        Temperature,
        Number,
        Count,
        Text,
    ]
}

/// Every fault of a link, in the same way.
fn link_errors() -> [LinkError; 5] {
    use LinkError::{CutShort, Damaged, Newer, NotALink, TooLong};
    match NotALink {
        NotALink | TooLong { .. } | CutShort | Damaged | Newer => {}
    }
    [NotALink, TooLong { given: 0 }, CutShort, Damaged, Newer]
}

/// What stands in the page's own file is what the English words say.
async fn written(page: &Page) -> Result<()> {
    let html = fs::read_to_string(www().join("index.html"))?;
    let script = format!(
        "const words = Object.assign({{}}, ...Object.values(told)); \
         const at = (path) => path.split('.').reduce((inner, key) => inner?.[key], words); \
         const file = new DOMParser().parseFromString({html:?}, 'text/html'); \
         const said = [...file.querySelectorAll('[data-words]')].map((e) => [e.dataset.words, e.textContent, at(e.dataset.words)]); \
         const heard = [...file.querySelectorAll('[data-label]')].map((e) => [e.dataset.label, e.getAttribute('aria-label'), at(e.dataset.label)]); \
         return [...said, ...heard].map((all) => all.map(String))"
    );
    let all: Vec<[String; 3]> = words(page, "en", &script).await?;
    ensure!(all.len() > 40, "only {} texts in the page", all.len());
    for [path, there, expected] in all {
        ensure!(
            there == expected,
            "{path}: {there:?} in the page, {expected:?} in the words"
        );
    }
    Ok(())
}

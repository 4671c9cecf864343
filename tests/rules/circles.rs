//! No file needs itself, by way of others: what a reader has to know first has an end.

use super::tree;
use std::collections::{BTreeMap, BTreeSet};
use syn::visit::{self, Visit};

/// Each file with those it uses.
type Uses = BTreeMap<String, BTreeSet<String>>;

/// A circle of files, where there is one.
fn circle(uses: &Uses) -> Option<Vec<&str>> {
    let mut left: BTreeSet<&str> = uses.keys().map(String::as_str).collect();
    // What uses nothing that is left is in no circle.
    loop {
        let end = |file: &&&str| {
            uses[**file]
                .iter()
                .all(|other| !left.contains(other.as_str()))
        };
        let Some(&file) = left.iter().find(end) else {
            break;
        };
        left.remove(file);
    }
    let mut way = vec![*left.first()?];
    loop {
        let next = uses[way[way.len() - 1]]
            .iter()
            .find(|other| left.contains(other.as_str()))?;
        if let Some(at) = way.iter().position(|file| file == next) {
            return Some(way.split_off(at));
        }
        way.push(next);
    }
}

/// The paths that a file of Rust names, from the root of its crate, but for what tests alone use.
struct Named<'a> {
    module: &'a [String],
    paths: Vec<Vec<String>>,
    children: Vec<String>,
}

impl Named<'_> {
    /// A path from here, from the root.
    fn name(&mut self, path: &[String]) {
        let up = path.iter().take_while(|word| *word == "super").count();
        let root: &[String] = match path.first().map(String::as_str) {
            Some("crate") => &[],
            Some("self") => self.module,
            Some("super") => &self.module[..self.module.len().saturating_sub(up)],
            _ => return,
        };
        let rest = &path[up.max(1)..];
        self.paths.push([root, rest].concat());
    }

    fn tree(&mut self, before: &[String], tree: &syn::UseTree) {
        match tree {
            syn::UseTree::Path(path) => {
                let before = [before, &[path.ident.to_string()]].concat();
                self.tree(&before, &path.tree);
            }
            syn::UseTree::Group(group) => {
                group.items.iter().for_each(|item| self.tree(before, item))
            }
            syn::UseTree::Name(name) => self.name(&[before, &[name.ident.to_string()]].concat()),
            syn::UseTree::Rename(name) => self.name(&[before, &[name.ident.to_string()]].concat()),
            syn::UseTree::Glob(_) => self.name(before),
        }
    }
}

fn for_tests(attributes: &[syn::Attribute]) -> bool {
    let test = |a: &syn::Attribute| {
        a.path().is_ident("cfg") && a.parse_args::<syn::Ident>().is_ok_and(|i| i == "test")
    };
    attributes.iter().any(test)
}

impl Visit<'_> for Named<'_> {
    fn visit_item_mod(&mut self, item: &syn::ItemMod) {
        if !for_tests(&item.attrs) {
            self.children.push(item.ident.to_string());
            visit::visit_item_mod(self, item);
        }
    }

    fn visit_item_use(&mut self, item: &syn::ItemUse) {
        if !for_tests(&item.attrs) {
            self.tree(&[], &item.tree);
        }
    }

    fn visit_item_fn(&mut self, item: &syn::ItemFn) {
        if !for_tests(&item.attrs) {
            visit::visit_item_fn(self, item);
        }
    }

    fn visit_path(&mut self, path: &syn::Path) {
        let words: Vec<_> = path.segments.iter().map(|s| s.ident.to_string()).collect();
        self.name(&words);
        visit::visit_path(self, path);
    }
}

/// The module that a file is.
fn module(file: &str) -> Vec<String> {
    let words = file.trim_end_matches(".rs").split('/');
    words
        .filter(|word| !["lib", "main", "mod"].contains(word))
        .map(str::to_owned)
        .collect()
}

/// What the files of a crate use. A file may use what the files around it declare, its parents: they are
/// its words, and one of them lists it.
fn of_crate(source: &str) -> Uses {
    let files: Vec<_> = tree::sources()
        .into_iter()
        .filter_map(|(name, text)| Some((name.strip_prefix(source)?.to_owned(), text)))
        .collect();
    let files: Vec<_> = files
        .into_iter()
        .filter(|(name, _)| name.ends_with(".rs"))
        .collect();
    let homes: BTreeMap<Vec<String>, &str> = files
        .iter()
        .map(|(name, _)| (module(name), name.as_str()))
        .collect();
    let mut uses = Uses::new();
    for (name, text) in &files {
        let here = module(name);
        let mut named = Named {
            module: &here,
            paths: Vec::new(),
            children: Vec::new(),
        };
        named.visit_file(&syn::parse_file(text).expect("it compiles"));
        let children = named
            .children
            .iter()
            .map(|child| [here.as_slice(), std::slice::from_ref(child)].concat());
        let homes = |path: &Vec<String>| {
            (0..=path.len())
                .rev()
                .find_map(|n| homes.get(&path[..n]).map(|home| (n, *home)))
        };
        let around = |path: &[String]| here.starts_with(path);
        let used = named.paths.iter().cloned().chain(children);
        let used = used.filter_map(|path| {
            homes(&path)
                .filter(|(n, _)| !around(&path[..*n]))
                .map(|(_, home)| home.to_owned())
        });
        uses.insert(name.clone(), used.collect());
    }
    uses
}

/// What the scripts of the page import.
fn of_page() -> Uses {
    let mut uses = Uses::new();
    for (name, text) in tree::sources() {
        let Some(path) = name
            .strip_prefix("www/")
            .filter(|path| path.ends_with(".js"))
        else {
            continue;
        };
        let folder: Vec<_> = path.split('/').rev().skip(1).collect();
        let mut used = BTreeSet::new();
        for line in text
            .lines()
            .filter(|line| line.starts_with("import ") || line.starts_with("} from"))
        {
            let called = line
                .split('"')
                .nth(1)
                .expect("a script that is imported has a name");
            let up = called.matches("../").count();
            let mut words: Vec<_> = folder.iter().skip(up).rev().copied().collect();
            words.push(called.trim_start_matches(['.', '/']));
            used.insert(words.join("/"));
        }
        uses.insert(path.to_owned(), used);
    }
    // The bindings are made when the page is built, and use none of these.
    uses.insert("carryline.js".to_owned(), BTreeSet::new());
    uses.insert("shed.js".to_owned(), BTreeSet::new());
    uses
}

fn check(what: &str, uses: &Uses, least: usize) {
    let count: usize = uses.values().map(BTreeSet::len).sum();
    assert!(count >= least, "{what}: only {count} uses were found");
    assert_eq!(circle(uses), None, "{what}");
}

#[test]
fn no_file_needs_itself() {
    check("the simulator", &of_crate("sim/src/"), 200);
    check("the page's own part", &of_crate("web/src/"), 100);
    check("the checks in browsers", &of_crate("tests/browser/"), 40);
    check("the scripts", &of_page(), 200);
}

#[test]
fn a_circle_is_found() {
    let uses = |all: &[(&str, &[&str])]| -> Uses {
        let owned = |names: &&[&str]| names.iter().map(|n| n.to_string()).collect();
        all.iter()
            .map(|(name, used)| (name.to_string(), owned(used)))
            .collect()
    };
    let line = uses(&[("a", &["b"]), ("b", &["c", "d"]), ("c", &["d"]), ("d", &[])]);
    assert_eq!(circle(&line), None);
    let round = uses(&[("a", &["b"]), ("b", &["c", "d"]), ("c", &["b"]), ("d", &[])]);
    assert_eq!(circle(&round), Some(vec!["b", "c"]));
}

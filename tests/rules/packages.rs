//! The packages that were agreed on are there, and used.

use super::tree;

/// Each with the crates that it is for.
const AGREED: [(&str, &[&str]); 6] = [
    ("glam", &["sim", "web"]),
    ("getrandom", &["web"]),
    ("js-sys", &["web"]),
    ("serde-wasm-bindgen", &["web"]),
    ("wasm-bindgen", &["web"]),
    ("web-sys", &["web"]),
];

/// Sources of a crate in which a package is called, comments apart.
fn calls(sources: &[(String, String)], member: &str, package: &str) -> usize {
    let source = format!("{member}/src/");
    let call = format!("{}::", package.replace('-', "_"));
    let code = |line: &str| !line.trim_start().starts_with("//") && line.contains(&call);
    let in_crate = sources.iter().filter(|(name, _)| name.starts_with(&source));
    in_crate.filter(|(_, text)| text.lines().any(code)).count()
}

#[test]
fn every_package_agreed_on_is_a_dependency_and_called() {
    let sources = tree::sources();
    for (package, members) in AGREED {
        for member in members {
            let manifest = format!("{member}/Cargo.toml");
            let (_, text) = sources
                .iter()
                .find(|(name, _)| *name == manifest)
                .expect("a manifest");
            let (_, needed) = text.split_once("[dependencies]").expect("dependencies");
            let listed = |line: &str| {
                line.strip_prefix(package)
                    .is_some_and(|rest| rest.starts_with([' ', '.']))
            };
            assert!(
                needed.lines().any(listed),
                "{member} does not depend on {package}"
            );
            assert!(
                calls(&sources, member, package) > 0,
                "{member} does not call {package}"
            );
        }
    }
}

/// Nothing else draws by chance: what differs from one time to the next would be beyond the seed.
#[test]
fn chance_has_one_door() {
    for (name, text) in tree::sources() {
        let product = name.starts_with("www/") || name.contains("/src/");
        for other in [
            "Math.random",
            "randomUUID",
            "getRandomValues",
            "fastrand",
            "getrandom::",
        ] {
            let door = name == "web/src/chance.rs" && other == "getrandom::";
            assert!(
                !product || door || !text.contains(other),
                "{name} calls {other}"
            );
        }
    }
}

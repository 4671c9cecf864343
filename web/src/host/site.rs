//! Assembles the page: the simulator as wasm, its bindings, and the files in `www`.

use super::join::join;
use super::layout::{self, Files};
use super::limits;
use anyhow::{Context, Result, bail};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::{env, fs};

const TARGET: &str = "wasm32-unknown-unknown";

/// What the page of sheets is started with.
const SHEETS: &str = "build/app.js";

/// Where the page is assembled when it is served.
pub fn default_folder() -> PathBuf {
    target_folder().join("page").join("site")
}

/// Builds the page into a folder, which is made where it is missing.
pub fn build_into(out: &Path) -> Result<()> {
    // Before the long part, so that a folder that cannot be is known at once.
    fs::create_dir_all(out).with_context(|| format!("cannot make the folder {}", out.display()))?;
    ensure_target()?;
    let mut files = bind(&compile(&[])?, "carryline")?;
    files.append(&mut bind(&compile(&["--features", "shed"])?, "shed")?);
    files.append(&mut read(&repository().join("www"))?);
    let apart = ["carryline.js", "language.js", "shed.js"];
    let sheets = join_sheets(&mut files, &apart)?;
    join(&mut files, &["app.js", "rest.js"], &apart)?;
    files.insert(SHEETS.to_owned(), sheets);
    let words = files.keys().filter(|path| path.ends_with("/all.js"));
    for words in words.cloned().collect::<Vec<_>>() {
        join(&mut files, &[&words], &[])?;
    }
    // One answer for both sheets; what holds for a screen comes after what holds for all.
    let screens = files.remove("screens.css").unwrap_or_default();
    files
        .entry("style.css".to_owned())
        .or_default()
        .extend(screens);
    let limits = limits::page(sim::limits::TEXT);
    files.insert("limits.html".to_owned(), limits.into_bytes());
    let files = layout::lay_out(files)?;
    remove_versions(out)?;
    for (path, bytes) in &files {
        let path = out.join(path);
        let written = path.parent().map_or(Ok(()), fs::create_dir_all);
        let written = written.and_then(|()| fs::write(&path, bytes));
        written.with_context(|| format!("cannot write {}", path.display()))?;
    }
    Ok(())
}

/// The script of the page of sheets, with its own copies of what it shares with the first page: who looks at one has
/// not fetched the other. What it alone is made of is taken out of the files.
fn join_sheets(files: &mut Files, apart: &[&str]) -> Result<Vec<u8>> {
    let mut copy = files.clone();
    join(&mut copy, &[SHEETS], apart)?;
    files.retain(|path, _| copy.contains_key(path) || !path.starts_with("build/"));
    copy.remove(SHEETS).with_context(|| format!("no {SHEETS}"))
}

/// Makes the bindings between a simulator and the page.
fn bind(wasm: &Path, name: &str) -> Result<Files> {
    let mut bound = wasm_bindgen_cli_support::Bindgen::new()
        .input_path(wasm)
        .web(true)?
        .typescript(false)
        .omit_default_module_path(false)
        .remove_name_section(true)
        .remove_producers_section(true)
        .out_name(name)
        .generate_output()
        .context("cannot make the bindings")?;
    let wasm = bound.wasm_mut().emit_wasm();
    let script = bound.js().as_bytes().to_vec();
    Ok(Files::from([
        (format!("{name}_bg.wasm"), wasm),
        (format!("{name}.js"), script),
    ]))
}

/// Takes the parts of other versions away; what else lies in the folder is none of ours.
fn remove_versions(out: &Path) -> Result<()> {
    for entry in fs::read_dir(out)? {
        let entry = entry?;
        if layout::is_version(&entry.file_name().to_string_lossy()) {
            fs::remove_dir_all(entry.path())
                .with_context(|| format!("cannot remove {}", entry.path().display()))?;
        }
    }
    Ok(())
}

fn repository() -> PathBuf {
    let web = Path::new(env!("CARGO_MANIFEST_DIR"));
    web.parent().unwrap_or(web).to_path_buf()
}

fn target_folder() -> PathBuf {
    env::var_os("CARGO_TARGET_DIR").map_or_else(|| repository().join("target"), PathBuf::from)
}

/// The toolchain that built this program builds the page: `cargo run` leaves its own path behind.
fn tool(name: &str) -> Command {
    let mut command = match (name, env::var_os("CARGO")) {
        ("cargo", Some(path)) => Command::new(path),
        _ => Command::new(name),
    };
    command.current_dir(repository());
    command
}

fn ensure_target() -> Result<()> {
    let asked = tool("rustc")
        .args(["--print", "target-libdir", "--target", TARGET])
        .output()
        .context("cannot run rustc")?;
    let folder = String::from_utf8_lossy(&asked.stdout);
    if Path::new(folder.trim()).is_dir() {
        return Ok(());
    }
    eprintln!("Adding the {TARGET} target");
    let added = tool("rustup").args(["target", "add", TARGET]).status();
    match added {
        Ok(status) if status.success() => Ok(()),
        _ => bail!("the {TARGET} target is missing and rustup could not add it"),
    }
}

/// Compiles the library to wasm, in a folder of its own so that no other build is waited for.
fn compile(features: &[&str]) -> Result<PathBuf> {
    let folder = target_folder().join("page");
    let status = tool("cargo")
        .env("CARGO_ENCODED_RUSTFLAGS", flags())
        .args(["build", "--quiet", "--package", "web", "--lib"])
        .args(features)
        .args(["--profile", "page", "--target", TARGET, "--target-dir"])
        .arg(&folder)
        .status()
        .context("cannot run cargo")?;
    if !status.success() {
        bail!("the page's own part did not compile");
    }
    Ok(folder.join(TARGET).join("page").join("web.wasm"))
}

/// The compiler's flags, with one more: where the sources lie on this machine is nobody's business, and
/// would be fetched with the rest.
fn flags() -> String {
    const BETWEEN: &str = "\u{1f}";
    let given = env::var("CARGO_ENCODED_RUSTFLAGS").or_else(|_| {
        let flags = env::var("RUSTFLAGS")?;
        Ok::<_, env::VarError>(flags.split_whitespace().collect::<Vec<_>>().join(BETWEEN))
    });
    let given = given.unwrap_or_default();
    let home = env::var_os("CARGO_HOME").map(PathBuf::from);
    let Some(home) = home.or_else(|| Some(env::home_dir()?.join(".cargo"))) else {
        return given;
    };
    let sources = home.join("registry").join("src");
    let flag = format!("--remap-path-prefix={}=crates", sources.display());
    if given.is_empty() {
        flag
    } else {
        given + BETWEEN + &flag
    }
}

/// Every file of a folder.
pub fn read(folder: &Path) -> Result<Files> {
    let mut files = Files::new();
    read_into(&mut files, folder, "")?;
    Ok(files)
}

fn read_into(files: &mut Files, folder: &Path, prefix: &str) -> Result<()> {
    let entries = fs::read_dir(folder);
    for entry in entries.with_context(|| format!("cannot read {}", folder.display()))? {
        let entry = entry?;
        let path = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.file_type()?.is_dir() {
            read_into(files, &entry.path(), &format!("{path}/"))?;
        } else {
            let bytes = fs::read(entry.path());
            files.insert(
                path.clone(),
                bytes.with_context(|| format!("cannot read {path}"))?,
            );
        }
    }
    Ok(())
}

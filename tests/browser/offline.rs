//! Kept on the device: without a host, from a subfolder, and across versions.

use anyhow::{Context, Result, ensure};
use browser::{Engine, Ground, Host, Page, Screen, Visit, cargo};
use std::fs;
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant, SystemTime};
use tempfile::TempDir;

/// The page as it is built for any static host.
pub fn built() -> Result<TempDir> {
    let folder = TempDir::new()?;
    let status = cargo()
        .args(["run", "--release", "--quiet", "--", "--out"])
        .arg(folder.path())
        .stdout(std::process::Stdio::null())
        .status()?;
    ensure!(status.success(), "the page was not built");
    Ok(folder)
}

/// The folder of a built page's version, in the page's folder.
fn parts(folder: &Path) -> Result<PathBuf> {
    let entries = fs::read_dir(folder)?.collect::<Result<Vec<_>, _>>()?;
    let mut folders = entries
        .iter()
        .map(fs::DirEntry::path)
        .filter(|p| p.is_dir());
    folders.next().context("no version was built")
}

fn name(path: &Path) -> Result<String> {
    let name = path.file_name().context("a folder has a name")?;
    Ok(name.to_string_lossy().into_owned())
}

/// Makes one built page another version of itself: other names, and a mark in the page and in a script.
fn make(folder: &Path, version: &str, mark: &str) -> Result<()> {
    let old = parts(folder)?;
    let new = folder.join(version);
    fs::rename(&old, &new)?;
    let old = name(&old)?;
    for page in ["index.html", "build.html", "limits.html", "sw.js"] {
        let path = folder.join(page);
        fs::write(&path, fs::read_to_string(&path)?.replace(&old, version))?;
    }
    let index = folder.join("index.html");
    let text = fs::read_to_string(&index)?;
    fs::write(
        &index,
        text.replacen("<body", &format!("<body data-mark=\"{mark}\""), 1),
    )?;
    let app = new.join("app.js");
    let text = fs::read_to_string(&app)?;
    fs::write(
        &app,
        format!("document.documentElement.dataset.mark = \"{mark}\";\n{text}"),
    )?;
    Ok(())
}

/// How long Chromium may take to look for a newer version: it does so when it is idle, and in its first
/// seconds it never is.
const UPDATE: Duration = Duration::from_secs(40);

const VERSIONS: [(&str, &str); 2] = [
    ("carryline-00000000000000aa", "A"),
    ("carryline-00000000000000bb", "B"),
];

/// Two versions of the page.
fn two() -> Result<[TempDir; 2]> {
    let both = [built()?, built()?];
    for (folder, (version, mark)) in both.iter().zip(VERSIONS) {
        make(folder.path(), version, mark)?;
    }
    // Hosts tell versions of a file apart by the second.
    let keeper = fs::File::options()
        .write(true)
        .open(both[0].path().join("sw.js"))?;
    keeper.set_modified(SystemTime::now() - Duration::from_secs(3600))?;
    Ok(both)
}

/// Puts one built page up in place of another, as is done on a web space.
fn put_up(new: &Path, old: &Path) -> Result<()> {
    fs::remove_dir_all(parts(old)?)?;
    for entry in fs::read_dir(new)? {
        let path = entry?.path();
        let to = old.join(name(&path)?);
        // Renamed, files keep the second in which they were written.
        fs::rename(path, to)?;
    }
    Ok(())
}

fn address(host: &Host, path: &str) -> String {
    format!("http://127.0.0.1:{}{path}", host.port())
}

fn visit(address: &str) -> Visit<'_> {
    Visit::to(address)
}

/// What is kept on the device, by version.
async fn kept(page: &Page) -> Result<Vec<String>> {
    page.ask("return caches.keys().then(keys => keys.map(k => k.split('/').at(-2)))")
        .await
}

async fn wait_until_kept(page: &Page) -> Result<()> {
    page.wait_for("the page to be kept", "navigator.serviceWorker.controller")
        .await
}

/// The marks in the page and in its script: the version of each.
async fn marks(page: &Page) -> Result<[String; 2]> {
    page.ask("return [document.body.dataset.mark, document.documentElement.dataset.mark]")
        .await
}

async fn speeds(page: &Page) -> Result<Vec<String>> {
    page.wait_for(
        "everything to be looked at",
        "!document.documentElement.dataset.working",
    )
    .await?;
    let speeds = page.texts("#lips tbody [data-what=speed]").await?;
    ensure!(!speeds.is_empty(), "no jump was ridden");
    Ok(speeds)
}

/// One visit, then the host is gone: the page rides, looks at everything, and tells its limits.
fn rides_without_a_host(ground: &Ground, engine: Engine, path: &str) -> Result<()> {
    let folder = built()?;
    let host = Host::start(folder.path(), path, 0)?;
    let address = address(&host, path);
    let visit = Visit {
        engine,
        ..visit(&address)
    };
    ground.visit_as(&visit, async |page| {
        wait_until_kept(page).await?;
        let scope: String = page.ask("return navigator.serviceWorker.ready.then(r => r.scope)").await?;
        ensure!(scope == address, "{scope} is kept, which is not {address}");
        let before = speeds(page).await?;
        let port = host.port();
        drop(host);
        ensure!(TcpStream::connect(("127.0.0.1", port)).is_err(), "the host still answers");
        page.go("").await?;
        page.wait_for("the ride to begin", "document.getElementById('scrub').valueAsNumber > 0.2").await?;
        let after = speeds(page).await?;
        ensure!(before == after, "with a host {before:?}, without {after:?}");
        let kind = "return fetch(document.querySelector('link[rel=preload]').href).then(r => r.headers.get('content-type'))";
        let kind: String = page.ask(kind).await?;
        ensure!(kind == "application/wasm", "the simulator comes as {kind}");
        page.click(".how a").await?;
        page.wait_for("the limits", "document.querySelector('.reading h1')").await
    })
}

pub fn in_chromium(ground: &Ground) -> Result<()> {
    rides_without_a_host(ground, Engine::Chromium, "/")
}

pub fn in_firefox(ground: &Ground) -> Result<()> {
    rides_without_a_host(ground, Engine::Firefox, "/")
}

pub fn from_a_subfolder(ground: &Ground) -> Result<()> {
    rides_without_a_host(ground, Engine::Chromium, "/yard/lines/")
}

/// A test ride is added; gives what it teaches, in words.
async fn learn(page: &Page) -> Result<Vec<String>> {
    page.wait_for("the form", "document.querySelector('#see-seconds')")
        .await?;
    for (name, text) in [("from", "0 m"), ("to", "6 m"), ("seconds", "2.75 s")] {
        page.fill(&format!("#see-{name}"), text).await?;
    }
    page.click("#see-add").await?;
    page.wait_for(
        "what that teaches",
        "document.querySelector('#taught p') && !document.documentElement.dataset.working",
    )
    .await?;
    page.texts("#taught p").await
}

/// What a test ride teaches is known without a host once a line was changed; before, it is said that it is not.
pub fn who_plans_learns_without_a_host(ground: &Ground) -> Result<()> {
    let folder = built()?;
    for changed in [false, true] {
        let host = Host::start(folder.path(), "/", 0)?;
        let address = address(&host, "/");
        ground.visit_as(&visit(&address), async |page| {
            wait_until_kept(page).await?;
            speeds(page).await?;
            if changed {
                page.click("#features [data-kind=start_ramp] .feature").await?;
                page.fill("[data-field$='platform_height'] input", "2.5 m").await?;
                let kept = "return caches.keys().then(async ([name]) => (await (await caches.open(name)).keys()).filter(r => /shed/.test(r.url)).length)";
                let begun = Instant::now();
                while page.ask::<usize>(kept).await? < 2 {
                    ensure!(begun.elapsed() < UPDATE, "the shed is not kept");
                    tokio::time::sleep(Duration::from_millis(100)).await;
                }
            }
            drop(host);
            let told = learn(page).await?;
            let lost = told.iter().any(|text| text.starts_with("What this teaches could not be worked out"));
            println!("changed {changed}: {told:#?}");
            ensure!(lost != changed, "changed {changed}: {told:?}");
            Ok(())
        })?;
    }
    Ok(())
}

pub fn a_new_version_is_taken_up_whole(ground: &Ground) -> Result<()> {
    let [a, b] = two()?;
    let host = Host::start(a.path(), "/", 0)?;
    let address = address(&host, "/");
    ground.visit_as(&visit(&address), async |page| {
        wait_until_kept(page).await?;
        ensure!(marks(page).await? == ["A", "A"], "{:?}", marks(page).await?);
        ensure!(
            kept(page).await? == [VERSIONS[0].0],
            "{:?}",
            kept(page).await?
        );
        put_up(b.path(), a.path())?;
        // The first visit since shows the old version, all of it, while the new one comes.
        page.reload().await?;
        ensure!(marks(page).await? == ["A", "A"], "{:?}", marks(page).await?);
        let said = "document.getElementById('message').innerText.includes('newer version')";
        page.wait(UPDATE, "the page to say so", said).await?;
        page.picture("phone-newer.png").await?;
        // An old page that is still open gets its own parts, although the new version has taken over.
        let script = "const here = document.querySelector('script[type=module]').src; \
            return fetch(new URL('app.js', here)).then(r => r.text())";
        let own = async || page.ask::<String>(script).await;
        ensure!(
            own().await?.contains("dataset.mark = \"A\""),
            "an old page got a part of the new version"
        );
        // So it does beside a new one, which is new as a whole.
        page.second_tab().await?;
        ensure!(marks(page).await? == ["B", "B"], "{:?}", marks(page).await?);
        ensure!(
            own().await?.contains("dataset.mark = \"B\""),
            "a new page got an old part"
        );
        page.first_tab().await?;
        ensure!(marks(page).await? == ["A", "A"], "{:?}", marks(page).await?);
        ensure!(
            own().await?.contains("dataset.mark = \"A\""),
            "the old page lost its parts"
        );
        speeds(page).await?;
        page.click("#message p button").await?;
        page.wait_for(
            "the new version",
            "document.body?.dataset.mark === 'B' && document.documentElement.dataset.ready",
        )
        .await?;
        ensure!(marks(page).await? == ["B", "B"], "{:?}", marks(page).await?);
        let only = format!("window.left === '{}'", VERSIONS[1].0);
        let look =
            "caches.keys().then(keys => (window.left = keys.map(k => k.split('/').at(-2)).join()))";
        page.wait_for(
            "the old version to be removed",
            &format!("({look}, {only})"),
        )
        .await?;
        speeds(page).await?;
        Ok(())
    })
}

/// Looks for a newer version and waits until what became of it is this.
async fn look(page: &Page, end: &str) -> Result<()> {
    let watch = "window.end = ''; return navigator.serviceWorker.getRegistration().then(r => { \
        r.onupdatefound = () => { const w = r.installing; w.onstatechange = () => (window.end = w.state); }; \
        r.update(); return true; })";
    ensure!(page.ask::<bool>(watch).await?);
    let ended = format!("window.end === '{end}'");
    page.wait(UPDATE, "the newer version to be tried", &ended)
        .await
}

pub fn half_a_version_is_not_taken(ground: &Ground) -> Result<()> {
    let [a, b] = two()?;
    // A host to which not all has been copied yet.
    let missing = Path::new(VERSIONS[1].0).join("worker.js");
    let late = TempDir::new()?;
    let late = late.path().join("worker.js");
    fs::rename(b.path().join(&missing), &late)?;
    let host = Host::start(a.path(), "/", 0)?;
    let address = address(&host, "/");
    ground.visit_as(&visit(&address), async |page| {
        wait_until_kept(page).await?;
        put_up(b.path(), a.path())?;
        for _ in 0..2 {
            page.reload().await?;
            look(page, "redundant").await?;
            ensure!(marks(page).await? == ["A", "A"], "{:?}", marks(page).await?);
            ensure!(
                kept(page).await? == [VERSIONS[0].0],
                "{:?}",
                kept(page).await?
            );
            speeds(page).await?;
        }
        // Once the rest is there, it is taken.
        fs::rename(&late, a.path().join(&missing))?;
        look(page, "activated").await?;
        page.reload().await?;
        ensure!(marks(page).await? == ["B", "B"], "{:?}", marks(page).await?);
        Ok(())
    })
}

/// What a browser asks of a page before it offers to install it.
pub fn can_be_installed(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        wait_until_kept(page).await?;
        let faults = page.install_faults().await?;
        ensure!(faults.is_empty(), "cannot be installed: {faults:?}");
        Ok(())
    })
}

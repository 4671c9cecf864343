//! The panel that a line is sent from, and the files that are saved there.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen, shades};
use roxmltree::Document;
use sim::error::Quantity;
use sim::judge::{Unknown, jumps, spreads};
use sim::plan::{Line, Plan, demo};
use sim::setup::ride_plan;
use sim::units::{System, format};

/// The escape key (W3C, WebDriver, 17.4.2).
const ESCAPE: char = '\u{e00c}';

/// The speeds at the lips as the page writes them, rider by rider.
fn speeds(plan: &Plan) -> Result<Vec<Vec<f64>>> {
    let of = |rider| {
        let ridden = ride_plan(plan, rider).map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
        let rows = jumps(&ridden.profile, &ridden.run);
        let speeds: Option<_> = rows.iter().map(|row| row.speed).collect();
        speeds.context("a lip is never left")
    };
    (0..plan.riders.len()).map(of).collect()
}

fn written(speed: f64) -> String {
    format(speed, Quantity::Speed, System::Metric)
}

/// Opens the panel once all is known, with the page in metres.
async fn open(page: &Page) -> Result<String> {
    page.click("#units label:has([value=metric])").await?;
    page.studied().await?;
    page.click("#share").await?;
    page.ask("return document.getElementById('share').dataset.link")
        .await
}

pub fn the_panel_comes_and_goes(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        open(page).await?;
        let focused = "return document.activeElement.id";
        let first: String = page.ask(focused).await?;
        ensure!(first == "send-copy", "the focus is on {first:?}");
        let small: Vec<String> = page
            .ask(
                "return [...document.querySelectorAll('#send button')] \
                 .filter(e => { const r = e.getBoundingClientRect(); return r.height < 44 || r.width < 44; }) \
                 .map(e => e.outerHTML)",
            )
            .await?;
        ensure!(small.is_empty(), "too small to be touched: {small:#?}");
        let [seen, content]: [u32; 2] = page
            .ask("const d = document.getElementById('send'); return [d.clientWidth, d.scrollWidth]")
            .await?;
        ensure!(content <= seen, "{content} pixels of content in {seen}");
        page.picture("phone-send.png").await?;
        page.press("#send-copy", ESCAPE).await?;
        ensure!(page.ask::<bool>("return !document.getElementById('send').open").await?);
        let last: String = page.ask(focused).await?;
        ensure!(last == "share", "closed, the focus is on {last:?}");
        Ok(())
    })
}

/// A line of as many features as a plan may have.
fn long() -> Plan {
    let mut plan = demo();
    if let Line::Features(features) = &mut plan.line {
        let middle: Vec<_> = features[1..features.len() - 1].to_vec();
        while features.len() + middle.len() <= 60 {
            features.splice(1..1, middle.clone());
        }
    }
    plan.yard.length = 400.0;
    plan
}

/// Photographs the page and reads the code on it.
async fn read_code(page: &Page) -> Result<String> {
    let (width, height, shades) = page.shades().await?;
    let mut image =
        rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| shades[y * width + x]);
    let grids = image.detect_grids();
    let grid = grids.first().context("no code is seen on the page")?;
    Ok(grid.decode()?.1)
}

pub fn the_code_holds_the_link(ground: &Ground) -> Result<()> {
    let long = format!("#{}", sim::link::encode(&long()));
    for tail in ["", &long] {
        ground.visit(Screen::Phone, tail, async |page| {
            page.click("#share").await?;
            let link: String = page
                .ask("return document.getElementById('share').dataset.link")
                .await?;
            let read = read_code(page).await?;
            println!("a code of {} characters", read.len());
            ensure!(read == link, "the code says {read}, the link is {link}");
            Ok(())
        })?;
    }
    Ok(())
}

pub fn the_system_is_asked_where_it_can_share(ground: &Ground) -> Result<()> {
    let speeds = speeds(&demo())?;
    ground.visit(Screen::Phone, "", async |page| {
        let stub = "navigator.share = async (what) => { window.shared = what; \
            throw new DOMException('thought better of it', 'AbortError'); }; return true";
        ensure!(page.ask::<bool>(stub).await?);
        let link = open(page).await?;
        page.click("#send-share").await?;
        page.wait_for("the system to be asked", "window.shared")
            .await?;
        let [title, text, url]: [String; 3] = page
            .ask("const { title, text, url } = window.shared; return [title, text, url]")
            .await?;
        ensure!(title == demo().name && url == link, "{title} {url}");
        for speed in &speeds[0] {
            ensure!(text.contains(&written(*speed)), "{text:?} lacks {speed}");
        }
        ensure!(text.contains("not measured"), "{text:?} has no caution");
        let said = page.texts("#send .status").await?.concat();
        ensure!(said.is_empty(), "of a change of mind is said {said:?}");
        Ok(())
    })
}

/// The visible texts of a picture with their places and sizes.
fn texts(svg: &str) -> Result<Vec<(String, [f64; 3])>> {
    let svg = Document::parse(svg)?;
    let nodes = svg.descendants().filter(|n| n.has_tag_name("text"));
    let seen = nodes.filter(|n| n.attribute("aria-hidden").is_none());
    let read = seen.map(|n| {
        let number = |name| anyhow::Ok(n.attribute(name).context("no place")?.parse::<f64>()?);
        let place = [number("x")?, number("y")?, number("font-size")?];
        Ok((n.text().unwrap_or_default().to_owned(), place))
    });
    read.collect()
}

/// How many dark dots there are where a text stands; pictures have two dots to each of a text's units.
fn dark(pixels: &(usize, usize, Vec<u8>), [x, y, size]: [f64; 3]) -> usize {
    let (width, height, shades) = pixels;
    let range = |from: f64, to: f64, most: usize| {
        ((2.0 * from).max(0.0) as usize)..((2.0 * to) as usize).min(most)
    };
    let rows = range(y - 0.7 * size, y, *height);
    let row = |y: usize| range(x - 0.7 * size, x + 0.7 * size, *width).map(move |x| y * width + x);
    rows.flat_map(row).filter(|at| shades[*at] < 90).count()
}

/// A picture in as many dots as its text has units.
const IN_DOTS: &str = "
    const image = new Image();
    image.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
    return image.decode().then(async () => {
        const canvas = document.createElement('canvas');
        [canvas.width, canvas.height] = [image.width, image.height];
        canvas.getContext('2d').drawImage(image, 0, 0);
        const png = await new Promise((done) => canvas.toBlob(done, 'image/png'));
        return [...new Uint8Array(await png.arrayBuffer())];
    });";

pub fn pictures_hold_name_speeds_and_caution(ground: &Ground) -> Result<()> {
    let speeds = speeds(&demo())?;
    let [svg, png, card] = ground.visit(Screen::Desk, "", async |page| {
        open(page).await?;
        page.click("#save-svg").await?;
        page.click("#save-png").await?;
        let name = demo().name;
        let svg = page.saved(&format!("{name}.svg")).await?;
        let png = page.saved(&format!("{name}.png")).await?;
        // The picture that stands for the page where its address is sent, in fewer dots.
        let card: Vec<u8> = page
            .ask(&format!(
                "const svg = {}; {IN_DOTS}",
                serde_json::to_string(&String::from_utf8(svg.clone())?)?
            ))
            .await?;
        Ok([svg, png, card])
    })?;
    let said = texts(&String::from_utf8(svg)?)?;
    let pixels = shades(&png)?;
    ensure!(
        (pixels.0, pixels.1) == (2400, 1260),
        "{} by {}",
        pixels.0,
        pixels.1
    );
    let all: String = said.iter().map(|(text, _)| format!("{text} ")).collect();
    let caution = "An adult rides it first";
    for part in [demo().name.as_str(), "Child, 10", "km/h", caution] {
        ensure!(all.contains(part), "the picture lacks {part:?}: {all}");
    }
    for speed in &speeds[0] {
        let figure = written(*speed).replace(" km/h", "");
        let text = said.iter().find(|(text, _)| *text == figure);
        let (_, place) = text.with_context(|| format!("{figure} is not in {all}"))?;
        let dots = dark(&pixels, *place);
        ensure!(
            dots > 100,
            "where {figure} stands there are {dots} dark dots"
        );
        let beside = [place[0], place[1] + 60.0, place[2]];
        ensure!(
            dark(&pixels, beside) < dots,
            "it is as dark where nothing stands"
        );
    }
    let folder = tests::repository().join("tests/out");
    std::fs::create_dir_all(&folder)?;
    std::fs::write(folder.join("card.png"), card)?;
    std::fs::write(folder.join("line.png"), png)?;
    Ok(())
}

pub fn figures_come_as_a_table(ground: &Ground) -> Result<()> {
    let plan = demo();
    let speeds = speeds(&plan)?;
    let ranges =
        spreads(&plan, 0, &Unknown::usual()).map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
    let text = ground.visit(Screen::Desk, "", async |page| {
        open(page).await?;
        page.click("#save-csv").await?;
        page.saved(&format!("{}.csv", plan.name)).await
    })?;
    let text = String::from_utf8(text)?;
    let text = text.trim_start_matches('\u{feff}');
    let mut reader = csv::ReaderBuilder::new()
        .flexible(true)
        .from_reader(text.as_bytes());
    let heads = reader.headers()?.clone();
    let column = |name: &str| {
        heads
            .iter()
            .position(|h| h == name)
            .with_context(|| format!("no {name} in {heads:?}"))
    };
    let [speed, slowest] = [
        column("Speed at the lip (km/h)")?,
        column("May be from (km/h)")?,
    ];
    let rows = reader.records().collect::<Result<Vec<_>, _>>()?;
    let expected = speeds
        .iter()
        .zip(&plan.riders)
        .flat_map(|(all, m)| all.iter().map(move |v| (&m.label, v)));
    for (i, (label, expected)) in expected.enumerate() {
        let row = rows.get(i).context("too few rows")?;
        ensure!(row.get(0) == Some(label), "{row:?} is not {label}'s");
        let got: f64 = row[speed].parse()?;
        ensure!(
            (got - expected * 3.6).abs() <= 0.00501,
            "{got}, not {}",
            expected * 3.6
        );
        if let Some(range) = ranges.get(i) {
            let (got, expected): (f64, _) =
                (row[slowest].parse()?, range.slowest.context("never left")?);
            ensure!(
                (got - expected * 3.6).abs() <= 0.00501,
                "{got}, not {}",
                expected * 3.6
            );
        }
    }
    ensure!(
        rows.len() == 7 && rows[6][0].contains("not measured"),
        "{rows:?}"
    );
    Ok(())
}

pub fn a_plan_file_brings_the_line_back(ground: &Ground) -> Result<()> {
    let file = ground.visit(Screen::Desk, "", async |page| {
        page.fill("#plan-name", "Over the ditch").await?;
        open(page).await?;
        page.click("#save-json").await?;
        page.saved("Over the ditch.json").await
    })?;
    let text = String::from_utf8(file)?;
    let plan = Plan::from_json(&text).map_err(|fault| anyhow::anyhow!("{fault}"))?;
    let mut expected = demo();
    "Over the ditch".clone_into(&mut expected.name);
    ensure!(plan == expected, "saved {text}");
    let folder = tempfile::tempdir()?;
    let [good, bad] = ["good.json", "bad.json"].map(|name| folder.path().join(name));
    std::fs::write(&good, &text)?;
    std::fs::write(&bad, text.replace("\"gap\"", "\"gapp\""))?;
    ground.visit(Screen::Phone, "", async |page| {
        let name = "return document.getElementById('plan-name').value";
        page.click("#lines > summary").await?;
        page.wait_for("the list", "document.getElementById('plan-file')")
            .await?;
        page.choose_file("#plan-file", &bad).await?;
        page.wait_for(
            "the fault to be told",
            "document.getElementById('message').innerText.includes('gapp')",
        )
        .await?;
        ensure!(
            page.ask::<String>(name).await? == demo().name,
            "a bad file took the line away"
        );
        page.choose_file("#plan-file", &good).await?;
        page.wait_for(
            "the line to come",
            "document.getElementById('plan-name').value === 'Over the ditch'",
        )
        .await
    })
}

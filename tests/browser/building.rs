//! The sheets to build from: they follow the line, stand without a host, and print whole.

use super::offline::built;
use super::printed;
use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen};
use serde_json::json;
use sim::build::job::{Job, job};
use sim::build::supplies::Supplies;
use sim::link;
use sim::plan::{Feature, Line, Plan, Soil, Surface, demo};
use sim::profile::Profile;

/// Three lines, each with all that there are sheets for: landings that boards hold, lips of wood.
const LINES: [(&str, &str); 3] = [
    ("orchard", include_str!("../../sim/plans/orchard.json")),
    ("tables", include_str!("../../sim/plans/three_tables.json")),
    ("steps", include_str!("../../sim/plans/steps.json")),
];

/// Paper by its name among the settings: width and height, mm.
const PAPERS: [(&str, [f64; 2]); 2] = [("a4", [210.0, 297.0]), ("letter", [215.9, 279.4])];

/// What the page's style leaves white around a sheet, mm.
const MARGIN: f64 = 12.0;

/// CSS pixels in a millimetre.
const PX: f64 = 96.0 / 25.4;

fn line(text: &str) -> Result<Plan> {
    let mut plan = Plan::from_json(text).map_err(|fault| anyhow::anyhow!("{fault}"))?;
    if let Line::Features(features) = &mut plan.line {
        for feature in features {
            if let Feature::Jump(jump) = feature {
                jump.landing.boxed = true;
                jump.lip.surface = Surface::Wood;
            }
        }
    }
    Ok(plan)
}

fn job_of(plan: &Plan) -> Result<Job> {
    let profile = Profile::build(plan).map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
    Ok(job(plan, &profile, &Supplies::default()))
}

/// Where the sheets of a plan stand.
fn sheets(plan: &Plan) -> String {
    format!("build.html#{}", link::encode(plan))
}

const STAKES: &str = "return document.querySelectorAll('#leaf-stakes tbody tr').length";

/// All that is worked out again and again is there.
async fn studied(page: &Page) -> Result<()> {
    page.wait_for("the studies", "!document.documentElement.dataset.working")
        .await
}

/// Soil and widths are typed where the plan is; from there the way leads to sheets of that very plan.
pub fn the_way_leads_to_sheets_of_the_plan(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        page.click("#dig > summary").await?;
        page.choose("[data-field='yard.soil'] select", "clay")
            .await?;
        page.fill("#dig [data-field=width] input", "1.5 m").await?;
        page.click("#dig [data-field='line.features[4].landing.boxed'] input")
            .await?;
        page.picture("phone-dig.png").await?;
        page.click("#dig [data-sheets]").await?;
        page.wait_for(
            "the sheets",
            "document.getElementById('leaves') && document.documentElement.dataset.ready",
        )
        .await?;
        let link: String = page.ask("return location.hash.slice(1)").await?;
        let plan = link::decode(&link)?.plan;
        let mut expected = demo();
        expected.yard.soil = Soil::Clay;
        expected.width = 1.5;
        if let Line::Features(features) = &mut expected.line
            && let Feature::Jump(jump) = &mut features[4]
        {
            jump.landing.boxed = true;
        }
        ensure!(plan == expected, "{plan:?}");
        let job = job_of(&plan)?;
        let stakes: usize = page.ask(STAKES).await?;
        ensure!(
            stakes == job.stakes.len(),
            "{stakes} stakes of {}",
            job.stakes.len()
        );
        let boxes: usize = page
            .ask("return document.querySelectorAll('[id^=leaf-box]').length")
            .await?;
        ensure!(boxes == 1 && job.boxes.len() == 1, "{boxes} boxes");
        page.picture("phone-sheets.png").await
    })
}

/// A line that is edited in another tab has its sheets follow.
pub fn sheets_follow_the_line(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        page.click("#features [data-kind=roller] .feature").await?;
        page.fill("[data-field$='.count'] input", "1").await?;
        page.wait_for(
            "the line to be kept",
            "Object.keys(localStorage).some(k => k.startsWith('carryline.line.'))",
        )
        .await?;
        page.second_tab_at("build.html").await?;
        let before: usize = page.ask(STAKES).await?;
        page.first_tab().await?;
        page.fill("[data-field$='.count'] input", "2").await?;
        page.studied().await?;
        page.last_tab().await?;
        let follow = format!("(() => {{ {STAKES} }})() === {}", before + 2);
        page.wait_for("two more stakes", &follow).await
    })
}

/// What nobody sells is said at its field, and the sheets stay; what is accepted is kept.
pub fn what_is_at_fault_is_named(ground: &Ground) -> Result<()> {
    let plan = line(LINES[0].1)?;
    ground.visit(Screen::Phone, &sheets(&plan), async |page| {
        studied(page).await?;
        page.click("#units label:has([value=metric])").await?;
        let open = "for (const d of document.querySelectorAll('#settings, #settings details')) d.open = true; return true";
        page.ask::<bool>(open).await?;
        let width = "[data-field='post[1]'] input";
        let fault = "[data-field='post[1]'] .fault";
        let before: usize = page.ask(STAKES).await?;
        for wrong in ["0 mm", "much"] {
            page.fill(width, wrong).await?;
            let told = page.texts(fault).await?.concat();
            ensure!(!told.is_empty(), "of {wrong} nothing is said");
            let stakes: usize = page.ask(STAKES).await?;
            ensure!(stakes == before, "{stakes} stakes, {before} before");
        }
        page.fill(width, "120 mm").await?;
        let told = page.texts(fault).await?.concat();
        ensure!(told.is_empty(), "{told}");
        page.reload().await?;
        let kept: f64 = page
            .ask("return JSON.parse(localStorage.getItem('carryline.supplies')).post[1]")
            .await?;
        ensure!((kept - 0.12).abs() < 1e-9, "{kept} m are kept");
        Ok(())
    })
}

/// Who has opened the sheets once has them without a host.
pub fn stand_without_a_host(ground: &Ground) -> Result<()> {
    let folder = built()?;
    let host = browser::Host::start(folder.path(), "/", 0)?;
    let address = format!("http://127.0.0.1:{}/", host.port());
    ground.visit_as(&browser::Visit::to(&address), async |page| {
        page.wait_for("the page to be kept", "navigator.serviceWorker.controller")
            .await?;
        page.go("build.html").await?;
        let before: usize = page.ask(STAKES).await?;
        drop(host);
        page.go("build.html").await?;
        let after: usize = page.ask(STAKES).await?;
        ensure!(
            before == after && before > 10,
            "{before} stakes, then {after}"
        );
        Ok(())
    })
}

/// What is smaller than 9 pt on paper, or wider than the sheet it stands on.
const CRAMPED: &str = "
    const out = [];
    const room = document.documentElement.clientWidth;
    const small = (element, size) => size < 11.9 && out.push(`${size.toFixed(1)} px: ${element.textContent.trim().slice(0, 40)}`);
    for (const leaf of document.querySelectorAll('.leaf')) {
      const walker = document.createTreeWalker(leaf, NodeFilter.SHOW_TEXT);
      while (walker.nextNode()) {
        const element = walker.currentNode.parentElement;
        const box = element.getBoundingClientRect();
        if (!walker.currentNode.data.trim() || !box.width || element.closest('.unseen, [aria-hidden=true]')) continue;
        const svg = element.ownerSVGElement;
        const scale = svg ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
        small(element, parseFloat(getComputedStyle(element).fontSize) * scale);
        if (box.right > room + 1 || box.left < -1) out.push(`over the edge: ${element.textContent.trim().slice(0, 40)}`);
      }
      for (const svg of leaf.querySelectorAll('svg')) if (svg.getBoundingClientRect().right > room + 1) out.push('a drawing over the edge');
      if (leaf.scrollWidth > leaf.clientWidth + 1) out.push(`${leaf.id}: ${leaf.scrollWidth} px in ${leaf.clientWidth}`);
    }
    return out;
";

/// Every sheet of a line, printed and turned into pictures: as many pages as sheets at least, none empty, nothing in
/// the margins, nothing small.
fn prints(ground: &Ground, (name, text): (&str, &str)) -> Result<()> {
    let plan = line(text)?;
    ground.visit(Screen::Desk, &sheets(&plan), async |page| {
        studied(page).await?;
        let leaves: usize = page.ask("return document.querySelectorAll('.leaf').length").await?;
        for (paper, size) in PAPERS {
            let pdf = page.print(size).await?;
            let pages = printed::pages(&pdf, &format!("sheets-{name}-{paper}"))?;
            println!("{name}, {paper}: {leaves} sheets on {} pages", pages.len());
            ensure!(pages.len() >= leaves, "{leaves} sheets on {} pages", pages.len());
            for (i, shades) in pages.iter().enumerate() {
                printed::check(shades).with_context(|| format!("{name}, {paper}, page {}", i + 1))?;
            }
            let width = (size[0] - 2.0 * MARGIN) * PX;
            page.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" })).await?;
            let screen = json!({ "width": width.floor(), "height": 1000, "deviceScaleFactor": 1, "mobile": false });
            page.devtools("Emulation.setDeviceMetricsOverride", screen).await?;
            let cramped: Vec<String> = page.ask(CRAMPED).await?;
            ensure!(cramped.is_empty(), "{name}, {paper}: {cramped:#?}");
            page.devtools("Emulation.setEmulatedMedia", json!({ "media": "" })).await?;
            page.devtools("Emulation.clearDeviceMetricsOverride", json!({})).await?;
        }
        Ok(())
    })
}

pub fn the_orchard_prints(ground: &Ground) -> Result<()> {
    prints(ground, LINES[0])
}

pub fn three_tables_print(ground: &Ground) -> Result<()> {
    prints(ground, LINES[1])
}

pub fn steps_print(ground: &Ground) -> Result<()> {
    prints(ground, LINES[2])
}

/// The page of the line itself comes on paper whole too.
pub fn the_page_itself_prints(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        page.studied().await?;
        for (paper, size) in PAPERS {
            let pdf = page.print(size).await?;
            let pages = printed::pages(&pdf, &format!("page-{paper}"))?;
            println!("{paper}: {} pages", pages.len());
            ensure!(pages.len() <= 6, "{} pages", pages.len());
            for (i, shades) in pages.iter().enumerate() {
                printed::check(shades).with_context(|| format!("{paper}, page {}", i + 1))?;
            }
        }
        Ok(())
    })
}

//! What is there for whoever rides: cards, what-ifs, sound.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen};
use serde_json::json;
use sim::error::Quantity;
use sim::judge;
use sim::plan::{Feature, Line, Plan, Style, demo};
use sim::setup::{Ridden, mount, ride_plan};
use sim::units::{System, format};
use std::time::Duration;

fn ride(plan: &Plan) -> Result<Ridden> {
    ride_plan(plan, 0).map_err(|faults| anyhow::anyhow!("{faults:?}"))
}

pub fn each_jump_has_its_card(ground: &Ground) -> Result<()> {
    let plan = demo();
    let ridden = ride(&plan)?;
    let felt = judge::felt(&ridden.profile, &plan.riders[0].bike, &ridden.run);
    let rows = judge::jumps(&ridden.profile, &ridden.run);
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        let cards = page.texts("#cards ol li").await?;
        ensure!(cards.len() == felt.len() && !cards.is_empty(), "{cards:?}");
        for ((card, felt), row) in cards.iter().zip(&felt).zip(&rows) {
            // As exactly as it can be dug or felt: to five centimetres.
            let length = |v: f64| {
                let rough = (v / 0.05).round() * 0.05;
                format(rough, Quantity::Length, System::Metric)
            };
            for said in [
                length(felt.height),
                length(felt.far),
                length(row.fall_height.context("it lands")?),
                format!("{:.1} of you", felt.lip_g),
                format!("{:.1} s in the air", row.airtime.context("it flies")?),
            ] {
                ensure!(card.contains(&said), "{said:?} is not in {card:?}");
            }
        }
        Ok(())
    })
}

/// A plan in which a jump lands as `wanted` has it, among the demonstrations with another start and last jump.
fn landing(wanted: impl Fn(&judge::JumpRow, &judge::Impact) -> bool) -> Result<(Plan, usize)> {
    let starts = [2.4, 2.7, 3.0].into_iter();
    let angles = [13.0, 8.0, 4.0, 18.0, 24.0].into_iter();
    let shapes = starts.flat_map(|start| angles.clone().map(move |angle| (start, angle)));
    for ((start, angle), more) in shapes.flat_map(|shape| (0..24).map(move |more| (shape, more))) {
        let mut plan = demo();
        if let Line::Features(features) = &mut plan.line {
            for (i, feature) in features.iter_mut().enumerate() {
                match feature {
                    Feature::StartRamp(ramp) => ramp.platform_height = start,
                    Feature::Jump(jump) if i == 8 => {
                        jump.gap += 0.05 * f64::from(more);
                        jump.landing.angle_deg = angle;
                    }
                    _ => {}
                }
            }
        }
        let Ok(ridden) = ride_plan(&plan, 0) else {
            continue;
        };
        let (profile, run) = (&ridden.profile, &ridden.run);
        let mounted = mount(&plan.riders[0], &plan.weather);
        let impacts = judge::impacts(profile, &mounted, run);
        for row in &judge::jumps(profile, run) {
            let impact = impacts.iter().find(|i| i.lip == row.lip);
            if impact.is_some_and(|impact| wanted(row, impact)) {
                return Ok((plan, row.lip));
            }
        }
    }
    anyhow::bail!("no such landing among them")
}

pub fn a_card_is_never_softer_than_the_verdict(ground: &Ground) -> Result<()> {
    let low = |row: &judge::JumpRow| row.fall_height.is_some_and(|drop| drop < 0.25);
    let knuckle = landing(|row, _| row.how == judge::How::Knuckle && low(row))?;
    let spent =
        landing(|row, impact| row.how == judge::How::Clean && low(row) && impact.peak_g > 4.55)?;
    for ((plan, lip), said) in [(knuckle, "hard knock"), (spent, "nothing left to give")] {
        let link = format!("#{}", sim::link::encode(&plan));
        let card = ground.visit(Screen::Phone, &link, async |page| {
            let cards = page.texts("#cards ol li").await?;
            cards.into_iter().nth(lip).context("no card")
        })?;
        println!("{card}");
        ensure!(card.contains(said) && !card.contains("soft"), "{card:?}");
    }
    Ok(())
}

pub fn a_tap_shows_what_pumping_gives(ground: &Ground) -> Result<()> {
    let other = |style| -> Result<Vec<String>> {
        let mut plan = demo();
        plan.riders[0].rider.style = style;
        let ridden = ride(&plan)?;
        let rows = judge::jumps(&ridden.profile, &ridden.run);
        let speeds = rows.iter().filter_map(|r| r.speed);
        Ok(speeds
            .map(|v| format(v, Quantity::Speed, System::Metric))
            .collect())
    };
    let (stiff, pumping) = (other(Style::Passive)?, other(Style::Pumping)?);
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        page.wait_for(
            "the ranges, which are drawn too",
            "!document.documentElement.dataset.working",
        )
        .await?;
        // The way before a change, as of other units, stays on the drawing for two and a half seconds.
        tokio::time::sleep(Duration::from_secs(3)).await;
        page.seek(4.0).await?;
        let drawn = "return document.getElementById('drawing').toDataURL()";
        let alone: String = page.ask(drawn).await?;
        for (kind, speeds) in [("passive", &stiff), ("pumping", &pumping)] {
            page.click(&format!("#what-if [data-kind={kind}]")).await?;
            let told = page
                .texts(&format!("#what-if li[data-kind={kind}]"))
                .await?;
            for speed in speeds {
                ensure!(
                    told.iter().any(|t| t.contains(speed)),
                    "{speed} is not in {told:?}"
                );
            }
        }
        page.seek(4.0).await?;
        ensure!(
            page.texts("#what-if li").await?.len() == 2,
            "both ride along"
        );
        ensure!(
            alone != page.ask::<String>(drawn).await?,
            "nobody rides along"
        );
        page.picture("phone-what-if.png").await?;
        for kind in ["passive", "pumping"] {
            page.click(&format!("#what-if [data-kind={kind}]")).await?;
        }
        page.seek(4.0).await?;
        ensure!(
            alone == page.ask::<String>(drawn).await?,
            "somebody still rides along"
        );
        Ok(())
    })
}

/// Makes the page keep its sound contexts, what it last asked of each of their parameters, and every shake.
async fn listen(page: &Page) -> Result<()> {
    let script = "window.heard = { contexts: [], last: new Map(), shakes: [] }; \
        const Own = window.AudioContext; \
        window.AudioContext = class extends Own { constructor() { super(); heard.contexts.push(this); } }; \
        const set = AudioParam.prototype.setTargetAtTime; \
        AudioParam.prototype.setTargetAtTime = function (value, ...rest) { \
          heard.last.set(this, value); return set.call(this, value, ...rest); }; \
        navigator.vibrate = ms => { heard.shakes.push(ms); return true; };";
    page.devtools(
        "Page.addScriptToEvaluateOnNewDocument",
        json!({ "source": script }),
    )
    .await?;
    page.go("").await
}

const CONTEXTS: &str = "return heard.contexts.map(c => c.state)";
/// What is asked of the loudness of all voices together: frequencies are no loudness.
const LOUD: &str =
    "return [...heard.last].filter(([p]) => p.maxValue > 1e6).reduce((sum, [, v]) => sum + v, 0)";

pub fn sound_waits_for_a_touch_and_follows_the_ride(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        listen(page).await?;
        page.wait_for(
            "the ride to begin",
            "document.getElementById('scrub').valueAsNumber > 0.3",
        )
        .await?;
        ensure!(
            page.ask::<Vec<String>>(CONTEXTS).await?.is_empty(),
            "there is sound unasked"
        );
        page.click("#sound").await?;
        page.wait_for(
            "sound",
            "heard.contexts.length === 1 && heard.contexts[0].state === 'running'",
        )
        .await?;
        page.click("#restart").await?;
        tokio::time::sleep(Duration::from_millis(2500)).await;
        let fast: f64 = page.ask(LOUD).await?;
        ensure!(fast > 0.05, "the ride is as quiet as {fast}");
        page.click("#play").await?;
        let held: f64 = page.ask(LOUD).await?;
        ensure!(held == 0.0, "a ride that is held sounds, {held}");
        // It is remembered, but still waits for a touch.
        page.reload().await?;
        page.wait_for(
            "the ride to begin",
            "document.getElementById('scrub').valueAsNumber > 0.1",
        )
        .await?;
        ensure!(
            page.ask::<Vec<String>>(CONTEXTS).await?.is_empty(),
            "there is sound before a touch"
        );
        page.click("#told").await?;
        page.wait_for("sound after a touch", "heard.contexts.length === 1")
            .await?;
        page.click("#sound").await?;
        page.reload().await?;
        page.click("#told").await?;
        ensure!(
            page.ask::<Vec<String>>(CONTEXTS).await?.is_empty(),
            "it was muted"
        );
        Ok(())
    })
}

pub fn a_touch_down_is_felt(ground: &Ground) -> Result<()> {
    let ridden = ride(&demo())?;
    let lip = ridden.profile.lips[0];
    let landing = ridden
        .run
        .samples
        .iter()
        .find(|s| s.bike_x > lip.knuckle.x && s.rear_load + s.front_load > 0.0);
    let down = landing.context("nobody lands")?.t;
    ground.visit(Screen::Phone, "", async |page| {
        listen(page).await?;
        page.click("#sound").await?;
        page.seek(down - 0.4).await?;
        page.ask::<bool>("heard.shakes.length = 0; return true")
            .await?;
        page.click("#play").await?;
        page.wait_for(
            "the landing",
            &format!(
                "document.getElementById('scrub').valueAsNumber > {}",
                down + 0.3
            ),
        )
        .await?;
        let shakes: Vec<f64> = page.ask("return heard.shakes").await?;
        let span = ridden
            .run
            .samples
            .iter()
            .filter(|s| s.t >= down && s.t <= down + 0.15);
        let g = span.map(|s| s.g).fold(0.0, f64::max);
        ensure!(shakes.len() == 1, "{shakes:?}");
        // 12 ms for each weight, at the frame of the page that first saw it.
        ensure!(
            (shakes[0] - 12.0 * g).abs() < 6.0,
            "{shakes:?} for {g} weights"
        );
        Ok(())
    })
}

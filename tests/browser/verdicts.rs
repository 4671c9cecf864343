//! The speed story: windows, costs, suggestions, the others, the test day.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen};
use sim::error::Quantity;
use sim::judge::{Unknown, costs, jumps, missing, spreads, tolls, windows};
use sim::plan::{Feature, Line, Plan, Style, demo};
use sim::setup::{mount, ride_plan};
use sim::units::{System, format};

fn ridden(plan: &Plan) -> Result<sim::setup::Ridden> {
    ride_plan(plan, 0).map_err(|faults| anyhow::anyhow!("{faults:?}"))
}

fn speed(value: f64) -> String {
    format(value, Quantity::Speed, System::Metric)
}

pub fn each_jump_has_its_window(ground: &Ground) -> Result<()> {
    let plan = demo();
    let ridden = ridden(&plan)?;
    let rows = jumps(&ridden.profile, &ridden.run);
    let m = mount(&plan.riders[0], &plan.weather);
    let windows = windows(&ridden.profile, &m, &rows);
    let told = ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        page.studied().await?;
        page.texts("#lips .more").await
    })?;
    ensure!(
        told.len() == windows.len(),
        "{} rows for {} jumps",
        told.len(),
        windows.len()
    );
    for (window, told) in windows.iter().zip(&told) {
        let fastest = speed(
            window
                .fastest
                .context("a jump of the demonstration never works")?,
        );
        println!("{told}");
        ensure!(told.contains(&fastest), "{told:?} does not say {fastest}");
        ensure!(
            told.contains("Adult"),
            "the other rider is missing in {told:?}"
        );
    }
    Ok(())
}

pub fn costs_are_those_of_the_simulator(ground: &Ground) -> Result<()> {
    // Stiff legs pay for rollers; whoever soaks up hardly does.
    let mut plan = demo();
    plan.riders[0].rider.style = Style::Passive;
    if let Line::Features(features) = &mut plan.line {
        for feature in features {
            if let Feature::Roller(roller) = feature {
                roller.height = 0.15;
            }
        }
    }
    let link = format!("#{}", sim::link::encode(&plan));
    let ridden = ridden(&plan)?;
    let m = mount(&plan.riders[0], &plan.weather);
    let expected = costs(&plan.line, &ridden.profile, &m, &ridden.run);
    let toll = tolls(&plan, 0)
        .pop()
        .context("the demonstration has rollers")?;
    let (with, without) = toll.with.zip(toll.without).context("both are ridden")?;
    let (rows, causes, said) = ground.visit(Screen::Desk, &link, async |page| {
        page.click("#units label:has([value=metric])").await?;
        page.studied().await?;
        Ok((
            page.texts("#costs [data-what=takes]").await?,
            page.texts("#costs [data-what=causes]").await?,
            page.texts("#tolls").await?,
        ))
    })?;
    ensure!(rows.len() == expected.len(), "{rows:?}");
    for (cost, row) in expected.iter().zip(&rows) {
        let head = format(cost.net, Quantity::Length, System::Metric);
        ensure!(row.starts_with(&head), "{row:?} does not begin with {head}");
    }
    // What is said of the rollers in two places is the same, and each of them has its own.
    let taken = speed(without - with);
    ensure!(said[0].contains(&taken), "{said:?} does not say {taken}");
    ensure!(
        rows[2].contains(&taken),
        "{:?} does not say {taken}",
        rows[2]
    );
    for head in &expected[2].each {
        let head = format(*head, Quantity::Length, System::Metric);
        ensure!(
            causes[2].contains(&head),
            "{:?} does not say {head}",
            causes[2]
        );
    }
    Ok(())
}

pub fn a_word_of_the_trade_is_explained_by_a_tap(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.studied().await?;
        page.click("#lips [data-lip='0'] [data-what=landing] .term")
            .await?;
        let said: String = page
            .ask("return document.getElementById('message').innerText")
            .await?;
        println!("{said}");
        ensure!(said.contains("top edge of the landing"), "{said:?}");
        // It is no way into the plan.
        let chosen = "return document.querySelectorAll('#features [aria-expanded=true]').length";
        ensure!(
            page.ask::<usize>(chosen).await? == 0,
            "a feature was chosen"
        );
        Ok(())
    })
}

pub fn a_suggestion_can_be_tried(ground: &Ground) -> Result<()> {
    let mut plan = demo();
    if let Line::Features(features) = &mut plan.line
        && let Feature::Jump(jump) = &mut features[8]
    {
        jump.gap += 1.0;
    }
    let link = format!("#{}", sim::link::encode(&plan));
    ground.visit(Screen::Phone, &link, async |page| {
        // A line that came in a link is copied before it is changed.
        page.click("#keep").await?;
        page.studied().await?;
        let how = "document.querySelector('#lips tr[data-lip=\"2\"]').dataset.how";
        let before: String = page.ask(&format!("return {how}")).await?;
        ensure!(before != "clean", "the jump is {before}");
        page.picture("phone-suggestion.png").await?;
        page.click("#lips .try").await?;
        page.wait_for("the jump to be clean", &format!("{how} === 'clean'"))
            .await
    })
}

pub fn the_test_day_is_told(ground: &Ground) -> Result<()> {
    let day = sim::judge::test_day(&demo(), 0).context("the demonstration has features")?;
    let told = ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        page.studied().await?;
        page.texts("#test-day li").await
    })?;
    ensure!(told.len() == day.trials.len(), "{told:?}");
    for (trial, told) in day.trials.iter().zip(&told) {
        let flag = speed(trial.flag.context("every lip is left")?);
        ensure!(told.contains(&flag), "{told:?} does not say {flag}");
    }
    Ok(())
}

/// The line with a run-out of one metre is ridden over its end: headline, table, drawing and test day say so,
/// and how much is missing; with that added they say that the rider stands.
pub fn whether_the_rider_stands_is_told(ground: &Ground) -> Result<()> {
    let mut plan = demo();
    plan.yard.length += 20.0;
    let last = |plan: &mut Plan, length: f64| -> Result<String> {
        let Line::Features(features) = &mut plan.line else {
            anyhow::bail!("the demonstration has features");
        };
        let Some(Feature::RunOut(run_out)) = features.last_mut() else {
            anyhow::bail!("the demonstration ends in a run-out");
        };
        run_out.length = length;
        Ok(format!("#{}", sim::link::encode(plan)))
    };
    let link = last(&mut plan, 1.0)?;
    let missing = missing(&plan, 0).context("it can be made longer")?;
    let ending = async |page: &Page| -> Result<[String; 3]> {
        page.click("#units label:has([value=metric])").await?;
        page.studied().await?;
        let told = page.texts("#told").await?.join(" ");
        let row = page.texts("#lips tr.end").await?.join(" ");
        let day = page.texts("#test-day").await?.join(" ");
        Ok([told, row, day])
    };
    let short = ground.visit(Screen::Phone, &link, async |page| {
        let told = ending(page).await;
        page.picture("phone-no-stop.png").await?;
        told
    })?;
    println!("{short:#?}");
    let by = format(missing, Quantity::Length, System::Metric);
    ensure!(short[0].contains("leaves its end at"), "{short:?}");
    ensure!(
        short[1].contains(&by) && short[1].contains("too short"),
        "{short:?}"
    );
    ensure!(
        short[2].contains(&by),
        "the test day says nothing: {short:?}"
    );
    let link = last(&mut plan, 1.0 + missing)?;
    let long = ground.visit(Screen::Phone, &link, ending)?;
    ensure!(long[0].contains("comes to a stand"), "{long:?}");
    ensure!(long[1].contains("before the end"), "{long:?}");
    ensure!(!long[2].contains("too short"), "{long:?}");
    Ok(())
}

/// The headline names the jump that is clean in the fewest what-ifs, and in how many: never another.
pub fn the_headline_names_the_least_sure_jump(ground: &Ground) -> Result<()> {
    let found =
        spreads(&demo(), 0, &Unknown::usual()).map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
    let least = found
        .iter()
        .min_by_key(|s| s.clean)
        .context("the demonstration has jumps")?;
    let told = ground.visit(Screen::Desk, "", async |page| {
        page.studied().await?;
        page.texts("#told").await
    })?;
    let told = told.join(" ");
    println!("{told}");
    let sure = format!("clean in {} of {}", least.clean, least.tried);
    let name = format!("Jump {} is the least sure", least.lip + 1);
    ensure!(
        told.contains(&sure) && told.contains(&name),
        "{told} for {found:?}"
    );
    Ok(())
}

/// In each part of the page, the parts with fields too, words of the trade are explained where they are first met, and
/// there alone.
pub fn words_are_explained_where_they_are_first_met(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.studied().await?;
        page.click("#features [data-kind=jump] .feature").await?;
        page.click("#what-if [data-kind=pumping]").await?;
        let parts = "return ['#cards', '#costs', '#test-day', '#what-if', '#lips tr.more', '#features li[data-kind=jump]', '#rider'] \
            .map(css => [css, ...[...document.querySelector(css).querySelectorAll('.term')].map(t => t.textContent.toLowerCase())])";
        let parts: Vec<Vec<String>> = page.ask(parts).await?;
        for part in &parts {
            println!("{part:?}");
            let (css, words) = part.split_first().context("a part")?;
            let mut once = words.to_vec();
            once.sort_unstable();
            once.dedup();
            ensure!(!words.is_empty() && once.len() == words.len(), "{css}: {words:?}");
        }
        for (css, said) in [
            ("#features li[data-kind=jump] .words:last-of-type .term", "The "),
            ("#cards .term", "curved end of a jump"),
            ("#what-if .term", "press down"),
        ] {
            page.click(css).await?;
            let told = page.texts("#message").await?.concat();
            ensure!(told.contains(said), "{css}: {told:?}");
            page.click("#message button").await?;
        }
        Ok(())
    })
}

/// Rollers with which the next lip comes faster than without are said to give speed; and no loss on the page is
/// less than nothing.
pub fn what_gives_speed_has_words_of_its_own(ground: &Ground) -> Result<()> {
    let shapes = [0.2, 0.3, 0.4].into_iter();
    let shapes = shapes.flat_map(|height| [3.0, 4.0, 5.0].map(|length| (height, length)));
    let mut found = None;
    for (height, length) in shapes {
        let mut plan = demo();
        plan.yard.length += 10.0;
        plan.riders[0].rider.style = sim::plan::Style::Pumping;
        plan.riders[0].rider.skill = 1.0;
        if let Line::Features(features) = &mut plan.line
            && let Feature::Roller(roller) = &mut features[2]
        {
            (roller.height, roller.length) = (height, length);
        }
        let toll = tolls(&plan, 0).pop().context("there are rollers")?;
        if let Some((with, without)) = toll.with.zip(toll.without)
            && with > without + 0.06
        {
            found = Some((plan, with - without));
            break;
        }
    }
    let (plan, gained) = found.context("no such rollers give speed")?;
    let link = format!("#{}", sim::link::encode(&plan));
    ground.visit(Screen::Phone, &link, async |page| {
        page.click("#units label:has([value=metric])").await?;
        page.studied().await?;
        let told = page.texts("#tolls p").await?;
        println!("{told:#?}");
        let said = told.first().context("nothing is said of rollers")?;
        ensure!(
            said.contains("give speed") && said.contains(&speed(gained)),
            "{said:?}, not {gained} m/s"
        );
        let row = page
            .texts("#costs [data-feature='2'] [data-what=takes]")
            .await?
            .concat();
        ensure!(
            row.contains(&format!("{} more at the next lip", speed(gained))),
            "{row:?}"
        );
        let all = page.texts("#means").await?.concat();
        let less = all.split(' ').find(|word| {
            word.starts_with(['-', '\u{2212}']) && word.ends_with(|c: char| c.is_ascii_digit())
        });
        ensure!(less.is_none(), "{less:?}");
        Ok(())
    })
}

//! Plan files that are opened on the page.

use anyhow::{Result, ensure};
use browser::{Ground, Screen};
use std::fs;
use tempfile::TempDir;

/// What the browser's own reader of JSON takes without a word, and all else that is no plan: told as the page calls
/// it, and in brackets as the file does.
pub fn a_fault_of_a_file_names_its_field(ground: &Ground) -> Result<()> {
    let whole = sim::plan::demo().to_json();
    let folder = TempDir::new()?;
    let spoilt = [
        (
            "\"length\"",
            "\"length\": 3, \"length\"",
            "Yard, Length: this stands there twice (yard.length)",
        ),
        (
            "\"gap\"",
            "\"gap\": 1, \"gap\"",
            "Jump 1, Gap, lip to knuckle: this stands there twice (line.features[4].gap)",
        ),
        (
            "\"gap\"",
            "\"gaps\"",
            "Jump 1: there is no such entry here (line.features[4].gaps)",
        ),
        (
            "\"skill\": 0.5",
            "\"skill\": \"much\"",
            "Child, 10, Rider, How well (0 to 1): this is not what belongs here (riders[0].rider.skill)",
        ),
        (
            "\"seed\": 0",
            "\"seed\": 0.5",
            "this is not what belongs here (seed)",
        ),
        ("{", "", "something else altogether"),
    ];
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#lines summary").await?;
        for (i, (there, other, field)) in spoilt.iter().enumerate() {
            let text = whole.replacen(there, other, 1);
            ensure!(text != whole, "{there} is not in the plan");
            let path = folder.path().join(format!("{i}.json"));
            fs::write(&path, text)?;
            page.choose_file("#plan-file", &path).await?;
            let told =
                format!("document.getElementById('message').textContent.includes({field:?})");
            page.wait_for(&format!("{field} to be named"), &told)
                .await?;
            println!("{}", page.texts("#message").await?.concat());
        }
        Ok(())
    })
}

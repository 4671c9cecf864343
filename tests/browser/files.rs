//! Plan files that are opened on the page.

use anyhow::{Result, ensure};
use browser::{Ground, Screen};
use std::fs;
use tempfile::TempDir;

/// What the browser's own reader of JSON takes without a word, and all else that is no plan.
pub fn a_fault_of_a_file_names_its_field(ground: &Ground) -> Result<()> {
    let whole = sim::plan::demo().to_json();
    let folder = TempDir::new()?;
    let spoilt = [
        ("\"length\"", "\"length\": 3, \"length\"", "yard.length"),
        ("\"gap\"", "\"gap\": 1, \"gap\"", "line.features[4].gap"),
        ("\"gap\"", "\"gaps\"", "line.features[4].gap"),
        (
            "\"skill\": 0.5",
            "\"skill\": \"much\"",
            "riders[0].rider.skill",
        ),
        ("\"seed\": 0", "\"seed\": 0.5", "seed"),
    ];
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#lines summary").await?;
        for (i, (there, other, field)) in spoilt.iter().enumerate() {
            let text = whole.replacen(there, other, 1);
            ensure!(text != whole, "{there} is not in the plan");
            let path = folder.path().join(format!("{i}.json"));
            fs::write(&path, text)?;
            page.choose_file("#plan-file", &path).await?;
            let told = format!("document.getElementById('message').textContent.includes({field:?} + ':') || document.getElementById('message').textContent.includes({field:?} + 's:')");
            page.wait_for(&format!("{field} to be named"), &told).await?;
            println!("{}", page.texts("#message").await?.concat());
        }
        Ok(())
    })
}

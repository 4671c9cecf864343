//! The page that says what the model leaves out, from the text that documents the model.

use pulldown_cmark::{Options, Parser, html};

/// The page, in the look of the others.
pub fn page(text: &str) -> String {
    let mut body = String::new();
    html::push_html(&mut body, Parser::new_ext(text, Options::ENABLE_TABLES));
    // A wide table scrolls by itself; the page does not.
    let body = body
        .replace("<table>", "<div class=\"wide\" tabindex=\"0\"><table>")
        .replace("</table>", "</table></div>");
    format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'\">\n\
         <meta name=\"color-scheme\" content=\"light dark\">\n\
         <title>What the model leaves out · Carryline</title>\n\
         <link rel=\"icon\" href=\"icon.svg\" type=\"image/svg+xml\">\n\
         <link rel=\"stylesheet\" href=\"style.css\">\n</head>\n<body>\n<main class=\"reading\">\n\
         <p><a href=\"./\">Back to the line</a></p>\n{body}</main>\n</body>\n</html>\n"
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn headings_tables_and_lists_become_the_page() {
        let page = page("# One\n\n| a | b |\n|---|---|\n| 1 | 2 |\n\n- *x* & y\n");
        for part in [
            "<h1>One</h1>",
            "<td>2</td>",
            "<em>x</em> &amp; y",
            "</html>",
        ] {
            assert!(page.contains(part), "{part} is missing in {page}");
        }
    }
}

//! The assembled page, held in memory: what is not in it cannot be asked for.

use super::layout;
use super::packed::Coding;
use super::site;
use anyhow::Result;
use std::collections::BTreeMap;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::Path;

/// One file of the page.
#[derive(Debug)]
pub struct Asset {
    /// Its content.
    pub bytes: Vec<u8>,
    /// The content made smaller, where that is worth while.
    packed: Vec<(Coding, Vec<u8>)>,
    /// What a page is made of, as a header `Link` (RFC 8288): so a browser asks for it before it has read
    /// the page.
    pub early: Option<String>,
    /// Its media type.
    pub media_type: &'static str,
    /// A tag that changes with the content, without quotes.
    pub tag: String,
    /// Whether its address changes with its content, so that it is never asked for twice.
    pub lasting: bool,
}

/// Every file of the page, by its path in the address.
#[derive(Debug, Default)]
pub struct Assets(BTreeMap<String, Asset>);

impl Assets {
    /// Reads a folder.
    pub fn load(folder: &Path) -> Result<Self> {
        let mut assets = Self::default();
        for (path, bytes) in site::read(folder)? {
            let path = format!("/{path}");
            assets.0.insert(path.clone(), Asset::new(&path, bytes)?);
        }
        Ok(assets)
    }

    /// The file for an address, without its query; a folder stands for its `index.html`.
    pub fn find(&self, address: &str) -> Option<&Asset> {
        let path = address.split(['?', '#']).next().unwrap_or_default();
        if path.ends_with('/') {
            return self.0.get(&format!("{path}{}", layout::INDEX));
        }
        self.0.get(path)
    }
}

impl Asset {
    fn new(path: &str, bytes: Vec<u8>) -> Result<Self> {
        let mut hasher = DefaultHasher::new();
        bytes.hash(&mut hasher);
        let mut packed = Vec::new();
        for coding in Coding::ALL {
            let smaller = coding.pack(&bytes)?;
            if smaller.len() < bytes.len() {
                packed.push((coding, smaller));
            }
        }
        Ok(Self {
            early: path.ends_with(layout::INDEX).then(|| early(&bytes)),
            packed,
            media_type: media_type(path),
            tag: format!("{:016x}", hasher.finish()),
            lasting: path.split('/').any(layout::is_version),
            bytes,
        })
    }

    /// The content as a visitor accepts it who says `accepted` of codings.
    pub fn packed(&self, accepted: &str) -> Option<(Coding, &[u8])> {
        let coding = Coding::accepted(accepted)?;
        let packed = self.packed.iter().find(|(c, _)| *c == coding)?;
        Some((coding, &packed.1))
    }
}

/// The links of a page that say what will be needed, as they stand there.
fn early(page: &[u8]) -> String {
    let page = String::from_utf8_lossy(page);
    let attribute = |line: &str, name: &str| {
        let (_, rest) = line.split_once(&format!(" {name}=\""))?;
        Some(rest.split_once('"')?.0.to_owned())
    };
    let links = page.lines().filter_map(|line| {
        let rel = attribute(line, "rel")?;
        let href = attribute(line, "href")?;
        Some(match rel.as_str() {
            "preload" => format!(
                "<{href}>; rel=preload; as={}; crossorigin",
                attribute(line, "as")?
            ),
            "modulepreload" => format!("<{href}>; rel=modulepreload"),
            "stylesheet" => format!("<{href}>; rel=preload; as=style"),
            _ => return None,
        })
    });
    links.collect::<Vec<_>>().join(", ")
}

/// The media type by the name's ending (IANA's registry; RFC 9239 for scripts).
fn media_type(path: &str) -> &'static str {
    match path.rsplit('.').next() {
        Some("html") => "text/html; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("wasm") => "application/wasm",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page() -> Assets {
        let mut assets = Assets::default();
        for path in ["/index.html", "/a.wasm", "/parts/b.js"] {
            let asset = Asset::new(path, path.as_bytes().to_vec()).unwrap();
            assets.0.insert(path.to_owned(), asset);
        }
        assets
    }

    #[test]
    fn a_folder_stands_for_its_index() {
        let page = page();
        assert_eq!(page.find("/?x=1").unwrap().bytes, b"/index.html");
        assert_eq!(page.find("/parts/b.js").unwrap().bytes, b"/parts/b.js");
    }

    #[test]
    fn only_what_was_loaded_is_found() {
        let page = page();
        assert!(page.find("/../Cargo.toml").is_none());
        assert!(page.find("/parts/").is_none());
    }

    #[test]
    fn a_page_says_early_what_it_is_made_of() {
        let page = b"<link rel=\"icon\" href=\"i.svg\">\n<link rel=\"stylesheet\" href=\"a.css\">\n\
            <link rel=\"preload\" href=\"b.wasm\" as=\"fetch\" crossorigin>\n<link rel=\"modulepreload\" href=\"c.js\">\n";
        let asset = Asset::new("/index.html", page.to_vec()).unwrap();
        let early = "<a.css>; rel=preload; as=style, <b.wasm>; rel=preload; as=fetch; crossorigin, <c.js>; rel=modulepreload";
        assert_eq!(asset.early.as_deref(), Some(early));
        assert_eq!(Asset::new("/c.js", page.to_vec()).unwrap().early, None);
    }

    #[test]
    fn wasm_streams_only_under_its_own_type() {
        assert_eq!(
            page().find("/a.wasm").unwrap().media_type,
            "application/wasm"
        );
    }
}

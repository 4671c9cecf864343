//! One of our scripts: what it imports, what it exports, and the rest.

/// What one script takes from another.
#[derive(Debug, PartialEq)]
pub struct Import {
    /// Which.
    pub path: String,
    /// What, as the left side of `const … = other`.
    pub names: String,
}

/// A script taken apart.
#[derive(Debug, Default)]
pub struct Script {
    /// Its path among the files.
    pub path: String,
    /// What it imports, in its order.
    pub imports: Vec<Import>,
    /// The names it exports.
    pub exports: Vec<String>,
    /// The text without `import` and `export`.
    pub body: String,
    /// The first line that is neither plain nor one of the known forms.
    pub unknown: Option<String>,
}

/// Forms at the beginning of a line that a function cannot hold, or that would not mean the same in it.
const MODULE_ONLY: [&str; 3] = ["import ", "export ", "await "];

impl Script {
    /// Takes a script apart. An `import` or `export` begins at the beginning of a line.
    pub fn read(path: &str, text: &str) -> Self {
        let mut script = Self {
            path: path.to_owned(),
            ..Self::default()
        };
        let mut lines = text.lines();
        while let Some(line) = lines.next() {
            let mut whole = line.to_owned();
            // Names may stand below one another.
            let form = ["import ", "export const {"]
                .iter()
                .any(|f| line.starts_with(f));
            while form && whole.contains('{') && !whole.contains('}') {
                let Some(next) = lines.next() else { break };
                whole.push(' ');
                whole.push_str(next.trim());
            }
            if script.take(&whole).is_none() {
                script.unknown.get_or_insert(whole);
            }
        }
        script
    }

    /// The scripts it imports.
    pub fn needs(&self) -> impl Iterator<Item = &str> {
        self.imports.iter().map(|import| import.path.as_str())
    }

    /// Takes in one line; nothing where its form is not known.
    fn take(&mut self, line: &str) -> Option<()> {
        if let Some(import) = line.strip_prefix("import ") {
            let import = self.import(import)?;
            self.imports.push(import);
            return Some(());
        }
        let kept = match line.strip_prefix("export ") {
            Some(declared) => {
                self.exports.extend(declares(declared)?);
                declared
            }
            None => line,
        };
        if MODULE_ONLY.iter().any(|form| kept.starts_with(form)) {
            return None;
        }
        self.body.push_str(kept);
        self.body.push('\n');
        Some(())
    }

    /// `a, { b, c as d } from "./x.js";` or `* as e from "./x.js";`
    fn import(&self, text: &str) -> Option<Import> {
        let (names, from) = text.strip_suffix("\";")?.split_once(" from \"")?;
        let names = match names.strip_prefix("* as ") {
            Some(whole) => whole.to_owned(),
            None => {
                let (first, others) = match names.split_once('{') {
                    Some((first, others)) => (first, others.strip_suffix('}')?),
                    None => (names, ""),
                };
                let first = first.trim().trim_end_matches(',');
                let first = (!first.is_empty()).then(|| format!("default: {first}"));
                let others = words(others).map(|name| name.replace(" as ", ": "));
                let all: Vec<_> = first.into_iter().chain(others).collect();
                format!("{{ {} }}", all.join(", "))
            }
        };
        Some(Import {
            path: beside(&self.path, from)?,
            names,
        })
    }
}

fn words(list: &str) -> impl Iterator<Item = &str> {
    list.split(',')
        .map(str::trim)
        .filter(|word| !word.is_empty())
}

/// The names that a declaration gives. A name that is given anew later would be exported as it was.
fn declares(text: &str) -> Option<Vec<String>> {
    if let Some(fields) = text.strip_prefix("const {") {
        let (fields, _) = fields.split_once("} =")?;
        let plain = !fields.contains(['{', '[', '=', '.']);
        let last = |field: &str| field.rsplit(':').next().map(|name| name.trim().to_owned());
        return plain.then(|| words(fields).filter_map(last).collect());
    }
    let named = ["function ", "async function ", "const ", "class "];
    let rest = named.iter().find_map(|form| text.strip_prefix(form))?;
    let end = rest.find(|c: char| !c.is_ascii_alphanumeric() && c != '_' && c != '$')?;
    (end > 0).then(|| vec![rest[..end].to_owned()])
}

/// The path that one script has in another's words, which begin with `./` or `../`.
fn beside(path: &str, from: &str) -> Option<String> {
    let mut folders: Vec<_> = path.split('/').collect();
    folders.pop();
    let mut rest = from.strip_prefix("./").unwrap_or(from);
    while let Some(above) = rest.strip_prefix("../") {
        folders.pop()?;
        rest = above;
    }
    (from.starts_with('.')).then(|| {
        folders
            .into_iter()
            .chain([rest])
            .collect::<Vec<_>>()
            .join("/")
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn import(path: &str, names: &str) -> Import {
        let (path, names) = (path.to_owned(), names.to_owned());
        Import { path, names }
    }

    #[test]
    fn every_form_of_import_is_known() {
        let text = "import init, { open as openLink, ride } from \"../carryline.js\";\nimport * as words from \"./words.js\";\n\
            import {\n  a,\n  b as c,\n} from \"./d.js\";\nimport e from \"./f.js\";\n";
        let script = Script::read("parts/x.js", text);
        assert_eq!(script.unknown, None);
        let expected = [
            import("carryline.js", "{ default: init, open: openLink, ride }"),
            import("parts/words.js", "words"),
            import("parts/d.js", "{ a, b: c }"),
            import("parts/f.js", "{ default: e }"),
        ];
        assert_eq!(script.imports, expected);
    }

    #[test]
    fn every_form_of_export_is_known() {
        let text = "export function a(x) {\n}\nexport async function b() {}\nexport const c = 1;\nexport class D {\n}\n\
            export const {\n  e, f: g,\n} = words;\n";
        let script = Script::read("x.js", text);
        assert_eq!(script.unknown, None);
        assert_eq!(script.exports, ["a", "b", "c", "D", "e", "g"]);
        assert_eq!(
            script.body,
            "function a(x) {\n}\nasync function b() {}\nconst c = 1;\nclass D {\n}\nconst { e, f: g, } = words;\n"
        );
    }

    #[test]
    fn what_would_mean_something_else_is_refused() {
        for line in [
            "export let a = 1;",
            "export { a };",
            "export default 1;",
            "export * from \"./a.js\";",
            "export const [a] = b;",
            "export const { a: { b } } = c;",
            "import \"./a.js\";",
            "import { a } from \"library\";",
            "await ready;",
        ] {
            assert_eq!(Script::read("x.js", line).unknown.as_deref(), Some(line));
        }
    }
}

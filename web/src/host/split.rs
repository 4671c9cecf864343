//! Cuts the simulator in parts: what the page needs to ride, and what is fetched once it rides.
//!
//! A later part shares memory, tables and variables of the first and calls its functions, so nothing is
//! fetched twice. What stands in a table of functions stays in the first part with all that it calls: from
//! outside nobody can tell who calls it.

use super::layout::Files;
use anyhow::{Context, Result};
use std::collections::BTreeMap;
use walrus::{
    ExportItem, FunctionKind, GlobalKind, ImportId, ImportKind, ImportedFunction, Module, passes,
};

/// What a later part knows the first by.
const FIRST: &str = "first";

/// What the bindings of the whole need besides: a way to bring a later part, whose functions then stand
/// among those of the first, and all parts as they were compiled, for the worker.
const JOIN: &str = r#"
const parts = {};

export const fetchPart = (name) => fetch(new URL(`carryline_${name}.wasm`, import.meta.url));

export async function initPart(name, given = fetchPart(name)) {
    const { instance, module } = await __wbg_load(await given, { ...__wbg_get_imports(), first: wasm });
    wasm = { ...wasm, ...instance.exports };
    parts[name] = module;
}

export const compiled = () => ({ first: wasmModule, ...parts });
"#;

/// The bindings between the page and all parts, from those for the whole.
pub fn bindings(whole: &str) -> String {
    format!("{whole}{JOIN}")
}

/// A later part: its name, and the functions that the page calls in it.
pub type Later<'a> = (&'a str, &'a [&'a str]);

/// Cuts a module in parts, as files of the page.
///
/// # Errors
/// Where the module cannot be read or has no such function.
pub fn split(whole: Vec<u8>, later: &[Later]) -> Result<Files> {
    let mut files = Files::new();
    let mut left = whole;
    for (name, functions) in later {
        let part;
        (left, part) = cut(&left, name, functions)?;
        files.insert(format!("carryline_{name}.wasm"), part);
    }
    files.insert("carryline_bg.wasm".to_owned(), left);
    Ok(files)
}

/// Cuts one part off: what is left, and that.
fn cut(wasm: &[u8], part: &str, functions: &[&str]) -> Result<(Vec<u8>, Vec<u8>)> {
    let (mut first, mut rest) = (read(wasm)?, read(wasm)?);
    for name in functions {
        let removed = first.exports.remove(name);
        removed.with_context(|| format!("the simulator has no {name}"))?;
    }
    passes::gc::run(&mut first);
    keep_exports(&mut rest, functions);
    take_from_first(&mut rest, &first)?;
    passes::gc::run(&mut rest);
    hand_over(&mut first, &mut rest, part)?;
    Ok((first.emit_wasm(), rest.emit_wasm()))
}

fn read(wasm: &[u8]) -> Result<Module> {
    Module::from_buffer(wasm).context("cannot read the simulator")
}

fn keep_exports(module: &mut Module, names: &[&str]) {
    let others: Vec<_> = module
        .exports
        .iter()
        .filter(|export| !names.contains(&export.name.as_str()))
        .map(|export| export.id())
        .collect();
    for id in others {
        module.exports.delete(id);
    }
}

/// What both were read from has an order: by its place in it, a thing in one module is found in the other.
fn name(kind: char, place: usize) -> String {
    format!("{kind}{place}")
}

fn import(module: &mut Module, name: &str, what: impl Into<ImportKind>) -> ImportId {
    module.imports.add(FIRST, name, what)
}

/// Makes imports of all that the first part has: every function that is still in it, memories, tables,
/// variables. What memories and tables begin with is the first part's as well.
fn take_from_first(rest: &mut Module, first: &Module) -> Result<()> {
    let ids: Vec<_> = first.funcs.iter_local().map(|(id, _)| id.index()).collect();
    let local: BTreeMap<_, _> = rest
        .funcs
        .iter_local()
        .map(|(id, _)| (id.index(), id))
        .collect();
    for place in ids {
        let id = *local.get(&place).context("the two parts do not fit")?;
        let ty = rest.funcs.get(id).ty();
        let import = import(rest, &name('f', place), id);
        rest.funcs.get_mut(id).kind = FunctionKind::Import(ImportedFunction { import, ty });
    }
    for id in rest.data.iter().map(|data| data.id()).collect::<Vec<_>>() {
        rest.data.delete(id);
    }
    for id in rest.elements.iter().map(|e| e.id()).collect::<Vec<_>>() {
        rest.elements.delete(id);
    }
    for id in rest.memories.iter().map(|m| m.id()).collect::<Vec<_>>() {
        let import = import(rest, &name('m', id.index()), id);
        let memory = rest.memories.get_mut(id);
        memory.import = Some(import);
        memory.data_segments.clear();
    }
    for id in rest.tables.iter().map(|t| t.id()).collect::<Vec<_>>() {
        let import = import(rest, &name('t', id.index()), id);
        let table = rest.tables.get_mut(id);
        table.import = Some(import);
        table.elem_segments.clear();
    }
    for id in rest.globals.iter().map(|g| g.id()).collect::<Vec<_>>() {
        let import = import(rest, &name('g', id.index()), id);
        rest.globals.get_mut(id).kind = GlobalKind::Import(import);
    }
    rest.start = None;
    Ok(())
}

/// Lets the first part give what the second asks of it, under short names in a row.
fn hand_over(first: &mut Module, rest: &mut Module, part: &str) -> Result<()> {
    let mut given = BTreeMap::new();
    for (id, _) in first.funcs.iter_local() {
        given.insert(name('f', id.index()), ExportItem::Function(id));
    }
    for memory in first.memories.iter() {
        let id = memory.id();
        given.insert(name('m', id.index()), ExportItem::Memory(id));
    }
    for table in first.tables.iter() {
        let id = table.id();
        given.insert(name('t', id.index()), ExportItem::Table(id));
    }
    for global in first.globals.iter() {
        let id = global.id();
        given.insert(name('g', id.index()), ExportItem::Global(id));
    }
    let asked = rest.imports.iter_mut();
    let asked = asked.filter(|import| import.module == FIRST);
    for (number, import) in asked.enumerate() {
        let item = given.get(&import.name);
        let item = item.with_context(|| format!("{} is not in the first part", import.name))?;
        import.name = format!("{part}{number}");
        first.exports.add(&import.name, *item);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use walrus::{FunctionBuilder, FunctionId, ValType};

    /// Adds a function that puts its number into memory and calls others.
    fn add(module: &mut Module, number: i32, calls: &[FunctionId]) -> FunctionId {
        let memory = module.memories.iter().next().map(|m| m.id()).unwrap();
        let mut function = FunctionBuilder::new(&mut module.types, &[], &[ValType::I32]);
        let mut body = function.func_body();
        for call in calls {
            body.call(*call).drop();
        }
        let argument = walrus::ir::MemArg {
            align: 4,
            offset: 0,
        };
        body.i32_const(number);
        body.load(
            memory,
            walrus::ir::LoadKind::I32 { atomic: false },
            argument,
        );
        function.finish(Vec::new(), &mut module.funcs)
    }

    /// `ride` and `study` share a function, and `study` has one of its own.
    fn whole() -> Vec<u8> {
        let mut module = Module::default();
        module.memories.add_local(false, false, 1, None, None);
        let shared = add(&mut module, 1, &[]);
        let own = add(&mut module, 2, &[]);
        let ride = add(&mut module, 3, &[shared]);
        let study = add(&mut module, 4, &[shared, own]);
        module.exports.add("ride", ride);
        module.exports.add("study", study);
        module.emit_wasm()
    }

    fn names<'a>(names: impl Iterator<Item = &'a String>) -> Vec<&'a str> {
        let mut names: Vec<_> = names.map(String::as_str).collect();
        names.sort_unstable();
        names
    }

    #[test]
    fn every_function_is_in_one_part_alone() {
        let files = split(whole(), &[("rest", &["study"])]).unwrap();
        let first = read(&files["carryline_bg.wasm"]).unwrap();
        let rest = read(&files["carryline_rest.wasm"]).unwrap();
        assert_eq!(first.funcs.iter_local().count(), 2);
        assert_eq!(rest.funcs.iter_local().count(), 2);
        assert_eq!(names(rest.exports.iter().map(|e| &e.name)), ["study"]);
        let asked = names(rest.imports.iter().map(|i| &i.name));
        let given = names(first.exports.iter().map(|e| &e.name));
        // One function and the memory.
        assert_eq!(asked, ["rest0", "rest1"]);
        assert_eq!(given, ["rest0", "rest1", "ride"]);
    }

    #[test]
    fn what_is_not_there_cannot_come_later() {
        assert!(split(whole(), &[("rest", &["fly"])]).is_err());
    }
}

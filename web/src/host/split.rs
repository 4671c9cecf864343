//! Cuts the simulator in two: what the page needs to ride, and what is fetched once it rides.
//!
//! The second part shares memory, tables and variables of the first and calls its functions, so nothing is
//! fetched twice. What stands in a table of functions stays in the first part with all that it calls: from
//! outside nobody can tell who calls it.

use anyhow::{Context, Result, ensure};
use std::collections::BTreeMap;
use walrus::{
    ExportItem, FunctionKind, GlobalKind, ImportId, ImportKind, ImportedFunction, Module, passes,
};

/// What the second part knows the first by.
const FIRST: &str = "first";

/// What the bindings of the whole need besides: a way to bring the second part, whose functions then stand
/// among those of the first, and both as they were compiled, for the worker.
const JOIN: &str = r#"
let restModule;

export async function initRest(given) {
    const rest = given ?? (await fetch(new URL("carryline_rest.wasm", import.meta.url)));
    const { instance, module } = await __wbg_load(rest, { ...__wbg_get_imports(), first: wasm });
    wasm = { ...wasm, ...instance.exports };
    restModule = module;
}

export const compiled = () => [wasmModule, restModule];
"#;

/// The simulator in two parts.
pub struct Parts {
    /// What the page starts with.
    pub first: Vec<u8>,
    /// What is fetched later.
    pub rest: Vec<u8>,
}

/// The bindings between the page and both parts, from those for the whole.
pub fn bindings(whole: &str) -> String {
    format!("{whole}{JOIN}")
}

/// Cuts a module in two: `later` are the functions that the page calls in the second part.
///
/// # Errors
/// Where the module cannot be read or has no such function.
pub fn split(wasm: &[u8], later: &[&str]) -> Result<Parts> {
    let (mut first, mut rest) = (read(wasm)?, read(wasm)?);
    for name in later {
        let removed = first.exports.remove(name);
        removed.with_context(|| format!("the simulator has no {name}"))?;
    }
    passes::gc::run(&mut first);
    keep_exports(&mut rest, later);
    take_from_first(&mut rest, &first)?;
    passes::gc::run(&mut rest);
    hand_over(&mut first, &rest)?;
    Ok(Parts {
        first: first.emit_wasm(),
        rest: rest.emit_wasm(),
    })
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

/// Lets the first part give what the second asks of it.
fn hand_over(first: &mut Module, rest: &Module) -> Result<()> {
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
    let asked = rest.imports.iter().filter(|import| import.module == FIRST);
    for import in asked {
        let item = given.get(&import.name);
        let item = item.with_context(|| format!("{} is not in the first part", import.name))?;
        first.exports.add(&import.name, *item);
    }
    ensure!(
        first.imports.iter().all(|i| i.module != FIRST),
        "the first part asks itself"
    );
    Ok(())
}

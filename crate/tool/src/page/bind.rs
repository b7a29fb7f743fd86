//! The JavaScript that loads the kernel's two programs: generated only where a program has changed, and
//! put in its place whole, since another run may be reading it.

use super::packed::{digest, packed};
use super::slim::slim;
use super::{marks, order, texts, traps};
use crate::trouble::Trouble;
use std::path::Path;
use wasm_bindgen_cli_support::Bindgen;

/// The first screen's program, as it and its files are called.
pub const STAGE: &str = "lightgap_stage";
/// The program of the later questions.
pub const WORKER: &str = "lightgap_worker";
/// What the worker does with its program; it follows the glue in one file, since a worker has no
/// import map and the page in one piece no address for a second file.
const LABOURER: &str = include_str!("labourer.js");
/// How the page fetches and starts its first program.
const LOADER: &str = include_str!("loader.js");
/// Where that begins in what wasm-bindgen writes.
const LOADED: &str = "async function __wbg_load(";
/// What the glue is made of and how: where one of these has changed, it is made anew.
const HOW: [&str; 8] = [
    LABOURER,
    LOADER,
    include_str!("bind.rs"),
    include_str!("marks.rs"),
    include_str!("order.rs"),
    include_str!("slim.rs"),
    include_str!("texts.rs"),
    include_str!("traps.rs"),
];

/// Sees to it that a folder holds both programs and their glue, and nothing else.
pub fn bound(stage: &Path, worker: &Path, folder: &Path) -> Result<(), Trouble> {
    let read = |path: &Path| std::fs::read(path).map_err(Trouble::file(path));
    let programs = [(STAGE, read(stage)?), (WORKER, read(worker)?)];
    let parts = programs.iter().map(|(_, bytes)| digest(bytes)).chain(HOW.map(String::from));
    let wanted = digest(parts.collect::<String>().as_bytes());
    let mark = folder.with_extension("made");
    let is_whole =
        programs.iter().all(|(name, _)| folder.join(format!("{name}_bg.wasm")).is_file());
    if is_whole && std::fs::read_to_string(&mark).is_ok_and(|made| made == wanted) {
        return Ok(());
    }
    let aside = folder.with_extension(std::process::id().to_string());
    std::fs::create_dir_all(&aside).map_err(Trouble::file(&aside))?;
    for (name, bytes) in programs {
        bind(name, bytes, &aside)?;
    }
    moved(&aside, folder)?;
    std::fs::write(&mark, wanted).map_err(Trouble::file(&mark))
}

/// Generates the glue of one program: a module for the page, a plain script for the worker.
fn bind(name: &str, bytes: Vec<u8>, folder: &Path) -> Result<(), Trouble> {
    let mut bindgen = Bindgen::new();
    bindgen.input_bytes(name, bytes).typescript(false).remove_producers_section(true);
    bindgen.omit_default_module_path(false);
    let kind = if name == WORKER { bindgen.no_modules(true) } else { bindgen.web(true) };
    let trouble = |error| Trouble::program("wasm-bindgen", &format!("{error:#}"));
    let mut made = kind.and_then(Bindgen::generate_output).map_err(trouble)?;
    if name == STAGE {
        slim(made.wasm_mut());
        traps::join(made.wasm_mut());
        order::variables(made.wasm_mut());
    }
    let texts_end = texts::end(made.wasm_mut());
    made.emit(folder).map_err(trouble)?;
    finish(name, texts_end, folder)
}

/// Counts what a program and its glue call each other by, and puts our own script behind the glue.
fn finish(name: &str, texts_end: u32, folder: &Path) -> Result<(), Trouble> {
    let glue = folder.join(format!("{name}.js"));
    let program = folder.join(format!("{name}_bg.wasm"));
    let text = std::fs::read_to_string(&glue).map_err(Trouble::file(&glue))?;
    let mut bytes = std::fs::read(&program).map_err(Trouble::file(&program))?;
    if name == STAGE {
        bytes = order::functions(&bytes)?;
    }
    let (text, bytes, names) = marks::counted(text, &bytes)?;
    named(name, &[&bytes[..], &names].concat())?;
    let (text, script) = match name {
        WORKER => (text.as_str(), LABOURER),
        _ => (without_loader(&text)?, LOADER),
    };
    let text = texts::kept(text, texts_end)?;
    std::fs::write(&glue, format!("{text}\n{script}")).map_err(Trouble::file(&glue))?;
    std::fs::write(&program, &bytes).map_err(Trouble::file(&program))?;
    packed(&bytes).map(|_| ()) // the longest of the site: compressed before anyone asks for it
}

/// Keeps a program with the names of its functions, which say where a trap was, outside of the site.
fn named(name: &str, program: &[u8]) -> Result<(), Trouble> {
    let folder = crate::place::target().join("named");
    std::fs::create_dir_all(&folder).map_err(Trouble::file(&folder))?;
    let file = folder.join(format!("{name}_bg.wasm"));
    std::fs::write(&file, program).map_err(Trouble::file(&file))
}

/// The glue up to the loader that comes with it.
fn without_loader(glue: &str) -> Result<&str, Trouble> {
    let found = glue.split_once(LOADED).map(|(before, _)| before);
    found.ok_or_else(|| Trouble::Said(format!("the glue has no {LOADED}...)")))
}

/// Moves what was made aside to its place, and removes what an earlier version made under other names.
fn moved(aside: &Path, folder: &Path) -> Result<(), Trouble> {
    std::fs::create_dir_all(folder).map_err(Trouble::file(folder))?;
    let mut made = Vec::new();
    for entry in std::fs::read_dir(aside).map_err(Trouble::file(aside))?.flatten() {
        let place = folder.join(entry.file_name());
        std::fs::rename(entry.path(), &place).map_err(Trouble::file(&place))?;
        made.push(place);
    }
    std::fs::remove_dir(aside).map_err(Trouble::file(aside))?;
    for entry in std::fs::read_dir(folder).map_err(Trouble::file(folder))?.flatten() {
        if !made.contains(&entry.path()) {
            std::fs::remove_file(entry.path()).map_err(Trouble::file(&entry.path()))?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::{moved, without_loader};
    use std::fs::{create_dir_all, read_to_string, write};

    #[test]
    fn only_a_glue_with_a_loader_loses_it() {
        let glue = "let wasm;\nasync function __wbg_load(module, imports) {}\nexport { x };\n";
        assert_eq!(without_loader(glue).unwrap(), "let wasm;\n");
        assert!(without_loader("let wasm;").is_err());
    }

    #[test]
    fn what_is_moved_takes_the_place_of_what_was_there() {
        let place = std::env::temp_dir().join(format!("lightgap-bind-{}", std::process::id()));
        let (aside, folder) = (place.join("aside"), place.join("site"));
        for each in [&aside, &folder] {
            create_dir_all(each).unwrap();
        }
        write(folder.join("of_before.js"), "old").unwrap();
        write(folder.join("glue.js"), "old").unwrap();
        write(aside.join("glue.js"), "new").unwrap();
        moved(&aside, &folder).unwrap();
        assert_eq!(read_to_string(folder.join("glue.js")).unwrap(), "new");
        assert!(!folder.join("of_before.js").exists() && !aside.exists());
        std::fs::remove_dir_all(place).unwrap();
    }
}

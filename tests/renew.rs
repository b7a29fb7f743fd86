//! `cargo renew`: writes anew what the tests keep of earlier runs, after a change of the physics on
//! purpose, and says what has changed. `cargo renew table FILE` writes the table of checks alone.

use lightgap_tests::at;
use lightgap_tests::checked::{page, sheets};
use lightgap_tests::kept::{Kept, of_lessons, of_scenarios};
use std::path::Path;

fn main() -> std::io::Result<()> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    if let [word, file] = arguments.as_slice()
        && word == "table"
    {
        return put(Path::new(file), &page(&sheets())).map(drop);
    }
    if put(&at("docs/checks.md"), &page(&sheets()))? {
        println!("docs/checks.md: written anew");
    }
    for kept in of_scenarios().iter().chain(&of_lessons()) {
        renew(kept)?;
    }
    Ok(())
}

fn renew(kept: &Kept) -> std::io::Result<()> {
    let changes = kept.changes();
    if put(&kept.path(), &kept.text())? {
        println!("{}:\n  {}", kept.name, changes.join("\n  "));
    }
    Ok(())
}

/// Writes a file that differs; whether it did.
fn put(path: &Path, text: &str) -> std::io::Result<bool> {
    if std::fs::read_to_string(path).is_ok_and(|before| before == text) {
        return Ok(false);
    }
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder)?;
    }
    std::fs::write(path, text)?;
    Ok(true)
}

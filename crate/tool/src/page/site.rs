//! The files of the site, gathered from the folders they are kept in.

use super::bare::bare;
use super::gather::{self, Gathered};
use super::short::shortened;
use crate::trouble::Trouble;
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

/// A site put together from folders, each shown under a name; earlier ones win.
pub struct Site {
    mounts: Vec<(String, PathBuf)>,
    last: Mutex<Option<(String, String)>>, // the first screen's modules, long and shortened
}

/// Media types by the end of a file's name; nothing else is part of the site.
const MEDIA_TYPES: [(&str, &str); 8] = [
    ("html", "text/html; charset=utf-8"),
    ("css", "text/css; charset=utf-8"),
    ("js", "text/javascript; charset=utf-8"),
    ("json", "application/json"),
    ("wasm", "application/wasm"),
    ("svg", "image/svg+xml"),
    ("png", "image/png"),
    ("webmanifest", "application/manifest+json"),
];

impl Site {
    /// The project's site: `www/` and the glue at the top, `scenarios/` under its own name.
    pub fn of_project(root: &Path, glue: &Path) -> Self {
        Self::new(vec![
            (String::new(), root.join("www")),
            (String::new(), glue.to_path_buf()),
            ("scenarios/".into(), root.join("scenarios")),
        ])
    }

    /// A site of the given folders; a name is empty or ends in a slash.
    pub fn new(mounts: Vec<(String, PathBuf)>) -> Self {
        Self { mounts, last: Mutex::new(None) }
    }

    /// The media type of a file's name, if such a file can be part of the site.
    pub fn media_type(name: &str) -> Option<&'static str> {
        let end = name.rsplit_once('.')?.1;
        MEDIA_TYPES.iter().find(|(known, _)| *known == end).map(|(_, media)| *media)
    }

    /// The bytes of a file by its path in the site, without a leading slash; the modules of the
    /// first screen are in one of them.
    ///
    /// Gives nothing for a path that is not plain (hidden names, `..`, percent signs, an end
    /// that is no part of the site) and for whatever is reached through a link.
    pub fn read(&self, name: &str) -> Option<Vec<u8>> {
        if !name.ends_with(".js") || name.contains('/') {
            return self.source(name);
        }
        self.read_beside(self.gathered().ok().as_ref(), name)
    }

    /// Every file of the site with its bytes, by path, in order.
    pub fn files(&self) -> Result<BTreeMap<String, Vec<u8>>, Trouble> {
        let gathered = self.gathered().ok();
        let file = |name: String| {
            let bytes = self.read_beside(gathered.as_ref(), &name);
            Ok((name.clone(), bytes.ok_or_else(|| missing(&name))?))
        };
        self.names()?.into_iter().map(file).collect()
    }

    /// A file beside the modules of the first screen, where those could be gathered.
    fn read_beside(&self, gathered: Option<&Gathered>, name: &str) -> Option<Vec<u8>> {
        match gathered {
            Some(gathered) if name == gather::FIRST => {
                self.short(gathered).ok().map(String::into_bytes)
            }
            Some(gathered) if gathered.holds(name) => {
                gathered.stand_in(name).map(String::into_bytes)
            }
            _ => self.source(name),
        }
    }

    /// The modules of the first screen in one file.
    pub fn first(&self) -> Result<String, Trouble> {
        self.short(&self.gathered()?)
    }

    /// The gathered modules, shortened anew only where one has changed.
    fn short(&self, gathered: &Gathered) -> Result<String, Trouble> {
        let long = gathered.text();
        let mut last = self.last.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, short)) = last.as_ref().filter(|(known, _)| *known == long) {
            return Ok(short.clone());
        }
        let short = shortened(gather::FIRST, &long)?;
        *last = Some((long, short.clone()));
        Ok(short)
    }

    /// The modules of the first screen.
    fn gathered(&self) -> Result<Gathered, Trouble> {
        Gathered::from(&|name| self.source(name))
    }

    /// A file as it is kept in its folder, without comments.
    fn source(&self, name: &str) -> Option<Vec<u8>> {
        if !is_plain(name) || Self::media_type(name).is_none() {
            return None;
        }
        self.mounts.iter().find_map(|(under, folder)| {
            let rest = name.strip_prefix(under.as_str())?;
            let file = without_links(folder, rest)?;
            std::fs::read(file).ok().map(|bytes| bare(name, bytes))
        })
    }

    /// Like `read`, for a file that must be there.
    pub fn required(&self, name: &str) -> Result<Vec<u8>, Trouble> {
        self.read(name).ok_or_else(|| missing(name))
    }

    /// Every file of the site, by path, in order.
    pub fn names(&self) -> Result<BTreeSet<String>, Trouble> {
        let mut names = BTreeSet::new();
        for (under, folder) in &self.mounts {
            if folder.is_dir() {
                gather(under, folder, &mut names)?;
            }
        }
        names.retain(|name| is_plain(name) && Self::media_type(name).is_some());
        if names.contains(gather::ENTRY) {
            names.insert(gather::FIRST.to_owned());
        }
        Ok(names)
    }
}

fn missing(name: &str) -> Trouble {
    Trouble::Said(format!("the site has no {name}"))
}

/// Whether every step of the path is an ordinary, visible name in plain letters.
fn is_plain(name: &str) -> bool {
    let letter = |c: char| c.is_ascii_alphanumeric() || matches!(c, '.' | '-' | '_');
    name.split('/')
        .all(|step| !step.is_empty() && !step.starts_with('.') && step.chars().all(letter))
}

/// The file below the folder, unless a step on the way to it is a link.
fn without_links(folder: &Path, rest: &str) -> Option<PathBuf> {
    let mut path = folder.to_path_buf();
    for step in rest.split('/') {
        path.push(step);
        if std::fs::symlink_metadata(&path).ok()?.is_symlink() {
            return None;
        }
    }
    path.is_file().then_some(path)
}

/// Adds the names of the files under a folder, links left out.
fn gather(under: &str, folder: &Path, names: &mut BTreeSet<String>) -> Result<(), Trouble> {
    for entry in std::fs::read_dir(folder).map_err(Trouble::file(folder))? {
        let entry = entry.map_err(Trouble::file(folder))?;
        let name = format!("{under}{}", entry.file_name().to_string_lossy());
        let kind = entry.file_type().map_err(Trouble::file(&entry.path()))?;
        if kind.is_dir() {
            gather(&format!("{name}/"), &entry.path(), names)?;
        } else if kind.is_file() {
            names.insert(name);
        }
    }
    Ok(())
}

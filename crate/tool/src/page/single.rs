//! The whole page folded into one file that works from a disk without a server.
//!
//! The page's modules become `data:` addresses that an import map lists under their paths;
//! everything the page would fetch stands in a table, and `fetch` looks there. The worker's script
//! stands there too: the page makes an address of its own for it.

use super::policy;
use super::site::Site;
use super::version::with_version;
use crate::trouble::Trouble;
use base64::Engine;
use serde_json::{Map, Value, json};

/// The script of the worker: no module of the page's.
const WORKER: &str = "lightgap_worker.js";
/// How the glue finds its WebAssembly beside a module that has an address of its own.
const GLUE_ADDRESS: &str = "new URL(`lightgap_stage_bg.wasm`,import.meta.url)";
/// The same for a module without one.
const GLUE_NAME: &str = "'lightgap_stage_bg.wasm'";

/// Folds the site into the text of one HTML file.
pub fn fold(site: &Site) -> Result<String, Trouble> {
    let page = with_version(&text(site, "index.html")?);
    let names = site.names()?;
    let modules: Vec<&String> =
        names.iter().filter(|name| name.ends_with(".js") && *name != WORKER).collect();
    let map = script_safe(&import_map(site, &modules)?.to_string());
    let shelf = script_safe(&shelf(site)?);

    let entry = sole_tag(&page, "<script type=\"module\" src=\"", "\"></script>")?;
    let sheet = sole_tag(&page, "<link rel=\"stylesheet\" href=\"", "\">")?;
    let start = format!("import \"{}\";", entry.value);
    let style = text(site, sheet.value)?.replace("</style", "<\\/style");
    let policy = policy::in_single(&[&map, &shelf, &start], &[&style]);
    let scripts = format!(
        "<script>{shelf}</script>\n<script type=\"importmap\">{map}</script>\n\
         <script type=\"module\">{start}</script>"
    );
    let folded = page.replacen(entry.whole, &scripts, 1).replacen(
        sheet.whole,
        &format!("<style>{style}</style>"),
        1,
    );
    policy::with_meta(&with_pictures(site, folded)?, &policy)
}

/// Maps each module's bare name to its text as an address.
fn import_map(site: &Site, modules: &[&String]) -> Result<Value, Trouble> {
    let mut imports = Map::new();
    for name in modules {
        let mut body = text(site, name)?;
        if body.contains(GLUE_ADDRESS) {
            body = without_address(&body)?;
        }
        for other in modules {
            let way = way(name, other);
            for mark in ['"', '`'] {
                body = body.replace(&format!("{mark}{way}{mark}"), &format!("\"{other}\""));
            }
        }
        imports.insert((*name).clone(), address("text/javascript", body.as_bytes()).into());
    }
    Ok(json!({ "imports": imports }))
}

/// How a module names another: by the way from its own folder.
fn way(from: &str, to: &str) -> String {
    let (here, there): (Vec<_>, Vec<_>) = (from.split('/').collect(), to.split('/').collect());
    let folders = here.len() - 1;
    let shared = here[..folders].iter().zip(&there).take_while(|(a, b)| a == b).count();
    let up = folders - shared;
    let begin = if up == 0 { "./".to_owned() } else { "../".repeat(up) };
    begin + &there[shared..].join("/")
}

/// The glue with its WebAssembly under a plain name, since a `data:` module has no folder.
fn without_address(glue: &str) -> Result<String, Trouble> {
    match glue.matches(GLUE_ADDRESS).count() {
        1 => Ok(glue.replacen(GLUE_ADDRESS, GLUE_NAME, 1)),
        found => Err(Trouble::Said(format!(
            "the generated glue names its module {found} times, not once: {GLUE_ADDRESS}"
        ))),
    }
}

/// A script that holds what the page fetches and hands it out by name.
fn shelf(site: &Site) -> Result<String, Trouble> {
    let mut files = Map::new();
    for name in site.names()? {
        let media = Site::media_type(&name).unwrap_or_default();
        let fetched = matches!(media, "application/json" | "application/wasm");
        if fetched || media.starts_with("text/css") || name == WORKER {
            let bytes = base64(&site.required(&name)?);
            files.insert(name, json!([media, bytes]));
        }
    }
    Ok(format!("{}({});", include_str!("shelf.js").trim_end(), Value::Object(files)))
}

/// Pictures named by `href` or `src` become part of the page.
fn with_pictures(site: &Site, mut page: String) -> Result<String, Trouble> {
    for name in site.names()? {
        let media = Site::media_type(&name).unwrap_or_default();
        if media.starts_with("image/") {
            let picture = address(media, &site.required(&name)?);
            for key in ["href", "src"] {
                let named = format!("{key}=\"{name}\"");
                page = page.replace(&named, &format!("{key}=\"{picture}\""));
            }
        }
    }
    Ok(page)
}

fn text(site: &Site, name: &str) -> Result<String, Trouble> {
    let bytes = site.required(name)?;
    String::from_utf8(bytes).map_err(|_| Trouble::Said(format!("{name} is not UTF-8 text")))
}

fn base64(bytes: &[u8]) -> String {
    base64::prelude::BASE64_STANDARD.encode(bytes)
}

fn address(media: &str, bytes: &[u8]) -> String {
    format!("data:{media};base64,{}", base64(bytes))
}

/// Text that cannot end the script element it stands in.
fn script_safe(text: &str) -> String {
    text.replace("</", "<\\/").replace("<!--", "<\\!--")
}

/// An element of the page and the address inside it.
struct Tag<'a> {
    whole: &'a str,
    value: &'a str,
}

/// The one element that begins and ends so.
fn sole_tag<'a>(page: &'a str, before: &str, after: &str) -> Result<Tag<'a>, Trouble> {
    let wanted = || Trouble::Said(format!("index.html must hold {before}...{after} just once"));
    if page.matches(before).count() != 1 {
        return Err(wanted());
    }
    let start = page.find(before).ok_or_else(wanted)?;
    let inner = start + before.len();
    let length = page[inner..].find(after).ok_or_else(wanted)?;
    let end = inner + length;
    Ok(Tag {
        whole: &page[start..end + after.len()],
        value: page[inner..end].trim_start_matches("./"),
    })
}

#[cfg(test)]
mod tests {
    use super::{script_safe, sole_tag, way, without_address};

    #[test]
    fn a_script_cannot_be_ended_by_what_it_holds() {
        assert!(!script_safe("\"</script>\"").contains("</script"));
    }

    #[test]
    fn the_entry_is_found_whole() {
        let page = "<script type=\"module\" src=\"./main.js\"></script>";
        let tag = sole_tag(page, "<script type=\"module\" src=\"", "\"></script>").expect("one");
        assert_eq!((tag.whole, tag.value), (page, "main.js"));
        assert!(sole_tag("", "<script type=\"module\" src=\"", "\"></script>").is_err());
    }

    #[test]
    fn a_module_is_named_by_the_way_to_it() {
        assert_eq!(way("main.js", "dom.js"), "./dom.js");
        assert_eq!(way("main.js", "line/line.js"), "./line/line.js");
        assert_eq!(way("line/line.js", "dom.js"), "../dom.js");
        assert_eq!(way("line/line.js", "line/plan.js"), "./plan.js");
        assert_eq!(way("line/line.js", "fit/fit.js"), "../fit/fit.js");
    }

    #[test]
    fn glue_of_another_shape_is_refused() {
        assert!(without_address("export default function init() {}").is_err());
    }
}

//! `cargo page`: builds the page, then serves it, writes it out, or folds it into one file.

mod bare;
mod bind;
mod gather;
mod glue;
mod keeper;
mod marks;
mod order;
mod packed;
mod policy;
mod preload;
mod server;
mod short;
mod single;
mod site;
mod slim;
mod texts;
mod traps;
mod version;

pub use glue::{TARGET, add_target};
pub use site::Site;

use crate::trouble::Trouble;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};

/// The port asked for first when none is named; another is taken where it is busy.
const USUAL_PORT: u16 = 8460;

/// What `cargo page` may be told.
#[derive(clap::Args)]
pub struct Options {
    /// Serve on this port (0: any free one)
    #[arg(long, value_name = "N")]
    port: Option<u16>,
    /// Open the address in the browser of this machine
    #[arg(long)]
    open: bool,
    /// Write the static site into a folder and stop
    #[arg(long, value_name = "DIR", conflicts_with_all = ["port", "open"])]
    write: Option<PathBuf>,
    /// Write the whole page as one file that needs no server, and stop
    #[arg(long, value_name = "FILE.html", conflicts_with_all = ["port", "open"])]
    single: Option<PathBuf>,
}

/// Builds the page and does with it what the options say.
pub fn run(options: &Options) -> Result<ExitCode, Trouble> {
    let site = built()?;
    if let Some(folder) = &options.write {
        write(&site, folder)?;
        println!("{}", folder.display());
    }
    if let Some(file) = &options.single {
        std::fs::write(file, single::fold(&site)?).map_err(Trouble::file(file))?;
        println!("{}", file.display());
    }
    if options.write.is_none() && options.single.is_none() {
        serve(site, options)?;
    }
    Ok(ExitCode::SUCCESS)
}

/// The site with its WebAssembly built and its glue generated.
pub fn built() -> Result<Site, Trouble> {
    let glue = glue::generate()?;
    let site = Site::of_project(&crate::place::root(), &glue);
    site.first()?; // a module in a form that cannot be gathered is said here
    Ok(site)
}

/// Copies the site into a folder, its policy in the first page itself, each file also compressed
/// beside it for servers that hand out `NAME.br`; and what keeps the page for use without a network.
fn write(site: &Site, folder: &Path) -> Result<(), Trouble> {
    let mut kept = keeper::Kept::default();
    for (name, mut bytes) in site.files()? {
        if name == "index.html" {
            let page = preload::named(&String::from_utf8_lossy(&bytes));
            bytes = policy::with_meta(&page, &policy::in_page())?.into_bytes();
        }
        kept.add(&name, &bytes);
        put(folder, &name, &bytes)?;
    }
    put(folder, keeper::NAME, &kept.script())
}

/// Writes one file of the site, and beside it the same compressed where that is worth it.
fn put(folder: &Path, name: &str, bytes: &[u8]) -> Result<(), Trouble> {
    let file = folder.join(name);
    let parent = file.parent().unwrap_or(folder);
    std::fs::create_dir_all(parent).map_err(Trouble::file(parent))?;
    let beside = folder.join(format!("{name}.br"));
    if let Some(packed) = packed::packed(bytes)? {
        std::fs::write(&beside, packed).map_err(Trouble::file(&beside))?;
    } else if beside.exists() {
        std::fs::remove_file(&beside).map_err(Trouble::file(&beside))?;
    }
    std::fs::write(&file, bytes).map_err(Trouble::file(&file))
}

fn serve(site: Site, options: &Options) -> Result<(), Trouble> {
    let listener = server::listen(options.port, USUAL_PORT)?;
    let address = format!("http://{}/", listener.local_addr().map_err(|error| unbound(&error))?);
    println!("{address}");
    if options.open {
        open(&address);
    }
    server::serve(listener, site).map_err(|error| unbound(&error))
}

fn unbound(error: &std::io::Error) -> Trouble {
    Trouble::program("page server", error)
}

/// Asks the desktop to show the address; where there is none, the printed address serves.
fn open(address: &str) {
    let (program, before): (&str, &[&str]) = match std::env::consts::OS {
        "macos" => ("open", &[]),
        "windows" => ("cmd", &["/C", "start", ""]),
        _ => ("xdg-open", &[]),
    };
    if let Err(error) = Command::new(program).args(before).arg(address).spawn() {
        eprintln!("{program}: {error}; open the address by hand");
    }
}

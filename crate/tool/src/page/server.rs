//! The page's server: this machine alone, the site's files alone.

use super::packed::packed;
use super::site::Site;
use super::{keeper, policy, preload};
use crate::trouble::Trouble;
use axum::Router;
use axum::extract::{Request, State};
use axum::http::header::{ACCEPT_ENCODING, ALLOW, CONTENT_ENCODING, CONTENT_TYPE, HOST, VARY};
use axum::http::{HeaderName, HeaderValue, Method, StatusCode};
use axum::middleware::{self, Next};
use axum::response::{IntoResponse, Response};
use std::io;
use std::net::{Ipv4Addr, TcpListener};
use std::sync::Arc;
use tower_http::compression::CompressionLayer;

/// A listening socket on the loopback address.
///
/// A port asked for must be free; without one the usual port is tried, then any.
pub fn listen(port: Option<u16>, usual: u16) -> Result<TcpListener, Trouble> {
    let bind = |port| TcpListener::bind((Ipv4Addr::LOCALHOST, port));
    let bound = match port {
        Some(port) => bind(port),
        None => bind(usual).or_else(|_| bind(0)),
    };
    bound.map_err(|error| {
        let port = port.unwrap_or(0);
        Trouble::Said(format!("port {port} cannot be used ({error}): try --port 0"))
    })
}

/// Answers requests until the program ends.
pub fn serve(listener: TcpListener, site: Site) -> io::Result<()> {
    listener.set_nonblocking(true)?;
    let port = listener.local_addr()?.port();
    let runtime = tokio::runtime::Builder::new_current_thread().enable_io().build()?;
    runtime.block_on(async {
        let listener = tokio::net::TcpListener::from_std(listener)?;
        axum::serve(listener, router(site, port)).await
    })
}

fn router(site: Site, port: u16) -> Router {
    Router::new()
        .fallback(file)
        .with_state(Arc::new(site))
        .layer(CompressionLayer::new())
        .layer(middleware::from_fn_with_state(port, admit))
}

/// One file of the site.
async fn file(State(site): State<Arc<Site>>, request: Request) -> Response {
    let path = request.uri().path();
    let name = if path == "/" { "index.html" } else { path.trim_start_matches('/') };
    let plain = path == format!("/{name}") || path == "/";
    match (plain.then(|| handed(&site, name)).flatten(), Site::media_type(name)) {
        (Some(bytes), Some(media)) => {
            let packed = takes_brotli(&request).then(|| packed(&bytes).ok().flatten()).flatten();
            match packed {
                Some(packed) => {
                    let how = [
                        (CONTENT_TYPE, media),
                        (CONTENT_ENCODING, "br"),
                        (VARY, "accept-encoding"),
                    ];
                    (how, packed).into_response()
                }
                None => ([(CONTENT_TYPE, media)], bytes).into_response(),
            }
        }
        _ => (StatusCode::NOT_FOUND, "There is no such file here.\n").into_response(),
    }
}

/// The bytes of a file as they are handed out.
fn handed(site: &Site, name: &str) -> Option<Vec<u8>> {
    match name {
        keeper::NAME => kept(site),
        _ => site.read(name).map(|bytes| finished(name, bytes)),
    }
}

/// A file of the site as it is handed out.
fn finished(name: &str, bytes: Vec<u8>) -> Vec<u8> {
    if name == "index.html" { preload::in_bytes(bytes) } else { bytes }
}

/// What keeps the page for use without a network, for the files as they are now.
fn kept(site: &Site) -> Option<Vec<u8>> {
    let mut kept = keeper::Kept::default();
    for (name, bytes) in site.files().ok()? {
        kept.add(&name, &finished(&name, bytes));
    }
    Some(kept.script())
}

/// Whether a browser says that it unpacks brotli.
fn takes_brotli(request: &Request) -> bool {
    let said = request.headers().get_all(ACCEPT_ENCODING).iter().filter_map(|v| v.to_str().ok());
    let mut ways = said.flat_map(|ways| ways.split(',')).map(str::trim);
    ways.any(|way| way == "br" || (way.starts_with("br;") && !way.ends_with("q=0")))
}

/// Turns away what is not asked of this machine by its own name, or asks for more than to read;
/// puts the security headers on every answer.
async fn admit(State(port): State<u16>, request: Request, next: Next) -> Response {
    let mut answer = if !names_this_machine(&request, port) {
        let said = "This server answers to the name of its own machine alone.\n";
        (StatusCode::MISDIRECTED_REQUEST, said).into_response()
    } else if !matches!(*request.method(), Method::GET | Method::HEAD) {
        let said = "Files here are for reading.\n";
        (StatusCode::METHOD_NOT_ALLOWED, [(ALLOW, "GET, HEAD")], said).into_response()
    } else {
        next.run(request).await
    };
    for (name, value) in policy::headers() {
        let value = HeaderValue::from_str(&value).expect("the policy is plain text");
        answer.headers_mut().insert(HeaderName::from_static(name), value);
    }
    answer
}

/// Whether the request names this machine: a page elsewhere that had its own name resolve here
/// would name itself.
fn names_this_machine(request: &Request, port: u16) -> bool {
    let ours = |name: &str| {
        ["127.0.0.1", "localhost", "[::1]"]
            .iter()
            .any(|machine| name == format!("{machine}:{port}") || (port == 80 && name == *machine))
    };
    let mut hosts = request.headers().get_all(HOST).iter();
    let host = hosts.next().and_then(|host| host.to_str().ok());
    let target = request.uri().authority().is_none_or(|target| ours(target.as_str()));
    host.is_some_and(ours) && hosts.next().is_none() && target
}

#[cfg(test)]
mod tests;

//! The server asked over real sockets on the loopback address.

use super::{listen, serve};
use crate::page::Site;
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::OnceLock;

const SECURITY: [&str; 6] = [
    "content-security-policy: default-src 'none'",
    "x-content-type-options: nosniff",
    "referrer-policy: no-referrer",
    "cross-origin-resource-policy: same-origin",
    "cross-origin-opener-policy: same-origin",
    "cache-control: no-cache",
];

/// A small site with traps beside it: a hidden file, a secret outside, links to it.
fn laid_out() -> PathBuf {
    let folder = std::env::temp_dir().join(format!("lightgap-server-{}", std::process::id()));
    let www = folder.join("www");
    std::fs::create_dir_all(www.join("words/en")).expect("a folder");
    let put = |name: &str, text: &str| std::fs::write(folder.join(name), text).expect("a file");
    put("secret.json", "{\"secret\":true}");
    put("www/index.html", "<!doctype html>first page");
    put("www/motion.js", &"const gap = 0.03;\n".repeat(200));
    put("www/words/en/first.json", "{}");
    put("www/lightgap_stage_bg.wasm", "\0asm");
    put("www/.hidden.json", "{}");
    put("www/notes.txt", "no part of the site");
    link(&folder.join("secret.json"), &www.join("link.json"));
    link(&folder, &www.join("up"));
    www
}

#[cfg(unix)]
fn link(to: &Path, at: &Path) {
    std::os::unix::fs::symlink(to, at).expect("a link");
}

#[cfg(not(unix))]
fn link(_: &Path, _: &Path) {}

/// One server for all tests.
fn server() -> SocketAddr {
    static ADDRESS: OnceLock<SocketAddr> = OnceLock::new();
    *ADDRESS.get_or_init(|| {
        let listener = listen(Some(0), 0).expect("a free port");
        let address = listener.local_addr().expect("an address");
        let site = Site::new(vec![(String::new(), laid_out())]);
        std::thread::spawn(move || serve(listener, site));
        address
    })
}

/// Sends the lines as one request and gives the whole answer, header names in small letters.
fn ask_with(lines: &[String]) -> String {
    let mut socket = TcpStream::connect(server()).expect("the server listens");
    let request = format!("{}\r\nConnection: close\r\n\r\n", lines.join("\r\n"));
    socket.write_all(request.as_bytes()).expect("sent");
    let mut answer = Vec::new();
    socket.read_to_end(&mut answer).expect("answered");
    String::from_utf8_lossy(&answer).into_owned()
}

fn ask(method: &str, path: &str) -> String {
    ask_with(&[format!("{method} {path} HTTP/1.1"), format!("Host: {}", server())])
}

fn status(answer: &str) -> &str {
    answer.split(' ').nth(1).expect("a status line")
}

fn assert_guarded(answer: &str) {
    for header in SECURITY {
        assert!(answer.contains(header), "{header} is missing in {answer}");
    }
}

#[test]
fn it_listens_on_this_machine_alone() {
    assert!(server().ip().is_loopback());
}

#[test]
fn files_come_with_their_media_type_and_the_security_headers() {
    for (path, media) in [
        ("/", "text/html; charset=utf-8"),
        ("/index.html", "text/html; charset=utf-8"),
        ("/motion.js", "text/javascript; charset=utf-8"),
        ("/words/en/first.json", "application/json"),
        ("/lightgap_stage_bg.wasm", "application/wasm"),
    ] {
        let answer = ask("GET", path);
        assert_eq!(status(&answer), "200", "{path}");
        assert!(answer.contains(&format!("content-type: {media}\r\n")), "{path}: {answer}");
        assert_guarded(&answer);
    }
    assert!(ask("GET", "/").ends_with("first page"));
    assert_eq!(status(&ask("GET", "/motion.js?v=1")), "200");
}

#[test]
fn whatever_is_not_a_plain_file_of_the_site_is_not_there() {
    for path in [
        "/none.js",
        "/words",
        "/words/",
        "/.hidden.json",
        "/notes.txt",
        "/../secret.json",
        "/words/../../secret.json",
        "/%2e%2e/secret.json",
        "/..%2fsecret.json",
        "/words%2fen.json",
        "//motion.js",
        "/./motion.js",
        "/motion.js/",
        "/link.json",
        "/up/secret.json",
        "/\\..\\secret.json",
    ] {
        let answer = ask("GET", path);
        assert_eq!(status(&answer), "404", "{path}: {answer}");
        assert!(!answer.contains("secret\":"), "{path}");
        assert_guarded(&answer);
    }
}

#[test]
fn only_reading_is_allowed() {
    for method in ["POST", "PUT", "DELETE", "OPTIONS", "PATCH", "TRACE"] {
        let answer = ask(method, "/");
        assert_eq!(status(&answer), "405", "{method}");
        assert!(answer.contains("allow: GET, HEAD\r\n"), "{method}");
        assert_guarded(&answer);
    }
}

#[test]
fn head_gives_the_headers_alone() {
    let answer = ask("HEAD", "/index.html");
    assert_eq!(status(&answer), "200");
    assert!(answer.ends_with("\r\n\r\n"), "{answer}");
    assert_guarded(&answer);
}

#[test]
fn a_request_for_another_name_is_misdirected() {
    let port = server().port();
    let first = || "GET / HTTP/1.1".to_string();
    for host in
        ["elsewhere.example", &format!("elsewhere.example:{port}"), "127.0.0.1", "", "localhost:1"]
    {
        let answer = ask_with(&[first(), format!("Host: {host}")]);
        assert_eq!(status(&answer), "421", "{host}");
        assert_guarded(&answer);
    }
    for host in [format!("localhost:{port}"), format!("[::1]:{port}"), format!("127.0.0.1:{port}")]
    {
        assert_eq!(status(&ask_with(&[first(), format!("Host: {host}")])), "200", "{host}");
    }
    assert_eq!(status(&ask_with(&["GET / HTTP/1.0".into()])), "421", "no name at all");
    let twice = [first(), format!("Host: {}", server()), "Host: elsewhere.example".into()];
    assert_ne!(status(&ask_with(&twice)), "200", "two names");
    let whole = ["GET http://elsewhere.example/ HTTP/1.1".into(), format!("Host: {}", server())];
    assert_eq!(status(&ask_with(&whole)), "421", "another name in the request line");
}

#[test]
fn a_browser_that_can_unpack_gets_packed_files() {
    let lines = |accept: &str| {
        let host = format!("Host: {}", server());
        ask_with(&["GET /motion.js HTTP/1.1".into(), host, format!("Accept-Encoding: {accept}")])
    };
    let packed = lines("gzip");
    assert!(packed.contains("content-encoding: gzip\r\n"), "{packed}");
    assert!(packed.len() < lines("identity").len() / 2);
    assert_guarded(&packed);
}

#[test]
fn a_busy_port_is_said_and_the_usual_one_gives_way() {
    let port = server().port();
    let said = listen(Some(port), 0).expect_err("it is taken").to_string();
    assert!(said.contains(&port.to_string()) && said.contains("--port 0"), "{said}");
    assert_ne!(listen(None, port).expect("another").local_addr().expect("one").port(), port);
}

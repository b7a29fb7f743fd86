//! What the page may load, and the headers that go with every answer.

use crate::trouble::Trouble;
use base64::Engine;
use sha2::Digest;

/// What a browser may load and run for the page. The one policy of trusted types is the page's own
/// (`www/admit.js`), which admits the scripts of the two workers and nothing else.
const RULES: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
     img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; \
     base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; trusted-types lightgap";

/// The rule that counts only in a header.
const FRAMES: &str = "; frame-ancestors 'self'";

/// Header names and values that go with every answer of the server.
pub fn headers() -> [(&'static str, String); 6] {
    [
        ("content-security-policy", format!("{RULES}{FRAMES}")),
        ("x-content-type-options", "nosniff".into()),
        ("referrer-policy", "no-referrer".into()),
        ("cross-origin-resource-policy", "same-origin".into()),
        ("cross-origin-opener-policy", "same-origin".into()),
        ("cache-control", "no-cache".into()),
    ]
}

/// The policy for a `<meta>` element of a site that another server hands out.
pub fn in_page() -> String {
    RULES.to_string()
}

/// The policy of the page in one file: its own scripts and styles by their hashes, its modules
/// as `data:` addresses, nothing from anywhere else.
pub fn in_single(scripts: &[&str], styles: &[&str]) -> String {
    let scripts = hashes(scripts);
    let styles = hashes(styles);
    format!(
        "default-src 'none'; script-src {scripts} data: 'wasm-unsafe-eval'; style-src {styles}; \
         img-src data: blob:; worker-src blob:; base-uri 'none'; form-action 'none'; \
         require-trusted-types-for 'script'; trusted-types lightgap"
    )
}

fn hashes(texts: &[&str]) -> String {
    let each = texts.iter().map(|text| {
        let digest = sha2::Sha256::digest(text.as_bytes());
        format!("'sha256-{}'", base64::prelude::BASE64_STANDARD.encode(digest))
    });
    each.collect::<Vec<_>>().join(" ")
}

/// The page with the policy as the first thing in its head after the character set.
pub fn with_meta(page: &str, policy: &str) -> Result<String, Trouble> {
    const CHARSET: &str = "<meta charset=\"utf-8\">";
    if page.matches(CHARSET).count() != 1 {
        return Err(Trouble::Said(format!("index.html must hold {CHARSET} once, just so")));
    }
    let meta =
        format!("{CHARSET}\n<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">");
    Ok(page.replacen(CHARSET, &meta, 1))
}

#[cfg(test)]
mod tests {
    use super::{hashes, with_meta};

    #[test]
    fn a_hash_is_the_one_of_the_published_example() {
        // Content Security Policy Level 3, W3C, section 8.3 ("alert('Hello, world.');").
        assert_eq!(
            hashes(&["alert('Hello, world.');"]),
            "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='"
        );
    }

    #[test]
    fn a_page_without_its_character_set_is_refused() {
        assert!(with_meta("<!doctype html>", "default-src 'none'").is_err());
    }
}

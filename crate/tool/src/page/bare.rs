//! Scripts and style sheets without their comments, as the site hands them out: a third of their bytes
//! says something to readers of the source alone. Lines stay where they are, so that a fault is named
//! by the line that it has in the source, as long as its module is a file of its own.

/// The text of a file as the site hands it out.
pub fn bare(name: &str, bytes: Vec<u8>) -> Vec<u8> {
    if !(name.ends_with(".js") || name.ends_with(".css")) {
        return bytes;
    }
    match String::from_utf8(bytes) {
        Ok(text) => without_comments(&text).into_bytes(),
        Err(kept) => kept.into_bytes(),
    }
}

/// Takes out comments that begin a line, and types written before a value (`/** @type {X} */ value`).
fn without_comments(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    let mut inside = false;
    for line in text.lines() {
        let mut rest = line;
        if inside {
            inside = !line.contains("*/");
            rest = line.split_once("*/").map_or("", |(_, after)| after);
        }
        kept.push_str(code_of(rest, &mut inside).trim_end());
        kept.push('\n');
    }
    kept
}

/// What is code in a line; `inside` becomes true where a comment goes on to the next.
fn code_of(line: &str, inside: &mut bool) -> String {
    let code = line.trim_start();
    if code.starts_with("//") {
        return String::new();
    }
    if code.starts_with("/*") && !code.contains("*/") {
        *inside = true;
        return String::new();
    }
    let mut left = code;
    let mut kept = String::new();
    while let Some((before, after)) = comment_in(left) {
        kept.push_str(before);
        left = after;
    }
    kept + left
}

/// What stands before and behind a comment: one that begins the line, or one that tells a type.
fn comment_in(code: &str) -> Option<(&str, &str)> {
    let at = if code.starts_with("/*") { 0 } else { code.find("/** @")? };
    let end = at + code[at..].find("*/")? + "*/".len();
    Some((&code[..at], code[end..].trim_start()))
}

#[cfg(test)]
mod tests {
    use super::without_comments;

    #[test]
    fn comments_go_and_lines_stay() {
        let source = "// what\n\n/**\n * @param {number} a\n */\nconst f = (/** @type {X} */ a) => a; // tail\n  /** @type {Y} */\n  let b;\n";
        let bare = "\n\n\n\n\nconst f = (a) => a; // tail\n\nlet b;\n";
        assert_eq!(without_comments(source), bare);
    }

    #[test]
    fn what_only_looks_like_a_comment_stays() {
        for code in
            ["const a = \"http://x\";", "x = a /* b */ + c;", "y = `*/`;", "const r = /\\/\\*/;"]
        {
            assert_eq!(without_comments(code).trim_end(), code);
        }
    }

    #[test]
    fn a_style_sheet_loses_its_headings() {
        assert_eq!(without_comments("/* Found */\n.a { b: c; }\n"), "\n.a { b: c; }\n");
    }
}

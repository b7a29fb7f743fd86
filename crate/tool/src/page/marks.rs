//! The names by which a program and its glue call each other. wasm-bindgen spells them out and ends each
//! with a mark of 64 bits, which no compression shortens, once on either side; here they are counted
//! instead. What a program says of itself to tools alone is left out on the way.

use crate::trouble::Trouble;

/// The mark of a module and the version of its form, bytes.
pub(super) const HEAD: usize = 8;
/// Sections that tools read (WebAssembly 2.0, 5.5.2), and the one of imports.
pub(super) const CUSTOM: u8 = 0;
pub(super) const IMPORTS: u8 = 2;
/// A function, which is all that the glue gives.
pub(super) const FUNCTION: u8 = 0;

/// Glue and program with every name of an import replaced by its number; and what was left out, which may
/// follow the program again.
///
/// # Errors
///
/// A program or a glue of another form than wasm-bindgen writes.
pub fn counted(glue: String, program: &[u8]) -> Result<(String, Vec<u8>, Vec<u8>), Trouble> {
    written(glue, program).ok_or_else(|| {
        Trouble::Said("the program and its glue are not of the form that is known".into())
    })
}

fn written(mut glue: String, program: &[u8]) -> Option<(String, Vec<u8>, Vec<u8>)> {
    let (head, mut rest) = program.split_at_checked(HEAD)?;
    let (mut made, mut left) = (head.to_vec(), Vec::new());
    while let Some((&kind, after)) = rest.split_first() {
        let (section, after) = sized(after)?;
        rest = after;
        match kind {
            CUSTOM => put(&mut left, kind, section),
            IMPORTS => put(&mut made, kind, &renamed(&mut glue, section)?),
            _ => put(&mut made, kind, section),
        }
    }
    Some((glue, made, left))
}

/// The section of imports under short names, which the glue then has too.
fn renamed(glue: &mut String, section: &[u8]) -> Option<Vec<u8>> {
    let (count, mut rest) = number(section)?;
    let mut made = leb(count);
    for at in 0..count {
        let (_, after) = sized(rest)?;
        let (name, after) = sized(after)?;
        let (&kind, after) = after.split_first()?;
        let (of, after) = number(after)?;
        if kind != FUNCTION {
            return None;
        }
        let (long, short) = (format!(" {}: ", core::str::from_utf8(name).ok()?), letters(at));
        if glue.matches(&long).count() != 1 {
            return None;
        }
        *glue = glue.replace(&long, &format!(" {short}: "));
        for text in [MODULE, &short] {
            made.extend(leb(text.len()));
            made.extend(text.as_bytes());
        }
        made.push(FUNCTION);
        made.extend(leb(of));
        rest = after;
    }
    let (before, after) = glue.split_once(": import0")?;
    let (before, _) = before.rsplit_once("\"./")?;
    *glue = format!("{before}{MODULE}: import0{after}");
    Some(made)
}

/// What all imports come from.
const MODULE: &str = "o";

/// A number in small letters, the shortest first.
fn letters(number: usize) -> String {
    const LETTERS: usize = 26;
    let last = char::from(b'a' + (number % LETTERS) as u8);
    let before = number.checked_sub(LETTERS).map(|rest| letters(rest / LETTERS));
    before.unwrap_or_default() + &last.to_string()
}

pub(super) fn put(module: &mut Vec<u8>, kind: u8, section: &[u8]) {
    module.push(kind);
    module.extend(leb(section.len()));
    module.extend(section);
}

/// A number as WebAssembly writes lengths (LEB128, seven bits a byte), and what follows it.
pub(super) fn number(bytes: &[u8]) -> Option<(usize, &[u8])> {
    let end = bytes.iter().position(|byte| byte & 0x80 == 0)? + 1;
    let digits = bytes[..end].iter().rev();
    Some((digits.fold(0, |sum, byte| sum << 7 | usize::from(byte & 0x7f)), &bytes[end..]))
}

/// So many bytes as a number before them says, and what follows.
pub(super) fn sized(bytes: &[u8]) -> Option<(&[u8], &[u8])> {
    let (length, rest) = number(bytes)?;
    rest.split_at_checked(length)
}

pub(super) fn leb(mut number: usize) -> Vec<u8> {
    let mut bytes = Vec::new();
    while number > 0x7f {
        bytes.push((number & 0x7f) as u8 | 0x80);
        number >>= 7;
    }
    bytes.push(number as u8);
    bytes
}

#[cfg(test)]
mod tests {
    use super::{counted, leb, letters, number};

    const GLUE: &str = "const import0 = { __wbg_arc_a2541fd6a250cc85: f, __wbg_get_841df666925df0b5: g,\n};\nreturn { \"./x_bg.js\": import0 };";

    /// A module with a note to tools, two imports and a memory.
    fn program() -> Vec<u8> {
        let mut section = vec![2];
        for (name, of) in [("__wbg_get_841df666925df0b5", 1), ("__wbg_arc_a2541fd6a250cc85", 0)] {
            for text in ["./x_bg.js", name] {
                section.push(text.len() as u8);
                section.extend(text.as_bytes());
            }
            section.extend([0, of]);
        }
        let mut module = b"\0asm\x01\0\0\0\0\x05\x04note\x02".to_vec();
        module.push(section.len() as u8);
        module.extend(section);
        module.extend([5, 3, 1, 0, 1]);
        module
    }

    #[test]
    fn both_sides_get_the_same_short_names() {
        let (glue, made, left) = counted(GLUE.to_owned(), &program()).expect("of that form");
        assert_eq!(glue, "const import0 = { b: f, a: g,\n};\nreturn { o: import0 };");
        assert_eq!(
            made,
            b"\0asm\x01\0\0\0\x02\x0d\x02\x01o\x01a\0\x01\x01o\x01b\0\0\x05\x03\x01\0\x01"
        );
        assert_eq!(left, b"\0\x05\x04note");
    }

    #[test]
    fn another_form_is_refused() {
        for (glue, program) in
            [("", program()), (GLUE, b"\0asm".to_vec()), (GLUE, program()[..30].to_vec())]
        {
            assert!(counted(glue.to_owned(), &program).is_err());
        }
    }

    #[test]
    fn lengths_are_read_as_they_are_written() {
        for length in [0, 1, 127, 128, 300, 16_384, 1_000_000] {
            assert_eq!(number(&leb(length)), Some((length, &[][..])));
        }
        assert_eq!([0, 25, 26, 27, 701, 702].map(letters), ["a", "z", "aa", "ab", "zz", "aaa"]);
    }
}

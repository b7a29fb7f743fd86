//! The names by which a program and its glue know each other. wasm-bindgen ends each with a mark of 64
//! bits, which no compression shortens; here they are counted instead, in the same length, so that nothing
//! in the program moves.

/// How many figures a mark has.
const LENGTH: usize = 16;

/// Glue and program with every mark replaced by its number.
pub fn counted(mut glue: String, mut program: Vec<u8>) -> (String, Vec<u8>) {
    for (number, mark) in marks(&glue).iter().enumerate() {
        let own = format!("{number:0LENGTH$}");
        glue = glue.replace(mark.as_str(), &own);
        replace(&mut program, mark.as_bytes(), own.as_bytes());
    }
    (glue, program)
}

/// The marks of a glue, each once: what ends a name `__wbg_..._` and is hexadecimal.
fn marks(glue: &str) -> Vec<String> {
    let names = glue.split(|c: char| !c.is_ascii_alphanumeric() && c != '_');
    let mut found: Vec<String> = Vec::new();
    for (_, mark) in
        names.filter(|name| name.starts_with("__wbg_")).filter_map(|n| n.rsplit_once('_'))
    {
        let hexadecimal = mark.len() == LENGTH && mark.bytes().all(|b| b.is_ascii_hexdigit());
        if hexadecimal && !found.iter().any(|known| known == mark) {
            found.push(mark.to_owned());
        }
    }
    found
}

/// Puts one text in the place of another of its length.
fn replace(bytes: &mut [u8], old: &[u8], new: &[u8]) {
    let mut from = 0;
    while let Some(at) = bytes[from..].windows(old.len()).position(|part| part == old) {
        from += at + old.len();
        bytes[from - old.len()..from].copy_from_slice(new);
    }
}

#[cfg(test)]
mod tests {
    use super::counted;

    #[test]
    fn both_sides_get_the_same_numbers() {
        let glue =
            "__wbg_arc_a2541fd6a250cc85: f, __wbg_get_841df666925df0b5: g, __wbg_bench_free(0)";
        let program = b"\x1a__wbg_get_841df666925df0b5\x00\x1a__wbg_arc_a2541fd6a250cc85".to_vec();
        let (glue, program) = counted(glue.to_owned(), program);
        assert_eq!(
            glue,
            "__wbg_arc_0000000000000000: f, __wbg_get_0000000000000001: g, __wbg_bench_free(0)"
        );
        assert_eq!(program, b"\x1a__wbg_get_0000000000000001\x00\x1a__wbg_arc_0000000000000000");
    }
}

//! Texts that are part of a program, such as the names of members, are decoded once: each crossing of one
//! to JavaScript would decode it anew. What lies below the end of a program's own data never changes.

use crate::trouble::Trouble;
use walrus::{ConstExpr, DataKind, Module, ir::Value};

/// How the glue makes a text of bytes in memory.
const DECODES: &str = "return decodeText(getUint8ArrayMemory0().subarray(ptr, ptr + len));";

/// Where a program's own data ends in its memory.
pub fn end(module: &Module) -> u32 {
    let ends = module.data.iter().filter_map(|data| match data.kind {
        DataKind::Active { offset: ConstExpr::Value(Value::I32(at)), .. } => {
            Some(at as u32 + data.value.len() as u32)
        }
        _ => None,
    });
    ends.max().unwrap_or(0)
}

/// The glue, with texts below an end kept once they are decoded.
///
/// # Errors
///
/// Glue that decodes in another way.
pub fn kept(glue: &str, end: u32) -> Result<String, Trouble> {
    if !glue.contains(DECODES) {
        return Err(Trouble::Said(format!("the glue has no {DECODES}")));
    }
    let decode = DECODES.trim_start_matches("return ").trim_end_matches(';');
    // No program's data and no text of it is longer than 2^24 bytes.
    let keeps = format!(
        "if (ptr >= {end}) return {decode};
    const at = ptr * 16777216 + len;
    let text = keptTexts.get(at);
    if (text === undefined) keptTexts.set(at, text = {decode});
    return text;"
    );
    Ok(format!("const keptTexts = new Map();\n{}", glue.replacen(DECODES, &keeps, 1)))
}

#[cfg(test)]
mod tests {
    use super::{DECODES, end, kept};
    use walrus::{ConstExpr, DataKind, Module, ir::Value};

    #[test]
    fn data_end_with_their_last_byte() {
        let mut module = Module::default();
        assert_eq!(end(&module), 0);
        let memory = module.memories.add_local(false, false, 1, None, None);
        for (at, bytes) in [(1024, 5), (1030, 3)] {
            let offset = ConstExpr::Value(Value::I32(at));
            module.data.add(DataKind::Active { memory, offset }, vec![0; bytes]);
        }
        assert_eq!(end(&module), 1033);
    }

    #[test]
    fn a_glue_keeps_texts_below_the_end_and_another_glue_is_refused() {
        let glue = format!("function text(ptr, len) {{\n    {DECODES}\n}}\n");
        let made = kept(&glue, 1033).expect("glue");
        assert!(made.contains("if (ptr >= 1033) return decodeText("), "{made}");
        assert!(made.contains("keptTexts.get(at)"), "{made}");
        assert!(kept("function text() {}", 1033).is_err());
    }
}

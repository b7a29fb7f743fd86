//! The one file of the first screen's modules with short names and without room between words: a fifth
//! fewer bytes, compressed. The same sources give the same text, so a fault's column tells where it was.

use crate::trouble::Trouble;
use oxc_allocator::Allocator;
use oxc_codegen::{Codegen, CodegenOptions, CommentOptions};
use oxc_mangler::Mangler;
use oxc_parser::Parser;
use oxc_span::SourceType;

/// The same module, shorter; exported names and names of members stay.
///
/// # Errors
///
/// Text that is no module.
pub fn shortened(name: &str, text: &str) -> Result<String, Trouble> {
    let memory = Allocator::default();
    let parsed = Parser::new(&memory, text, SourceType::mjs()).parse();
    if let Some(fault) = parsed.diagnostics.first() {
        return Err(Trouble::Said(format!("{name}: {fault}")));
    }
    let mangled = Mangler::new().build(&parsed.program);
    let options = CodegenOptions {
        minify: true,
        comments: CommentOptions::disabled(),
        ..CodegenOptions::default()
    };
    let made = Codegen::new()
        .with_options(options)
        .with_scoping(Some(mangled.scoping))
        .with_private_member_mappings(Some(mangled.class_private_mappings))
        .build(&parsed.program);
    Ok(made.code)
}

#[cfg(test)]
mod tests {
    use super::shortened;

    #[test]
    fn names_inside_are_short_and_those_that_others_use_stay() {
        let text = "const hidden = 1;\nfunction inner(argument) {\n  return argument.member + hidden; // why\n}\n\
                    export const open$ = () => import(\"./a.js\").then(inner);\n";
        let short = shortened("x.js", text).expect("a module");
        assert!(short.len() < text.len() / 2 + 30, "{short}");
        for kept in ["export const open$=", ".member", "import(`./a.js`)"] {
            assert!(short.contains(kept), "{kept} in {short}");
        }
        for gone in ["hidden", "inner", "argument", "why"] {
            assert!(!short.contains(gone), "{gone} in {short}");
        }
    }

    #[test]
    fn what_is_no_module_is_said() {
        let refused = shortened("x.js", "export const = 1;").expect_err("it is refused");
        assert!(refused.to_string().starts_with("x.js: "), "{refused}");
    }
}

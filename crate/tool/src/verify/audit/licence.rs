//! Licences by their SPDX expressions (SPDX specification, annex "SPDX license expressions").

/// What a package may be licensed under: short, well known, no demand on what is built with it.
const ALLOWED: [&str; 11] = [
    "0BSD",
    "Apache-2.0",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "ISC",
    "MIT",
    "MIT-0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// Whether an expression, old spellings such as `MIT/Apache-2.0` included, can be met from the list;
/// a licence with an exception is none of the list, and an expression of no sense is not met.
pub fn is_allowed(expression: &str) -> bool {
    let spaced = expression.replace('/', " OR ").replace('(', " ( ").replace(')', " ) ");
    let words: Vec<_> = spaced.split_whitespace().collect();
    let mut left = words.as_slice();
    choice(&mut left) == Some(true) && left.is_empty()
}

/// Parts with OR between them: one is to be met.
fn choice(left: &mut &[&str]) -> Option<bool> {
    let mut met = parts(left)?;
    while after(left, "OR") {
        met |= parts(left)?;
    }
    Some(met)
}

/// Licences with AND between them: all are to be met.
fn parts(left: &mut &[&str]) -> Option<bool> {
    let mut met = one(left)?;
    while after(left, "AND") {
        met &= one(left)?;
    }
    Some(met)
}

/// One licence, with an exception or without, or a whole expression in brackets.
fn one(left: &mut &[&str]) -> Option<bool> {
    if after(left, "(") {
        let met = choice(left)?;
        return after(left, ")").then_some(met);
    }
    let (name, rest) = left.split_first()?;
    *left = rest;
    if !after(left, "WITH") {
        return Some(ALLOWED.contains(name));
    }
    *left = left.split_first()?.1;
    Some(false)
}

/// Goes on behind a word where it comes next.
fn after(left: &mut &[&str], word: &str) -> bool {
    let comes = left.first() == Some(&word);
    *left = &left[usize::from(comes)..];
    comes
}

#[cfg(test)]
mod tests {
    use super::is_allowed;

    #[test]
    fn an_expression_is_met_by_one_of_its_choices_and_by_all_of_its_parts() {
        let either = "Apache-2.0 WITH LLVM-exception OR MIT";
        for good in ["MIT", "MIT/Apache-2.0", "MIT OR LGPL-2.1-or-later", "(MIT AND Zlib)", either]
        {
            assert!(is_allowed(good), "{good}");
        }
        let neither = "(MIT OR Zlib) AND GPL-3.0-only";
        let bare = "Apache-2.0 WITH LLVM-exception";
        for bad in ["GPL-3.0-only", neither, bare, "", "free", "(MIT", "MIT MIT", "MIT OR"] {
            assert!(!is_allowed(bad), "{bad}");
        }
    }
}

//! The modules of the first screen in one file: one request in place of some thirty, and a quarter
//! fewer bytes, since what is compressed together is compressed better.
//!
//! Each module becomes a function that runs when it is first asked for and gives what the module
//! exports; imports become calls. Under a module's own name stays a line that hands on what the one
//! file gives, so that modules that come later find the same thing under the same name.

use crate::trouble::Trouble;
use std::fmt::Write;

/// The module that everything begins with.
pub const ENTRY: &str = "main.js";
/// The file that holds it and all that it imports before it runs.
pub const FIRST: &str = "first.js";
/// What stands at the top of that file: a function that works once.
const ONCE: &str = "const once = (work) => { let done; return () => (done ??= work()); };\n";

/// What makes the one file.
#[derive(Default)]
pub struct Gathered {
    modules: Vec<Module>,
}

/// One module, taken apart.
struct Module {
    name: String,
    imports: Vec<Import>,
    /// Names as they are inside and as they are exported.
    exports: Vec<(String, String)>,
    body: String,
}

/// What a module takes from another.
struct Import {
    from: String,
    /// Names as the other exports them and as they are here.
    taken: Vec<(String, String)>,
}

impl Gathered {
    /// The entry and whatever it imports, and that imports, each after what it needs.
    ///
    /// # Errors
    ///
    /// A module that is not there, that is written in another form than [`Module::of`] reads, or that
    /// needs itself.
    pub fn from(read: &dyn Fn(&str) -> Option<Vec<u8>>) -> Result<Self, Trouble> {
        let mut gathered = Self::default();
        gathered.add(ENTRY, read, &mut Vec::new())?;
        Ok(gathered)
    }

    fn add(
        &mut self,
        name: &str,
        read: &dyn Fn(&str) -> Option<Vec<u8>>,
        above: &mut Vec<String>,
    ) -> Result<(), Trouble> {
        if above.iter().any(|open| open == name) {
            return Err(Trouble::Said(format!(
                "{} and {name} import each other",
                above.join(", ")
            )));
        }
        if self.holds(name) {
            return Ok(());
        }
        let text = read(name).and_then(|bytes| String::from_utf8(bytes).ok());
        let text = text.ok_or_else(|| Trouble::Said(format!("the site has no module {name}")))?;
        let module = Module::of(name, &text)?;
        above.push(name.to_owned());
        for import in &module.imports {
            self.add(&import.from, read, above)?;
        }
        above.pop();
        self.modules.push(module);
        Ok(())
    }

    /// Whether a module stands in the one file.
    pub fn holds(&self, name: &str) -> bool {
        self.modules.iter().any(|module| module.name == name)
    }

    /// The one file.
    pub fn text(&self) -> String {
        self.modules.iter().fold(ONCE.to_owned(), |mut text, module| {
            self.write(module, &mut text);
            text
        })
    }

    fn write(&self, module: &Module, text: &mut String) {
        let imports = module.imports.iter().fold(String::new(), |mut lines, import| {
            let given = self.module(&import.from).map(Module::outside).into_iter().flatten();
            // Writing into a text cannot fail.
            let _ = writeln!(
                lines,
                "const {} = {}();",
                places(given, &import.taken),
                variable(&import.from)
            );
            lines
        });
        let given: Vec<&str> = module.exports.iter().map(|(own, _)| own.as_str()).collect();
        *text += &format!(
            "export const {} = once(() => {{\n{imports}{}return [{}];\n}});\n",
            variable(&module.name),
            module.body,
            given.join(", ")
        );
    }

    fn module(&self, name: &str) -> Option<&Module> {
        self.modules.iter().find(|module| module.name == name)
    }

    /// What stands under the name of a module of the one file.
    pub fn stand_in(&self, name: &str) -> Option<String> {
        let module = self.module(name)?;
        let own = variable(name);
        let plain: Vec<(String, String)> = module
            .outside()
            .filter(|name| *name != "default")
            .map(|name| (name.to_owned(), name.to_owned()))
            .collect();
        let mut text = format!("import {{ {own} }} from \"./{FIRST}\";\n");
        text += &match plain.is_empty() {
            true => format!("{own}();\n"),
            false => format!("export const {} = {own}();\n", places(module.outside(), &plain)),
        };
        if let Some(at) = module.outside().position(|name| name == "default") {
            text += &format!("export default {own}()[{at}];\n");
        }
        Some(text)
    }
}

impl Module {
    /// Reads a module: `import` with names from a module of the same folder, `export` before a
    /// function, a class or one constant, or of a list; each at the beginning of its line.
    ///
    /// # Errors
    ///
    /// Any other import or export, by file and line.
    fn of(name: &str, text: &str) -> Result<Self, Trouble> {
        let mut module = Self {
            name: name.to_owned(),
            imports: Vec::new(),
            exports: Vec::new(),
            body: String::new(),
        };
        let mut lines = text.lines();
        while let Some(line) = lines.next() {
            let wanted = || Trouble::Said(format!("{name} has a form not gathered: {line}"));
            if line.starts_with("import ") {
                module.imports.push(import(&statement(line, &mut lines)).ok_or_else(wanted)?);
            } else if line.starts_with("export {") {
                module.exports.extend(list(&statement(line, &mut lines)).ok_or_else(wanted)?);
            } else if let Some(rest) = line.strip_prefix("export ") {
                let own = declared(rest).ok_or_else(wanted)?;
                module.exports.push((own.to_owned(), own.to_owned()));
                module.body += &format!("{rest}\n");
            } else if !line.is_empty() {
                module.body += &format!("{line}\n");
            }
        }
        Ok(module)
    }

    fn outside(&self) -> impl Iterator<Item = &str> {
        self.exports.iter().map(|(_, outside)| outside.as_str())
    }
}

/// The name of a module's function: its file's, with a sign that no name of ours has.
fn variable(name: &str) -> String {
    let letter = |c: char| if c.is_ascii_alphanumeric() { c } else { '$' };
    name.trim_end_matches(".js").chars().map(letter).collect::<String>() + "$"
}

/// A line and those after it, up to one that ends in a semicolon.
fn statement<'a>(line: &'a str, rest: &mut impl Iterator<Item = &'a str>) -> String {
    let mut whole = line.to_owned();
    while !whole.ends_with(';') {
        let Some(next) = rest.next() else { break };
        whole = whole + " " + next.trim();
    }
    whole
}

/// `import one, { two, three as four } from "./five.js";`
fn import(statement: &str) -> Option<Import> {
    let (names, from) = statement.strip_prefix("import ")?.split_once(" from \"./")?;
    let from = from.strip_suffix("\";").filter(|from| !from.contains('/'))?.to_owned();
    let (whole, named) = match names.split_once('{') {
        Some((whole, named)) => (whole.trim_end_matches([' ', ',']), named.strip_suffix('}')?),
        None => (names, ""),
    };
    let whole = Some(whole).filter(|whole| !whole.is_empty());
    let taken = whole.map(|whole| ("default", whole)).into_iter().chain(pairs(named));
    let taken = taken.map(|(theirs, ours)| (theirs.to_owned(), ours.to_owned())).collect();
    whole.is_none_or(|whole| !whole.starts_with('*')).then_some(Import { from, taken })
}

/// `export { one, two as three };`
fn list(statement: &str) -> Option<Vec<(String, String)>> {
    let names = statement.strip_prefix("export {")?.strip_suffix("};")?;
    Some(pairs(names).map(|(own, out)| (own.to_owned(), out.to_owned())).collect())
}

/// The two names of each part of a list, which are one where nothing is renamed.
fn pairs(names: &str) -> impl Iterator<Item = (&str, &str)> {
    let parts = names.split(',').map(str::trim).filter(|part| !part.is_empty());
    parts.map(|part| part.split_once(" as ").unwrap_or((part, part)))
}

/// Names in the places that a list has for them, as they are taken out of it: `[, two, three]`.
fn places<'a>(given: impl Iterator<Item = &'a str>, taken: &[(String, String)]) -> String {
    let ours = |theirs| taken.iter().find(|(name, _)| name == theirs).map_or("", |(_, ours)| ours);
    let places: Vec<&str> = given.map(ours).collect();
    let end = places.iter().rposition(|ours| !ours.is_empty()).map_or(0, |last| last + 1);
    format!("[{}]", places[..end].join(", "))
}

/// The name that a declaration gives, where it is one that never changes.
fn declared(rest: &str) -> Option<&str> {
    let rest = rest.strip_prefix("async ").unwrap_or(rest);
    let rest = ["function ", "class ", "const "].iter().find_map(|kind| rest.strip_prefix(kind))?;
    let end = rest.find(|c: char| !(c.is_ascii_alphanumeric() || "_$".contains(c)))?;
    (end > 0).then(|| &rest[..end])
}

#[cfg(test)]
mod tests {
    use super::Gathered;

    fn gathered(files: &[(&str, &str)]) -> Result<Gathered, String> {
        let read = |name: &str| {
            let found = files.iter().find(|(known, _)| *known == name);
            found.map(|(_, text)| text.as_bytes().to_vec())
        };
        Gathered::from(&read).map_err(|trouble| trouble.to_string())
    }

    #[test]
    fn modules_become_functions_and_their_names_hand_on_what_those_give() {
        let files = [
            (
                "main.js",
                "import { one as first } from \"./a-b.js\";\n\
                 first(() => import(\"./line/line.js\"));\n",
            ),
            (
                "a-b.js",
                "import own, {\n  x,\n  y\n} from \"./g.js\";\nexport const one = () => own(x, y);\n",
            ),
            (
                "g.js",
                "const x = 1, y = 2;\nexport async function z() {}\nexport { x, y, z as default };\n",
            ),
        ];
        let gathered = gathered(&files).expect("it is written so");
        let text = gathered.text();
        let at = |part: &str| text.find(part).unwrap_or_else(|| panic!("no {part} in {text}"));
        assert!(
            at(
                "export const g$ = once(() => {\nconst x = 1, y = 2;\nasync function z() {}\nreturn [z, x, y, z];\n});"
            ) < at(
                "export const a$b$ = once(() => {\nconst [, x, y, own] = g$();\nconst one = () => own(x, y);\nreturn [one];\n});"
            )
        );
        at(
            "export const main$ = once(() => {\nconst [first] = a$b$();\nfirst(() => import(\"./line/line.js\"));\nreturn [];\n});",
        );
        let stand_in = |name| gathered.stand_in(name).expect("it is there");
        assert_eq!(stand_in("main.js"), "import { main$ } from \"./first.js\";\nmain$();\n");
        assert_eq!(
            stand_in("g.js"),
            "import { g$ } from \"./first.js\";\nexport const [z, x, y] = g$();\nexport default g$()[3];\n"
        );
        assert!(gathered.stand_in("line.js").is_none() && gathered.holds("a-b.js"));
        assert!(!gathered.holds("line/line.js"), "what is opened later stays out");
    }

    #[test]
    fn what_cannot_be_gathered_is_said() {
        for (text, said) in [
            ("import * as all from \"./main.js\";", "main.js has a form not gathered: import * as"),
            ("import { a } from \"./line/line.js\";", "not gathered"),
            ("export let changing = 1;", "main.js has a form not gathered: export let changing"),
            ("export default 1;", "not gathered"),
            ("import { a } from \"./none.js\";", "the site has no module none.js"),
            ("import { a } from \"./main.js\";", "main.js and main.js import each other"),
        ] {
            let refused = gathered(&[("main.js", text)]).err().expect("it is refused");
            assert!(refused.contains(said), "{refused}");
        }
    }
}

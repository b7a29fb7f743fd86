//! The order in which the first screen's program numbers its functions and each function's variables.
//! To run, any order is as good as another; to compress, what is alike stands together, and what is
//! named most has the least number.

use super::marks::{CUSTOM, FUNCTION, HEAD, IMPORTS, leb, number, put, sized};
use crate::trouble::Trouble;
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};
use walrus::ir::{Instr, InstrLocId, Visitor, VisitorMut, dfs_in_order, dfs_pre_order_mut};
use walrus::{LocalId, Module};

/// Sections (WebAssembly 2.0, 5.5.2), beside those of `marks`.
const FUNCTIONS: u8 = 3;
const EXPORTS: u8 = 7;
const START: u8 = 8;
const ELEMENTS: u8 = 9;
const CODE: u8 = 10;
/// What an instruction that names a function begins with: a call, its address.
const NAMING: [u8; 2] = [0x10, 0xd2];
/// Where a part of the table begins: at a number that is told (WebAssembly 2.0, 5.5.12).
const AT: [u8; 2] = [0, 0x41];
/// The end of that.
const END: u8 = 0x0b;
/// What names functions and variables for tools (WebAssembly 2.0, 7.4.1).
const NAMES: &[u8] = b"name";
const FUNCTION_NAMES: u8 = 1;
const VARIABLE_NAMES: u8 = 2;

/// Numbers the variables of every function by how often it names them.
pub fn variables(program: &mut Module) {
    for (_, function) in program.funcs.iter_local_mut() {
        let entry = function.entry_block();
        let mut named = Named::default();
        dfs_in_order(&mut named, function, entry);
        let mut own: Vec<_> =
            named.0.into_iter().filter(|(id, _)| !function.args.contains(id)).collect();
        own.sort_by_key(|(_, (count, first))| (Reverse(*count), *first));
        let anew = |(id, _)| (id, program.locals.add(program.locals.get(id).ty()));
        dfs_pre_order_mut(&mut Anew(own.into_iter().map(anew).collect()), function, entry);
    }
}

/// How often each variable is named, and after how many others.
#[derive(Default)]
struct Named(BTreeMap<LocalId, (usize, usize)>);

impl Visitor<'_> for Named {
    fn visit_local_id(&mut self, id: &LocalId) {
        let others = self.0.len();
        self.0.entry(*id).or_insert((0, others)).0 += 1;
    }
}

struct Anew(BTreeMap<LocalId, LocalId>);

impl VisitorMut for Anew {
    fn visit_local_id_mut(&mut self, id: &mut LocalId) {
        *id = self.0.get(id).copied().unwrap_or(*id);
    }
}

/// The same program with functions of one type together, the short before the long.
///
/// # Errors
///
/// A program of another form than the page's first one has.
pub fn functions(program: &[u8]) -> Result<Vec<u8>, Trouble> {
    let calls = calls(program)?;
    written(program, &calls)
        .ok_or_else(|| Trouble::Said("the program is not of the form that is known".into()))
}

/// Where an instruction names a function, bytes from the program's begin.
fn calls(program: &[u8]) -> Result<BTreeSet<usize>, Trouble> {
    let read = Module::from_buffer(program);
    let read = read.map_err(|error| Trouble::program("walrus", &format!("{error:#}")))?;
    let mut calls = Calls::default();
    for (_, function) in read.funcs.iter_local() {
        dfs_in_order(&mut calls, function, function.entry_block());
    }
    Ok(calls.0)
}

#[derive(Default)]
struct Calls(BTreeSet<usize>);

impl Visitor<'_> for Calls {
    fn visit_instr(&mut self, instr: &Instr, place: &InstrLocId) {
        if matches!(instr, Instr::Call(_) | Instr::RefFunc(_) | Instr::ReturnCall(_)) {
            self.0.insert(place.data() as usize);
        }
    }
}

fn written(program: &[u8], calls: &BTreeSet<usize>) -> Option<Vec<u8>> {
    let (head, mut rest) = program.split_at_checked(HEAD)?;
    let mut sections = Vec::new();
    while let Some((&kind, after)) = rest.split_first() {
        let (section, after) = sized(after)?;
        sections.push((kind, section));
        rest = after;
    }
    let of = |kind| sections.iter().find(|(each, _)| *each == kind).map(|(_, section)| *section);
    let (imported, _) = number(of(IMPORTS)?)?; // all functions: `marks` refuses others
    let types = all(of(FUNCTIONS)?, number)?;
    let bodies = all(of(CODE)?, sized)?;
    let mut order: Vec<usize> = (0..bodies.len()).collect();
    order.sort_by_key(|at| (types[*at], bodies[*at].len()));
    let mut places: Vec<usize> = (0..imported + order.len()).collect();
    for (place, at) in order.iter().enumerate() {
        places[imported + at] = imported + place;
    }
    let mut made = head.to_vec();
    for (kind, section) in sections {
        let section = match kind {
            FUNCTIONS => list(order.iter().map(|at| Some(leb(types[*at]))))?,
            EXPORTS => list(all(section, exported)?.iter().map(|each| renamed(each, &places)))?,
            START => return None,
            ELEMENTS => list(all(section, held)?.iter().map(|each| renamed(each, &places)))?,
            CODE => list(order.iter().map(|at| body(program, bodies[*at], calls, &places)))?,
            CUSTOM => names(section, &places)?,
            _ => section.to_vec(),
        };
        put(&mut made, kind, &section);
    }
    Some(made)
}

/// All of a list, each read by its reader.
fn all<'a, T>(
    section: &'a [u8],
    read: impl Fn(&'a [u8]) -> Option<(T, &'a [u8])>,
) -> Option<Vec<T>> {
    let (count, mut rest) = number(section)?;
    let mut read_all = Vec::new();
    for _ in 0..count {
        let (each, after) = read(rest)?;
        read_all.push(each);
        rest = after;
    }
    rest.is_empty().then_some(read_all)
}

fn list(each: impl ExactSizeIterator<Item = Option<Vec<u8>>>) -> Option<Vec<u8>> {
    let count = leb(each.len());
    let each: Vec<Vec<u8>> = each.collect::<Option<_>>()?;
    Some([count, each.concat()].concat())
}

/// Bytes, and the functions that are named behind them.
type Naming<'a> = (&'a [u8], Vec<usize>);

fn renamed((before, functions): &Naming<'_>, places: &[usize]) -> Option<Vec<u8>> {
    let mut made = before.to_vec();
    for function in functions {
        made.extend(leb(*places.get(*function)?));
    }
    Some(made)
}

/// A line of the exports.
fn exported(section: &[u8]) -> Option<(Naming<'_>, &[u8])> {
    let (_, after) = sized(section)?;
    let (kind, after) = after.split_first()?;
    let (of, rest) = number(after)?;
    let (end, functions) = if *kind == FUNCTION { (after, vec![of]) } else { (rest, Vec::new()) };
    Some(((&section[..section.len() - end.len()], functions), rest))
}

/// A part of the table.
fn held(section: &[u8]) -> Option<(Naming<'_>, &[u8])> {
    let (_, after) = number(section.strip_prefix(&AT)?)?;
    let (count, mut rest) = number(after.strip_prefix(&[END])?)?;
    let before = &section[..section.len() - rest.len()];
    let mut functions = Vec::new();
    for _ in 0..count {
        let (function, after) = number(rest)?;
        functions.push(function);
        rest = after;
    }
    Some(((before, functions), rest))
}

/// A function with its length, the functions it names by their new numbers.
fn body(program: &[u8], body: &[u8], calls: &BTreeSet<usize>, places: &[usize]) -> Option<Vec<u8>> {
    let place = |part: &[u8]| part.as_ptr().addr() - program.as_ptr().addr();
    let (mut made, mut rest) = (Vec::new(), body);
    for call in calls.range(place(body)..place(body) + body.len()) {
        let (before, after) = rest.split_at_checked(call + 1 - place(rest))?;
        let (function, after) = number(after)?;
        made.extend(before);
        before.last().filter(|instruction| NAMING.contains(instruction))?;
        made.extend(leb(*places.get(function)?));
        rest = after;
    }
    made.extend(rest);
    Some([leb(made.len()), made].concat())
}

/// The names for tools, in the order of the new numbers; those of variables have no number that lasts.
fn names(section: &[u8], places: &[usize]) -> Option<Vec<u8>> {
    let (title, mut rest) = sized(section)?;
    if title != NAMES {
        return Some(section.to_vec());
    }
    let mut made = section[..section.len() - rest.len()].to_vec();
    while let Some((&kind, after)) = rest.split_first() {
        let (part, after) = sized(after)?;
        rest = after;
        match kind {
            FUNCTION_NAMES => put(&mut made, kind, &function_names(part, places)?),
            VARIABLE_NAMES => {}
            _ => put(&mut made, kind, part),
        }
    }
    Some(made)
}

fn function_names(part: &[u8], places: &[usize]) -> Option<Vec<u8>> {
    let named = all(part, |line| {
        let (function, after) = number(line)?;
        let (name, rest) = sized(after)?;
        Some(((*places.get(function)?, name), rest))
    })?;
    let named: BTreeMap<usize, &[u8]> = named.into_iter().collect();
    list(named.iter().map(|(at, name)| Some([&leb(*at)[..], &leb(name.len()), name].concat())))
}

#[cfg(test)]
mod tests {
    use super::{functions, variables};
    use std::collections::BTreeMap;
    use walrus::ir::Value;
    use walrus::{ConstExpr, ElementItems, ElementKind, FunctionBuilder, FunctionId, FunctionKind};
    use walrus::{Module, RefType, ValType};

    /// A function of a name that calls others and gives back its first variable after so many nothings.
    fn function(program: &mut Module, name: &str, calls: &[FunctionId], long: usize) -> FunctionId {
        let mut made = FunctionBuilder::new(&mut program.types, &[], &[ValType::I32]);
        let mut body = made.func_body();
        for called in calls {
            body.call(*called).drop();
        }
        for _ in 0..long {
            body.i32_const(0).drop();
        }
        body.i32_const(long as i32);
        let made = made.finish(Vec::new(), &mut program.funcs);
        program.funcs.get_mut(made).name = Some(name.into());
        made
    }

    /// A program that imports one function, exports one by another name and holds two in its table.
    fn program() -> Module {
        let mut program = Module::default();
        let none = program.types.add(&[], &[ValType::I32]);
        let (given, _) = program.add_import_func("o", "a", none);
        program.funcs.get_mut(given).name = Some("given".into());
        let short = function(&mut program, "short", &[], 1);
        let long = function(&mut program, "long", &[short, given], 30);
        let middle = function(&mut program, "middle", &[long, short], 9);
        program.exports.add("asked", middle);
        let table = program.tables.add_local(false, 2, None, RefType::FUNCREF);
        let held = ElementItems::Functions(vec![long, short]);
        let offset = ConstExpr::Value(Value::I32(11));
        let element = program.elements.add(ElementKind::Active { table, offset }, held);
        program.tables.get_mut(table).elem_segments.insert(element);
        program
    }

    fn name(program: &Module, id: FunctionId) -> String {
        program.funcs.get(id).name.clone().unwrap_or_default()
    }

    /// Every function's instructions by its name, others by their names.
    fn told(program: &Module) -> BTreeMap<String, String> {
        let body = |each: &walrus::Function| match &each.kind {
            FunctionKind::Local(local) => {
                let instrs = local.block(local.entry_block()).instrs.iter();
                let told = |instr: &walrus::ir::Instr| match instr {
                    walrus::ir::Instr::Call(call) => name(program, call.func),
                    other => format!("{other:?}"),
                };
                instrs.map(|(instr, _)| told(instr)).collect::<Vec<_>>().join(" ")
            }
            _ => "elsewhere".into(),
        };
        program.funcs.iter().map(|each| (name(program, each.id()), body(each))).collect()
    }

    #[test]
    fn the_short_stand_first_and_every_name_means_the_same_function() {
        let before = program().emit_wasm();
        let after = functions(&before).expect("it is of that form");
        let [before, after] = [before, after].map(|bytes| Module::from_buffer(&bytes).unwrap());
        let order = |program: &Module| -> Vec<String> {
            program.funcs.iter().map(|each| name(program, each.id())).collect()
        };
        assert_eq!(order(&before), ["given", "long", "middle", "short"]);
        assert_eq!(order(&after), ["given", "short", "middle", "long"]);
        assert_eq!(told(&before), told(&after));
        assert!(told(&after)["middle"].starts_with("long Drop"));
        let asked = after.exports.get_func("asked").unwrap();
        assert_eq!(name(&after, asked), "middle");
        let element = after.elements.iter().next().unwrap();
        let ElementItems::Functions(held) = &element.items else { panic!("functions are held") };
        assert_eq!([held[0], held[1]].map(|id| name(&after, id)), ["long", "short"]);
    }

    #[test]
    fn another_form_is_refused() {
        let whole = program().emit_wasm();
        assert!(functions(&whole[..whole.len() - 1]).is_err());
        let mut starting = program();
        starting.start = starting.exports.get_func("asked").ok();
        assert!(functions(&starting.emit_wasm()).is_err());
    }

    #[test]
    fn what_is_named_most_has_the_least_number() {
        let mut program = Module::default();
        let own = [(); 3].map(|()| program.locals.add(ValType::I32));
        let argument = program.locals.add(ValType::I32);
        let mut made = FunctionBuilder::new(&mut program.types, &[ValType::I32], &[]);
        let mut body = made.func_body();
        for named in [own[0], argument, own[1], own[2], own[2], own[1], own[2]] {
            body.local_get(named).drop();
        }
        let made = made.finish(vec![argument], &mut program.funcs);
        program.exports.add("made", made);
        variables(&mut program);
        const GET: u8 = 0x20;
        const DROP: u8 = 0x1a;
        let named = [3, 0, 2, 1, 1, 2, 1].map(|number| [GET, number, DROP]).concat();
        let bytes = program.emit_wasm();
        assert!(bytes.windows(named.len()).any(|each| each == named));
    }
}

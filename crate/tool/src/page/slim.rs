//! What a program of the first screen can do without once it is bound: the words with which it would
//! panic, what only a table remembers, and functions for which there is an instruction. A panic becomes a trap, which stops the kernel as well, and
//! the engine's stack tells the place to the byte; `target/named/` keeps the same program with names,
//! so that whoever mends it finds the function there.

use std::collections::{BTreeMap, BTreeSet};
use walrus::ir::{
    Const, Instr, InstrSeq, UnaryOp, Unop, Unreachable, Value, Visitor, VisitorMut, dfs_in_order,
    dfs_pre_order_mut,
};
use walrus::{
    ConstExpr, DataKind, ElementItems, FunctionBuilder, FunctionId, FunctionKind, Module,
};

/// Where functions live that only end in a panic, as their names begin.
const LIBRARIES: [&str; 2] = ["core[", "alloc["];
/// Parts of their names.
const PANICS: [&str; 9] = [
    "::panicking::panic",
    "::panic_already_",
    "::unwrap_failed",
    "::expect_failed",
    "slice_index_fail",
    "len_mismatch_fail",
    "raw_vec::handle_error",
    "raw_vec::capacity_overflow",
    "alloc::handle_alloc_error",
];
/// Parts of names of what stands in the table alone: how a closure is called and a task is polled, of
/// which the first screen has none, and what a panic hands on.
const ASIDE: [&str; 4] = ["closures::_::invoke", "jspi", "::panicking::", "::BorrowError"];
/// How a value is written for people, which nothing asks for where this is not there.
const FORMATTER: &str = "::fmt::write";
/// Part of the names of what it calls by the table.
const FORMATTED: &str = " as core[";
/// Functions of libm with one argument that are one instruction as well: IEEE 754 leaves them no choice
/// of bits (IEEE 754-2019, 5.3.1 and 5.4.1).
const INSTRUCTIONS: [(&str, UnaryOp); 3] = [
    ("libm::math::sqrt::sqrt", UnaryOp::F64Sqrt),
    ("libm::math::floor::floor", UnaryOp::F64Floor),
    ("libm::math::ceil::ceil", UnaryOp::F64Ceil),
];
/// How long a place of a source is in memory: the file's name, its length, line and column.
const PLACE: usize = 16;

/// Leaves out of a bound program what it can do without.
pub fn slim(program: &mut Module) {
    instruct(program);
    leave_table(program, |name| ASIDE.iter().any(|part| name.contains(part)));
    while trap(program) {}
    walrus::passes::gc::run(program);
    let is_formatter = |each: &walrus::Function| named(each, |name| name.ends_with(FORMATTER));
    if !program.funcs.iter().any(is_formatter) {
        leave_table(program, |name| name.contains(FORMATTED) && name.contains("::fmt::"));
        walrus::passes::gc::run(program);
    }
    forget_places(program);
}

fn named(function: &walrus::Function, wanted: impl Fn(&str) -> bool) -> bool {
    function.name.as_deref().is_some_and(wanted)
}

/// Puts an instruction in the place of a call that does no more.
fn instruct(program: &mut Module) {
    let of = |each: &walrus::Function| {
        let known = INSTRUCTIONS.iter().find(|(name, _)| named(each, |own| own.starts_with(name)));
        known.map(|(_, instruction)| (each.id(), *instruction))
    };
    let mut instructed = Instructed(program.funcs.iter().filter_map(of).collect());
    for (_, function) in program.funcs.iter_local_mut() {
        let entry = function.entry_block();
        dfs_pre_order_mut(&mut instructed, function, entry);
    }
}

struct Instructed(BTreeMap<FunctionId, UnaryOp>);

impl VisitorMut for Instructed {
    fn start_instr_seq_mut(&mut self, block: &mut InstrSeq) {
        for (instr, _) in &mut block.instrs {
            let Instr::Call(call) = instr else { continue };
            if let Some(&op) = self.0.get(&call.func) {
                *instr = Instr::Unop(Unop { op });
            }
        }
    }
}

/// Whether a function's name says that it ends in a panic.
fn panics(name: &str) -> bool {
    let is_library = LIBRARIES.iter().any(|library| name.starts_with(library));
    is_library && PANICS.iter().any(|part| name.contains(part))
}

/// Puts a function that traps in the table's places of those that nothing calls.
fn leave_table(program: &mut Module, is_aside: impl Fn(&str) -> bool) {
    let mut stop = FunctionBuilder::new(&mut program.types, &[], &[]);
    stop.func_body().unreachable();
    let stop = stop.finish(Vec::new(), &mut program.funcs);
    for element in program.elements.iter_mut() {
        let ElementItems::Functions(held) = &mut element.items else { continue };
        for function in held {
            if named(program.funcs.get(*function), &is_aside) {
                *function = stop;
            }
        }
    }
}

/// Calls that end in a panic become traps; whether there were any.
fn trap(program: &mut Module) -> bool {
    let ends = |function: &walrus::Function| match &function.kind {
        FunctionKind::Local(local) => {
            let begin = local.block(local.entry_block()).instrs.first();
            named(function, panics)
                || begin.is_some_and(|(first, _)| matches!(first, Instr::Unreachable(_)))
        }
        _ => false,
    };
    let ends = program.funcs.iter().filter(|each| ends(each)).map(walrus::Function::id).collect();
    let mut trapping = Trapping { ends, any: false };
    for (_, function) in program.funcs.iter_local_mut() {
        let entry = function.entry_block();
        dfs_pre_order_mut(&mut trapping, function, entry);
    }
    trapping.any
}

struct Trapping {
    ends: BTreeSet<FunctionId>,
    any: bool,
}

impl VisitorMut for Trapping {
    /// What only prepares such a call goes with it: nobody looks at a memory whose program has trapped.
    fn start_instr_seq_mut(&mut self, block: &mut InstrSeq) {
        let is_end =
            |instr: &Instr| matches!(instr, Instr::Call(call) if self.ends.contains(&call.func));
        let Some(end) = block.instrs.iter().position(|(instr, _)| is_end(instr)) else { return };
        let before = block.instrs[..end].iter().rposition(|(instr, _)| !is_straight(instr));
        block.instrs.truncate(before.map_or(0, |at| at + 1));
        block.instrs.push((Instr::Unreachable(Unreachable {}), Default::default()));
        self.any = true;
    }
}

/// Whether an instruction goes on to the next and calls nothing.
fn is_straight(instr: &Instr) -> bool {
    matches!(
        instr,
        Instr::Const(_)
            | Instr::LocalGet(_)
            | Instr::LocalSet(_)
            | Instr::LocalTee(_)
            | Instr::GlobalGet(_)
            | Instr::GlobalSet(_)
            | Instr::Binop(_)
            | Instr::Unop(_)
            | Instr::Load(_)
            | Instr::Store(_)
            | Instr::Select(_)
            | Instr::Drop(_)
    )
}

/// Numbers that the code holds, any of which may be an address.
#[derive(Default)]
struct Numbers(BTreeSet<u32>);

impl Visitor<'_> for Numbers {
    fn visit_const(&mut self, instr: &Const) {
        if let Value::I32(number) = instr.value {
            self.0.insert(number.cast_unsigned());
        }
    }
}

/// Places of sources that nothing names any longer become zeros, which compress to nothing, and so do
/// the names of their files.
fn forget_places(program: &mut Module) {
    let mut numbers = Numbers::default();
    for (_, function) in program.funcs.iter_local() {
        dfs_in_order(&mut numbers, function, function.entry_block());
    }
    let segments: Vec<_> = program.data.iter().map(walrus::Data::id).collect();
    for segment in segments {
        let data = program.data.get_mut(segment);
        if let DataKind::Active { offset: ConstExpr::Value(Value::I32(base)), .. } = data.kind {
            forget(&mut data.value, base.cast_unsigned(), &numbers.0);
        }
    }
}

fn forget(data: &mut [u8], base: u32, named: &BTreeSet<u32>) {
    let address = |at: usize| base + at as u32;
    let words = (0..data.len() / 4).map(|word| word_at(data, word * 4));
    let named: BTreeSet<u32> = named.iter().copied().chain(words).collect();
    let places = (0..data.len().saturating_sub(PLACE - 1)).step_by(4);
    let places = places.filter(|at| !named.contains(&address(*at)));
    let places = places.filter_map(|at| Some((at, file_at(data, at, base)?)));
    let places: Vec<(usize, (usize, usize))> = places.collect();
    for (at, _) in &places {
        data[*at..*at + PLACE].fill(0);
    }
    let left: BTreeSet<u32> = (0..data.len() / 4).map(|word| word_at(data, word * 4)).collect();
    for (_, (start, end)) in places {
        if !left.contains(&address(start)) {
            data[start..end].fill(0);
        }
    }
}

/// The file's name in the place of a source, where there is one: from where to where.
fn file_at(data: &[u8], at: usize, base: u32) -> Option<(usize, usize)> {
    let start = word_at(data, at).checked_sub(base)? as usize;
    let end = start.checked_add(word_at(data, at + 4) as usize)?;
    let name = data.get(start..end)?;
    let is_name = name.ends_with(b".rs") && name.iter().all(u8::is_ascii_graphic);
    (is_name && word_at(data, at + 8) > 0 && word_at(data, at + 12) > 0).then_some((start, end))
}

fn word_at(data: &[u8], at: usize) -> u32 {
    data[at..at + 4].iter().rev().fold(0, |word, byte| word << 8 | u32::from(*byte))
}

#[cfg(test)]
mod tests {
    use super::{forget, panics, slim};
    use std::collections::BTreeSet;
    use walrus::ir::{BinaryOp, Instr, UnaryOp, Unop, Value};
    use walrus::{ConstExpr, ElementItems, ElementKind, FunctionBuilder, FunctionId};
    use walrus::{Module, RefType, ValType};

    /// A function of a name that takes two numbers and stores one, by a call behind it where one is given.
    fn function(program: &mut Module, name: &str, calls: Option<FunctionId>) -> FunctionId {
        let numbers = [program.locals.add(ValType::I32), program.locals.add(ValType::I32)];
        let mut made = FunctionBuilder::new(&mut program.types, &[ValType::I32; 2], &[]);
        let mut body = made.func_body();
        body.local_get(numbers[0]).i32_const(7).binop(BinaryOp::I32Add).local_set(numbers[0]);
        if let Some(called) = calls {
            body.local_get(numbers[0]).local_get(numbers[1]).call(called);
        }
        let made = made.finish(numbers.to_vec(), &mut program.funcs);
        program.funcs.get_mut(made).name = Some(name.into());
        made
    }

    #[test]
    fn a_call_that_only_panics_becomes_a_trap_and_what_prepares_it_goes() {
        let mut program = Module::default();
        let panic = function(&mut program, "core[0]::panicking::panic_bounds_check", None);
        let always = function(&mut program, "crate::always", Some(panic));
        let kept = function(&mut program, "crate::kept", None);
        for (name, called) in [("traps", always), ("goes on", kept)] {
            let made = function(&mut program, name, Some(called));
            program.exports.add(name, made);
        }
        slim(&mut program);
        let length = |name: &str| {
            let found =
                program.funcs.by_name(name).map(|id| program.funcs.get(id).kind.unwrap_local());
            found.map(|local| local.block(local.entry_block()).instrs.len())
        };
        assert_eq!([length("traps"), length("goes on")], [Some(1), Some(7)]);
        assert_eq!([length("crate::always"), length("crate::kept")], [None, Some(4)]);
        Module::from_buffer(&program.emit_wasm()).expect("it is valid");
    }

    #[test]
    fn a_closure_that_nothing_calls_leaves_the_table_and_others_keep_their_places() {
        let mut program = Module::default();
        let names = ["wasm_bindgen::convert::closures::_::invoke", "crate::kept"];
        let held = names.map(|name| function(&mut program, name, None));
        let table = program.tables.add_local(false, 2, None, RefType::FUNCREF);
        let offset = ConstExpr::Value(Value::I32(0));
        let held = ElementItems::Functions(held.to_vec());
        let element = program.elements.add(ElementKind::Active { table, offset }, held);
        program.tables.get_mut(table).elem_segments.insert(element);
        program.exports.add("table", table);
        slim(&mut program);
        assert!(program.funcs.by_name(names[0]).is_none());
        let ElementItems::Functions(left) = &program.elements.get(element).items else { panic!() };
        assert_eq!(program.funcs.by_name(names[1]), Some(left[1]));
    }

    #[test]
    fn only_functions_of_the_library_that_end_in_a_panic_are_taken_for_such() {
        assert!(panics("core[c5]::panicking::panic_const::panic_const_div_by_zero"));
        assert!(panics("alloc[3c]::raw_vec::handle_error"));
        for other in [
            "std[a5]::panicking::panic_count::is_zero_slow_path",
            "lightgap::alloc::handle_alloc_error",
            "core[c5]::fmt::write",
        ] {
            assert!(!panics(other), "{other}");
        }
    }

    #[test]
    fn a_root_is_an_instruction() {
        let mut program = Module::default();
        let number = program.locals.add(ValType::F64);
        let made = |program: &mut Module, name: &str, called: Option<FunctionId>| {
            let mut made =
                FunctionBuilder::new(&mut program.types, &[ValType::F64], &[ValType::F64]);
            let mut body = made.func_body();
            body.local_get(number);
            called.map(|called| body.call(called));
            let made = made.finish(vec![number], &mut program.funcs);
            program.funcs.get_mut(made).name = Some(name.into());
            made
        };
        let root = made(&mut program, "libm::math::sqrt::sqrt::h83d3f292f977ea6a", None);
        let length = made(&mut program, "length", Some(root));
        program.exports.add("length", length);
        slim(&mut program);
        assert_eq!(program.funcs.iter().count(), 1);
        let local = program.funcs.get(length).kind.unwrap_local();
        let last = local.block(local.entry_block()).instrs.last().map(|(instr, _)| instr);
        assert!(matches!(last, Some(Instr::Unop(Unop { op: UnaryOp::F64Sqrt }))));
    }

    #[test]
    fn a_place_that_nothing_names_is_forgotten_with_its_file() {
        const BASE: u32 = 1024;
        let mut data = b"a/b.rs\0\0c.rs".to_vec();
        for word in [BASE, 6, 30, 5, BASE, 6, 31, 5, BASE + 8, 4, 2, 1] {
            data.extend(word.to_le_bytes());
        }
        let whole = data.clone();
        let named = |at: &[u32]| at.iter().map(|at| BASE + at).collect::<BTreeSet<u32>>();
        let mut left = data.clone();
        forget(&mut left, BASE, &named(&[12, 44]));
        assert_eq!([&left[..28], &left[44..]], [&whole[..28], &whole[44..]]);
        assert!(left[28..44].iter().all(|byte| *byte == 0));
        forget(&mut data, BASE, &named(&[]));
        assert!(data.iter().all(|byte| *byte == 0));
    }
}

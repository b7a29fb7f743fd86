//! One trap for all that leads to one. Where two ends of blocks stand one behind the other with nothing
//! but a trap behind each, whatever leaves by the inner end may as well leave by the outer one, and the
//! inner block is not needed: bounds that are checked one after the other trap in one place.

use std::collections::BTreeMap;
use walrus::ir::{
    Block, Br, BrIf, BrTable, Instr, InstrLocId, InstrSeq, InstrSeqId, InstrSeqType, Visitor,
    VisitorMut, dfs_in_order, dfs_pre_order_mut,
};
use walrus::{LocalFunction, Module};

/// Takes out the inner blocks of every function.
pub fn join(program: &mut Module) {
    for (_, function) in program.funcs.iter_local_mut() {
        let entry = function.entry_block();
        let mut trapping = Trapping(Vec::new());
        dfs_in_order(&mut trapping, function, entry);
        let joined = trapping.0.into_iter().flat_map(|outer| joined(function, outer)).collect();
        dfs_pre_order_mut(&mut Joined(joined), function, entry);
    }
}

/// Blocks that have a trap behind them, the outer ones first.
struct Trapping(Vec<InstrSeqId>);

impl Visitor<'_> for Trapping {
    fn start_instr_seq(&mut self, around: &InstrSeq) {
        let pairs = around.instrs.windows(2);
        self.0.extend(pairs.filter_map(|pair| trapping(&pair[0].0, &pair[1].0)));
    }
}

/// The block, where a trap is behind it.
fn trapping(block: &Instr, behind: &Instr) -> Option<InstrSeqId> {
    match (block, behind) {
        (Instr::Block(Block { seq }), Instr::Unreachable(_)) => Some(*seq),
        _ => None,
    }
}

/// Takes out what is an inner block at the end of a block with a trap behind it; gives the one for which
/// the other stands then.
fn joined(function: &mut LocalFunction, outer: InstrSeqId) -> Vec<(InstrSeqId, InstrSeqId)> {
    let mut joined = Vec::new();
    while let Some(inner) = last(function, outer) {
        let within = std::mem::take(&mut function.block_mut(inner).instrs);
        let instrs = &mut function.block_mut(outer).instrs;
        instrs.truncate(instrs.len() - 2);
        instrs.extend(within);
        joined.push((inner, outer));
    }
    joined
}

/// The block with a trap behind it with which a block ends, where neither gives anything.
fn last(function: &LocalFunction, outer: InstrSeqId) -> Option<InstrSeqId> {
    let [.., (block, _), (behind, _)] = &function.block(outer).instrs[..] else { return None };
    let inner = trapping(block, behind)?;
    let gives = |id| !matches!(function.block(id).ty, InstrSeqType::Simple(None));
    (!gives(inner) && !gives(outer)).then_some(inner)
}

struct Joined(BTreeMap<InstrSeqId, InstrSeqId>);

impl Joined {
    fn lead(&self, id: &mut InstrSeqId) {
        while let Some(outer) = self.0.get(id) {
            *id = *outer;
        }
    }
}

impl VisitorMut for Joined {
    fn visit_instr_mut(&mut self, instr: &mut Instr, _: &mut InstrLocId) {
        match instr {
            Instr::Br(Br { block }) | Instr::BrIf(BrIf { block }) => self.lead(block),
            Instr::BrTable(BrTable { blocks, default, .. }) => {
                blocks.iter_mut().chain([default]).for_each(|block| self.lead(block));
            }
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::join;
    use walrus::{FunctionBuilder, Module, ValType};

    /// The instructions of a function that leaves an inner and an outer block, each with a trap behind it.
    fn checked(is_trapping: bool, join: impl Fn(&mut Module)) -> Vec<u8> {
        let mut program = Module::default();
        let index = program.locals.add(ValType::I32);
        let mut made = FunctionBuilder::new(&mut program.types, &[ValType::I32], &[]);
        made.func_body()
            .block(None, |outer| {
                let outer_id = outer.id();
                outer.block(None, |inner| {
                    let inner_id = inner.id();
                    inner.local_get(index).br_if(inner_id).local_get(index).br_if(outer_id);
                    inner.local_get(index).br_table([outer_id].into(), inner_id);
                });
                if is_trapping {
                    outer.unreachable();
                }
            })
            .unreachable();
        let made = made.finish(vec![index], &mut program.funcs);
        program.exports.add("checked", made);
        join(&mut program);
        let bytes = program.emit_wasm();
        Module::from_buffer(&bytes).expect("it is valid");
        bytes
    }

    const BLOCK: [u8; 2] = [0x02, 0x40];
    const END: u8 = 0x0b;
    const TRAP: u8 = 0x00;
    /// Leaves the block that it is inside of, whatever the first variable is.
    const TABLE: [u8; 6] = [0x20, 0x00, 0x0e, 0x01, 0x00, 0x00];

    /// Leaves the block that so many are inside of, if the first variable is not 0.
    const fn leaves(depth: u8) -> [u8; 4] {
        [0x20, 0x00, 0x0d, depth]
    }

    #[test]
    fn two_traps_become_one() {
        let joined = [&BLOCK[..], &leaves(0), &leaves(0), &TABLE, &[END, TRAP, END]].concat();
        let found = checked(true, join);
        assert!(found.windows(joined.len()).any(|each| each == joined), "{found:x?}");
    }

    #[test]
    fn a_block_without_a_trap_behind_it_stays() {
        assert_eq!(checked(false, join), checked(false, |_| {}));
        assert_ne!(checked(true, join), checked(true, |_| {}));
    }
}

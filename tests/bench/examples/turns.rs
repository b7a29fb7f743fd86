//! Solves one contact problem so many times, for tools that count instead of timing:
//! `valgrind --tool=callgrind target/release/examples/turns joint cold 1000`; `three` for three links, a
//! number of links for a strand. `turns 1000 whole 3` brings a whole springy strand of so many joints, made
//! anew each time, to half past its free offset. Counts do not drift with the load of a machine; the difference of two
//! numbers of turns is the cost of the turns.

#[path = "../../oracles/cases.rs"]
mod cases;
#[path = "../src/whole.rs"]
mod whole;

use cases::{REFERENCE, joint, strand, three_links};
use lightgap::solve::{Solver, Start};

fn main() {
    let arguments: Vec<String> = std::env::args().collect();
    let [_, work, start, turns] = arguments.as_slice() else {
        eprintln!("turns joint|three|LINKS cold|warm NUMBER, or turns JOINTS whole NUMBER");
        std::process::exit(2);
    };
    let turns: u32 = turns.parse().unwrap_or(0);
    if start == "whole" {
        for _ in 0..turns {
            println!("{} rounds", whole::brought(work.parse().unwrap_or(40)).rounds);
        }
        return;
    }
    let load = [300.0, 7.0, 40.0];
    let case = match work.as_str() {
        "joint" => joint(REFERENCE, load, true),
        "three" => three_links(REFERENCE, load),
        links => {
            let links = links.parse().unwrap_or(40);
            strand(REFERENCE, links, 0.3 * links as f64, 300.0)
        }
    };
    let start = if start == "warm" { Start::Warm } else { Start::Cold };
    let problem = case.problem();
    let mut solver = Solver::new();
    let mut report = solver.solve(&problem, start);
    for _ in 0..turns {
        report = solver.solve(&problem, start);
    }
    println!("{report:?}");
}

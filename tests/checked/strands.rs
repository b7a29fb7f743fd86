//! A taut strand of 34 joints against two solutions that are independent of the kernel and of each
//! other; they print three or four figures, in the small-angle form where nothing else is said.

use super::joints::reference;
use super::{Check, Sheet, check};
use lightgap::chain::Construction;
use lightgap::strand::{Ends, Setup, Solution, Strand};

const SOURCE: &str = "two independent solutions worked out beside the kernel (docs/method.md)";
const TENSION_N: f64 = 300.0;
/// The small-angle form differs from the exact one by half a per cent at most.
const PRINTED_MRAD: f64 = 0.012;

fn strand(construction: Construction, stiffness_n_mm: Option<f64>) -> Strand {
    let setup = Setup { joints: 34, tension_n: TENSION_N, stiffness_n_mm, ends: Ends::Held };
    Strand::new(&reference(construction, 0.0), setup)
}

/// Numbers of the first joints beside those expected.
fn each(what: &str, got: &[f64], expected: &[f64], within: f64, unit: &str) -> Vec<Check> {
    let one = |(joint, value): (usize, &f64)| {
        let got = got.get(joint).copied().unwrap_or(f64::NAN);
        check(SOURCE, &format!("{what}, joint {}", joint + 1), (*value, got), within, unit)
    };
    expected.iter().enumerate().map(one).collect()
}

fn turns(what: &str, solution: &Solution, expected: &[f64]) -> Vec<Check> {
    let got: Vec<f64> = solution.turn_rad.iter().map(|rad| 1e3 * rad.abs()).collect();
    each(&format!("{what}: turn"), &got, expected, PRINTED_MRAD, "mrad")
}

/// The first seven turns together: where the exact stop is a little nearer than the small-angle one, the
/// next joint turns by what is left.
fn turned(what: &str, solution: &Solution, expected: f64) -> Check {
    const PRINTED_MRAD: f64 = 0.08;
    let got = solution.turn_rad.iter().take(7).map(|rad| 1e3 * rad.abs()).sum();
    let what = format!("{what}: turns of the first seven joints together");
    check(SOURCE, &what, (expected, got), PRINTED_MRAD, "mrad")
}

fn forces(what: &str, force_n: &[f64], expected: &[f64], within: f64) -> Vec<Check> {
    let got: Vec<f64> = force_n.iter().map(|newtons| newtons / TENSION_N).collect();
    each(what, &got, expected, within, "of the tension")
}

fn bushed() -> Vec<Check> {
    let mut strand = strand(Construction::Bushed, None);
    let (ten, twenty) = (strand.solve(10.0), strand.solve(20.0));
    let at = |mm: u32, what: &str| format!("bushed strand {mm} mm aside{what}");
    let pins = [2.118, 1.796, 1.622, 1.360, 1.247, 1.046, 1.00];
    [
        turns(&at(10, ""), &ten, &[5.99, 0.74, 1.25]),
        forces(&at(10, ": pin forces"), &ten.pin_force_n, &[1.144], 5e-4),
        forces(&at(10, ": face forces"), &ten.face_force_n, &[0.0375], 5e-5),
        turns(&at(20, ", exact tilt limit"), &twenty, &[5.987; 6]),
        vec![turned(&at(20, ""), &twenty, 6.0 * 6.0 + 2.71)],
        forces(&at(20, ": pin forces"), &twenty.pin_force_n, &pins, 2.5e-3),
        forces(&at(20, ": face forces"), &twenty.face_force_n, &[0.074, 0.062, 0.062, 0.050], 5e-4),
    ]
    .concat()
}

fn collared() -> Vec<Check> {
    let mut strand = strand(Construction::Collared, None);
    let (ten, twenty) = (strand.solve(10.0), strand.solve(20.0));
    let at = |mm: u32, what: &str| format!("collared strand {mm} mm aside{what}");
    let pins = [1.95, 1.95, 1.505, 1.505, 1.18, 1.18, 1.00];
    [
        turns(&at(10, ""), &ten, &[7.79]),
        forces(&at(10, ": pin forces"), &ten.pin_force_n, &[1.00], 5e-4),
        forces(&at(10, ": face forces"), &ten.face_force_n, &[0.036], 5e-4),
        vec![turned(&at(20, ""), &twenty, 3.0 * 12.0 + 0.94)],
        forces(&at(20, ": pin forces"), &twenty.pin_force_n, &pins, 5e-3),
    ]
    .concat()
}

/// Joints of 6e5 N mm a radian. A first derivation printed 1.59; the second one, which
/// `oracles/strand.rs` runs, comes to 1.65.
fn springy() -> Check {
    const STIFFNESS_N_MM: f64 = 6e5;
    const SECOND: &str =
        "second solution, tests/oracles/strand.rs; a first one printed 1.59, wrongly";
    let solution = strand(Construction::Bushed, Some(STIFFNESS_N_MM)).solve(20.0);
    let most = solution.pin_force_n.iter().copied().fold(0.0, f64::max) / TENSION_N;
    let what = "bushed strand 20 mm aside, joints of 6e5 N mm a radian: largest pin force";
    check(SECOND, what, (1.65, most), 5e-3, "of the tension")
}

/// The last offset that has a pose, told by one on either side of it.
fn largest() -> Check {
    let got = strand(Construction::Bushed, None).largest_offset_mm().unwrap_or(f64::NAN);
    check(SOURCE, "bushed strand: a pose 27.5 mm aside, none 28.5", (28.0, got), 0.5, "mm")
}

/// How far a strand without yaw goes aside: n a/2.
fn free() -> Check {
    let got = strand(Construction::Bushed, None).free_offset_mm();
    check("closed form: n a/2", "free offset of 34 joints, side gap 0.4", (6.8, got), 1e-12, "mm")
}

pub(super) fn sheet() -> Sheet {
    let mut checks = bushed();
    checks.extend(collared());
    checks.push(springy());
    checks.push(largest());
    checks.push(free());
    Sheet { title: "A taut strand", checks }
}

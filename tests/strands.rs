//! How much work a drive's slider is, in counts that do not drift: every step of the scenarios' drives
//! settles, in so many rounds.

use lightgap::drive::{ChainLine, Study, Sweep, Variant};
use lightgap_tests::scenarios;

/// Rounds of one step of the slider, with the strides that lead to it.
const MOST_OF_A_STEP: u32 = 30;
/// And of a step on the average.
const MEAN_OF_A_STEP: f64 = 7.0;

#[test]
fn every_step_of_every_drive_settles() {
    for (id, scenario) in scenarios() {
        let Some(line) = ChainLine::of(&scenario) else { continue };
        let study = Study::of(&line, 60);
        for variant in [Variant::Elastic, Variant::Rigid] {
            let strand = variant.strand(&line).expect("its own chain");
            let mut sweep = Sweep::new(&line, strand, study.step_mm());
            let (mut steps, mut most, mut sum) = (0, 0, 0);
            for step in 0..=sweep.step(study.largest_mm() - study.step_mm()) {
                let solution = sweep.at(step);
                let what =
                    format!("{id} {} at {} mm", variant.key(), study.step_mm() * step as f64);
                let rounds = solution.unwrap_or_else(|why| panic!("{what}: {}", why.key())).rounds;
                assert!(rounds <= MOST_OF_A_STEP, "{what}: {rounds} rounds");
                (steps, most, sum) = (steps + 1, most.max(rounds), sum + rounds);
            }
            let mean = f64::from(sum) / f64::from(steps);
            println!(
                "{id} {}: {steps} steps, {mean:.1} rounds each, {most} at most",
                variant.key()
            );
            assert!(mean <= MEAN_OF_A_STEP, "{id} {}: {mean}", variant.key());
        }
    }
}

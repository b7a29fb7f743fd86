//! Answers to "Will every one fit?".

use super::{Answer, answer};
use crate::fit::{Chance, Stack};
use crate::lot::Bill;

/// Pitches of a chain for an example: chosen, about those of a bicycle.
const PITCHES: f64 = 100.0;
/// So many at least are told of a number of failures: fewer are told of a larger number.
const TOLD: f64 = 9.5;
/// What failures are counted in.
const OF: [f64; 5] = [100.0, 1e3, 1e4, 1e5, 1e6];

/// A share as so many of a round number: 0.038 as 38 of 1000.
fn counted(share: f64) -> [(&'static str, f64); 2] {
    let of = OF.into_iter().find(|of| share * of >= TOLD).unwrap_or(OF[OF.len() - 1]);
    [("fails", libm::round(share * of)), ("of", of)]
}

/// How many chains meet every demand, and what that means for a whole chain.
pub fn fit(chance: &Chance) -> Vec<Answer> {
    let (yields, se) = chance.yield_fraction;
    let mut numbers = vec![("sets", chance.sets as f64), ("pitches", PITCHES)];
    numbers.extend(counted(1.0 - yields));
    numbers.push(("percent", 100.0 * yields));
    numbers.push(("percent_se", 100.0 * se));
    numbers.push(("chains_percent", 100.0 * libm::pow(yields, PITCHES)));
    let id = if yields >= 1.0 {
        "fit.all"
    } else if yields <= 0.0 {
        "fit.none"
    } else {
        "fit.some"
    };
    vec![answer(id, numbers)]
}

/// What a demand's number does with every size at its worst.
pub fn worst(stack: &Stack, margin: Option<f64>) -> Answer {
    let id = match margin {
        Some(margin) if margin >= 0.0 => "fit.worst.inside",
        Some(_) => "fit.worst.outside",
        None => "fit.worst.apart",
    };
    let largest = stack.parts.iter().map(|part| part.share).fold(0.0, f64::max);
    answer(id, vec![("share_fraction", largest)])
}

/// What halving the tolerances costs, and what the cheapest ones save.
pub fn cost(bill: &Bill) -> Vec<Answer> {
    let mut answers = vec![answer(
        "fit.halved",
        vec![("total", bill.total), ("halved", bill.halved), ("times", bill.halved / bill.total)],
    )];
    for (id, none, found) in [
        ("fit.cheapest.worst", "fit.no_room.worst", &bill.worst),
        ("fit.cheapest.rss", "fit.no_room.rss", &bill.rss),
    ] {
        answers.push(match found {
            Some(found) => answer(id, vec![("least", found.total), ("total", bill.total)]),
            None => answer(none, vec![("total", bill.total)]),
        });
    }
    answers
}

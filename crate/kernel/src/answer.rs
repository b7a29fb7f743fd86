//! Answers: which sentence holds, and the numbers in it.
//!
//! No prose lives here. The word list keeps the sentence under `answer.<id>`, and under
//! `surprise.<id>` what nobody expects. Numbers end in their unit.

mod enter;
pub mod fit;
mod line;
mod load;
mod rough;
mod wear;
mod width;

pub use enter::enter;
pub use line::line;
pub use load::load;
pub use rough::rough;
pub use wear::{wear, wear_friction};
pub use width::width;

use crate::chain::{Chain, Construction, Interference, Pair};
use crate::contact::{Kind, Limit, Limiter, Play};
use crate::posing::{ContactState, Mark};
use crate::report::{Extreme, PlaySection, RangeSection, named};
use crate::scenario::Scenario;
use serde::Serialize;

/// One sentence and the numbers in it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answer {
    /// The id of the sentence.
    pub id: &'static str,
    /// The numbers in it by name.
    #[serde(serialize_with = "named")]
    pub numbers: Vec<(&'static str, f64)>,
}

/// Gaps and angles up to this, mm or rad, are none but for rounding.
const ROUNDING: f64 = 1e-9;

/// How far a chain can give: one answer for each way of moving it; where it does not go together,
/// one for each overlap.
pub fn give(chain: &Chain) -> Vec<Answer> {
    let overlaps = chain.interference();
    if !overlaps.is_empty() {
        let apart = |overlap: &Interference| {
            answer(apart_id(overlap.between), vec![("too_little_mm", overlap.too_little_mm)])
        };
        return overlaps.iter().map(apart).collect();
    }
    let play = Play::of(chain);
    vec![
        turn(chain, &play),
        aside(chain, &play),
        twist(chain, &play),
        lean(chain, &play),
        bend(chain),
    ]
}

/// What touches, what of it rubs and what stands against the pull.
pub fn touch(contacts: &[ContactState]) -> Vec<Answer> {
    let count = |of: &dyn Fn(&ContactState) -> bool| contacts.iter().filter(|c| of(c)).count();
    let touching = |contact: &ContactState| contact.mark != Mark::Open;
    let of_kind = |kind| count(&|contact| touching(contact) && contact.contact.kind == kind);
    let (all, rubbing) = (count(&touching), count(&|contact| contact.mark == Mark::Rubbing));
    let (pins, faces) = (of_kind(Kind::PinBore), of_kind(Kind::PlateFace));
    vec![
        answer(counted(all, ["touch.none", "touch.one", "touch.many"]), counts("count", all)),
        answer(counted(rubbing, ["rub.none", "rub.one", "rub.many"]), counts("count", rubbing)),
        Answer {
            id: match (pins > 0, faces > 0) {
                (true, true) => "carry.both",
                (true, false) => "carry.pin",
                (false, true) => "carry.face",
                (false, false) => "carry.none",
            },
            numbers: vec![("pin_count", pins as f64), ("face_count", faces as f64)],
        },
    ]
}

/// The answers of [`give`] at the extremes of a scenario's limits; none without limits.
pub fn ranges(scenario: &Scenario) -> Vec<Answer> {
    let Some(range) = RangeSection::of(scenario) else { return Vec::new() };
    let way = |ids, names, of: fn(&PlaySection) -> f64| span(&range, ids, names, of);
    let (mm, rad) = (["low_mm", "high_mm"], ["low_rad", "high_rad"]);
    [
        way(["range.turn", "range.turn.apart"], rad, |play| play.turn_limit_rad),
        way(["range.aside", "range.aside.apart"], mm, |play| play.offset_limit_mm),
        way(["range.twist", "range.twist.apart"], rad, |play| play.twist_limit_rad),
        way(["range.lean", "range.lean.apart"], rad, |play| play.shear_limit_rad),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// One limit of play at both extremes; where the tightest does not go together, only the most.
fn span(
    range: &RangeSection,
    [id, apart]: [&'static str; 2],
    [low, high]: [&'static str; 2],
    of: fn(&PlaySection) -> f64,
) -> Option<Answer> {
    let at = |extreme: &Extreme| extreme.play.as_ref().map(of);
    let most = at(&range.loosest)?;
    Some(match at(&range.tightest) {
        Some(least) => answer(id, vec![(low, least), (high, most)]),
        None => answer(apart, vec![(high, most)]),
    })
}

fn answer(id: &'static str, numbers: Vec<(&'static str, f64)>) -> Answer {
    Answer { id, numbers }
}

fn counts(name: &'static str, count: usize) -> Vec<(&'static str, f64)> {
    vec![(name, count as f64)]
}

fn counted(count: usize, [none, one, many]: [&'static str; 3]) -> &'static str {
    match count {
        0 => none,
        1 => one,
        _ => many,
    }
}

fn apart_id(pair: Pair) -> &'static str {
    match pair {
        Pair::PinBore => "apart.pin_bore",
        Pair::SideGap => "apart.side_gap",
        Pair::RollerBarrel => "apart.roller_barrel",
        Pair::RollerPlates => "apart.roller_plates",
    }
}

/// What stops a movement: the ids for pin, face, both at once, and for no movement at all because
/// the pin fills its hole or the plates fill their gap.
fn stopped(limit: &Limit, other_room: f64, ids: [&'static str; 5]) -> &'static str {
    let [pin, face, both, no_pin, no_face] = ids;
    match limit.by {
        Limiter::Pin if limit.angle_rad <= ROUNDING => no_pin,
        Limiter::Face if limit.angle_rad <= ROUNDING => no_face,
        _ if other_room <= ROUNDING => both,
        Limiter::Pin => pin,
        Limiter::Face => face,
    }
}

/// The next outer link sideways, across a free inner link.
fn turn(chain: &Chain, play: &Play) -> Answer {
    const IDS: [&str; 5] =
        ["turn.pin", "turn.face", "turn.both", "turn.none.pin", "turn.none.face"];
    let room_mm = match play.turn.by {
        Limiter::Pin => play.face_left_mm,
        Limiter::Face => play.pin_left_mm,
    };
    let numbers = vec![
        ("angle_rad", play.turn.angle_rad),
        ("room_mm", room_mm),
        ("side_gap_mm", chain.side_gap_mm()),
        ("pin_clearance_mm", chain.worn.along_mm(chain)),
    ];
    answer(stopped(&play.turn, room_mm, IDS), numbers)
}

/// The inner link along its pin.
fn aside(chain: &Chain, play: &Play) -> Answer {
    let id = if play.offset_mm <= ROUNDING { "aside.none" } else { "aside.face" };
    let pin_clearance_mm = chain.worn.along_mm(chain);
    answer(id, vec![("offset_mm", play.offset_mm), ("pin_clearance_mm", pin_clearance_mm)])
}

/// The inner link about the length of the chain.
fn twist(chain: &Chain, play: &Play) -> Answer {
    const IDS: [&str; 5] =
        ["twist.pin", "twist.face", "twist.pin", "twist.none.pin", "twist.none.face"];
    let numbers =
        vec![("angle_rad", play.twist.angle_rad), ("pin_clearance_mm", chain.pin_clearance_mm())];
    answer(stopped(&play.twist, f64::MAX, IDS), numbers)
}

/// The inner link between two outer links that are held parallel.
fn lean(chain: &Chain, play: &Play) -> Answer {
    const BUSHED: [&str; 5] =
        ["lean.pin", "lean.face", "lean.pin", "lean.none.pin", "lean.none.face"];
    const COLLARED: [&str; 5] = [
        "lean.plates.pin",
        "lean.plates.face",
        "lean.plates.pin",
        "lean.none.pin",
        "lean.none.face",
    ];
    let ids = match chain.construction {
        Construction::Bushed => BUSHED,
        Construction::Collared => COLLARED,
    };
    let joint_rad = 0.5 * play.turn.angle_rad;
    let mut numbers = vec![("angle_rad", play.shear.angle_rad), ("joint_rad", joint_rad)];
    if joint_rad > ROUNDING {
        numbers.push(("lean_ratio", play.shear.angle_rad / joint_rad));
    }
    answer(stopped(&play.shear, f64::MAX, ids), numbers)
}

/// The joint the way it is meant to fold.
fn bend(chain: &Chain) -> Answer {
    answer("bend.free", vec![("rest_mm", 0.5 * chain.pin_clearance_mm().max(0.0))])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::Dimension;
    use crate::chain::sample::narrow;

    /// The ids of a chain of half an inch with one size changed.
    fn ids(construction: Construction, dimension: Dimension, mm: f64) -> Vec<&'static str> {
        let chain = Chain::new(narrow(construction, &[(dimension, mm)])).expect("a chain");
        give(&chain).into_iter().map(|answer| answer.id).collect()
    }

    #[test]
    fn what_stops_a_movement_is_said() {
        let of = |dimension, mm| ids(Construction::Bushed, dimension, mm);
        let usual = of(Dimension::OuterSpacing, 4.6);
        assert_eq!(usual, ["turn.pin", "aside.face", "twist.pin", "lean.pin", "bend.free"]);
        assert_eq!(of(Dimension::OuterSpacing, 4.41)[0], "turn.face");
        assert_eq!(of(Dimension::OuterSpacing, 4.4)[..2], ["turn.none.face", "aside.none"]);
        let filled = of(Dimension::Bore, 3.6);
        assert_eq!(filled[..3], ["turn.none.pin", "aside.face", "twist.none.pin"]);
        assert_eq!(of(Dimension::Bore, 3.59), ["apart.pin_bore"]);
        assert_eq!(ids(Construction::Collared, Dimension::Bore, 3.605)[3], "lean.plates.pin");
    }

    #[test]
    fn a_pin_and_plates_that_stop_a_turn_together_are_both_named() {
        let limit = Limit { angle_rad: 0.01, by: Limiter::Pin };
        let ids = ["pin", "face", "both", "no pin", "no face"];
        assert_eq!(stopped(&limit, 0.0, ids), "both");
        assert_eq!(stopped(&limit, 0.01, ids), "pin");
    }

    #[test]
    fn nothing_that_touches_is_nothing_that_carries() {
        let ids: Vec<_> = touch(&[]).into_iter().map(|answer| answer.id).collect();
        assert_eq!(ids, ["touch.none", "rub.none", "carry.none"]);
    }
}

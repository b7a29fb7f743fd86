//! At every stop of every scenario and published size the pose stands at the limit of the report,
//! and what touches there is what the report and the answer name.
//!
//! The limits of a collared chain are defined with its two plates at their nominal distance. Posed,
//! the plates can also move apart or together by what rollers and collars leave, so that the stop
//! lies at the limit or a little past it; and a roller between two leaning plates can stop them
//! before it.

use lightgap::chain::{Chain, Construction, Sizes};
use lightgap::contact::{Kind, Limit, Limiter, OVERLAP_MM, Play};
use lightgap::posing::{Ask, ContactState, Mark, Mode, Posing};
use lightgap::table::PUBLISHED;
use lightgap_tests::scenarios;

/// A settled pose is this close to the exact limit, rad and mm: the overlap that it may have, over
/// the shortest bearing of these chains.
const CLOSE: f64 = OVERLAP_MM * 10.0;

/// A roller takes at most a hundredth of a lean (only the narrow size 25, collared, comes to it).
const ROLLER_SHARE: f64 = 0.99;

/// Every chain that goes together, by a name.
fn chains() -> Vec<(String, Chain)> {
    let ours = scenarios().into_iter().map(|(id, scenario)| (id, *scenario.chain.chain()));
    let pairs = PUBLISHED.iter().flat_map(|size| Construction::ALL.iter().map(move |c| (size, *c)));
    let published = pairs.map(|(size, construction)| {
        let sizes = size.fill(construction).sizes();
        let chain = Chain::new(sizes).unwrap_or_else(|faults| panic!("{faults:?}"));
        (format!("{} {}", size.number, construction.key()), chain)
    });
    ours.chain(published).filter(|(_, chain)| chain.goes_together()).collect()
}

/// The pitch of a chain at the stop of a movement.
fn at_stop(chain: &Chain, mode: Mode) -> Posing {
    let mut posing = Posing::new(chain, chain, 1.0, 0.5);
    posing.put(Ask::Share { mode, share: 1.0 });
    posing
}

fn touches(contacts: &[ContactState], kind: Kind) -> bool {
    contacts.iter().any(|state| state.mark != Mark::Open && state.contact.kind == kind)
}

/// The same chain with its gaps as wide as plates that move apart or together make them.
fn splayed(chain: &Chain) -> Sizes {
    let mut sizes = *chain.sizes();
    if sizes.construction == Construction::Collared {
        let collars_mm = sizes.inner_link_width_mm() - 2.0 * sizes.bearing_length_mm;
        let splay_mm = sizes.roller_side_clearance_mm().min(collars_mm);
        sizes.inner_width_mm -= splay_mm;
    }
    sizes
}

/// Checks a stop: at the limit, and for a collared chain between that and the limit splayed.
fn close(name: &str, reached: f64, limit: f64, splayed: f64) {
    let between = limit - CLOSE..=splayed + CLOSE;
    assert!(between.contains(&reached), "{name}: {reached}, not in {between:?}");
}

/// Checks a turn or a lean, and that what stops it touches.
fn check(name: &str, posing: &Posing, reached_rad: f64, limit: &Limit, splayed: &Limit) {
    close(name, reached_rad, limit.angle_rad, splayed.angle_rad);
    let kind = match limit.by {
        Limiter::Pin => Kind::PinBore,
        Limiter::Face => Kind::PlateFace,
    };
    assert!(touches(posing.contacts(), kind), "{name}: {kind:?} does not touch at its stop");
}

#[test]
fn a_turn_ends_at_its_limit_on_the_faces_that_are_named() {
    for (name, chain) in chains() {
        let posing = at_stop(&chain, Mode::Turn);
        let (play, splayed) = (Play::of(&chain), Play::of(&splayed(&chain)));
        check(&name, &posing, posing.total_yaw_rad(), &play.turn, &splayed.turn);
    }
}

#[test]
fn a_lean_ends_at_its_limit_or_on_a_roller() {
    for (name, chain) in chains() {
        let posing = at_stop(&chain, Mode::Lean);
        let (play, splayed) = (Play::of(&chain), Play::of(&splayed(&chain)));
        let reached_rad = posing.first_joint().1;
        let roller = touches(posing.contacts(), Kind::RollerPlate);
        if chain.construction == Construction::Collared && roller {
            let shares = ROLLER_SHARE * play.shear.angle_rad..=splayed.shear.angle_rad + CLOSE;
            assert!(shares.contains(&reached_rad), "{name}: {reached_rad}, not in {shares:?}");
        } else {
            check(&name, &posing, reached_rad, &play.shear, &splayed.shear);
        }
    }
}

#[test]
fn a_twist_ends_at_its_limit() {
    for (name, chain) in chains() {
        let posing = at_stop(&chain, Mode::Twist);
        let (play, splayed) = (Play::of(&chain), Play::of(&splayed(&chain)));
        close(&name, posing.twist_rad(), play.twist.angle_rad, splayed.twist.angle_rad);
    }
}

#[test]
fn a_slide_ends_at_its_limit_on_the_plates() {
    for (name, chain) in chains() {
        let posing = at_stop(&chain, Mode::Aside);
        let (play, splayed) = (Play::of(&chain), Play::of(&splayed(&chain)));
        close(&name, posing.first_joint().0, play.offset_mm, splayed.offset_mm);
        assert!(touches(posing.contacts(), Kind::PlateFace), "{name}: no plate touches");
    }
}

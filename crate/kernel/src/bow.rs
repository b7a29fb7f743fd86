//! Side bow: how far a free strand laid flat on its side bends when every joint is turned to its
//! stop one way.
//!
//! A strand of N links has N - 1 joints. Each turned by psi, the ends of the strand lie on a chord
//! from which its middle stands off by p psi N^2 / 8 = L^2 psi / (8 p), L = N p: yaw alone. Beside
//! that, each joint's inner link can still slide across by a/2 - psi g, a the side gap, g the reach
//! of a plate past its pin; every joint of one half sliding the same way adds
//! (N - 1)/2 (a/2 - psi g). Both hold for a bush and for collars: what stops a joint that bends all
//! one way is its whole bearing width. Which of the two numbers is meant must be said. Derived.

use crate::chain::Sizes;
use crate::contact::Play;
use crate::plane::{Placement, Point};
use serde::Serialize;

/// A free strand on its side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SideBow {
    /// Links N.
    pub links: u32,
    /// Pitch p, mm.
    pub pitch_mm: f64,
    /// Turn psi of every joint, rad.
    pub turn_rad: f64,
    /// What each joint can still slide across, mm each way.
    pub slide_mm: f64,
}

impl SideBow {
    /// A strand of the even number of links that first reaches a length, mm.
    pub fn of(sizes: &Sizes, reach_mm: f64) -> Self {
        /// More links than anybody lays out.
        const MOST_PAIRS: f64 = 5000.0;
        let pairs = libm::ceil(0.5 * reach_mm / sizes.pitch_mm).clamp(1.0, MOST_PAIRS);
        let turn_rad = 0.5 * Play::of(sizes).turn.angle_rad;
        let reach_mm = 0.5 * (sizes.inner_reach_mm() + sizes.outer_reach_mm());
        Self {
            links: 2 * pairs as u32,
            pitch_mm: sizes.pitch_mm,
            turn_rad,
            slide_mm: (0.5 * sizes.side_gap_mm() - turn_rad * reach_mm).max(0.0),
        }
    }

    /// Length of the strand, mm: N p.
    pub fn length_mm(&self) -> f64 {
        f64::from(self.links) * self.pitch_mm
    }

    /// Bow by yaw alone, mm: L^2 psi / (8 p).
    pub fn yaw_mm(&self) -> f64 {
        let length_mm = self.length_mm();
        length_mm * length_mm * self.turn_rad / (8.0 * self.pitch_mm)
    }

    /// Bow with the play across added, mm: (N - 1)/2 (a/2 - psi g) more.
    pub fn with_play_mm(&self) -> f64 {
        self.yaw_mm() + 0.5 * f64::from(self.links.saturating_sub(1)) * self.slide_mm
    }

    /// Radius of the curve, mm: p / psi, which is 2 p over the turn of a pitch; none where the chain
    /// does not curve.
    pub fn radius_mm(&self) -> Option<f64> {
        (self.turn_rad > 0.0).then(|| self.pitch_mm / self.turn_rad)
    }

    /// The ends of every link, walked joint by joint: its first end on the straight edge at the
    /// origin, its last end on the edge again, the strand standing off on the side of +y. With
    /// `play`, each joint is also slid across, in one half one way and in the other the other.
    pub fn walk(&self, play: bool) -> Vec<[Point; 2]> {
        let mut place = Placement::default();
        let slide_mm = if play { self.slide_mm } else { 0.0 };
        let mut links = Vec::with_capacity(self.links as usize);
        for link in 0..self.links {
            let from = place.origin();
            let to = place.outward(Point::new(self.pitch_mm, 0.0));
            links.push([from, to]);
            // Up to the middle joint the strand rises from the edge, past it the slide turns back.
            let way = if 2 * (link + 1) <= self.links { 1.0 } else { -1.0 };
            let next = place.outward(Point::new(self.pitch_mm, way * slide_mm));
            place = Placement::new(next.x, next.y, place.yaw_rad - self.turn_rad);
        }
        let end = links.last().map_or(Point::X, |link| link[1]);
        let level = Placement::new(0.0, 0.0, libm::atan2(end.y, end.x));
        links.into_iter().map(|link| link.map(|at| level.inward(at))).collect()
    }
}

/// A bowed strand beside a straight edge, as a page draws it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BowView {
    /// Links of the strand.
    pub links: u32,
    /// Its length.
    pub length_mm: f64,
    /// Turn of every joint.
    pub turn_rad: f64,
    /// What each joint can still slide across, each way.
    pub slide_mm: f64,
    /// Bow by yaw alone.
    pub yaw_mm: f64,
    /// Bow with the play across added.
    pub with_play_mm: f64,
    /// Radius of the curve; none where the chain does not curve.
    pub radius_mm: Option<f64>,
    /// The links' ends by yaw alone: along the straight edge and off it.
    pub yaw: Vec<[f64; 2]>,
    /// The same with the play.
    pub play: Vec<[f64; 2]>,
}

impl BowView {
    /// The view of a strand.
    pub fn of(bow: &SideBow) -> Self {
        let ends = |play| {
            let plainly = |at: Point| [at.x + 0.0, at.y + 0.0];
            bow.walk(play).into_iter().flatten().map(plainly).collect()
        };
        Self {
            links: bow.links,
            length_mm: bow.length_mm(),
            turn_rad: bow.turn_rad,
            slide_mm: bow.slide_mm,
            yaw_mm: bow.yaw_mm(),
            with_play_mm: bow.with_play_mm(),
            radius_mm: bow.radius_mm(),
            yaw: ends(false),
            play: ends(true),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::sample::reference;
    use crate::chain::{Chain, Construction, Dimension};
    use crate::contact::{Along, Body, Settler, Wish};

    fn sizes(construction: Construction) -> Sizes {
        let more = [
            // As long as the plates are apart: a loose roller lets collared plates draw closer.
            (Dimension::RollerLength, 3.0),
            (Dimension::EdgeChamfer, 0.0),
            (Dimension::MouthRadius, 0.0),
        ];
        reference(construction, &more)
    }

    /// 80 links of 12.7 mm, psi 6 mrad, a 0.4, g 4.2: 60.96 mm, with play 67.86 mm, worked out by
    /// hand from the two formulas.
    #[test]
    fn the_reference_strand_bows_by_the_closed_form() {
        let bow =
            SideBow { links: 80, pitch_mm: 12.7, turn_rad: 0.006, slide_mm: 0.2 - 0.006 * 4.2 };
        assert!((bow.yaw_mm() - 60.96).abs() < 1e-9);
        assert!((bow.with_play_mm() - 67.86).abs() < 0.005, "{}", bow.with_play_mm());
    }

    /// The middle of the strand, walked link by link at the true angles, against the closed form,
    /// which takes sines as angles.
    #[test]
    fn a_walked_strand_stands_off_its_edge_by_the_closed_form() {
        const SMALL_ANGLES: f64 = 0.01;
        for construction in [Construction::Bushed, Construction::Collared] {
            let bow = SideBow::of(&sizes(construction), 1000.0);
            assert_eq!(bow.links, 80);
            for (play, expected_mm) in [(false, bow.yaw_mm()), (true, bow.with_play_mm())] {
                let links = bow.walk(play);
                let most = links.iter().flatten().fold(0.0_f64, |most, at| most.max(at.y));
                assert!((most / expected_mm - 1.0).abs() < SMALL_ANGLES, "{most} {expected_mm}");
                assert!(links[0][0].length() < 1e-12 && links[79][1].y.abs() < 1e-9);
            }
        }
    }

    /// What each joint turns and slides is what the contacts of a pitch allow: the settler is asked
    /// for more and stops there.
    #[test]
    fn contacts_stop_a_joint_where_the_bow_says() {
        for construction in [Construction::Bushed, Construction::Collared] {
            let chain = Chain::new(sizes(construction)).expect("every part exists");
            let bow = SideBow::of(chain.sizes(), 1000.0);
            let mut settler = Settler::plan(&chain);
            let straight = *settler.straight();
            let wish = |body, along, value| Wish::Coordinate { body, along, value, weight: 1.0 };
            settler.settle(&[wish(Body::NextOuter, Along::Yaw, 3.0 * bow.turn_rad)], &straight);
            let turned_rad = settler.pose().of(Body::NextOuter).yaw_rad;
            assert!((turned_rad - 2.0 * bow.turn_rad).abs() < 1e-9, "{turned_rad}");
        }
        // Slid across at that turn: the inner link of a bush, against the held outer link.
        let chain = Chain::new(sizes(Construction::Bushed)).expect("every part exists");
        let bow = SideBow::of(chain.sizes(), 1000.0);
        let mut settler = Settler::plan(&chain);
        let straight = *settler.straight();
        let wish =
            |along, value, weight| Wish::Coordinate { body: Body::InnerFar, along, value, weight };
        let wishes = [wish(Along::Yaw, bow.turn_rad, 1e3), wish(Along::Y, 1.0, 1.0)];
        settler.settle(&wishes, &straight);
        let inner = *settler.pose().of(Body::InnerFar);
        assert!((inner.yaw_rad / bow.turn_rad - 1.0).abs() < 0.01, "{}", inner.yaw_rad);
        let slide_mm = bow.slide_mm + (bow.turn_rad - inner.yaw_rad) * 4.2;
        assert!((inner.y_mm - slide_mm).abs() < 1e-3, "{} {slide_mm}", inner.y_mm);
    }

    #[test]
    fn a_chain_without_pin_clearance_lies_straight_and_only_slides() {
        let mut sizes = sizes(Construction::Bushed);
        sizes.bore_mm = sizes.pin_diameter_mm;
        let bow = SideBow::of(&sizes, 1000.0);
        assert!(bow.yaw_mm().abs() < 1e-9 && bow.radius_mm().is_none());
        assert!((bow.with_play_mm() - 39.5 * 0.2).abs() < 1e-9);
    }
}

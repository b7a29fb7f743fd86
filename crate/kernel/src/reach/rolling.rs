//! Where a round particle rolls.

use super::hull::Hull;
use crate::plane::Point;

/// Metal as a round particle of one diameter meets it.
///
/// Grow every piece by the particle's radius; the particle is then a point. It is shut in where a
/// closed chain of overlapping pieces goes round it. Walk from piece to piece through points that both
/// hold: each stretch lies in one convex piece and turns the view from the particle by less than half a
/// turn, so the turns add up exactly, and a walk that comes back to the same piece from another side has
/// gone round. Source: derived.
pub struct Rolling {
    middles: Vec<Point>,
    /// Overlapping pairs in the order of a walk: piece, other piece, a point in both.
    links: Vec<(usize, usize, Point)>,
    /// The turn to each piece, from the first one of its cluster.
    turns: Vec<Option<f64>>,
}

/// Gaps this much wider than the particle, mm, let it through; narrower ones do not.
const SLACK_MM: f64 = 1e-9;

impl Rolling {
    /// The metal, and the particle's diameter, mm.
    pub fn new(hulls: &[Hull], diameter_mm: f64) -> Self {
        let mut pairs = Vec::new();
        for (i, one) in hulls.iter().enumerate() {
            for (j, other) in hulls.iter().enumerate().skip(i + 1) {
                let (gap_mm, between) = one.gap_to(other);
                if gap_mm < diameter_mm - SLACK_MM {
                    pairs.push((i, j, between));
                }
            }
        }
        Self {
            middles: hulls.iter().map(Hull::middle).collect(),
            links: in_walking_order(hulls.len(), pairs),
            turns: vec![None; hulls.len()],
        }
    }

    /// Whether a particle whose middle is at a point clear of all metal can have come from outside.
    pub fn reaches(&mut self, middle: Point) -> bool {
        use core::f64::consts::PI;
        self.turns.fill(None);
        for &(i, j, between) in &self.links {
            let from = *self.turns[i].get_or_insert(0.0);
            let way = turn(self.middles[i] - middle, between - middle)
                + turn(between - middle, self.middles[j] - middle);
            match self.turns[j] {
                None => self.turns[j] = Some(from + way),
                Some(already) if (from + way - already).abs() > PI => return false,
                Some(_) => {}
            }
        }
        true
    }
}

/// How far one must turn from one way to another, rad.
fn turn(from: Point, to: Point) -> f64 {
    libm::atan2(from.perp_dot(to), from.dot(to))
}

/// The same pairs, each cluster from its first piece outwards, so that the first of a pair has always
/// been seen before.
fn in_walking_order(
    pieces: usize,
    pairs: Vec<(usize, usize, Point)>,
) -> Vec<(usize, usize, Point)> {
    let mut seen = vec![false; pieces];
    let (mut left, mut walk) = (pairs, Vec::new());
    for start in 0..pieces {
        if seen[start] {
            continue;
        }
        seen[start] = true;
        loop {
            let known = left.iter().position(|(i, j, _)| seen[*i] || seen[*j]);
            let Some(at) = known else { break };
            let (i, j, between) = left.remove(at);
            walk.push(if seen[i] { (i, j, between) } else { (j, i, between) });
            seen[i] = true;
            seen[j] = true;
        }
    }
    walk
}

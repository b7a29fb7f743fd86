//! Paths and dashes as the letters that SVG writes them in.

use super::Line;
use crate::decimal;
use crate::plane::{Arc, Point};
use core::f64::consts::PI;

/// Decimals of a coordinate: a thousandth of a pixel.
pub(super) const DECIMALS: u32 = 3;

/// A path that grows call by call.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Trace {
    /// What has been written.
    pub letters: String,
}

impl Trace {
    pub fn push_point(&mut self, command: char, at: Point) {
        self.letters.push(command);
        decimal::write_short(&mut self.letters, at.x, DECIMALS);
        self.letters.push(' ');
        decimal::write_short(&mut self.letters, at.y, DECIMALS);
    }

    /// SVG names an arc by its ends, which says nothing of a whole turn: from half a turn on, an arc
    /// goes in two.
    pub fn arc(&mut self, arc: &Arc) {
        let pieces = if libm::fabs(arc.sweep_rad) < PI { 1 } else { 2 };
        let radius = decimal::short(arc.radius, DECIMALS);
        let sense = if arc.sweep_rad > 0.0 { " 0 0 1 " } else { " 0 0 0 " };
        for piece in 1..=pieces {
            let share = f64::from(piece) / f64::from(pieces);
            self.letters.push('A');
            self.letters.push_str(&radius);
            self.letters.push(' ');
            self.letters.push_str(&radius);
            self.letters.push_str(sense);
            let end = arc.at(arc.start_rad + share * arc.sweep_rad);
            decimal::write_short(&mut self.letters, end.x, DECIMALS);
            self.letters.push(' ');
            decimal::write_short(&mut self.letters, end.y, DECIMALS);
        }
    }
}

/// The dashes and gaps of a line in turn; empty for a whole line.
pub(super) fn dashes(line: &Line) -> String {
    line.dashes().map(|dash| decimal::short(dash, DECIMALS)).collect::<Vec<_>>().join(" ")
}

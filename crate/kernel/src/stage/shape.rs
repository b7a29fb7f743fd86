//! Outlines for a page's own pictures: what a part is, and the letters of its path.

use crate::decimal;
use crate::plane::{Arc, Point, Step};
use core::f64::consts::PI;
use serde::Serialize;

/// Decimals of a coordinate: a tenth of a micrometre.
const DECIMALS: u32 = 4;

/// A part of a picture.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Shape {
    /// What it is: the class of a style sheet.
    pub role: &'static str,
    /// Its path in the letters of SVG, mm, the second axis pointing down.
    pub d: String,
}

impl Shape {
    /// A part whose path is drawn with the second axis up, moved by so much.
    pub fn new(role: &'static str, steps: &[Step], moved: Point) -> Self {
        let mut d = String::new();
        for step in steps {
            write(&mut d, step, moved);
        }
        Self { role, d }
    }
}

fn write(d: &mut String, step: &Step, moved: Point) {
    match step {
        Step::Move(p) => to(d, 'M', *p + moved),
        Step::Line(p) => to(d, 'L', *p + moved),
        Step::Arc(arc) => write_arc(d, arc, moved),
        Step::Close => d.push('Z'),
    }
}

/// An arc in pieces of less than half a turn, so that none is the large one.
fn write_arc(d: &mut String, arc: &Arc, moved: Point) {
    const THIRDS: u32 = 3;
    let pieces = if arc.sweep_rad.abs() < PI { 1 } else { THIRDS };
    let sense = if arc.sweep_rad > 0.0 { " 0 0 0 " } else { " 0 0 1 " };
    for piece in 1..=pieces {
        let share = f64::from(piece) / f64::from(pieces);
        let end = arc.at(arc.start_rad + share * arc.sweep_rad) + moved;
        d.push('A');
        decimal::write_short(d, arc.radius, DECIMALS);
        d.push(' ');
        decimal::write_short(d, arc.radius, DECIMALS);
        d.push_str(sense);
        pair(d, end);
    }
}

fn to(d: &mut String, letter: char, p: Point) {
    d.push(letter);
    pair(d, p);
}

fn pair(d: &mut String, p: Point) {
    decimal::write_short(d, p.x, DECIMALS);
    d.push(' ');
    decimal::write_short(d, -p.y, DECIMALS);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plane::Pen;

    #[test]
    fn a_circle_is_three_arcs_and_stands_upright() {
        let mut pen = Pen::new();
        pen.circle((1.0, 2.0), 1.0);
        let shape = Shape::new("pin", &pen.steps, Point::new(1.0, 0.0));
        assert!(shape.d.starts_with("M3 -2A1 1 0 0 0 "), "{}", shape.d);
        assert_eq!(shape.d.matches('A').count(), 3);
        assert!(shape.d.ends_with('Z'));
    }
}

//! Parts cut across the chain through one pin's axis: the plan's shapes with the axes exchanged.

use super::plan::{bush_wall, cut, inner_eye, outer_eye, pin, roller_wall};
use super::{Link, Part, Piece, is_bushed};
use crate::chain::Sizes;
use crate::plane::Pen;

const BOTH: [f64; 2] = [1.0, -1.0];

fn pen(up: f64, across: f64) -> Pen {
    let mut pen = Pen { swapped: true, ..Pen::new() };
    pen.mirror(up, across);
    pen
}

/// Both outer plates above and below the pin, and the pin.
pub(super) fn outer(s: &Sizes) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for (up, across) in BOTH.into_iter().flat_map(|up| BOTH.map(|across| (up, across))) {
        let mut plate = pen(up, across);
        outer_eye(&mut plate, s, 0.5 * s.outer_plate_height_mm);
        pieces.push(cut(Part::OuterPlate, plate));
    }
    pieces.extend(pin(s, true, None));
    pieces
}

/// Inner plates above and below the pin, with the bush.
pub(super) fn inner(s: &Sizes, link: Link) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for up in BOTH {
        for &end in link.ends() {
            let mut plate = pen(up, end);
            inner_eye(&mut plate, s, 0.5 * s.inner_plate_height_mm);
            pieces.push(cut(Part::InnerPlate, plate));
        }
        if is_bushed(s) {
            let mut wall = pen(up, 1.0);
            bush_wall(&mut wall, s);
            pieces.push(cut(Part::Bush, wall));
        }
    }
    pieces
}

/// The roller above and below the pin.
pub(super) fn roller(s: &Sizes) -> Vec<Piece> {
    BOTH.map(|up| {
        let mut wall = pen(up, 1.0);
        roller_wall(&mut wall, s);
        cut(Part::Roller, wall)
    })
    .into()
}

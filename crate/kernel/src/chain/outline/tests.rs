use super::*;
use crate::chain::{Chain, Dimension, WornBore};
use crate::plane::{Hatch, Point, area, bounds};

/// Bushed, collared, with and without roundings, solid and hollow, two of them worn.
fn examples() -> Vec<Sizes> {
    let stated = |construction, width: f64, extra: &[(Dimension, f64)]| {
        let mut all = vec![
            (Dimension::Pitch, 12.7),
            (Dimension::RollerDiameter, 7.75),
            (Dimension::InnerWidth, width),
            (Dimension::PinDiameter, 3.58),
        ];
        all.extend_from_slice(extra);
        let sizes = Sizes::from_stated(construction, &all);
        *Chain::new(sizes).unwrap().sizes()
    };
    let soft = [(Dimension::MouthRadius, 0.2), (Dimension::EdgeChamfer, 0.15)];
    let hollow = [(Dimension::PinBore, 1.8), (Dimension::InnerOverhang, 5.2)];
    let flat = [(Dimension::InnerWaist, 12.065), (Dimension::OuterOverhang, 6.0)];
    let worn = WornBore { pin_mm: 0.2, bore_mm: 0.25 };
    let worn = |sizes: Sizes| Sizes { worn, ..sizes };
    vec![
        stated(Construction::Bushed, 6.35, &[]),
        stated(Construction::Bushed, 6.35, &soft),
        stated(Construction::Bushed, 6.35, &flat),
        stated(Construction::Collared, 2.4, &soft),
        stated(Construction::Collared, 2.4, &hollow),
        worn(stated(Construction::Bushed, 6.35, &soft)),
        worn(stated(Construction::Collared, 2.4, &hollow)),
    ]
}

const LINKS: [Link; 6] = [
    Link::OuterToLeft,
    Link::OuterToRight,
    Link::Inner,
    Link::InnerFar,
    Link::InnerNear,
    Link::Roller,
];

type Section = fn(&Sizes, Link) -> Vec<Piece>;

fn each_piece(mut each: impl FnMut(&Sizes, &Piece)) {
    for sizes in &examples() {
        for link in LINKS {
            for section in [plan as Section, elevation, across] {
                section(sizes, link).iter().for_each(|piece| each(sizes, piece));
            }
        }
    }
}

#[test]
fn every_piece_has_metal_and_no_broken_pen() {
    each_piece(|_, piece| {
        assert!(area(&piece.outline).abs() > 1e-3, "{piece:?}");
        let mut pen = Point::ZERO;
        for &step in &piece.outline {
            match step {
                Step::Move(to) | Step::Line(to) => pen = to,
                Step::Arc(arc) => {
                    assert!((arc.start() - pen).length() < 1e-12, "{piece:?}");
                    pen = arc.end();
                }
                Step::Close => {}
            }
        }
    });
}

#[test]
fn outlines_are_closed_except_where_a_link_is_broken_off() {
    each_piece(|sizes, piece| {
        let loops = piece.outline.iter().filter(|step| matches!(step, Step::Move(_))).count();
        let closed = piece.outline.iter().filter(|step| matches!(step, Step::Close)).count();
        let (low, high) = bounds(&piece.outline).unwrap();
        let (left, right) =
            (break_mm(sizes, Link::OuterToLeft), break_mm(sizes, Link::OuterToRight));
        let broken = low.x <= 1e-9 - left || high.x >= right - 1e-9;
        let may_be_open = piece.part == Part::OuterPlate && broken;
        assert!(closed == loops || may_be_open, "{piece:?}");
    });
}

#[test]
fn section_lines_lie_inside_their_outline() {
    let hatch = Hatch { along_rad: 0.7, pitch: 0.3 };
    each_piece(|_, piece| {
        let (low, high) = bounds(&piece.outline).unwrap();
        let mut length = 0.0;
        for pair in hatch.clip(&piece.outline).chunks_exact(2) {
            let (Step::Move(a), Step::Line(b)) = (pair[0], pair[1]) else { unreachable!() };
            for p in [a, b] {
                assert!(p.cmpge(low - 1e-9).all() && p.cmple(high + 1e-9).all());
            }
            length += (b - a).length();
        }
        let metal = net_area(&piece.outline);
        let covered = length * hatch.pitch;
        assert!((covered - metal).abs() < 0.35 * metal + 0.3, "{covered} of {metal}: {piece:?}");
    });
}

/// Area by the even-odd rule of nested circles or one loop: the first loop less the others.
fn net_area(steps: &[Step]) -> f64 {
    let mut loops: Vec<Vec<Step>> = Vec::new();
    for &step in steps {
        if matches!(step, Step::Move(_)) {
            loops.push(Vec::new());
        }
        loops.last_mut().unwrap().push(step);
    }
    let areas: Vec<f64> = loops.iter().map(|steps| area(steps).abs()).collect();
    areas[0] - areas[1..].iter().sum::<f64>()
}

#[test]
fn the_metal_of_a_bushed_inner_link_is_its_plates_and_its_bushes() {
    let s = &examples()[0];
    let plates =
        2.0 * s.inner_plate_mm * (s.pitch_mm + 2.0 * s.inner_overhang_mm - 2.0 * s.barrel_mm);
    let bushes = 2.0 * s.bearing_length_mm * (s.barrel_mm - s.bore_mm);
    let drawn: f64 = plan(s, Link::Inner).iter().map(|piece| area(&piece.outline).abs()).sum();
    assert!((drawn - plates - bushes).abs() < 1e-9);
}

#[test]
fn a_plate_is_as_high_as_it_says_at_eye_and_waist() {
    for s in &examples() {
        let plate = &elevation(s, Link::Inner)[0];
        let (low, high) = bounds(&plate.outline).unwrap();
        assert!((high.y - low.y - s.inner_plate_height_mm).abs() < 1e-9);
        assert!((high.x - low.x - s.pitch_mm - 2.0 * s.inner_overhang_mm).abs() < 1e-9);
        let upright = Hatch { along_rad: core::f64::consts::FRAC_PI_2, pitch: s.pitch_mm * 0.01 };
        let lines = upright.clip_near(&plate.outline, Point::new(0.5 * s.pitch_mm, 0.0), 0.06);
        let (Step::Move(a), Step::Line(b)) = (lines[0], lines[1]) else { unreachable!() };
        assert!(((b - a).length() - s.inner_waist_mm).abs() < 0.01 * s.pitch_mm);
    }
}

#[test]
fn a_waist_is_tangent_to_both_eyes() {
    for s in &examples() {
        for piece in elevation(s, Link::Inner).into_iter().take(1) {
            let mut last: Option<Point> = None;
            for &step in &piece.outline {
                let Step::Arc(arc) = step else {
                    last = None;
                    continue;
                };
                let tangent = |angle: f64| {
                    let (sin, cos) = libm::sincos(angle);
                    Point::new(-sin, cos) * arc.sweep_rad.signum()
                };
                if let Some(before) = last {
                    assert!((before - tangent(arc.start_rad)).length() < 1e-9, "{piece:?}");
                }
                last = Some(tangent(arc.start_rad + arc.sweep_rad));
            }
        }
    }
}

#[test]
fn faces_lie_where_contact_is_computed() {
    let s = &examples()[3];
    let (low, high) =
        plan(s, Link::InnerFar).iter().fold((f64::MAX, f64::MIN), |(low, high), p| {
            let (a, b) = bounds(&p.outline).unwrap();
            (low.min(a.y), high.max(b.y))
        });
    assert!((high - 0.5 * s.inner_link_width_mm()).abs() < 1e-12);
    assert!((low - (0.5 * s.inner_link_width_mm() - s.bearing_length_mm)).abs() < 1e-12);
    let (low, _) = bounds(&plan(s, Link::OuterToRight)[0].outline).unwrap();
    assert!((low.y - 0.5 * s.outer_spacing_mm).abs() < 1e-12);
    assert!((low.x + s.outer_overhang_mm).abs() < 1e-12);
}

#[test]
fn worn_faces_lie_where_contact_is_computed_and_the_other_side_as_when_new() {
    for s in examples().into_iter().filter(|s| s.worn == WornBore::NONE) {
        let worn = WornBore { pin_mm: 0.09, bore_mm: 0.06 };
        let old = Sizes { worn, ..s };
        let pin_ends = |s: &Sizes, link| {
            let pin = plan(s, link).pop().expect("a pin").outline;
            let inside = pin.iter().filter_map(|step| match step {
                Step::Move(p) | Step::Line(p) if p.y.abs() <= 0.5 * s.outer_spacing_mm => Some(p.x),
                _ => None,
            });
            inside.fold((f64::MAX, f64::MIN), |(low, high), x| (low.min(x), high.max(x)))
        };
        let radius = 0.5 * s.pin_diameter_mm;
        if s.pin_bore_mm == 0.0 {
            assert!((pin_ends(&old, Link::OuterToLeft).0 + radius).abs() < 1e-12);
            let notched = plan(&old, Link::OuterToLeft).pop().expect("a pin").outline;
            let at = |step: &Step, x: f64| matches!(step, Step::Line(p) if (p.x - x).abs() < 1e-12);
            assert!(notched.iter().any(|step| at(step, worn.pin_mm - radius)));
            assert!(!notched.iter().any(|step| at(step, radius - worn.pin_mm)));
        }
        let link = if is_bushed(&s) { Link::Inner } else { Link::InnerFar };
        let nearest = |s: &Sizes, x: f64, u: f64| {
            let metal = plan(s, link).into_iter().flat_map(|piece| piece.outline);
            let off = metal.filter_map(|step| match step {
                Step::Line(p) => Some(u * (p.x - x)),
                _ => None,
            });
            off.filter(|off| *off > 0.0).fold(f64::MAX, f64::min)
        };
        let bore = 0.5 * s.bore_mm;
        for (x, u, deep) in [(0.0, -1.0, 0.06), (0.0, 1.0, 0.0), (s.pitch_mm, 1.0, 0.06)] {
            assert!((nearest(&old, x, u) - bore - deep).abs() < 1e-12, "{x} {u}");
            assert!((nearest(&s, x, u) - bore).abs() < 1e-12);
        }
        let rings =
            |s: &Sizes| elevation(s, link).into_iter().skip(1).map(|p| net_area(&p.outline));
        for (new, old) in rings(&s).zip(rings(&old)) {
            assert!(old < new, "the bore is no longer round");
        }
    }
}

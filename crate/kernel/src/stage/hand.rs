//! Taking hold of the drawing with a pointer.

use super::Stage;
use crate::contact::Body;
use crate::plane::Point;
use crate::posing::Mode;
use crate::scene::View;

/// What the pointer holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Hand {
    /// Nothing.
    Empty,
    /// A body in the plan section.
    Body,
    /// A link that turns about the origin of another section: the angle of the pointer and the share
    /// of the movement when it was taken hold of.
    Turning { view: View, from_rad: f64, share: f64 },
}

impl Stage {
    /// Takes hold of what lies under a point of a drawn section, mm. False when nothing there moves.
    pub fn grab(&mut self, view: View, at: Point) -> bool {
        let body = self.body_under(at);
        let share = self.share();
        let mode = self.mode;
        let Some(posing) = &mut self.posing else { return false };
        let turning = Hand::Turning { view, from_rad: libm::atan2(at.y, at.x), share };
        self.hand = match view {
            View::Plan => match body.filter(|_| mode != Mode::Load) {
                Some(body) => {
                    posing.grab(body, at);
                    Hand::Body
                }
                None => Hand::Empty,
            },
            View::Elevation if self.mode == Mode::Bend && at.x > 0.0 => turning,
            View::End if self.mode == Mode::Twist => turning,
            View::Elevation | View::End => Hand::Empty,
        };
        self.hand != Hand::Empty
    }

    /// Moves what is held towards a place of the drawn section, mm; metal ends the way.
    pub fn drag(&mut self, to: Point) {
        if !to.is_finite() {
            return;
        }
        match self.hand {
            Hand::Empty => {}
            Hand::Body => {
                if let Some(posing) = &mut self.posing {
                    posing.drag(to);
                }
            }
            Hand::Turning { view, from_rad, share } => {
                let turned = nearest_turn(libm::atan2(to.y, to.x) - from_rad);
                let full_rad = self.full_rad(view);
                if full_rad > 0.0 {
                    let hand = self.hand;
                    let way = if view == View::Elevation { -1.0 } else { 1.0 };
                    self.scrub(share + way * turned / full_rad);
                    self.hand = hand;
                }
            }
        }
    }

    /// Lets go; the chain stays where it is.
    pub fn release(&mut self) {
        self.hand = Hand::Empty;
        self.end = None;
    }

    /// The drawn angle of the whole movement of a section, rad.
    fn full_rad(&self, view: View) -> f64 {
        let Some(posing) = &self.posing else { return 0.0 };
        match view {
            View::Elevation => self.bend_rad(),
            View::Plan | View::End => posing.factor() * posing.play().twist.angle_rad,
        }
    }

    /// The free body under a point of the drawn plan section: the next outer link to the right of
    /// the second pin's near side, the inner link between, neither where the held link covers it.
    fn body_under(&self, at: Point) -> Option<Body> {
        const NEXT_FROM: f64 = 0.72;
        let (pitch_mm, half_mm) = (self.drawn.pitch_mm, 0.5 * self.drawn.outer_spacing_mm);
        if at.x > NEXT_FROM * pitch_mm {
            return Some(Body::NextOuter);
        }
        let inner = at.x > -self.drawn.inner_overhang_mm && at.y.abs() < half_mm;
        let on_pin = at.x.abs() < 0.5 * self.drawn.pin_diameter_mm;
        let plate = if at.y < 0.0 { Body::InnerNear } else { Body::InnerFar };
        (inner && !on_pin).then_some(plate)
    }
}

/// The same angle between -pi and pi.
fn nearest_turn(angle_rad: f64) -> f64 {
    use core::f64::consts::PI;
    match angle_rad {
        a if a > PI => a - 2.0 * PI,
        a if a < -PI => a + 2.0 * PI,
        a => a,
    }
}

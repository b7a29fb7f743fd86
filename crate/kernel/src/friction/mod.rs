//! What friction takes: at one joint, and in a whole drive.
//!
//! A joint that folds by alpha = 2 pi / z under a load slides at each of its contacts over an arc
//! of that angle; a contact with force N at distance R from the pin's axis takes the work
//! mu N R alpha. Only joints that run onto or off a wheel fold; those of the free strand do no work.
//!
//! What is assumed. Friction is dry, mu constant; mu N R is used throughout (the friction circle,
//! T r sin(atan mu), is 0.5 % less at mu 0.1). In half of the engagements the outer link turns its
//! pin in a bush that sits still in its roller; in the other half the inner link turns about the
//! pin and its barrel slides in the seated roller too. The slack strand is taken as straight: its
//! weight and sag rule it, not the offset. What the chain takes in bearings, by stirring oil, by
//! meshing impact and by rubbing on the sides of teeth is left out: this is the loss of meshing
//! alone, and measured drives lose more.

mod joint;
mod lever;
mod loss;
mod pull;

pub use joint::{Coefficients, JointLoad, Rubbing, Work};
pub use lever::{FaceArms, uniform_pressure_mm, uniform_wear_mm};
pub use loss::{Running, friction_band};
pub use pull::{Turning, pin_roll_rad};

//! How a roller chain works inside: which faces bear, where the gaps are, how far it can give.
//!
//! # The problem
//! A roller chain is a row of outer links (two plates riveted to two pins) and inner links (two
//! plates with a bush or with a collar each, and a roller on it). Between them are four gaps: pin in
//! bore, inner link between outer plates, roller on barrel, roller between plates. They are a few
//! hundredths to a few tenths of a millimetre, and everything a chain can do sideways is inside
//! them. This crate takes the dimensions of one pitch, finds the pose that metal allows nearest to
//! what is asked, says which faces touch and which slide there, and draws it.
//!
//! # Letters and units
//! Lengths are in mm, forces in N, angles in rad, and every name ends in its unit. Letters are those
//! of ISO 606 where it has one: p pitch, b1 between the inner plates, b2 over them, b3 between the
//! outer plates, d2 pin, d3 bore; c = d3 - d2 is the pin's clearance, a = b3 - b2 the side gap, B the
//! width between the outermost ends of the bore, gi and go how far the plates reach past the pin.
//!
//! # An example
//! How far does a chain of half an inch give, and what stops it?
//!
//! ```
//! use lightgap::chain::{Chain, Construction, Dimension, Sizes};
//! use lightgap::contact::{Along, Body, Limiter, Play, Settler, Wish};
//!
//! let sizes = Sizes::from_stated(
//!     Construction::Bushed,
//!     &[
//!         (Dimension::Pitch, 12.7),
//!         (Dimension::RollerDiameter, 7.75),
//!         (Dimension::InnerWidth, 3.0),
//!         (Dimension::InnerPlate, 1.0),
//!         (Dimension::PinDiameter, 3.6),
//!         (Dimension::Bore, 3.63),
//!         (Dimension::OuterSpacing, 5.4),
//!     ],
//! );
//! let chain = Chain::new(sizes).expect("every part exists");
//! assert!(chain.goes_together());
//!
//! // From the sizes alone: c / B is 6 mrad, and the pin stops it before the plates do.
//! let play = Play::of(&chain);
//! assert_eq!(play.turn.by, Limiter::Pin);
//! assert!((0.5 * play.turn.angle_rad - 0.006).abs() < 0.0001);
//!
//! // By contact: turn the next outer link too far, and metal ends the way at the same angle.
//! let mut settler = Settler::plan(&chain);
//! let straight = *settler.straight();
//! let too_far = Wish::Coordinate {
//!     body: Body::NextOuter,
//!     along: Along::Yaw,
//!     value: 1.1 * play.turn.angle_rad,
//!     weight: 1.0,
//! };
//! settler.settle(&[too_far], &straight);
//! let reached = settler.pose().of(Body::NextOuter).yaw_rad;
//! assert!((reached - play.turn.angle_rad).abs() < 1e-9);
//! ```
//!
//! # The rooms
//! Data flows one way, and a room uses only rooms above it in this list:
//! [`error`] and [`decimal`]; [`plane`] and [`solve`], which know no chain; [`chain`], the sizes and
//! the parts; [`contact`], which faces can meet and the poses they allow; [`bow`], a strand on its
//! side; [`quantity`], the catalogue
//! of what follows from the sizes; [`sprocket`], the wheels; [`friction`], what joints and drives
//! lose; [`fit`], many chains of one drawing: tolerance, chance, matching, cost; [`seating`], a joint that folds on a wheel;
//! [`wear`], what wear adds; [`width`], how narrow it can go;
//! [`reach`], what can get in; [`surface`], how smooth is smooth; [`posing`], one pitch in the hand; [`motion`]; [`scenario`] and [`table`], what comes in; [`caliper`], a chain of one's own by eight readings;
//! [`drive`], a scenario's drive put together;
//! [`run`], that drive as it moves; [`lot`], its many chains;
//! [`report`] and [`answer`], what goes out; [`compare`], two chains side by side; [`scene`],
//! what is drawn; [`stage`], the state behind a page; [`paint`], one walk for every painter;
//! [`picture`], a stage on a sheet of pixels.
//!
//! No clock, no files, no threads, and the same bits on every machine: every transcendental function
//! is libm's, and sums run in index order.

pub mod answer;
pub mod bow;
pub mod caliper;
pub mod chain;
pub mod compare;
pub mod contact;
pub mod decimal;
pub mod drive;
pub mod error;
pub mod fit;
pub mod friction;
pub mod lot;
pub mod motion;
pub mod paint;
pub mod picture;
pub mod plane;
pub mod posing;
pub mod quantity;
pub mod reach;
pub mod report;
pub mod run;
pub mod scenario;
pub mod scene;
pub mod seating;
pub mod sprocket;
pub mod stage;
pub mod strand;
pub mod surface;
pub mod table;
pub mod wear;
pub mod width;

#[doc(inline)]
pub use lightgap_solve as solve;

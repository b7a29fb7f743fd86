//! The contact geometry of a roller chain.

pub mod answer;
pub mod chain;
pub mod contact;
pub mod decimal;
pub mod error;
pub mod motion;
pub mod paint;
pub mod plane;
pub mod posing;
pub mod quantity;
pub mod report;
pub mod scenario;
pub mod scene;
pub mod solve;
pub mod stage;
pub mod table;

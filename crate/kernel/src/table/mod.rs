//! Sizes in rows: the published sizes of chains, and the dimensions of a chain as comma-separated
//! text.

mod csv;
mod limits;
mod published;
mod row;

pub use csv::dimensions_csv;
pub use limits::{limits_csv, with_limits};
pub use published::{Filled, PUBLISHED, Published};

//! What holds for every chain: 256 random ones a property, the same in every run.

mod chains;
mod corners;
mod drags;
mod later;
mod limits;
mod loads;
mod poses;
mod strands;

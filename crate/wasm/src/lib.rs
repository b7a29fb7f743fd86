//! The page's side of the kernel: what its two modules share.
//!
//! The program in `stage/` is the class `Bench` behind the first screen; the one in `worker/` answers the later
//! questions beside it. Both convert what JavaScript gives, call the kernel and convert what it
//! answers. Nothing is worked out here. What a person may get wrong comes back as a list of faults;
//! what only a fault of the page or of the kernel can cause is thrown as an error.

pub mod cross;
pub mod plain;

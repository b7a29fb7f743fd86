//! The rows of `crowd.rs` on this machine itself.

#[path = "crowd.rs"]
mod crowd;

fn main() {
    crowd::report();
}

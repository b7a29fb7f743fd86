//! The rows of `closing.rs` on this machine itself.

#[path = "closing.rs"]
mod closing;

fn main() {
    closing::report();
}

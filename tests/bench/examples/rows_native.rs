//! The rows of `rows.rs` on this machine itself.

#[path = "rows.rs"]
mod rows;

fn main() {
    rows::report();
}

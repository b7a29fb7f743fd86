//! The contact geometry of a roller chain.

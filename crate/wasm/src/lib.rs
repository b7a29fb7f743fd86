//! The page's side of the kernel.

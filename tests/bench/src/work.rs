//! One row: a work, who else does it, and both ways to do it once.

use lightgap_tests::speed::{Row, row};

/// A work that a rival and the kernel both do.
pub struct Work {
    /// What is done, who else does it and the goal: a line of `rows.json`.
    pub row: Row,
    /// How far the two answers may be from each other, as a share of 1 and their size.
    pub within: f64,
    /// What else there is to say of the rival's answer.
    pub note: String,
    theirs: Box<dyn FnMut() -> f64>,
    ours: Box<dyn FnMut() -> f64>,
}

impl Work {
    /// The row of `rows.json` with this name. Each side does the work once and returns one number of
    /// its answer; turns that differ must differ alike on both sides.
    ///
    /// # Panics
    /// When there is no such row.
    pub fn new(
        name: &str,
        within: f64,
        theirs: impl FnMut() -> f64 + 'static,
        ours: impl FnMut() -> f64 + 'static,
    ) -> Self {
        let (theirs, ours) = (Box::new(theirs), Box::new(ours));
        Self { row: row(name), within, note: String::new(), theirs, ours }
    }

    /// The same row with something to say of the rival's answer.
    #[must_use]
    pub fn noted(self, note: String) -> Self {
        Self { note, ..self }
    }

    /// Does the work once on both sides, theirs first.
    ///
    /// # Panics
    /// When the answers differ.
    pub fn answers(&mut self) -> [f64; 2] {
        let answers = [(self.theirs)(), (self.ours)()];
        let room = self.within * (1.0 + answers[0].abs());
        let apart = (answers[0] - answers[1]).abs();
        assert!(apart <= room, "{}: {} says {answers:?}", self.row.work, self.row.rival);
        answers
    }

    /// Does the work so many times on one side (0 theirs, 1 ours); the last answer.
    pub fn turns(&mut self, side: usize, turns: u32) -> f64 {
        let work = if side == 0 { &mut self.theirs } else { &mut self.ours };
        (0..turns).fold(0.0, |_, _| std::hint::black_box(work()))
    }
}

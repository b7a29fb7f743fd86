//! One row: a work, who else does it, and both ways to do it once.

/// A work that a rival and the kernel both do.
pub struct Work {
    /// What is done, such as `joint, cold`.
    pub name: String,
    /// Who else does it, and how much of it.
    pub rival: &'static str,
    /// Rival's time over ours that the design asks for.
    pub goal: f64,
    /// How far the two answers may be from each other, as a share of 1 and their size.
    pub within: f64,
    /// What else there is to say of the rival's answer.
    pub note: String,
    theirs: Box<dyn FnMut() -> f64>,
    ours: Box<dyn FnMut() -> f64>,
}

impl Work {
    /// A row. Each side does the work once and returns one number of its answer; turns that differ
    /// must differ alike on both sides.
    pub fn new(
        name: impl Into<String>,
        (rival, goal): (&'static str, f64),
        within: f64,
        theirs: impl FnMut() -> f64 + 'static,
        ours: impl FnMut() -> f64 + 'static,
    ) -> Self {
        let (theirs, ours) = (Box::new(theirs), Box::new(ours));
        Self { name: name.into(), rival, goal, within, note: String::new(), theirs, ours }
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
        assert!(apart <= room, "{}: {} says {answers:?}", self.name, self.rival);
        answers
    }

    /// Does the work so many times on one side (0 theirs, 1 ours); the last answer.
    pub fn turns(&mut self, side: usize, turns: u32) -> f64 {
        let work = if side == 0 { &mut self.theirs } else { &mut self.ours };
        (0..turns).fold(0.0, |_, _| std::hint::black_box(work()))
    }
}

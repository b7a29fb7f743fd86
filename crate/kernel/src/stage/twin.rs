//! The stage in words: for those who do not see the drawing. Line by line the id of a sentence, kept
//! in the word list under `twin.<id>`, and the true numbers in it.

use super::Stage;
use crate::answer::{Answer, give, load, ranges, touch};
use crate::chain::Construction;
use crate::posing::{Mark, Mode, Posing};

impl Stage {
    /// What is answered at present: how far the chain can give, what touches, and the range of it
    /// over the limits; of a chain that does not go together, its overlaps alone.
    pub fn answers(&self) -> Vec<Answer> {
        let mut answers = give(self.chain());
        if let Some(posing) = &self.posing {
            answers.extend(touch(posing.contacts()));
            answers.extend(load(posing));
            // The limits are those of chains as new.
            answers.extend(ranges(&self.scenario).into_iter().filter(|_| self.worn_mm() <= 0.0));
        }
        answers
    }

    /// The drawing in words.
    pub fn twin(&self) -> Vec<Answer> {
        let mut lines = Vec::new();
        if self.worn_mm() > 0.0 {
            lines.push(line("worn", [("worn_mm", self.worn_mm())]));
        }
        lines.push(self.chain_line());
        match &self.posing {
            Some(posing) => lines.extend(self.posed_lines(posing)),
            None => lines.extend(give(self.chain())),
        }
        lines.push(match self.factor {
            1 => line("true", []),
            factor => line("wide", [("count", f64::from(factor))]),
        });
        lines
    }

    fn chain_line(&self) -> Answer {
        let chain = self.chain();
        let id = match chain.construction {
            Construction::Bushed => "chain.bushed",
            Construction::Collared => "chain.collared",
        };
        let gaps = [
            ("pitch_mm", chain.pitch_mm),
            ("pin_clearance_mm", chain.pin_clearance_mm()),
            ("side_gap_mm", chain.side_gap_mm()),
        ];
        line(id, gaps)
    }

    fn posed_lines(&self, posing: &Posing) -> Vec<Answer> {
        let live = self.live();
        let mut lines = match self.mode {
            Mode::Twist => vec![line("twist", [("twist_rad", live.twist_rad)])],
            Mode::Bend => vec![line("bend", [("bend_rad", live.bend_rad)])],
            Mode::Turn | Mode::Aside | Mode::Lean | Mode::Load => vec![
                line("inner", [("offset_mm", live.offset_mm), ("yaw_rad", live.yaw_rad)]),
                line("next", [("offset_mm", live.total_offset_mm), ("yaw_rad", live.total_rad)]),
            ],
        };
        lines.extend(load(posing));
        lines.extend(touch(posing.contacts()).into_iter().take(1));
        let open = posing.contacts().iter().filter(|contact| contact.mark == Mark::Open);
        let smallest_mm = open.clone().map(|contact| contact.gap_mm).fold(f64::INFINITY, f64::min);
        if smallest_mm.is_finite() {
            lines.push(line("open", [("count", open.count() as f64), ("gap_mm", smallest_mm)]));
        }
        lines
    }
}

fn line<const N: usize>(id: &'static str, numbers: [(&'static str, f64); N]) -> Answer {
    Answer { id, numbers: numbers.to_vec() }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ids(stage: &Stage) -> Vec<&'static str> {
        stage.twin().into_iter().map(|line| line.id).collect()
    }

    #[test]
    fn the_words_follow_the_stage() {
        let mut stage = Stage::default();
        stage.widen(1.0);
        stage.scrub(1.0);
        let turned = ["chain.bushed", "inner", "next", "touch.many", "open", "true"];
        assert_eq!(ids(&stage), turned);
        stage.show("bend").expect("a movement");
        assert_eq!(ids(&stage)[..2], ["chain.bushed", "bend"]);
        stage.set_gap("side_gap_mm", -0.05).expect("a chain that does not go together");
        assert_eq!(ids(&stage), ["chain.bushed", "apart.side_gap", "true"]);
        let answers: Vec<_> = stage.answers().into_iter().map(|answer| answer.id).collect();
        assert_eq!(answers, ["apart.side_gap"]);
    }
}

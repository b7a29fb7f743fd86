//! The sentences under a picture that must stand alone: what is answered, and what of the drawing is
//! not true.

use super::Picture;
use crate::answer::Answer;
use crate::decimal;
use crate::stage::Stage;

impl Picture {
    /// The answer to the movement shown, its surprise, and how many times too big gaps are drawn; of
    /// a chain that does not go together, its overlaps. A sentence that the words lack is left out.
    pub fn caption(&self, stage: &Stage) -> Vec<String> {
        let way = if stage.posing().is_some() { stage.mode().key() } else { "apart" };
        let answers = stage.answers();
        let mut said = Vec::new();
        for answer in answers.iter().filter(|answer| family(answer.id) == way) {
            said.extend(self.sentence(stage, "answer", answer));
            said.extend(self.sentence(stage, "surprise", answer));
        }
        let count = [("count", f64::from(stage.factor()))];
        let badge = if stage.factor() > 1 { "badge.wide" } else { "badge.true" };
        said.extend(self.lexicon.get(badge).map(|text| self.filled(text, &count)));
        said
    }

    /// A sentence of an answer: the one for the chain's construction, or the one for both.
    fn sentence(&self, stage: &Stage, kind: &str, answer: &Answer) -> Option<String> {
        let id = [kind, ".", answer.id].concat();
        let own = [&id, ".", stage.chain().construction.key()].concat();
        let text = self.lexicon.get(&own).or_else(|| self.lexicon.get(&id))?;
        Some(self.filled(text, &answer.numbers))
    }

    /// A text with its {places} filled; a number is written by the ending of its name.
    fn filled(&self, text: &str, numbers: &[(&'static str, f64)]) -> String {
        let mut parts = text.split('{');
        let mut out = parts.next().unwrap_or_default().to_owned();
        for part in parts {
            let (name, rest) = part.split_once('}').unwrap_or((part, ""));
            match numbers.iter().find(|(known, _)| *known == name) {
                Some((_, value)) => self.write(&mut out, name, *value),
                None => out.push('?'),
            }
            out.push_str(rest);
        }
        out
    }

    fn write(&self, out: &mut String, name: &str, value: f64) {
        match name {
            _ if name.ends_with("_mm") => self.lexicon.write_length(out, value),
            _ if name.ends_with("_rad") => self.lexicon.write_angle(out, value),
            _ if name.ends_with("_ratio") => decimal::write(out, value, 1, self.lexicon.separator),
            _ => decimal::write(out, value, 0, self.lexicon.separator),
        }
    }
}

/// The movement that an answer is about: what stands before the first point of its id.
fn family(id: &str) -> &str {
    id.split('.').next().unwrap_or(id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::Lexicon;

    #[test]
    fn a_caption_says_the_answer_and_how_untrue_the_drawing_is() {
        let words = [
            ("answer.turn.pin", "It turns {angle_rad}."),
            ("surprise.turn.pin.bushed", "Still {room_mm} of bush."),
            ("badge.wide", "{count} times"),
            ("badge.true", "true"),
            ("answer.apart.side_gap", "{too_little_mm} {nothing}"),
            ("unit.mm", "mm"),
        ];
        let words = words.map(|(id, text)| (id.to_owned(), text.to_owned()));
        let picture = Picture::new(Lexicon::new(words));
        let mut stage = Stage::default();
        let said = picture.caption(&stage);
        assert!(
            said[0].starts_with("It turns 0.") && said[1].ends_with(" mm of bush."),
            "{said:?}"
        );
        assert!(said[2].ends_with(" times") && said.len() == 3, "{said:?}");
        stage.widen(1.0);
        assert_eq!(picture.caption(&stage)[2], "true");
        stage.set_gap("side_gap_mm", -0.05).expect("a chain that does not go together");
        assert_eq!(picture.caption(&stage)[0], "0.05 mm ?");
    }
}

//! A scenario as a picture: the chain at its stop, as the page opens it, with what the drawing
//! needs said under it.

use super::words::{WORDS, filled};
use lightgap::answer::Answer;
use lightgap::paint::{SvgOptions, Theme};
use lightgap::picture::Picture;
use lightgap::scenario::Scenario;
use lightgap::scene::{Layer, Lexicon};
use lightgap::stage::Stage;

/// Size of the drawing and of its letters, pixels.
const WIDTH_PX: f64 = 1200.0;
const HEIGHT_PX: f64 = 900.0;
const TEXT_PX: f64 = 15.0;
/// All the way to the stop.
const STOP: f64 = 1.0;

/// The scenario as one SVG document.
pub fn svg(scenario: Scenario) -> String {
    let (title, about) = (scenario.title.clone(), scenario.about.clone());
    let mut stage = Stage::new(scenario);
    stage.scrub(STOP);
    let lexicon = || Lexicon::new(WORDS.clone());
    let caption = caption(&stage, &lexicon());
    let caption: Vec<&str> = caption.iter().map(String::as_str).collect();
    let mut picture = Picture::new(lexicon());
    picture.lay(WIDTH_PX, HEIGHT_PX, TEXT_PX, false);
    let options = SvgOptions {
        title: &title,
        description: &about,
        caption: &caption,
        unit: picture.unit_px(),
        width_px: None,
        hidden: &[Layer::Grips],
    };
    picture.svg(&stage, &Theme::light(), &options)
}

/// How far the chain can give, or why it does not go together, and whether the drawing is true.
fn caption(stage: &Stage, lexicon: &Lexicon) -> Vec<String> {
    let answers = stage.answers();
    let said = if stage.posing().is_some() { &answers[..1] } else { &answers[..] };
    let mut lines: Vec<String> =
        said.iter().map(|answer| sentence("answer", answer, lexicon)).collect();
    lines.extend(stage.twin().last().map(|scale| sentence("twin", scale, lexicon)));
    lines
}

/// The sentence of an answer with its numbers.
fn sentence(kind: &str, answer: &Answer, lexicon: &Lexicon) -> String {
    let id = format!("{kind}.{}", answer.id);
    let places: Vec<_> = answer
        .numbers
        .iter()
        .map(|(name, number)| (*name, figure(name, *number, lexicon)))
        .collect();
    filled(lexicon.word(&id), &places)
}

/// A number by the unit that its name ends in.
fn figure(name: &str, number: f64, lexicon: &Lexicon) -> String {
    let mut text = String::new();
    match name.rsplit('_').next() {
        Some("mm") => lexicon.write_length(&mut text, number),
        Some("rad") => lexicon.write_angle(&mut text, number),
        _ => text = number.to_string(),
    }
    text
}

#[cfg(test)]
mod tests {
    use super::svg;
    use crate::solve::read;

    fn picture(name: &str) -> String {
        let file = crate::place::root().join("scenarios").join(name);
        svg(read::scenario(&file.to_string_lossy()).expect("a scenario"))
    }

    #[test]
    fn a_picture_says_what_stops_the_chain_and_how_true_it_is() {
        let picture = picture("ferry-winch.json");
        assert!(picture.starts_with("<svg ") && picture.trim_end().ends_with("</svg>"));
        assert!(picture.contains("<title>The ferry winch</title>"));
        assert!(picture.contains("It turns 0.") && picture.contains("times too big"), "{picture}");
        assert!(!picture.contains('?'), "every number of the caption is there");
    }

    #[test]
    fn a_chain_that_does_not_go_together_says_what_is_too_tight() {
        assert!(picture("stiff-link.json").contains("does not go together"));
    }
}

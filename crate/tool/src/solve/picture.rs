//! A scenario as a picture: the chain at its stop, as the page opens it, with what the drawing
//! needs said under it.

use super::words::Language;
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
pub fn svg(scenario: Scenario, language: Language) -> String {
    let (title, about) = (scenario.title.clone(), scenario.about.clone());
    let mut stage = Stage::new(scenario);
    stage.scrub(STOP);
    let mut picture = Picture::new(Lexicon::new(language.words().clone()));
    picture.lay(WIDTH_PX, HEIGHT_PX, TEXT_PX, false);
    let caption = picture.caption(&stage);
    let caption: Vec<&str> = caption.iter().map(String::as_str).collect();
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

#[cfg(test)]
mod tests {
    use super::{Language, svg};
    use crate::solve::read;

    fn picture_in(language: Language, name: &str) -> String {
        let file = crate::place::root().join("scenarios").join(name);
        svg(read::scenario(&file.to_string_lossy(), language).expect("a scenario"), language)
    }

    fn picture(name: &str) -> String {
        picture_in(Language::En, name)
    }

    #[test]
    fn a_picture_in_german_has_its_words_and_its_commas() {
        let picture = picture_in(Language::De, "ferry-winch.json");
        assert!(picture.contains("0,25°") && picture.contains("Innenglied"), "{picture}");
        assert!(!picture.contains(">0.15<") && !picture.contains("inner link"), "{picture}");
    }

    #[test]
    fn a_picture_says_what_stops_the_chain_and_how_true_it_is() {
        let picture = picture("ferry-winch.json");
        assert!(picture.starts_with("<svg ") && picture.trim_end().ends_with("</svg>"));
        assert!(picture.contains("<title>The ferry winch</title>"));
        assert!(picture.contains("It turns 0.") && picture.contains("too big</text>"), "{picture}");
        assert!(!picture.contains('?'), "every number of the caption is there");
    }

    #[test]
    fn a_chain_without_bushes_is_told_of_its_collars() {
        assert!(picture("ferry-trike.json").contains("inside its collars"));
    }

    #[test]
    fn a_chain_that_does_not_go_together_says_what_is_too_tight() {
        assert!(picture("stiff-link.json").contains("does not go together"));
    }
}

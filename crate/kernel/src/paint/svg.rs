//! A picture as one self-contained SVG document: no style sheet, no script, nothing from outside.

use super::trace::{DECIMALS, Trace, dashes};
use super::{Line, Painter, Theme, Writing, walk};
use crate::decimal;
use crate::plane::{Arc, Point};
use crate::scene::{Align, CHARACTER_EM, Circle, Ink, Layer, Scene};

/// No picture is wider, pixels.
const MOST_PX: f64 = 1e5;
/// The letters of pictures; a canvas uses the same.
pub const FONT_FAMILY: &str = "system-ui, -apple-system, 'DejaVu Sans', sans-serif";

/// What an SVG document says about itself and how large it is.
#[derive(Debug, Clone, PartialEq)]
pub struct SvgOptions<'a> {
    /// Its name, for `<title>`.
    pub title: &'a str,
    /// The picture in words, for `<desc>`.
    pub description: &'a str,
    /// Sentences under the picture, the first one bold; broken into lines as they need.
    pub caption: &'a [&'a str],
    /// User units to the em.
    pub unit: f64,
    /// The width it asks for, pixels; without it, or where it is no width, one pixel to the user
    /// unit.
    pub width_px: Option<f64>,
    /// Layers left out.
    pub hidden: &'a [Layer],
}

/// A scene as an SVG document.
pub fn svg(scene: &Scene, theme: &Theme, options: &SvgOptions) -> String {
    let mut painter = Svg::new(theme, caption_lines(scene, options));
    painter.unit = options.unit;
    walk(scene, options.unit, |item| !options.hidden.contains(&item.layer), &mut painter);
    painter.finish(options)
}

/// The painter behind [`svg`].
#[derive(Debug)]
pub struct Svg<'a> {
    theme: &'a Theme,
    unit: f64,
    caption: Vec<(String, bool)>,
    size: Point,
    clips: usize,
    clipped: bool,
    path: Trace,
    body: String,
}

impl<'a> Svg<'a> {
    fn new(theme: &'a Theme, caption: Vec<(String, bool)>) -> Self {
        let (path, body) = (Trace::default(), String::new());
        Self { theme, unit: 1.0, caption, size: Point::ZERO, clips: 0, clipped: false, path, body }
    }

    /// Wraps what was painted into a document.
    fn finish(self, options: &SvgOptions) -> String {
        let mut out = String::from(r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0"#);
        for size in [self.size.x, self.size.y] {
            out.push(' ');
            decimal::write_short(&mut out, size, DECIMALS);
        }
        out.push('"');
        let width_px = options.width_px.filter(|px| (1.0..MOST_PX).contains(px));
        let zoom = width_px.map_or(1.0, |px| px / self.size.x);
        number(&mut out, "width", zoom * self.size.x);
        number(&mut out, "height", zoom * self.size.y);
        attribute(&mut out, "role", "img");
        attribute(&mut out, "font-family", FONT_FAMILY);
        attribute(&mut out, "stroke-linejoin", "round");
        attribute(&mut out, "fill-rule", "evenodd");
        out.push_str(">\n");
        element(&mut out, "title", options.title);
        element(&mut out, "desc", options.description);
        out.push_str(&self.body);
        out.push_str("</svg>\n");
        out
    }

    /// Writes the caption under a sheet of this height.
    fn write_caption(&mut self, height: f64) {
        let lines = std::mem::take(&mut self.caption);
        for (row, (letters, bold)) in lines.iter().enumerate() {
            let down = self.unit * (CAPTION_FIRST_EM + CAPTION_LINE_EM * row as f64);
            let at = Point::new(self.unit * CAPTION_MARGIN_EM, height + down);
            let (size, bold, ink) = (self.unit, *bold, Ink::Ink);
            self.text(letters, &Writing { at, align: Align::Start, size, bold, ink });
        }
    }
}

impl Painter for Svg<'_> {
    fn sheet(&mut self, width: f64, height: f64) {
        let room = match self.caption.len() {
            0 => 0.0,
            lines => self.unit * (CAPTION_ROOM_EM + CAPTION_LINE_EM * lines as f64),
        };
        self.size = Point::new(width, height + room);
        self.body.push_str("<rect");
        number(&mut self.body, "width", self.size.x);
        number(&mut self.body, "height", self.size.y);
        attribute(&mut self.body, "fill", self.theme.colour(Ink::Sheet));
        self.body.push_str("/>\n");
        self.write_caption(height);
    }

    fn clip(&mut self, circle: Option<Circle>) {
        if self.clipped {
            self.body.push_str("</g>\n");
        }
        self.clipped = circle.is_some();
        let Some(circle) = circle else { return };
        let id = decimal::text(self.clips as f64, 0, '.');
        self.clips += 1;
        self.body.push_str(r#"<clipPath id="clip-"#);
        self.body.push_str(&id);
        self.body.push_str(r#""><circle"#);
        number(&mut self.body, "cx", circle.centre.x);
        number(&mut self.body, "cy", circle.centre.y);
        number(&mut self.body, "r", circle.radius);
        self.body.push_str("/></clipPath>\n<g clip-path=\"url(#clip-");
        self.body.push_str(&id);
        self.body.push_str(")\">\n");
    }

    fn begin(&mut self) {
        self.path.letters.clear();
    }

    fn move_to(&mut self, at: Point) {
        self.path.push_point('M', at);
    }

    fn line_to(&mut self, to: Point) {
        self.path.push_point('L', to);
    }

    fn arc(&mut self, arc: &Arc) {
        self.path.arc(arc);
    }

    fn close(&mut self) {
        self.path.letters.push('Z');
    }

    fn paint(&mut self, fill: Option<Ink>, line: Option<&Line>) {
        if self.path.letters.is_empty() {
            return;
        }
        self.body.push_str("<path");
        attribute(&mut self.body, "d", &self.path.letters);
        attribute(&mut self.body, "fill", fill.map_or("none", |ink| self.theme.colour(ink)));
        if let Some(line) = line {
            attribute(&mut self.body, "stroke", self.theme.colour(line.ink));
            number(&mut self.body, "stroke-width", line.width);
            if !line.dash_em.is_empty() {
                attribute(&mut self.body, "stroke-dasharray", &dashes(line));
            }
        }
        self.body.push_str("/>\n");
    }

    fn text(&mut self, letters: &str, writing: &Writing) {
        self.body.push_str("<text");
        number(&mut self.body, "x", writing.at.x);
        number(&mut self.body, "y", writing.at.y);
        number(&mut self.body, "font-size", writing.size);
        if writing.bold {
            attribute(&mut self.body, "font-weight", "700");
        }
        match writing.align {
            Align::Start => {}
            Align::Middle => attribute(&mut self.body, "text-anchor", "middle"),
            Align::End => attribute(&mut self.body, "text-anchor", "end"),
        }
        attribute(&mut self.body, "fill", self.theme.colour(writing.ink));
        self.body.push('>');
        escape(&mut self.body, letters);
        self.body.push_str("</text>\n");
    }
}

/// Left and right of the caption, em.
const CAPTION_MARGIN_EM: f64 = 1.0;
/// From the sheet's foot to the caption's first baseline, em.
const CAPTION_FIRST_EM: f64 = 1.2;
/// From baseline to baseline, em.
const CAPTION_LINE_EM: f64 = 1.4;
/// Above and below the caption together, beyond its lines, em.
const CAPTION_ROOM_EM: f64 = 0.6;

/// Breaks the caption's sentences into lines that fit the sheet, by the width reserved for a
/// character; whether each is bold.
fn caption_lines(scene: &Scene, options: &SvgOptions) -> Vec<(String, bool)> {
    let room_em = scene.sheet.width_em - 2.0 * CAPTION_MARGIN_EM;
    let most = ((room_em / CHARACTER_EM) as usize).max(1);
    let mut lines: Vec<(String, bool)> = Vec::new();
    for (place, sentence) in options.caption.iter().enumerate() {
        lines.push((String::new(), place == 0));
        for word in sentence.split_whitespace() {
            let Some((line, bold)) = lines.last_mut() else { continue };
            if !line.is_empty() && line.chars().count() + 1 + word.chars().count() > most {
                let bold = *bold;
                lines.push((word.to_owned(), bold));
            } else {
                line.push_str(if line.is_empty() { "" } else { " " });
                line.push_str(word);
            }
        }
    }
    lines
}

fn element(out: &mut String, name: &str, letters: &str) {
    for part in ["<", name, ">"] {
        out.push_str(part);
    }
    escape(out, letters);
    for part in ["</", name, ">\n"] {
        out.push_str(part);
    }
}

fn attribute(out: &mut String, name: &str, value: &str) {
    for part in [" ", name, "=\""] {
        out.push_str(part);
    }
    escape(out, value);
    out.push('"');
}

fn number(out: &mut String, name: &str, value: f64) {
    attribute(out, name, &decimal::short(value, DECIMALS));
}

/// Writes letters so that they can be nothing but letters; what XML 1.0 has no place for becomes
/// U+FFFD (Extensible Markup Language 1.0, fifth edition, 2.2 Char; from memory).
fn escape(out: &mut String, letters: &str) {
    for letter in letters.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\t' | '\n' | '\r' => out.push(letter),
            '\0'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => out.push('\u{fffd}'),
            _ => out.push(letter),
        }
    }
}

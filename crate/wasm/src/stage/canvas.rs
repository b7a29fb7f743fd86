//! The painter on a browser's canvas.

use js_sys::Array;
use lightgap::decimal;
use lightgap::paint::{FONT_FAMILY, Line, Painter, Theme, Writing};
use lightgap::plane::{Arc, Point};
use lightgap::scene::{Align, Circle, Ink};
use wasm_bindgen::JsValue;
use web_sys::{CanvasRenderingContext2d, CanvasWindingRule};

/// Decimals of a size of letters: a hundredth of a pixel.
const SIZE_DECIMALS: u32 = 2;

/// Paints on a canvas whose transform makes one unit one CSS pixel. What the canvas already has set
/// is not set again: each setting crosses from WebAssembly to the browser as a text.
pub struct Canvas<'a> {
    context: &'a CanvasRenderingContext2d,
    theme: &'a Theme,
    filled_with: Option<Ink>,
    lined_with: Option<Line>,
    lettered: Option<(f64, bool, Align)>,
}

impl<'a> Canvas<'a> {
    /// A painter on a context; the context's own state is kept for the caller.
    pub fn new(context: &'a CanvasRenderingContext2d, theme: &'a Theme) -> Self {
        let canvas = Self { context, theme, filled_with: None, lined_with: None, lettered: None };
        canvas.prepare();
        canvas
    }

    /// Keeps the caller's settings and makes those that never change.
    fn prepare(&self) {
        self.context.save();
        self.context.set_line_join("round");
        self.context.set_line_cap("butt");
        self.context.set_text_baseline("alphabetic");
    }

    fn fill_with(&mut self, ink: Ink) {
        if self.filled_with != Some(ink) {
            self.context.set_fill_style_str(self.theme.colour(ink));
            self.filled_with = Some(ink);
        }
    }

    fn line_with(&mut self, line: &Line) {
        if self.lined_with == Some(*line) {
            return;
        }
        self.context.set_stroke_style_str(self.theme.colour(line.ink));
        self.context.set_line_width(line.width);
        let dashed_alike = self.lined_with.is_some_and(|last| last.dash_em == line.dash_em);
        if !dashed_alike {
            let dashes: Array = line.dashes().map(JsValue::from).collect();
            let _ = self.context.set_line_dash(&dashes); // refuses only what is no list of numbers
        }
        self.lined_with = Some(*line);
    }

    fn letter_with(&mut self, size: f64, bold: bool, align: Align) {
        if self.lettered == Some((size, bold, align)) {
            return;
        }
        let mut font = String::from(if bold { "700 " } else { "400 " });
        decimal::write_short(&mut font, size, SIZE_DECIMALS);
        font.push_str("px ");
        font.push_str(FONT_FAMILY);
        self.context.set_font(&font);
        self.context.set_text_align(match align {
            Align::Start => "left",
            Align::Middle => "center",
            Align::End => "right",
        });
        self.lettered = Some((size, bold, align));
    }
}

impl Drop for Canvas<'_> {
    fn drop(&mut self) {
        self.context.restore();
    }
}

impl Painter for Canvas<'_> {
    fn sheet(&mut self, width: f64, height: f64) {
        self.fill_with(Ink::Sheet);
        self.context.fill_rect(0.0, 0.0, width, height);
    }

    fn clip(&mut self, circle: Option<Circle>) {
        self.context.restore();
        self.prepare();
        (self.filled_with, self.lined_with, self.lettered) = (None, None, None);
        if let Some(Circle { centre, radius }) = circle {
            self.context.begin_path();
            let _ = self.context.arc(centre.x, centre.y, radius, 0.0, core::f64::consts::TAU);
            self.context.clip();
        }
    }

    fn begin(&mut self) {
        self.context.begin_path();
    }

    fn move_to(&mut self, at: Point) {
        self.context.move_to(at.x, at.y);
    }

    fn line_to(&mut self, to: Point) {
        self.context.line_to(to.x, to.y);
    }

    fn arc(&mut self, arc: &Arc) {
        let Arc { centre, radius, start_rad: start, .. } = *arc;
        let (x, y) = (centre.x, centre.y);
        let back = arc.sweep_rad < 0.0;
        // A canvas refuses only a negative radius, and no scene has one.
        let _ = self.context.arc_with_anticlockwise(x, y, radius, start, arc.end_rad(), back);
    }

    fn close(&mut self) {
        self.context.close_path();
    }

    fn paint(&mut self, fill: Option<Ink>, line: Option<&Line>) {
        if let Some(ink) = fill {
            self.fill_with(ink);
            self.context.fill_with_canvas_winding_rule(CanvasWindingRule::Evenodd);
        }
        if let Some(line) = line {
            self.line_with(line);
            self.context.stroke();
        }
    }

    fn text(&mut self, letters: &str, writing: &Writing) {
        self.fill_with(writing.ink);
        self.letter_with(writing.size, writing.bold, writing.align);
        // Throws only where the context is lost, and then nothing shows anyway.
        let _ = self.context.fill_text(letters, writing.at.x, writing.at.y);
    }
}

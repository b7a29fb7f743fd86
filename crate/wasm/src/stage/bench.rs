//! The class that the page talks to.

use crate::canvas::Canvas;
use crate::catalogue::Catalogue;
use js_sys::Object;
use lightgap::error::Error;
use lightgap::motion::Opening;
use lightgap::paint::{Theme, walk};
use lightgap::picture::{Hidden, Picture};
use lightgap::plane::Point;
use lightgap::scenario::Corner;
use lightgap::scene::{Length, Lexicon, Thing, View};
use lightgap::stage::Stage;
use lightgap_wasm::cross::{self, faults, member, taken, texts};
use lightgap_wasm::plain::plain;
use wasm_bindgen::prelude::*;
use web_sys::CanvasRenderingContext2d;

/// One chain on the bench: its scenario, its pose, its drawing. Lengths in mm, angles in rad.
#[wasm_bindgen]
pub struct Bench {
    stage: Stage,
    picture: Picture,
    /// The object that the theme was read from.
    colours: JsValue,
    theme: Theme,
}

#[wasm_bindgen]
impl Bench {
    /// A bench with the words of one language, an object of texts by id, for labels on the drawing.
    #[wasm_bindgen(constructor)]
    pub fn new(words: &JsValue) -> Self {
        let picture = Picture::new(Lexicon::new(cross::words(words)));
        let theme = Theme::light();
        Self { stage: Stage::default(), picture, colours: JsValue::UNDEFINED, theme }
    }

    /// Puts a scenario on the bench; any fault, and nothing changes.
    pub fn load(&mut self, scenario: &JsValue) -> JsValue {
        let loaded = taken(scenario).and_then(|file| self.changed().load(&file));
        faults_of(loaded)
    }

    /// The scenario as it stands.
    pub fn scenario(&self) -> JsValue {
        plain(&self.stage.scenario().write())
    }

    /// The scenario of the chain that stands here, which may be at an extreme of its limits.
    pub fn standing(&self) -> JsValue {
        plain(&self.stage.standing().as_ref().unwrap_or(self.stage.scenario()).write())
    }

    /// Sets one value of the scenario by its path; refused, and the last good chain stays.
    pub fn set(&mut self, path: &str, value: &JsValue) -> JsValue {
        faults_of(taken(value).and_then(|value| self.changed().set(path, value)))
    }

    /// Sets a gap, mm, by the dimension that moves it.
    pub fn set_gap(&mut self, quantity: &str, value: f64) -> JsValue {
        faults_of(self.changed().set_gap(quantity, value))
    }

    /// Fills the chain from a published size.
    pub fn adopt_size(&mut self, number: &str, construction: &str) -> JsValue {
        faults_of(self.changed().adopt_size(number, construction))
    }

    /// What can be set: dimensions, gaps, published sizes.
    pub fn catalogue(&self) -> JsValue {
        plain(&Catalogue::whole())
    }

    /// How the chain is made and what follows from it.
    pub fn state(&self) -> JsValue {
        plain(&self.stage.state())
    }

    /// The answers to the question that is asked: ids and numbers.
    pub fn answers(&self) -> JsValue {
        plain(&self.stage.answers())
    }

    /// Where the chain stands right now, what says so and what stops it.
    pub fn live(&self) -> JsValue {
        plain(&self.stage.live())
    }

    /// The room to move of the first joint and where the chain stands in it.
    pub fn room(&self) -> JsValue {
        plain(&self.stage.room())
    }

    /// Every contact with its true gap, those that touch first.
    pub fn contacts(&self) -> JsValue {
        plain(&self.stage.contacts())
    }

    /// The stage in words: ids and numbers, line by line.
    pub fn twin(&self) -> JsValue {
        plain(&self.stage.twin())
    }

    /// Puts the chain at an extreme of the limits on the bench: "tightest", "loosest", or "middle".
    pub fn show_corner(&mut self, corner: &str) {
        self.changed().show_corner(Corner::of_key(corner));
    }

    /// Puts the chain on the bench with joints that have worn so deep, mm; 0 is as new.
    pub fn show_worn(&mut self, worn_mm: f64) {
        self.changed().show_worn(worn_mm);
    }

    /// Shows a movement: "turn", "aside", "lean", "twist" or "bend".
    pub fn show(&mut self, mode: &str) -> JsValue {
        faults_of(self.changed().show(mode))
    }

    /// Goes a share of the way to the stop, -1 to 1.
    pub fn scrub(&mut self, share: f64) {
        self.changed().scrub(share);
    }

    /// Takes hold of what lies under a point of a section, mm; false where nothing can be moved.
    pub fn grab(&mut self, view: &str, x_mm: f64, y_mm: f64) -> bool {
        let view = View::of_key(view);
        view.is_some_and(|view| self.changed().grab(view, Point::new(x_mm, y_mm)))
    }

    /// Pulls what is held towards a point, mm.
    pub fn drag(&mut self, x_mm: f64, y_mm: f64) {
        self.changed().drag(Point::new(x_mm, y_mm));
    }

    /// Takes hold of the end of a contact's dimension line; false where there is none.
    pub fn hold_end(&mut self, contact: &str) -> bool {
        self.stage.hold_end(contact)
    }

    /// Pulls the held end so far from where it was taken, mm of the drawn section: its gap follows.
    pub fn pull_end(&mut self, dx_mm: f64, dy_mm: f64) -> JsValue {
        faults_of(self.changed().pull_end(Point::new(dx_mm, dy_mm)))
    }

    /// Lets go.
    pub fn release(&mut self) {
        self.stage.release();
    }

    /// Goes so many steps of a key along the movement shown.
    pub fn nudge(&mut self, steps: f64) {
        self.changed().nudge(steps);
    }

    /// Pulls the chain taut, or lets it go.
    pub fn set_taut(&mut self, taut: bool) {
        self.changed().set_taut(taut);
    }

    /// Lets plates and pins give under a load, or makes them rigid.
    pub fn set_springy(&mut self, springy: bool) {
        self.changed().set_springy(springy);
    }

    /// Where the movement shown comes to, so many seconds after a share of it.
    pub fn share_after(&self, share: f64, seconds: f64) -> f64 {
        self.stage.share_after(share, seconds)
    }

    /// The opening so many seconds after it began, with so many places that touch at its end.
    pub fn opening(&self, seconds: f64, touching: usize) -> JsValue {
        plain(&Opening::at(seconds, touching))
    }

    /// Puts the first joint at a place of its room, or as near as it can go.
    pub fn room_to(&mut self, offset_mm: f64, yaw_rad: f64) {
        self.changed().room_to(offset_mm, yaw_rad);
    }

    /// Draws gaps and tilts so many times too big.
    pub fn widen(&mut self, factor: f64) {
        self.changed().widen(factor);
    }

    /// Lays the drawing out on so many CSS pixels.
    pub fn layout(&mut self, width_px: f64, height_px: f64, text_px: f64, narrow: bool) {
        self.picture.lay(width_px, height_px, text_px, narrow);
    }

    /// The size of the drawing's text, CSS pixels.
    pub fn text_px(&self) -> f64 {
        self.picture.unit_px()
    }

    /// Writes the lengths on the drawing in inches, or in millimetres.
    pub fn use_inches(&mut self, inches: bool) {
        self.picture.lexicon_mut().length = if inches { Length::Inch } else { Length::Mm };
    }

    /// Where every section lies: `px = x_px + x_mm px_per_mm`, `py = y_px - y_mm px_per_mm`.
    pub fn views(&mut self) -> JsValue {
        plain(&self.picture.views(&self.stage))
    }

    /// The section under a pixel and the point in its mm; `null` beside the sections.
    pub fn view_at(&mut self, x_px: f64, y_px: f64) -> JsValue {
        plain(&self.picture.spot_at(&self.stage, x_px, y_px))
    }

    /// What can be taken hold of, in mm of its section and in pixels.
    pub fn grips(&mut self) -> JsValue {
        plain(&self.picture.grips(&self.stage))
    }

    /// Paints the drawing on a canvas whose transform makes a unit a CSS pixel. `options` is
    /// `{lit, hide}`: the id of a contact, and ids of contacts and keys of layers to leave out.
    pub fn paint(
        &mut self,
        canvas: &CanvasRenderingContext2d,
        colours: &JsValue,
        options: &JsValue,
    ) {
        self.read_theme(colours);
        let lit = member(options, "lit").as_string();
        let lit = lit.and_then(|id| Picture::item_of(&self.stage, &id));
        let hidden = Hidden::of(&self.stage, texts(&member(options, "hide")));
        let unit_px = self.picture.unit_px();
        let scene = self.picture.scene(&self.stage, lit);
        let mut painter = Canvas::new(canvas, &self.theme);
        walk(scene, unit_px, |item| hidden.shows(item), &mut painter);
    }

    /// Paints a magnifier of so many pixels, held at a contact's id or at a spot `{view, x_mm, y_mm}`
    /// of the drawing, with a thing beside the gap by its key, and tells `{id, gap_mm, thing_mm,
    /// thing_ratio}`; paints nothing and gives `null` where there is no contact to show.
    pub fn lens(
        &mut self,
        canvas: &CanvasRenderingContext2d,
        size_px: f64,
        colours: &JsValue,
        at: &JsValue,
        thing: &str,
    ) -> JsValue {
        self.read_theme(colours);
        let thing = Thing::of_key(thing).unwrap_or_default();
        let at =
            cross::place(at).and_then(|at| self.picture.lens(&self.stage, &at, size_px, thing));
        if let Some(seen) = &at {
            let mut painter = Canvas::new(canvas, &self.theme);
            walk(&seen.scene, self.picture.unit_px(), |_| true, &mut painter);
        }
        plain(&at)
    }
}

impl Bench {
    /// The stage, about to change.
    fn changed(&mut self) -> &mut Stage {
        self.picture.stage_changed();
        &mut self.stage
    }

    /// Takes up a theme; the colours of an object that was read last are known.
    fn read_theme(&mut self, colours: &JsValue) {
        if !Object::is(colours, &self.colours) {
            self.theme = cross::theme(colours);
            self.colours = colours.clone();
        }
    }
}

/// Nothing, or what was wrong.
fn faults_of(done: Result<(), Vec<Error>>) -> JsValue {
    faults(&done.err().unwrap_or_default())
}

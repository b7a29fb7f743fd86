// How the drawing is read, and what the model leaves out.

import { byId, make } from "./dom.js";
import { say } from "./words.js";

const READING = ["colour", "hatching", "pins", "touching", "rubbing", "open", "axis", "forces", "wide"];
const LEFT_OUT = ["rigid", "still", "dry", "shape", "sections", "teaches", "fingers", "solvents", "lifting", "first"];

/** Fills the fold beside the stage and the dialog. */
export function write() {
  byId("reading").append(...READING.map((id) => make("li", {}, say(`reading.${id}`))));
  byId("cautions-text").append(make("ul", {}, ...LEFT_OUT.map((id) => make("li", {}, say(`left.${id}`)))));
}

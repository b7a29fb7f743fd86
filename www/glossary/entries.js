// The words of the trade, in the order they are met, and where each is seen: a face or lines of the drawing, a part of the page.

/**
 * What a word lights. Its question and way of moving come first; of a drawing the face, or the lines of a layer, or a section.
 * @typedef {object} Entry
 * @property {string} id
 * @property {string} [ask] the question where it lives; the one that is asked stays where its drawing shows
 * @property {string} [how] the way the chain is moved
 * @property {boolean} [springy]
 * @property {string} [face] a kind of contact
 * @property {string} [layer] lines of the drawing
 * @property {string} [view] a whole section of it
 * @property {string} [part] a part of the page, as a selector
 * @property {Record<string, any>} [begin] a section that is needed, stated where the scenario has none
 */

/** Parts that are sorted where nobody has said which: those that eat the side gap. */
const MATCHING = { dimension_a: "inner_plate_mm", dimension_b: "outer_spacing_mm", classes: 4 };

/** @type {Entry[]} */
export const ENTRIES = [
  { id: "yaw", ask: "give", how: "turn", face: "pin-bore" },
  { id: "articulation", ask: "touch", how: "bend", face: "pin-bore" },
  { id: "play", ask: "give", how: "turn", part: "#room-section" },
  { id: "bush", face: "pin-bore" },
  { id: "bushingless", part: ".construction" },
  { id: "elevation", view: "elevation" },
  { id: "hatching", layer: "section" },
  { id: "dashdot", layer: "centre" },
  { id: "compliance", ask: "touch", how: "load", springy: true, part: ".load .choices" },
  { id: "chainline", ask: "line", part: ".crooked-plan" },
  { id: "multiple", ask: "line", part: ".crooked-readings" },
  { id: "limits", ask: "fit", part: ".fit-demand" },
  { id: "bins", ask: "fit", part: '[data-look="sorted"]', begin: { matching: MATCHING } },
];

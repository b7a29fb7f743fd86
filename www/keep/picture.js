// Pictures to hand on: the drawing as it stands, a square one with the answer on it, and a strip of before, stop and after;
// each with the outlines of the chain that is held beside it, if one is.

import { byId, make } from "../dom.js";
import { ghostNow } from "../compare/ghost.js";
import { ghostCaption, ghostOver } from "../compare/printed.js";
import { NARROW_PX, textPx } from "../stage.js";
import { theme } from "../theme.js";
import { reading } from "../work.js";
import { say } from "../words.js";
import { withBench } from "./own-bench.js";
import { LETTERS as FAMILY, LETTER_EM, linesOf, safe, svgOf } from "./svg.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../kernel.js").BenchLike} BenchLike */

/** A square, and one picture of a strip, px; the size of their letters. */
const [SQUARE, PANEL, LETTERS] = [1080, 640, 26];
const [EDGE, LINE] = [44, 1.3];
/** Between two sentences, in the size of the second. */
const BETWEEN = 0.4;
/** A drawing that the page does not show now, px: as a bench lays itself out. */
const UNSHOWN = { width_px: 840, height_px: 630, text_px: 14 };
/** So far beyond the stop the link is pulled, mm: further than any gap lets it go. */
const PULL_MM = 40;

/**
 * Sentences under each other, broken to a width.
 * @param {{text: string, size: number, bold?: boolean}[]} sentences
 * @param {{x: number, y: number, width: number}} place
 */
function column(sentences, { x, y, width }) {
  let down = y;
  const elements = [];
  for (const { text, size, bold } of sentences) {
    if (elements.length > 0) down += size * BETWEEN;
    for (const line of linesOf(text, Math.floor(width / (size * LETTER_EM)))) {
      down += size * LINE;
      elements.push(`<text x="${x}" y="${down.toFixed(1)}" font-size="${size}"${bold ? ' font-weight="700"' : ""} fill="${safe(theme().ink)}">${safe(line)}</text>`);
    }
  }
  return { elements: elements.join("\n"), end: down };
}

/** A drawing as part of a larger one. @param {string} svg @param {{x: number, y: number, width: number, height: number}} place */
const nested = (svg, { x, y, width, height }) => svg.replace(/^<svg ([^>]*)>/, (_, given) =>
  `<svg x="${x}" y="${y}" ${given.replace(/ (width|height|role)="[^"]*"/g, "")} width="${width}" height="${height}">`);

/** @param {{width: number, height: number, title: string}} size @param {string[]} parts */
const sheetOf = ({ width, height, title }, parts) =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" font-family="${FAMILY}">
<title>${safe(title)}</title>
<rect width="${width}" height="${height}" fill="${safe(theme().sheet)}"/>
${parts.join("\n")}
</svg>
`;

/** A drawing with more laid over it. @param {string} svg @param {string} over */
export const under = (svg, over) => svg.replace(/<\/svg>\s*$/, `${over}</svg>\n`);

/** What the page says, how untrue the drawing is, and what is held beside it. */
const said = () => ({ answer: byId("answer").textContent ?? "", surprise: byId("surprise").textContent ?? "", badge: byId("badge").textContent ?? "" });

/** What stands under a picture, and who is not on it. @param {boolean} ghost */
const foot = (ghost) => [said().badge, ghost ? ghostCaption() : "", say("keep.caption")].filter(Boolean);

/**
 * The drawing as it stands on the stage.
 * @param {Session} session
 * @param {number} width_px
 */
export function drawing(session, width_px) {
  const { answer, surprise } = said();
  const { clientWidth, clientHeight } = byId("field");
  const size = clientWidth > 1 ? { width_px: clientWidth, height_px: clientHeight, text_px: textPx() } : UNSHOWN;
  return withBench(session, async (bench) => {
    bench.layout(size.width_px, size.height_px, size.text_px, size.width_px < NARROW_PX);
    const ghost = await ghostOver(bench, size);
    return under(svgOf(bench, { width_px, theme: theme(), caption: [answer, surprise, ...foot(ghost !== "")].filter(Boolean) }), ghost);
  });
}

/**
 * A square with the answer on it.
 * @param {Session} session
 */
export function square(session) {
  const { answer, surprise } = said();
  const width = SQUARE - 2 * EDGE;
  const head = column([{ text: answer, size: 50, bold: true }, { text: surprise, size: 32 }], { x: EDGE, y: 24, width });
  const low = (/** @type {number} */ y) => column([{ text: foot(ghostNow() !== null).join(" · "), size: 24 }], { x: EDGE, y, width });
  const tall = low(0).end;
  const [top, height] = [head.end + 24, SQUARE - head.end - tall - 2 * 24];
  return withBench(session, async (bench) => {
    bench.layout(SQUARE, height, LETTERS, true);
    const ghost = await ghostOver(bench, { width_px: SQUARE, height_px: height, text_px: LETTERS });
    const picture = under(svgOf(bench, { theme: theme(), caption: [] }), ghost);
    return sheetOf({ width: SQUARE, height: SQUARE, title: answer }, [head.elements, nested(picture, { x: 0, y: top, width: SQUARE, height }), low(SQUARE - tall - 20).elements]);
  });
}

/** Pulls the next link on beyond its stop. @param {BenchLike} bench */
function pullOn(bench) {
  const grip = bench.grips().filter(({ gap }) => gap === null).at(-1);
  if (!grip || !bench.grab(grip.view, grip.x_mm, grip.y_mm)) return;
  bench.drag(grip.x_mm, grip.y_mm + PULL_MM);
  bench.release();
}

/** One moment of the strip, with A as far along. @param {BenchLike} bench */
async function panelOf(bench) {
  const ghost = await ghostOver(bench, { width_px: PANEL, height_px: PANEL, text_px: LETTERS }, { how: "turn", at: bench.live().amplitude, held: null });
  return under(svgOf(bench, { theme: theme(), caption: [] }), ghost);
}

/** Where the link has got to when it is pulled on, and what stops it there. @param {BenchLike} bench */
function stopped(bench) {
  const live = bench.live();
  const stop = live.pin_touches ? (live.faces_touch ? "both" : "pin") : live.faces_touch ? "face" : "none";
  return say(`here.${stop}`, live);
}

/**
 * Before, at the stop, and pulled on beyond it, side by side.
 * @param {Session} session
 */
export function strip(session) {
  /** @type {[string, (bench: BenchLike) => void, (bench: BenchLike) => string][]} */
  const moments = [
    ["before", (bench) => bench.scrub(0), () => ""],
    ["stop", (bench) => bench.scrub(1), (bench) => reading("turn", bench.live())],
    ["after", pullOn, stopped],
  ];
  const width = PANEL * moments.length;
  return withBench(session, async (bench) => {
    bench.show("turn");
    bench.widen(session.state.factor.value);
    bench.layout(PANEL, PANEL, LETTERS, true);
    const panels = [];
    for (const [at, [moment, pose, tell]] of moments.entries()) {
      pose(bench);
      const text = column([{ text: `${say(`keep.strip.${moment}`)} ${tell(bench)}`.trim(), size: 26, bold: true }], { x: at * PANEL + 20, y: 10, width: PANEL - 40 });
      panels.push(text.elements + nested(await panelOf(bench), { x: at * PANEL, y: 120, width: PANEL, height: PANEL }));
    }
    const low = column([{ text: [session.scenario.title, ...foot(ghostNow() !== null)].join(" · "), size: 24 }], { x: 20, y: PANEL + 124, width: width - 40 });
    return sheetOf({ width, height: Math.ceil(low.end) + 20, title: say("keep.strip.title") }, [...panels, low.elements]);
  });
}

/**
 * A drawing as pixels.
 * @param {string} svg
 * @param {number} [width] px; the drawing's own where none is given
 * @returns {Promise<Blob>}
 */
export async function pixels(svg, width) {
  const image = new Image();
  image.src = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  await image.decode();
  const wide = width ?? image.naturalWidth;
  const canvas = make("canvas", { width: wide, height: Math.round((wide * image.naturalHeight) / image.naturalWidth) });
  /** @type {CanvasRenderingContext2D} */ (canvas.getContext("2d")).drawImage(image, 0, 0, canvas.width, canvas.height);
  URL.revokeObjectURL(image.src);
  return new Promise((done, failed) => canvas.toBlob((blob) => (blob ? done(blob) : failed(new Error("png"))), "image/png"));
}

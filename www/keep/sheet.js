// The review sheet: what is on the bench, on paper. Made when it is asked for, shown over the page, printed by the browser.

import { bring } from "../asking.js";
import { byId, make } from "../dom.js";
import { labour } from "../labour.js";
import { language } from "../language.js";
import { say } from "../words.js";
import { toAddress } from "../address.js";
import { besideOnSheet, heldOf } from "../compare/on-sheet.js";
import { ghostCaption, ghostOver } from "../compare/printed.js";
import { spansOf, spansSaid } from "../compare/spans.js";
import { askAll } from "./asked-all.js";
import { withBench } from "./own-bench.js";
import { under } from "./picture.js";
import { textOf } from "../files.js";
import { fingerprint } from "./fingerprint.js";
import { answers, cautions, demands, dimensions, gaps, part, sources } from "./sheet-parts.js";
import { INK, svgOf } from "./svg.js";
import { version } from "./version.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {{dimension: string, minus_mm: number, plus_mm: number, law: string}} Limit */
/**
 * What a sheet is about.
 * @typedef {object} Matter
 * @property {import("../kernel.js").Scenario} scenario
 * @property {import("../kernel.js").BenchState} state
 * @property {Record<"tightest"|"middle"|"loosest", import("../kernel.js").BenchState>} corners
 * @property {Limit[]} limits
 * @property {import("./asked-all.js").Said[]} said
 * @property {Record<string, string>} over what the limits leave open of a question, by its id
 * @property {string} picture an address of the drawing
 * @property {string[]} scale what is said under it
 * @property {import("../compare/on-sheet.js").Held|null} held the chain that is held as A
 */

const PAPERS = /** @type {Record<string, string>} */ ({ a4: "A4", letter: "letter" });
/** The drawing on paper: its size and its letters, in units of the drawing. */
const [WIDTH, HEIGHT, LETTERS] = [1040, 560, 14];
/** Scales that differ by less than this share are one. */
const SAME = 0.001;
/** The inks of paper, those of a held chain's outlines among them. */
const PAPER = { sheet: "#ffffff", ink: INK };

/** @param {Session} session @returns {Promise<Matter>} */
async function gather(session) {
  const scenario = session.bench.scenario();
  const demanded = scenario.demands?.length ? {} : { demands: [{ quantity: "side_gap_mm", at_least: 0 }] };
  const limits = scenario.limits?.length && session.state.fits ? (await labour("sheet", "fit", { ...scenario, ...demanded }, {}))?.limits ?? [] : [];
  const { state, corners, picture, views, ghost } = await withBench(session, async (bench) => {
    bench.layout(WIDTH, HEIGHT, LETTERS, false);
    const ghost = await ghostOver(bench, { width_px: WIDTH, height_px: HEIGHT, text_px: LETTERS }, {}, PAPER);
    const svg = under(svgOf(bench, { theme: PAPER, caption: [byId("badge").textContent ?? ""] }), ghost);
    bench.show_worn(0); // limits are of the chain as new
    const shown = bench.state();
    const at = (/** @type {string} */ corner) => (bench.show_corner(corner), bench.state());
    return { state: shown, corners: { tightest: at("tightest"), middle: at("middle"), loosest: at("loosest") }, picture: svg, views: bench.views(), ghost: ghost ? ghostCaption() : "" };
  });
  const said = await askAll(session);
  const held = session.work.a ? await heldOf(session, said.filter(({ answer }) => answer).map(({ ask }) => ask)) : null;
  const over = state.fits ? await overAll(scenario, said.map(({ ask }) => ask)) : {};
  const scale = [scaleOf(views), ghost, held?.apart ?? ""].filter(Boolean);
  return { scenario, state, corners, limits, said, over, held, scale, picture: URL.createObjectURL(new Blob([picture], { type: "image/svg+xml" })) };
}

/** Which sections are drawn, and to which scale. @param {import("../kernel.js").Place[]} views */
function scaleOf(views) {
  const sections = views.map(({ view }) => say(`sheet.section.${view}`)).join(", ");
  const one = views.every(({ px_per_mm }) => Math.abs(px_per_mm - views[0].px_per_mm) < SAME * px_per_mm);
  return say(one ? "sheet.scale.one" : "sheet.scale.own", { sections });
}

/**
 * What the limits leave open of each question; the first one says it in its answers.
 * @param {import("../kernel.js").Scenario} scenario
 * @param {string[]} asks
 */
async function overAll(scenario, asks) {
  const later = asks.filter((ask) => ask !== "give");
  return Object.fromEntries(await Promise.all(later.map(async (ask) => [ask, spansSaid(await spansOf(scenario, ask))])));
}

/** How to come to the same again. @param {Matter} matter @param {Session} session */
async function again({ scenario }, session) {
  const [text, name] = [textOf(scenario), `${session.work.on.replace(/[^\w-]/g, "-")}.json`];
  const address = location.href.split("#")[0] + toAddress(session.work);
  const rows = {
    version: version() || say("sheet.unknown"), address, file: name, fingerprint: (await fingerprint(text)) || say("sheet.unknown"),
    check: `sha256sum ${name}`, solve: `cargo solve ${name}`, seed: String(scenario.sampling?.seed ?? 1),
  };
  return part("sheet.again", make("p", {}, say("sheet.again.how")), make("dl", { class: "review-again" }, ...Object.entries(rows).flatMap(([key, value]) => [
    make("dt", {}, say(`sheet.${key}`)), make("dd", { class: `review-${key}` }, value)])));
}

const initials = () => make("table", { class: "review-initials" }, make("tbody", {}, ...["made", "checked", "agreed"].map((who) =>
  make("tr", {}, make("th", { scope: "row" }, say(`sheet.${who}`)), make("td", {}), make("td", {}, say("sheet.day"))))));

/** @param {Matter} matter @param {Session} session */
async function written(matter, session) {
  const { scenario, picture, held, scale } = matter;
  const image = make("img", { src: picture, alt: `${scale[0]} ${byId("answer").textContent}` });
  await image.decode();
  const date = new Intl.DateTimeFormat(language, { dateStyle: "long" }).format(new Date());
  return make("article", { class: "review-paper" },
    make("header", { class: "review-head" }, make("div", {}, make("h1", { id: "review-title" }, scenario.title), make("p", {}, scenario.about ?? ""),
      make("p", { class: "review-date" }, say("sheet.head", { date, version: version() || say("sheet.unknown") }))), initials()),
    make("figure", { class: "review-picture" }, image, make("figcaption", {}, scale.join(" "))),
    answers(matter), ...(held ? [besideOnSheet(held)] : []), ...demands(matter), dimensions(matter), gaps(matter), sources(matter), cautions(), await again(matter, session));
}

/** @param {Session} session */
export async function openSheet(session) {
  await bring(async () => {}, ["sheet", "fit", "working", "compare", "notes"], ["keep/sheet.css"]);
  const last = /** @type {HTMLElement|null} */ (document.activeElement);
  const paper = new CSSStyleSheet();
  const lay = (/** @type {string} */ id) => {
    paper.replaceSync(`@page { size: ${PAPERS[id]}; margin: 12mm; }`);
    box.dataset.paper = id;
  };
  const size = make("select", { id: "review-size", onchange: () => lay(size.value) }, ...Object.keys(PAPERS).map((id) => make("option", { value: id }, say(`sheet.${id}`))));
  const print = make("button", { type: "button", class: "primary", disabled: true, onclick: () => window.print() }, say("sheet.print"));
  const told = make("p", { class: "review-told", role: "status" }, say("sheet.asking"));
  const box = make("div", { class: "review", role: "dialog", "aria-modal": "true", "aria-label": say("sheet.title"), onkeydown: (/** @type {KeyboardEvent} */ event) => event.key === "Escape" && close() },
    make("div", { class: "review-bar" }, make("label", {}, say("sheet.paper"), " ", size), print, make("button", { type: "button", onclick: () => close() }, say("close")), told));
  const others = [...document.body.children].filter((each) => each instanceof HTMLElement && !each.inert);
  const close = () => {
    box.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== paper);
    for (const each of others) /** @type {HTMLElement} */ (each).inert = false;
    delete document.body.dataset.review;
    last?.focus();
  };
  for (const each of others) /** @type {HTMLElement} */ (each).inert = true;
  document.body.dataset.review = "";
  document.adoptedStyleSheets.push(paper);
  lay(navigator.language === "en-US" ? "letter" : "a4");
  size.value = box.dataset.paper ?? "a4";
  document.body.append(box);
  size.focus();
  const matter = await gather(session);
  box.append(await written(matter, session));
  told.textContent = say("sheet.ready");
  print.disabled = false;
}

// Question 7: how smooth is smooth. From the pitch to the micrometre, what sits in a face, two faces brought together.

import { amend, make as described } from "../amend.js";
import { Answered } from "../answered.js";
import { Chart } from "../chart.js";
import { beside } from "../chart-beside.js";
import { notesOfA } from "../compare/note.js";
import { make } from "../dom.js";
import { NBSP } from "../figures.js";
import { keepTyped, typedNumber } from "../typed.js";
import { loadWords, say } from "../words.js";
import { Given } from "../reach/given.js";
import { all, bare, sentence, share, short } from "../reach/written.js";
import { facesOf, profileOf, touchingOf, underCharts } from "./charts.js";
import { Zoom, length, windowOf } from "./zoom.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../session.js").What} What */
/** @typedef {import("./types.js").RoughState} RoughState */

/** What is not stated in a scenario, as the reader of scenarios fills it in. */
const USUAL = /** @type {Record<string, number>} */ ({ rz_um: 0.6, correlation_um: 20, particle_um: 0.6, seed: 1 });
const GIVEN = /** @type {Record<string, import("../reach/given.js").Run>} */ ({
  rz_um: { low: 0.05, high: 20 }, correlation_um: { low: 0.5, high: 200 },
  particle_um: { low: 0.05, high: 50 }, seed: { low: 1, high: 100, even: true, whole: true },
});
const FIGURES = ["ra_um", "rq_um", "rz_um", "skewness", "kurtosis", "seated_fraction"];
/** The farthest that faces are brought apart and where they begin, in their heights; the whole of the zoom. */
const [NEAREST, APART, PER_CENT] = [5, 1, 100];

/** It shares words of the question before it. @param {Session} session */
export const open = (session) => new Rough(session);
await loadWords("reach");

/** @extends {Answered<RoughState>} */
class Rough extends Answered {
  /** @param {Session} session */
  constructor(session) {
    super(session, "surface");
    this.zoom = new Zoom();
    this.wide = make("output", { for: "surface-zoom" });
    this.nearer = new Given("surface.zoom", { low: 0, high: PER_CENT, even: true }, (per, done) => this.look(per, done));
    this.film = new Given("surface.ratio", { low: 0, high: NEAREST, even: true }, (ratio, done) => this.bring(ratio, done));
    /** @type {{key: string, entry: Given}[]} */
    this.given = Object.entries(GIVEN).map(([key, run]) => ({ key, entry: new Given(`surface.${key}`, run, (value, done) => this.put(key, value, done)) }));
    this.profile = new Chart();
    this.faces = new Chart();
    this.touching = new Chart();
    this.figures = make("dl", { class: "surface-told" });
    this.notes = { profile: make("div"), faces: make("div"), touching: make("div") };
    const chart = (/** @type {"profile"|"faces"|"touching"} */ name) => make("figure", { "data-look": name === "profile" && "dust" },
      make("figcaption", { class: "surface-title" }, say(`surface.${name}`)), this[name].picture, this[name].key, this.notes[name]);
    const section = make("section", { class: "surface none", "aria-label": say("ask.surface") },
      make("figure", {}, make("figcaption", { class: "surface-title" }, say("surface.zoom.title"), " ", this.wide), this.zoom.picture, make("p", { class: "hint" }, say("surface.zoom.honest"))),
      this.nearer.element, chart("profile"), this.profile.table(say("surface.profile.table")),
      chart("faces"), this.film.element, chart("touching"), this.touching.table(say("surface.touching.table")), this.fold("work.title", working));
    const aside = make("section", { class: "surface-aside", hidden: true, "aria-label": say("surface.given") },
      make("h2", {}, say("surface.given")), ...this.given.map(({ entry }) => entry.element), make("h2", {}, say("surface.told")), this.figures);
    this.lay(section, aside);
  }

  /** How near the picture is, in hundredths. */
  get zoomed() {
    return within(typedNumber(this.session, "surface.zoom", 0), PER_CENT);
  }

  /** How far apart two faces are, in their heights. */
  get ratio() {
    return within(typedNumber(this.session, "surface.ratio", APART), NEAREST);
  }

  /** The chain and its surface. */
  get scenario() {
    const { surface = {}, ...rest } = this.sections("surface");
    return { ...rest, surface };
  }

  /** @param {Set<What>} what */
  heed(what) {
    this.steady.want(this.scenario, { film_ratio: this.ratio });
    this.heard(what);
  }

  /** @param {string} key @param {number} value @param {boolean} done */
  put(key, value, done) {
    const { surface } = this.scenario;
    return this.session.alter((bench) => bench.load(/** @type {any} */ ({ ...bench.scenario(), surface: { ...surface, [key]: value } })), done);
  }

  /** @param {number} per @param {boolean} done */
  look(per, done) {
    return this.keep("surface.zoom", per, [0, PER_CENT], done);
  }

  /** @param {number} ratio @param {boolean} done */
  bring(ratio, done) {
    return this.keep("surface.ratio", ratio, [APART, NEAREST], done);
  }

  /** @param {string} key @param {number} value @param {[number, number]} run where it begins and its most @param {boolean} done */
  keep(key, value, [begin, most], done) {
    const fault = outside(key, value, most);
    if (fault.length === 0) keepTyped(this.session, key, value === begin ? undefined : String(value), done);
    return fault;
  }

  /** @param {RoughState} state */
  told(state) {
    const [sits, film, touching] = state.answers;
    return { answer: sentence(sits), surprise: sentence(sits, "surprise"), helper: `${sentence(film)} ${say("answer.surface.touching", { ...all(touching.numbers), ratio: bare(this.ratio) })}` };
  }

  /** @param {RoughState} state */
  fill(state) {
    const { surface } = this.scenario;
    this.zoom.show(state, this.zoomed / PER_CENT);
    this.wide.textContent = say("surface.zoom.wide", { wide: length(windowOf(state, this.zoomed / PER_CENT)) });
    this.nearer.show(this.zoomed);
    this.film.show(this.ratio);
    for (const { key, entry } of this.given) entry.show(surface[key] ?? USUAL[key]);
    const [a, slide] = [this.beside, (/** @type {number} */ ratio, /** @type {boolean} */ done) => this.bring(Number(ratio.toFixed(2)), done)];
    this.profile.show(beside(profileOf(state), a && profileOf(a)));
    this.faces.show(beside(facesOf(state), a && facesOf(a), ["main", "third"]));
    this.touching.show(beside(touchingOf(state, slide), a && touchingOf(a, slide)));
    const notes = notesOfA(underCharts, state, a);
    for (const [name, place] of Object.entries(this.notes)) amend(place, ...(notes[name] ?? []));
    amend(this.figures, ...FIGURES.flatMap((key) => [described("dt", {}, say(`surface.told.${key}`)), described("dd", {}, written(key, state.told))]));
  }
}

/** @param {string} key @param {import("./types.js").Told} told */
function written(key, told) {
  const value = /** @type {Record<string, number>} */ (/** @type {unknown} */ (told))[key];
  return key.endsWith("_um") ? `${short(value)}${NBSP}µm` : key.endsWith("_fraction") ? share(value) : short(value);
}

/** @param {number} value @param {number} most */
const within = (value, most) => Math.min(most, Math.max(0, value));

/** @param {string} path @param {number} value @param {number} limit */
const outside = (path, value, limit) =>
  value < 0 ? [{ path, value, rule: "not_negative", numbers: {} }] : value > limit ? [{ path, value, rule: "at_most", numbers: { limit } }] : [];

const working = () => make("div", { class: "reach-work" }, make("p", { class: "formula" }, say("surface.work.formula")),
  ...["profile", "told", "seat", "film", "matters", "left"].map((part) => make("p", {}, say(`surface.work.${part}`))),
  make("p", { class: "source" }, say("surface.work.source")));

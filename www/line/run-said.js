// What is said of the joint that is followed: where it is, what bears, what it took.

import { make } from "../dom.js";
import { angle, decimal } from "../figures.js";
import { say } from "../words.js";

/** @typedef {import("./types.js").RunState} RunState */

/** @param {number} n */
const force = (n) => say("line.newton", { tight_n: decimal(n, 0) });
/** @param {number} work */
const work = (work) => decimal(work, work < 10 ? 2 : 1);

/** A narrower picture has no room for names. */
const NAMED_FROM = 480;

/** The drive's picture with the names of its wheels and strands. @param {RunState} run */
export function named({ drive, names }) {
  if (drive.width < NAMED_FROM) return drive;
  const leaf = { d: "", fill: "ink", line: null, width: 0, dash: "", clip: null, anchor: "middle", size: 13, bold: false };
  const words = ["driver", "driven", "tight", "slack"].map((name) => say(`line.run.name.${name}`));
  return { ...drive, leaves: [...drive.leaves, ...names.map((at, index) => ({ ...leaf, at, letters: words[index] }))] };
}

/** Where the joint is and what it does. @param {RunState} run */
export function sentenceOf(run) {
  const fold = run.folds[run.shown];
  const under = fold.share > 0 && fold.share < 1;
  const numbers = {
    number: run.shown + 1, way: say(`line.run.way.${fold.wheel}.${fold.runs_on ? "on" : "off"}`),
    now: angle(fold.fold_rad), whole: angle(fold.articulation_rad), force: force(under ? fold.pin_n : run.pin_n), bent: angle(run.bent_rad),
  };
  if (under) return `${say("line.run.folding", numbers)} ${say(`line.run.turns.${fold.turns}`)}`;
  return say(`line.run.place.${run.place}`, numbers);
}

/**
 * What presses, and whether it slides.
 * @param {RunState} run
 * @param {boolean} stuck
 */
export function contacts(run, stuck) {
  const fold = run.folds[run.shown];
  const slides = fold.share > 0 && fold.share < 1;
  const inner = slides && fold.turns === "inner";
  const rolls = slides && fold.fold_rad < fold.roll_rad;
  const row = (/** @type {string} */ name, /** @type {number} */ n, /** @type {string} */ state) =>
    make("li", {}, make("b", {}, say(`line.run.contact.${name}`)), " ", force(n), ", ", say(`line.run.state.${n > 0 ? state : "off"}`));
  const rows = [
    row("pin", run.pin_n, rolls ? "rolls" : slides ? "slides" : "still"),
    row("tooth", run.tooth_push_n, inner && stuck ? "slides" : "still"),
    row("roller", run.tooth_push_n, inner && !stuck ? "slides" : "still"),
  ];
  if (run.face_n > 0) rows.push(row("face", run.face_n, slides ? "slides" : "still"));
  return rows;
}

/** @param {RunState} run */
export const summaryOf = (run) => say("line.run.sum", {
  so_far: work(run.so_far.total_n_mm), circuit: work(run.circuit.total_n_mm), loss: decimal(100 * run.loss_fraction, 2),
});

/** What a whole circuit of A takes, and why A is not in the pictures. @param {RunState} run */
export const ofA = (run) => say("line.run.of.a", { circuit: work(run.circuit.total_n_mm), loss: decimal(100 * run.loss_fraction, 2) });

/**
 * The four folds as a table; a row's button goes there.
 * @param {RunState} run
 * @param {(fold: number) => void} take
 */
export function foldRows(run, take) {
  const head = ["fold", "turns", "pull", "angle", "pin", "face", "roller", "sum"].map((word) => make("th", { scope: "col" }, say(`line.run.head.${word}`)));
  const rows = run.folds.map((fold, index) => {
    const button = make("button", { type: "button", class: "pair", "aria-pressed": String(run.shown === index), onclick: () => take(index) },
      `${index + 1} ${say(`line.run.way.${fold.wheel}.${fold.runs_on ? "on" : "off"}`)}`);
    const cells = [
      say(`line.run.link.${fold.turns}`), force(fold.pin_n), angle(fold.articulation_rad),
      ...["pin_n_mm", "face_n_mm", "roller_n_mm", "total_n_mm"].map((key) => work(fold.whole[/** @type {"pin_n_mm"} */ (key)])),
    ];
    return make("tr", {}, make("th", { scope: "row" }, button), ...cells.map((text) => make("td", {}, text)));
  });
  const sum = ["pin_n_mm", "face_n_mm", "roller_n_mm", "total_n_mm"].map((key) => make("td", {}, work(run.circuit[/** @type {"pin_n_mm"} */ (key)])));
  const foot = make("tr", {}, make("th", { scope: "row", colspan: 4 }, say("line.run.head.circuit")), ...sum);
  return make("table", {}, make("thead", {}, make("tr", {}, ...head)), make("tbody", {}, ...rows), make("tfoot", {}, foot));
}

/**
 * Work so far against the way round.
 * @param {RunState} run
 * @param {(pitches: number) => void} slide
 * @returns {import("../chart.js").Content}
 */
export function curveOf(run, slide) {
  const pitches = (/** @type {number} */ at) => decimal(at, 0);
  return {
    label: say("line.run.chart"),
    x: { name: say("line.run.x"), from: 0, to: run.pitches, write: pitches },
    y: { name: say("line.run.y"), from: 0, to: run.circuit.total_n_mm, write: pitches },
    ranges: run.folds.map(({ start_pitches }, index) => ({ name: index ? "" : say("line.run.range"), look: "free", from: start_pitches, to: start_pitches + 1 })),
    lines: [{ name: say("line.run.y"), look: "main", points: run.curve }],
    marker: {
      at: run.done_pitches, value: run.so_far.total_n_mm, step: 0.25, slide, name: say("line.run.scrub"), text: sentenceOf(run),
    },
  };
}

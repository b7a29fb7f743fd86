// Sets drawn by chance: a quick look always, a million on demand, with what is known and how well.

import { amend, make as described } from "../amend.js";
import { noteOfA } from "../compare/note.js";
import { draw, make, write } from "../dom.js";
import { decimal, figure, grouped } from "../figures.js";
import { say } from "../words.js";
import { percent } from "./demands.js";
import { button, choice } from "./entry.js";
import { alike, barTable, histogram } from "./histogram.js";
import { fine } from "./scale.js";

/** @typedef {import("./types.js").ChanceView} ChanceView */
/** @typedef {import("./types.js").DemandView} DemandView */
/** @typedef {import("./crowd.js").Crowd} Crowd */

/** @param {number} count @param {import("./types.js").DemandChance} each */
const inWords = (count, { yield_fraction: [share] }) => say("fit.chance.name", { count, percent: percent(share) });
const SETS = [10000, 100000, 1000000, 10000000];
export class ChancePart {
  picture = draw("svg", { class: "fit-picture", role: "img" });
  readings = make("dl", { class: "fit-readings" });
  worst = make("div", { class: "fit-worst" });
  note = make("div");
  fold = make("details", { class: "fold" }, make("summary", {}, say("fit.table")));
  sets = 1000000;
  /** @type {DemandView|null} */
  demand = null;
  /** @type {import("./types.js").DemandChance|null} */
  each = null;

  /**
   * @param {Crowd} crowd
   * @param {(sets: number) => void} run
   * @param {(set: number) => void} stage
   */
  constructor(crowd, run, stage) {
    this.crowd = crowd;
    this.stage = stage;
    this.go = button("fit.run", () => run(this.sets));
    this.halt = button("fit.stop", () => crowd.stop());
    this.halt.hidden = true;
    this.progress = make("progress", { max: 1, value: 0, "aria-label": say("fit.progress"), hidden: true });
    this.news = make("output", { class: "fit-news" });
    this.failure = make("p", { class: "fault", role: "alert", hidden: true });
    const count = choice(say("fit.sets"), SETS.map((each) => [String(each), say("fit.sets.count", { count: grouped(each) })]), String(this.sets), (value) => (this.sets = Number(value)));
    count.id = "fit-sets";
    [this.go.id, this.halt.id] = ["fit-run", "fit-stop"];
    this.element = make("section", { class: "fit-block", "data-look": "chance" }, make("h2", {}, say("fit.chance")),
      make("div", { class: "fit-row" }, count, this.go, this.halt, this.progress, this.news), this.failure,
      make("figure", {}, this.picture, this.note), this.readings, this.worst, this.fold);
    this.fold.addEventListener("toggle", () => this.table());
  }

  /**
   * @param {ChanceView|null} chance
   * @param {DemandView} demand
   * @param {number} looked
   * @param {number} width
   * @param {{sets: number, each: import("./types.js").DemandChance}|null} [a] the same number of the chain that is held
   */
  show(chance, demand, looked, width, a = null) {
    const { share, failure } = this.crowd;
    const running = share !== null;
    const focused = document.activeElement === this.go || document.activeElement === this.halt;
    [this.go.hidden, this.halt.hidden, this.progress.hidden] = [running, !running, !running];
    if (focused) (running ? this.halt : this.go).focus();
    this.progress.value = share ?? 0;
    [this.failure.hidden, this.failure.textContent] = [!failure, failure];
    const each = chance?.demands[looked];
    if (!chance || !each) return;
    [this.demand, this.each] = [demand, each];
    write(this.news, say("fit.drawn", { count: grouped(chance.sets) }));
    const name = inWords(chance.sets, each);
    const note = noteOfA(name, a ? inWords(a.sets, a.each) : "");
    histogram(this.picture, demand, each.histogram, { width, height: 220, name, a: a && note.length > 0 ? alike(a.each.histogram, each.histogram) : [] });
    amend(this.note, ...note);
    const value = (/** @type {[number, number]} */ [middle, se]) => say("fit.uncertain", { value: figure(demand.quantity, middle), se: fine(demand.quantity, se) });
    const pair = (/** @type {string} */ word, /** @type {string} */ text) => described("div", {}, described("dt", {}, say(word)), described("dd", {}, text));
    const median = each.percentiles.filter(([part]) => part === 0.001 || part === 0.999).map(([, at]) => figure(demand.quantity, at));
    amend(this.readings,
      pair("fit.read.yield", say("fit.uncertain.percent", { value: percent(each.yield_fraction[0]), se: decimal(100 * each.yield_fraction[1], 3) })),
      pair("fit.read.mean", value(each.mean)), pair("fit.read.sd", say("fit.uncertain", { value: fine(demand.quantity, each.sd[0], 3), se: fine(demand.quantity, each.sd[1]) })),
      pair("fit.read.between", median.join(" … ")), pair("fit.read.apart", grouped(chance.apart)));
    this.failing(each, demand);
    this.table();
  }

  /** Three sets that fail, each of which can be put on the stage. @param {import("./types.js").DemandChance} each @param {DemandView} demand */
  failing({ worst }, demand) {
    const word = say("fit.stage");
    amend(this.worst, described("h3", {}, say(worst.length ? "fit.worst" : "fit.worst.none")), ...worst.map(([set, value, outside]) => {
      const name = `${word}: ${say("fit.stage.of", { set, value: figure(demand.quantity, value) })}`;
      return described("p", { class: "fit-row" },
        described("span", {}, say("fit.worst.set", { set, value: figure(demand.quantity, value), outside: figure(demand.quantity, outside) })),
        described("button", { type: "button", "aria-label": name, "data-set": set, onclick: () => this.stage(set) }, word));
    }));
  }

  table() {
    if (!this.fold.open || !this.demand || !this.each) return;
    amend(this.fold, /** @type {Node} */ (this.fold.firstChild), barTable(this.demand, this.each.histogram));
  }
}

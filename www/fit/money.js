// Where the money goes: the tolerances as they are and the cheapest that meet the demand, by part.

import { amend, draw, make } from "../amend.js";
import { draw as drawn, dress, make as made } from "../dom.js";
import { decimal } from "../figures.js";
import { say } from "../words.js";
import { fine } from "./scale.js";
import { sizeName } from "./names.js";

/** @typedef {import("./types.js").MoneyView} MoneyView */
/** @typedef {import("./types.js").DemandView} DemandView */

const WAYS = ["now", "worst", "rss"];
const [ROW, BAR, NAME] = [48, 24, 22];

export class Money {
  picture = drawn("svg", { class: "fit-picture", role: "img" });
  said = made("ul", { class: "fit-said" });
  table = made("table", { class: "fit-table" });

  /** @param {(way: string) => void} take takes the limits of the cheapest tolerances */
  constructor(take) {
    this.take = take;
    this.buttons = made("div", { class: "fit-row" });
    this.element = made("section", { class: "fit-block" }, made("h2", {}, say("fit.money")), made("p", { class: "hint" }, say("fit.money.hint")),
      made("figure", {}, this.picture), this.said, this.buttons, made("div", { class: "fit-scroll", tabindex: 0, role: "group", "aria-label": say("fit.money") }, this.table));
  }

  /**
   * @param {MoneyView|null} money
   * @param {DemandView[]} demands
   * @param {number} width
   */
  show(money, demands, width) {
    this.element.hidden = !money;
    if (!money) return;
    const totals = [money.total, ...money.least];
    const most = Math.max(...totals.map((total) => total ?? 0));
    const per = (width - 90) / most;
    const bars = WAYS.flatMap((way, row) => {
      const y = NAME + row * ROW;
      let x = 4;
      const blocks = money.parts.flatMap(({ cost }, i) => {
        const wide = (cost[row] ?? 0) * per;
        const number = wide > 22 ? [draw("text", { class: "block-number", x: x + wide / 2, y: y + 17, "text-anchor": "middle" }, String(i + 1))] : [];
        const block = [draw("rect", { class: `block kind-${i % 5}`, x, y, width: wide, height: BAR }), ...number];
        x += wide;
        return block;
      });
      const total = totals[row] === null ? say("fit.money.none") : decimal(Number(totals[row]), 1);
      return [draw("text", { class: "tick", x: 4, y: y - 4 }, say(`fit.money.${way}`)), ...blocks, draw("text", { class: "total", x: x + 6, y: y + 17 }, total)];
    });
    const height = NAME + WAYS.length * ROW;
    dress(this.picture, { viewBox: `0 0 ${width} ${height}`, height, "aria-label": say("fit.money.name", { demand: say(`fit.name.${demands[money.demand].quantity}`) }) });
    amend(this.picture, ...bars);
    const tightened = money.tightened === null ? [] : [say("fit.tightened", { cost: money.tightened, total: money.total })];
    const sentences = [...money.answers.map(({ id, numbers }) => say(`answer.${id}`, numbers)), ...tightened];
    amend(this.said, ...sentences.map((sentence) => make("li", {}, sentence)));
    const ways = WAYS.filter((way, row) => row > 0 && totals[row] !== null);
    amend(this.buttons, ...ways.map((way) => make("button", { type: "button", "data-way": way, onclick: () => this.take(way) }, say(`fit.money.take.${way}`))));
    this.fill(money);
  }

  /** @param {MoneyView} money */
  fill(money) {
    const head = ["part", ...WAYS].map((each) => make("th", { scope: "col" }, say(`fit.money.${each}`)));
    const cell = (/** @type {number|null} */ half, /** @type {number|null} */ cost) => make("td", {}, half === null || cost === null ? "–" : say("fit.money.cell", { t: fine("t_mm", half, 3), cost: decimal(cost, 2) }));
    const rows = money.parts.map(({ dimension, half_mm, cost }, i) => make("tr", {},
      make("th", { scope: "row" }, make("span", { class: `swatch kind-${i % 5}` }, String(i + 1)), ` ${sizeName(dimension)}`), ...WAYS.map((_, row) => cell(half_mm[row], cost[row]))));
    amend(this.table, make("thead", {}, make("tr", {}, ...head)), make("tbody", {}, ...rows));
  }
}

// What is said of many chains: the sentence, its surprise, and how it is worked out.

import { make } from "../amend.js";
import { decimal, figure, short } from "../figures.js";
import { has, say } from "../words.js";
import { eaters } from "./eaten.js";
import { sizeName } from "./names.js";

/** @typedef {import("./types.js").FitState} FitState */
/** @typedef {import("./types.js").ChanceView} ChanceView */
/** @typedef {import("./types.js").DemandView} DemandView */

/** A share in per cent, with as many figures as it takes. @param {number} value */
const figures = (value) => short(value, 3);

/**
 * @param {FitState} state
 * @param {ChanceView} chance
 * @param {number} looked
 */
export function fitSentences(state, chance, looked) {
  const [{ id, numbers }] = chance.answers;
  const told = { ...numbers, percent: decimal(numbers.percent, numbers.percent > 99 ? 2 : 1), percent_se: figures(numbers.percent_se), chains_percent: figures(numbers.chains_percent) };
  const demand = state.demands[looked];
  const [eater] = eaters(demand);
  const surprise = eater ? say("surprise.fit.eater", { part: sizeName(eater.dimension), share_fraction: eater.share, name: say(`fit.name.${demand.quantity}`) }) : "";
  const [worst] = demand.answers;
  const helper = [has(`helper.${id}`) ? say(`helper.${id}`, told) : "", worst ? say(`answer.${worst.id}`, { name: say(`fit.name.${demand.quantity}`) }) : ""];
  const { quantity, worst_low, worst_high } = demand;
  if (worst_low !== null && worst_high !== null) helper.push(say("fit.over", { low: figure(quantity, worst_low), high: figure(quantity, worst_high) }));
  return { answer: say(`answer.${id}`, told), surprise, helper: helper.join(" ").trim() };
}

/**
 * Formula, values, source, what is left out.
 * @param {FitState} state
 * @param {DemandView} demand
 */
export function workedOut(state, demand) {
  const pair = (/** @type {string} */ word, /** @type {string} */ value) => [make("dt", {}, say(word)), make("dd", {}, value)];
  const { quantity } = demand;
  return make("div", { class: "fit-work" },
    make("p", { class: "formula" }, say("fit.work.formula")),
    make("dl", {}, ...demand.halves.flatMap(([rule, half]) => pair(`fit.rule.${rule}`, `± ${figure(quantity, half)}`)),
      ...pair("fit.rule.sd", figure(quantity, demand.rss_sd)),
      ...pair("fit.rule.low", demand.worst_low === null ? "–" : figure(quantity, demand.worst_low)),
      ...pair("fit.rule.high", demand.worst_high === null ? "–" : figure(quantity, demand.worst_high))),
    ...["how", "chance", "money", "matters", "left", "source"].map((part) => make("p", { class: part === "source" ? "source" : "" }, say(`fit.work.${part}`))));
}

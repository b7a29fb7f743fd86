// What can be changed: the gaps first, then every dimension, the construction.

import { byId, dress, make } from "./dom.js";
import { faultSentence, Field } from "./field.js";
import { say, variant } from "./words.js";

/** @typedef {import("./session.js").Session} Session */

const CONSTRUCTIONS = ["bushed", "collared"];
const GROUPS = {
  link: ["pitch_mm", "inner_width_mm", "outer_spacing_mm"],
  pin: ["pin_diameter_mm", "pin_bore_mm", "pin_length_mm"],
  bush: ["bore_mm", "barrel_mm", "bearing_length_mm", "mouth_radius_mm"],
  roller: ["roller_diameter_mm", "roller_bore_mm", "roller_length_mm"],
  plates: [
    "inner_plate_mm", "outer_plate_mm", "inner_plate_height_mm", "outer_plate_height_mm", "inner_waist_mm",
    "outer_waist_mm", "inner_overhang_mm", "outer_overhang_mm", "edge_chamfer_mm",
  ],
};

/** @param {Session} session */
export function startChange(session) {
  const gaps = gapFields(session);
  const moves = new Map(session.bench.catalogue().gaps.map((gap) => [gap.key, gap.moves]));
  const sizes = sizeFields(session);
  const constructions = constructionSwitch(session);
  const show = () => {
    const { state } = session;
    for (const [key, field] of gaps) {
      field.call(say(variant(`gap.${key}`, state.construction)));
      const { value_mm, low_mm: low, high_mm: high } = state.gaps[key];
      field.show(value_mm, { low, high });
      field.mark(state.chosen.includes(moves.get(key) ?? "") ? "chosen" : null);
    }
    for (const [key, field] of sizes) {
      field.call(say(variant(`size.${key}`, state.construction)));
      field.show(state.sizes[key]);
      field.mark(state.chosen.includes(key) ? "chosen" : state.defaulted.includes(key) ? "defaulted" : null);
    }
    for (const button of constructions) {
      dress(button, { "aria-pressed": String(button.dataset.value === state.construction) });
    }
  };
  session.listen((what) => {
    if (what.has("chain") || what.has("unit")) show();
  }, false);
}

/** @param {Session} session */
function gapFields(session) {
  const fields = session.bench.catalogue().gaps.map(({ key, moves }) => {
    const text = { label: say(`gap.${key}`), hint: say(`gap.${key}.hint`, { moves: say(`moves.${moves}`) }), slider: true };
    const field = new Field(text, (mm, done) => session.alter((bench) => bench.set_gap(key, mm), done));
    return /** @type {[string, Field]} */ ([key, field]);
  });
  const [first, rest] = [fields.slice(0, 2), fields.slice(2)];
  byId("gaps").append(...first.map(([, field]) => field.element));
  const more = make("details", { class: "fold small" }, make("summary", {}, say("gaps.more")));
  more.append(...rest.map(([, field]) => field.element));
  byId("gaps").append(more);
  return new Map(fields);
}

/** @param {Session} session */
function sizeFields(session) {
  const known = session.bench.catalogue().dimensions.map((dimension) => dimension.key);
  byId("sizes-title").textContent = say("sizes.title", { count: known.length });
  const grouped = Object.values(GROUPS).flat();
  const groups = { ...GROUPS, other: known.filter((key) => !grouped.includes(key)) };
  /** @type {Map<string, Field>} */
  const fields = new Map();
  for (const [name, keys] of Object.entries(groups)) {
    const here = keys.filter((key) => known.includes(key));
    if (here.length === 0) continue;
    const set = make("fieldset", {}, make("legend", {}, say(`sizes.${name}`)));
    for (const key of here) {
      const field = new Field({ label: say(`size.${key}`) }, (mm, done) =>
        session.alter((bench) => bench.set(`chain.${key}`, mm), done));
      fields.set(key, field);
      set.append(field.element);
    }
    byId("sizes").append(set);
  }
  return fields;
}

/** @param {Session} session */
function constructionSwitch(session) {
  return CONSTRUCTIONS.map((value) => {
    const button = make("button", { type: "button", class: "choice", "data-value": value },
      make("span", { class: "choice-name" }, say(`construction.${value}`)),
      make("span", { class: "choice-note" }, say(`construction.${value}.note`)));
    button.addEventListener("click", () => {
      const faults = session.alter((bench) => bench.load(remade(bench.scenario(), session.base, value)), true);
      const place = byId("chain-fault");
      place.hidden = faults.length === 0;
      place.textContent = [faults.length ? say("fault.construction") : "", ...faults.map(faultSentence)].join(" ");
    });
    byId("construction").append(button);
    return button;
  });
}

/**
 * The same chain made the other way. A bearing length means a whole bush in one and a single collar in the other, so a
 * stated one is kept only for the construction that it was stated for.
 * @param {import("./kernel.js").Scenario} scenario
 * @param {Record<string, any>} base the chain as it was begun with
 * @param {string} construction
 */
function remade(scenario, base, construction) {
  const { bearing_length_mm: _, ...chain } = scenario.chain;
  const own = base.construction === construction && base.bearing_length_mm !== undefined;
  const kept = own ? { bearing_length_mm: base.bearing_length_mm } : {};
  return { ...scenario, chain: { ...chain, construction, ...kept } };
}

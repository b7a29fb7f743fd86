// The bar at the top: which chain, undo and redo, the language, the unit. And the questions.

import { byId, dress, make, write } from "./dom.js";
import { decimal } from "./figures.js";
import { LANGUAGES, language, speak } from "./language.js";
import { QUESTIONS, waysOf } from "./questions.js";
import { anew } from "./work.js";
import { say } from "./words.js";

/** @typedef {import("./session.js").Session} Session */

const CONSTRUCTION = "bushed";

/** @param {Session} session */
export function startHeader(session) {
  const menu = /** @type {HTMLSelectElement} */ (byId("scenario"));
  menu.append(ours(session), published(session));
  menu.addEventListener("change", () => {
    session.begin(anew(session.work, menu.value)).then(() => session.commit(), () => {
      menu.value = session.work.on;
      byId("chain-fault").hidden = false;
      byId("chain-fault").textContent = say("ask.failed");
    });
  });
  const tongue = /** @type {HTMLSelectElement} */ (byId("language"));
  tongue.append(...Object.entries(LANGUAGES).map(([tag, name]) => make("option", { value: tag, lang: tag, selected: tag === language }, name)));
  tongue.addEventListener("change", () => import("./keep/turning.js").then(({ turn }) => turn(tongue.value), () => speak(tongue.value)));
  const unit = byId("unit");
  unit.addEventListener("click", () => session.move({ unit: session.work.unit === "mm" ? "in" : "mm" }, true));
  const { undo, redo } = startUndo(session);
  let told = "";
  session.listen(() => {
    showChosen(menu, session);
    write(unit, say(session.work.unit === "in" ? "unit.inch" : "unit.mm"));
    dress(unit, { "aria-label": say(`unit.name.${session.work.unit}`), title: say(`unit.name.${session.work.unit}`) });
    dress(undo, { disabled: session.history.past.length === 0 });
    dress(redo, { disabled: session.history.future.length === 0 });
    const { scenario } = session;
    const about = sizeNumber(session.work.on) ? say("size.about", { number: sizeNumber(session.work.on) }) : (session.scenarios.get(session.work.on)?.about ?? "");
    const [title, source] = [sizeNumber(session.work.on) ? "" : scenario.title, scenario.source ? say("source", { source: scenario.source }) : ""];
    const now = JSON.stringify([title, about, source]);
    if (now === told) return;
    told = now;
    byId("about").replaceChildren(make("b", {}, title), " ", about, " ", make("span", { class: "source" }, source));
  }, false);
}

/**
 * Shows what is on the bench; a step of a lesson has a line of its own while it is there.
 * @param {HTMLSelectElement} menu
 * @param {Session} session
 */
function showChosen(menu, { work: { on }, scenarios }) {
  const step = menu.querySelector("option[data-step]");
  const brought = scenarios.isBrought(on);
  if (!step && brought) menu.prepend(make("option", { "data-step": true, value: on }, scenarios.nameOf(on)));
  else if (step && !brought) step.remove();
  else if (step) dress(step, { value: on }), step.replaceChildren(scenarios.nameOf(on));
  menu.value = on;
}

/** @param {string} on */
const sizeNumber = (on) => /^size-(\w+)-/.exec(on)?.[1] ?? "";

/** @param {Session} session */
function ours(session) {
  const group = make("optgroup", { label: say("menu.ours") });
  for (const id of session.scenarios.ids) group.append(make("option", { value: id }, session.scenarios.nameOf(id)));
  return group;
}

/** @param {Session} session */
function published(session) {
  const group = make("optgroup", { label: say("menu.published") });
  for (const { number, pitch_mm } of session.bench.catalogue().table) {
    const name = say("menu.size", { number, pitch: say("menu.pitch", { inch: fraction(pitch_mm / 25.4), pitch_mm }) });
    group.append(make("option", { value: `size-${number}-${CONSTRUCTION}` }, name));
  }
  return group;
}

/**
 * An inch size as workshops write it.
 * @param {number} inch
 */
function fraction(inch) {
  const sixteenths = Math.round(inch * 16);
  if (Math.abs(inch * 16 - sixteenths) > 1e-6) return decimal(inch, 3);
  let [over, under] = [sixteenths % 16, 16];
  while (over > 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  const whole = Math.floor(sixteenths / 16);
  return [whole || "", over ? `${over}/${under}` : ""].filter(Boolean).join(" ");
}

/** @param {Session} session */
function startUndo(session) {
  const [undo, redo] = [byId("undo"), byId("redo")];
  undo.addEventListener("click", () => session.step(session.history.undo()));
  redo.addEventListener("click", () => session.step(session.history.redo()));
  addEventListener("keydown", (event) => {
    const typing = event.target instanceof HTMLInputElement && event.target.inputMode === "decimal";
    if (typing || !(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    event.preventDefault();
    const back = key === "z" && !event.shiftKey;
    session.step(back ? session.history.undo() : session.history.redo());
  });
  return { undo, redo };
}

/** @param {Session} session */
export function startQuestions(session) {
  const list = byId("questions");
  const buttons = QUESTIONS.map(({ id: ask }, index) => {
    const button = make("button", { type: "button", class: "question" },
      make("span", { class: "number" }, String(index + 1)),
      make("span", { class: "asked" }, say(`ask.${ask}`)),
      make("span", { class: "rider" }, say(`ask.${ask}.rider`)));
    button.addEventListener("click", () => session.visit(ask));
    list.append(make("li", {}, button));
    return /** @type {[string, HTMLButtonElement]} */ ([ask, button]);
  });
  const modes = byId("modes");
  session.listen(() => {
    for (const [ask, button] of buttons) {
      const current = ask === session.work.ask;
      if (current && document.body.dataset.ask !== ask) list.scrollLeft = button.offsetLeft - list.offsetLeft; // on a phone they stand in a row
      dress(button, { "aria-current": current ? "page" : null });
      /** @type {HTMLElement} */ (button.parentElement).hidden = !session.offers(ask);
    }
    document.body.dataset.ask = session.work.ask;
    document.body.dataset.how = session.work.how;
    showModes(session, modes);
  }, false);
  addEventListener("popstate", (event) => {
    if (event.state?.ask && event.state.on === session.work.on) {
      session.enter(event.state.ask);
      session.writeAddress();
    } else session.readAddress().then((read) => read && session.commit());
  });
}

/**
 * @param {Session} session
 * @param {HTMLElement} place
 */
function showModes(session, place) {
  const ways = waysOf(session.work.ask);
  if (place.dataset.for !== session.work.ask) {
    place.dataset.for = session.work.ask;
    place.replaceChildren(...ways.map((how) => {
      const button = make("button", { type: "button", "data-how": how, title: say(`way.${how}.note`) }, say(`way.${how}`));
      button.addEventListener("click", () => session.move({ how, at: 1, held: null }, true));
      return button;
    }));
  }
  for (const button of place.children) {
    dress(button, { "aria-pressed": String(/** @type {HTMLElement} */ (button).dataset.how === session.work.how) });
  }
}

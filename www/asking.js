// Opens what a question brings when it is first asked: its module, its words, its style; and shows it while it is asked.

import { byId, make } from "./dom.js";
import { once } from "./once.js";
import { questionOf } from "./questions.js";
import { loadWords, say } from "./words.js";

/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("./questions.js").Asked} Asked */
/** @typedef {import("./questions.js").Question} Question */

const addSheet = once(async (address) => {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`);
  const sheet = await new CSSStyleSheet().replace(await answer.text());
  document.adoptedStyleSheets.push(sheet);
});

/**
 * What a part of the page needs before it can be shown: its module, words and style sheets, fetched side by side.
 * @template T
 * @param {() => Promise<T>} load
 * @param {string[]} words
 * @param {string[]} sheets
 */
export async function bring(load, words, sheets) {
  const [module] = await Promise.all([load(), ...words.map(loadWords), ...sheets.map(addSheet)]);
  return module;
}

/** @param {Session} session */
export function startAsking(session) {
  /** @type {Map<string, Asked|"opening"|"failed">} */
  const opened = new Map();
  const trouble = make("p", { class: "fault", role: "alert", hidden: true });
  byId("stage").insertBefore(trouble, byId("live"));

  /**
   * @param {Question} question
   * @param {NonNullable<Question["open"]>} load
   */
  async function open({ id, sheets = [] }, load) {
    opened.set(id, "opening");
    try {
      opened.set(id, (await bring(load, [id], sheets)).open(session));
    } catch {
      opened.set(id, "failed");
    }
    session.tell("ask");
  }

  session.listen((what) => {
    const question = questionOf(session.work.ask);
    if (question.open && !opened.has(question.id)) open(question, question.open);
    const found = opened.get(question.id);
    const asked = typeof found === "object" ? found : null;
    document.body.toggleAttribute("data-own", question.open !== undefined);
    trouble.hidden = found !== "failed";
    trouble.textContent = trouble.hidden ? "" : say("ask.failed");
    if (found === "failed") opened.delete(question.id); // asked again, it tries again
    const came = asked !== session.asked;
    if (came) put(session.asked, asked);
    session.asked = asked;
    if (came) asked?.show();
    asked?.heed(what);
    asked?.section.classList.toggle("waiting", asked.waiting === true);
  });
}

/**
 * @param {Asked|null} last
 * @param {Asked|null} next
 */
function put(last, next) {
  last?.section.remove();
  last?.aside?.remove();
  if (!next) return;
  next.section.classList.add("own");
  byId("stage").insertBefore(next.section, byId("live"));
  if (next.aside) byId("found").append(next.aside);
}

// A quiet line at the foot of the window: a sentence, what can be done about it, and a way to put it away.

import { bring } from "../asking.js";
import { make } from "../dom.js";
import { say } from "../words.js";

/** Where they stand, oldest first. */
const place = make("div", { class: "notices" });

/**
 * @param {string} id the id of the sentence
 * @param {Record<string, unknown>} numbers what fills it
 * @param {[string, () => void][]} ways ids of buttons, and what they do; each puts the line away
 */
export async function notice(id, numbers = {}, ways = []) {
  await bring(async () => {}, ["notice"], ["keep/notice.css"]);
  if (!place.isConnected) document.body.append(place);
  const line = make("div", { class: "notice", "data-notice": id });
  const said = make("p", { role: "status" });
  const button = (/** @type {string} */ word, /** @type {() => void} */ act) =>
    make("button", { type: "button", onclick: () => (line.remove(), act()) }, say(word));
  line.append(said, ...ways.map(([word, act]) => button(word, act)), button("notice.away", () => {}));
  place.append(line);
  said.textContent = say(id, numbers); // a reader hears what comes after its place
  return line;
}

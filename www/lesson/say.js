// What to say: the second window of a lesson, in step with the first.

import { byId, dress, make } from "../dom.js";

const channel = new BroadcastChannel("lightgap.lesson");

/** @param {any} told */
function show({ over, title, step, say, asked, next, words }) {
  const place = byId("say");
  if (over) return place.replaceChildren(make("p", {}, over));
  document.title = `lightgap: ${words.title}`;
  dress(document.documentElement, { lang: words.lang, dir: words.dir });
  const choices = asked?.choices.map((/** @type {string} */ choice, /** @type {number} */ index) =>
    make("li", { class: index + 1 === asked.answer ? "right" : "" }, choice, " ", make("span", {}, words.hands[index]))) ?? [];
  const guess = asked ? [make("h2", {}, asked.text), make("ol", {}, ...choices), make("p", { class: "because" }, make("b", {}, words.answer), " ", asked.because)] : [];
  place.replaceChildren(make("p", { class: "where" }, make("b", {}, title), ` ${step}`), make("p", { class: "say" }, say), ...guess, make("p", { class: "next" }, next));
}

channel.addEventListener("message", ({ data }) => typeof data === "object" && show(data));
channel.postMessage("here");

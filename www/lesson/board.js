// What a lesson shows over the drawing: which step it is, its sentence, its guess, and the buttons of the way.

import { byId, dress, make } from "../dom.js";
import { once } from "../once.js";
import { OWN } from "../own.js";
import { say } from "../words.js";

/** @typedef {import("./lesson.js").Teaching} Teaching */

export class Board {
  /** @param {Teaching} teaching */
  constructor(teaching) {
    this.teaching = teaching;
    const button = (/** @type {string} */ word, /** @type {() => void} */ go) =>
      make("button", { type: "button", class: word.replace(".", "-"), onclick: go }, say(word));
    this.count = make("p", { class: "lesson-count" });
    this.sentence = make("p", { class: "lesson-say" });
    this.place = make("div", { class: "lesson-guess" });
    this.back = button("lesson.back", () => teaching.turn(-1));
    this.next = button("lesson.next", () => teaching.turn(1));
    this.again = button("lesson.again", () => teaching.go(teaching.step));
    this.change = make("button", { type: "button", class: "lesson-change" }, say("lesson.change"));
    const link = once(async () => new (await import("./link.js")).Link(teaching));
    this.link = button("lesson.link", async () => (await link("link")).show());
    this.close = button("lesson.close", () => teaching.close());
    this.live = make("p", { class: "hush", role: "status", "aria-live": "polite" });
    this.way = make("div", { class: "lesson-way" });
    this.element = make("section", { class: "lesson", hidden: true }, this.count, this.sentence, this.place, this.way, this.live);
    const stage = byId("stage");
    stage.insertBefore(this.element, stage.firstChild);
  }

  /** The buttons in their order, those of the hall among them. @param {HTMLElement[]} hall */
  lay(hall) {
    this.way.replaceChildren(this.back, this.next, this.again, ...hall, this.link, this.change, this.close);
  }

  show() {
    const { lesson, stand, guess, isThere } = this.teaching;
    this.element.hidden = !lesson || !stand;
    document.body.toggleAttribute("data-lesson", !this.element.hidden);
    document.body.toggleAttribute("data-guessing", isThere && guess !== null && !guess.shown);
    if (!lesson || !stand) return;
    this.element.setAttribute("aria-label", lesson.title);
    this.element.classList.toggle("away", !isThere);
    this.change.hidden = lesson.id !== OWN || document.body.hasAttribute("data-making");
    this.tell(lesson, stand);
    this.turn(lesson.stands.length);
    for (const each of document.querySelectorAll("[data-look]")) each.classList.toggle("looked", each.getAttribute("data-look") === stand.look);
  }

  /** The step, its sentence and its guess. @param {import("./shelf.js").Lesson} lesson @param {import("./shelf.js").Stand} stand */
  tell({ title, stands }, stand) {
    const { step, numbers, guess } = this.teaching;
    this.count.replaceChildren(make("b", {}, title), ` ${say("lesson.count", { step, of: stands.length })}`);
    this.sentence.textContent = numbers ? this.teaching.write(stand.say) : say("lesson.reckoning");
    this.sentence.classList.toggle("reckoning", !numbers);
    if (this.place.firstChild !== (guess?.element ?? null)) this.place.replaceChildren(...(guess ? [guess.element] : []));
    if (numbers) guess?.show();
  }

  /** Where the way leads from here. @param {number} of */
  turn(of) {
    const { step, guess, isThere } = this.teaching;
    dress(this.back, { disabled: step === 1 });
    dress(this.next, { disabled: step === of && (!guess || guess.shown), hidden: !isThere });
    this.next.textContent = say(guess && !guess.shown ? "lesson.reveal" : "lesson.next");
    dress(this.again, { hidden: isThere });
    this.again.textContent = say("lesson.again", { step });
  }
}

// The list of lessons, and what opens one.

import { byId, make } from "../dom.js";
import { say } from "../words.js";
import { teach } from "./lesson.js";
import { lessonCalled, listLessons } from "./shelf.js";

/** @typedef {import("../session.js").Session} Session */

/** @param {Session} session */
export function open(session) {
  const teaching = teach(session);
  teaching.heed(); // a step may be on the bench already
  const list = make("ol", { class: "lesson-list" });
  const dialog = make("dialog", { class: "lessons", "aria-labelledby": "lessons-title" },
    make("h2", { id: "lessons-title" }, say("lessons.title")), make("p", { class: "hint" }, say("lessons.hint")), list,
    make("button", { type: "button", class: "primary", onclick: () => dialog.close() }, say("close")));
  document.body.append(dialog);

  /** @param {string} id */
  async function begin(id) {
    const lesson = await lessonCalled(session, id);
    dialog.close();
    if (!lesson) return;
    await teaching.start(lesson, 1);
    byId("stage").scrollIntoView({ block: "start" });
    teaching.next.focus();
  }

  return {
    async choose() {
      const all = await listLessons();
      list.replaceChildren(...all.map(({ id, title }, index) =>
        make("li", {}, make("button", { type: "button", onclick: () => begin(id) }, make("span", { class: "number" }, String(index + 1)), title))));
      dialog.showModal();
    },
  };
}

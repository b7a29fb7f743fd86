// The list of lessons, what opens one, and the way to making one.

import { bring } from "../asking.js";
import { byId, make } from "../dom.js";
import { once } from "../once.js";
import { OWN } from "../own.js";
import { say } from "../words.js";
import { teach } from "./lesson.js";
import { lessonCalled, listLessons } from "./shelf.js";

/** @typedef {import("../session.js").Session} Session */

/** @param {Session} session @param {() => import("../kernel.js").BenchLike} another a bench to try a lesson on */
export function open(session, another) {
  const teaching = teach(session);
  const making = once(async () => {
    const { makeLesson } = await bring(() => import("../making/making.js"), ["making"], ["making/making.css"]);
    return makeLesson(session, another, teaching);
  });
  teaching.heed(); // a step may be on the bench already
  const list = make("ol", { class: "lesson-list" });
  const dialog = make("dialog", { class: "lessons", "aria-labelledby": "lessons-title" },
    make("h2", { id: "lessons-title" }, say("lessons.title")), make("p", { class: "hint" }, say("lessons.hint")), list,
    make("p", { class: "hint" }, say("lessons.make.hint")),
    make("div", { class: "lessons-end" }, make("button", { type: "button", class: "lessons-make", onclick: () => edit() }, say("lessons.make")),
      make("button", { type: "button", class: "primary", onclick: () => dialog.close() }, say("close"))));
  document.body.append(dialog);

  /** @param {import("./shelf.js").Lesson} [lesson] one to go on with; the one kept last otherwise */
  async function edit(lesson) {
    dialog.close();
    const made = await making("making");
    if (lesson?.id === OWN) made.goOn(lesson, teaching.step);
    await made.open();
  }
  teaching.board.change.addEventListener("click", () => edit(teaching.lesson ?? undefined));

  /** @param {string} id */
  async function begin(id) {
    const lesson = await lessonCalled(session, id);
    dialog.close();
    if (!lesson) return;
    await teaching.start(lesson, 1);
    byId("stage").scrollIntoView({ block: "start" });
    teaching.board.next.focus();
  }

  return {
    edit,
    async choose() {
      const all = await listLessons(session);
      list.replaceChildren(...all.map(({ id, title }, index) =>
        make("li", {}, make("button", { type: "button", onclick: () => begin(id) }, make("span", { class: "number" }, String(index + 1)), title))));
      dialog.showModal();
    },
  };
}

// The lesson being made as a file: saved, opened again, or begun anew from the bench or from a lesson of ours.

import { make } from "../dom.js";
import { tell } from "../field.js";
import { hand, jsonOf, readFile } from "../files.js";
import { lessonCalled, listLessons } from "../lesson/shelf.js";
import { say } from "../words.js";
import { fileOf } from "./draft.js";
import { fileName } from "./kept.js";

/** @typedef {import("./making.js").Making} Making */

export class Files {
  /** @param {Making} making */
  constructor(making) {
    this.making = making;
    this.told = make("p", { class: "making-told", role: "status" });
    this.fault = make("p", { class: "fault", role: "alert", hidden: true, id: "making-file-fault" });
    this.file = make("input", { type: "file", accept: ".json,application/json", id: "making-file", "aria-describedby": "making-file-fault", onchange: () => this.open() });
    this.from = make("select", { id: "making-begin" }, make("option", { value: "" }, say("making.begin.bench")));
    this.element = make("div", { class: "making-files" },
      make("div", { class: "making-row" }, make("button", { type: "button", class: "primary", onclick: () => this.save() }, say("making.save"))), this.told,
      make("div", { class: "making-row" }, make("label", { for: "making-file" }, say("making.open")), this.file), this.fault,
      make("div", { class: "making-row" }, make("label", { for: "making-begin" }, say("making.begin")), this.from,
        make("button", { type: "button", onclick: () => this.begin() }, say("making.begin.go"))));
    listLessons(making.session).then((all) => this.from.append(...all.map(({ id, title }) => make("option", { value: id }, say("making.begin.copy", { title })))));
  }

  show() {
    tell(this.fault, "", this.file);
    this.told.textContent = "";
  }

  save() {
    const { draft } = this.making;
    const name = fileName(draft.title);
    hand(jsonOf(fileOf(draft)), name);
    this.told.textContent = say("making.saved", { name });
  }

  async open() {
    const [given] = this.file.files ?? [];
    this.file.value = "";
    if (!given) return;
    const { name } = given;
    const found = await readFile(given);
    const why = "why" in found ? say(`making.${found.why}`, { name }) : this.refused(found.read, name);
    if (!why && "read" in found) {
      this.making.begin(this.making.trial.draftOf(found.read));
      this.told.textContent = say("making.opened", { name });
    }
    tell(this.fault, why, this.file);
  }

  /** @param {any} read @param {string} name */
  refused(read, name) {
    const why = this.making.trial.wrong(read);
    return why && `${say("making.refused", { name })} ${why}`;
  }

  async begin() {
    const { making } = this;
    const lesson = this.from.value ? await lessonCalled(making.session, this.from.value) : null;
    making.begin(lesson ? making.trial.draftOf(lesson.file) : making.fresh());
    this.told.textContent = say("making.begun");
  }
}

// A second bench, on which a lesson is tried before it is taken.

import { faultSentence } from "../field.js";
import { standsOf } from "../lesson/shelf.js";
import { say } from "../words.js";
import { draftOf } from "./draft.js";

/** @typedef {import("../kernel.js").Fault} Fault */

export class Trial {
  /** @param {import("../kernel.js").BenchLike} bench that nobody sees */
  constructor(bench) {
    this.bench = bench;
  }

  /**
   * What the kernel finds wrong with a lesson, as sentences.
   * @param {Record<string, any>} file
   */
  wrong(file) {
    const faults = this.bench.load(/** @type {any} */ (file));
    return faults.map((/** @type {Fault} */ fault) => faultSentence({ ...fault, path: placeOf(fault.path) })).join(" ");
  }

  /**
   * A lesson's file as a draft; a scenario without steps becomes a lesson of one.
   * @param {Record<string, any>} file that the kernel takes
   */
  draftOf(file) {
    const whole = (/** @type {any} */ scenario) => {
      this.bench.load(scenario);
      return this.bench.scenario();
    };
    const lesson = file.lesson?.length > 0 ? file.lesson : [{ say: say("making.say.new") }];
    return draftOf(file, standsOf({ ...file, lesson }), whole);
  }
}

/** A place in a lesson's file, by the word its field has in the panel. @param {string} path */
function placeOf(path) {
  const part = path.replace(/^lesson\[\d+\]\.|^(?=title|about)/, "making.").replace("making.title", "making.name");
  const choice = /choices\[(\d+)\]/.exec(part);
  return choice ? say("making.ask.choice", { choice: Number(choice[1]) + 1 }) : part.replace(/^making\.set\.chain\./, "");
}

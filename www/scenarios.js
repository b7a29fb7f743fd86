// The scenarios of the menu: their names at once, each file when it is first wanted.

import { language } from "./language.js";
import { say } from "./words.js";

/** @typedef {import("./kernel.js").Scenario} Scenario */

export class Scenarios {
  /** @type {Map<string, Scenario>} */
  files = new Map();
  /** @type {Map<string, string>} names of those that the menu does not list */
  names = new Map();
  /** The opened file that is here, as an address carries it. */
  carried = "";

  /** @param {{id: string, file: string, title: string}[]} list */
  constructor(list) {
    this.list = list;
  }

  /** The ids in the order of the menu. */
  get ids() {
    return this.list.map(({ id }) => id);
  }

  /** @param {string} id */
  has(id) {
    return this.ids.includes(id) || this.files.has(id);
  }

  /** @param {string} id one that the menu does not list */
  isBrought(id) {
    return this.names.has(id);
  }

  /** @param {string} id */
  nameOf(id) {
    return this.names.get(id) ?? say(this.list.find((each) => each.id === id)?.title ?? id);
  }

  /**
   * A scenario that has been fetched.
   * @param {string} id
   */
  get(id) {
    return this.files.get(id);
  }

  /**
   * Takes up one that the menu does not list.
   * @param {string} id
   * @param {{name: string, scenario: Scenario}} named
   */
  set(id, { name, scenario }) {
    this.names.set(id, name);
    this.files.set(id, scenario);
  }

  /** @param {string} id one that was taken up */
  drop(id) {
    this.names.delete(id);
    this.files.delete(id);
  }

  /**
   * Fetches a scenario, or the first of the menu where there is none of that name.
   * @param {string|undefined} id
   */
  async fetch(id) {
    if (id !== undefined && this.files.has(id)) return;
    const { id: known, file } = this.list.find((each) => each.id === id) ?? this.list[0];
    if (this.files.has(known)) return;
    this.files.set(known, await this.file(file));
  }

  /**
   * A file of ours, with its texts in the page's language where it has them.
   * @param {string} name
   */
  async file(name) {
    const taken = async (/** @type {string} */ path) => {
      const answer = await fetch(`scenarios/${path}`);
      if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
      return answer.json();
    };
    const [file, texts] = await Promise.all([taken(name), language === "en" ? {} : taken(`${language}/${name}`)]);
    return worded(file, texts);
  }
}

/**
 * A file with other texts in the same places.
 * @param {any} file
 * @param {any} texts
 */
function worded(file, texts) {
  if (typeof texts !== "object") return texts;
  const whole = Array.isArray(file) ? [...file] : { ...file };
  for (const [key, text] of Object.entries(texts)) whole[key] = worded(whole[key], text);
  return whole;
}

/** Fetches the list of the menu. */
export async function loadScenarios() {
  return new Scenarios(await (await fetch("scenarios/index.json")).json());
}

// The scenarios of the menu: their names at once, each file when it is first wanted.

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
    const answer = await fetch(`scenarios/${file}`);
    if (!answer.ok) throw new Error(`${file}: ${answer.status}`);
    this.files.set(known, await answer.json());
  }
}

/** Fetches the list of the menu. */
export async function loadScenarios() {
  return new Scenarios(await (await fetch("scenarios/index.json")).json());
}

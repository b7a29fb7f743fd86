// The link to a step, and the same as a mark that a phone's camera reads, where others can follow it.

import { toAddress } from "../address.js";
import { draw, make } from "../dom.js";
import { labour } from "../labour.js";
import { OWN } from "../own.js";
import { say } from "../words.js";

/** @typedef {import("./lesson.js").Teaching} Teaching */

/** Light squares about a mark, as its standard asks (ISO/IEC 18004, from memory). */
const QUIET = 4;
const LOOPBACK = /^(localhost|.*\.localhost|127\.\d+\.\d+\.\d+|\[::1\])$/;

/**
 * Whether only this machine can follow an address.
 * @param {URL} address
 */
const isHere = ({ protocol, hostname }) => !/^https?:$/.test(protocol) || LOOPBACK.test(hostname);

/**
 * A mark in black on white whatever the page's colours: cameras want it so.
 * @param {{size: number, dark: string}} mark
 */
function picture({ size, dark }) {
  const squares = [...dark].map((each, at) => (each === "1" ? `M${at % size} ${Math.floor(at / size)}h1v1h-1z` : "")).join("");
  const side = size + 2 * QUIET;
  return draw("svg", { class: "lesson-mark", viewBox: `${-QUIET} ${-QUIET} ${side} ${side}`, role: "img", "aria-label": say("lesson.link.mark"), "shape-rendering": "crispEdges" },
    draw("rect", { x: -QUIET, y: -QUIET, width: side, height: side, fill: "#fff" }), draw("path", { d: squares, fill: "#000" }));
}

export class Link {
  /** @param {Teaching} teaching */
  constructor(teaching) {
    this.teaching = teaching;
    this.title = make("h2", { id: "lesson-link-title" });
    this.address = make("input", { type: "text", readonly: true, "aria-label": say("lesson.link.address") });
    this.told = make("p", { class: "lesson-link-told", role: "status" });
    this.place = make("div", { class: "lesson-link-mark" });
    this.dialog = make("dialog", { class: "lesson-link-dialog", "aria-labelledby": "lesson-link-title" }, this.title,
      make("div", { class: "lesson-link-row" }, this.address, make("button", { type: "button", onclick: () => this.copy() }, say("lesson.link.copy"))),
      make("p", { class: "hint" }, say("lesson.link.hint")), this.told, this.place,
      make("button", { type: "button", class: "primary", onclick: () => this.dialog.close() }, say("close")));
    document.body.append(this.dialog);
  }

  async copy() {
    try {
      await navigator.clipboard.writeText(this.address.value);
      this.told.textContent = say("lesson.link.copied");
    } catch {
      this.address.select();
      this.told.textContent = say("lesson.link.marked");
    }
  }

  async show() {
    const { lesson, stand, step } = this.teaching;
    if (!lesson || !stand) return;
    const address = new URL(toAddress(this.teaching.workOf(lesson, stand)), location.href);
    this.title.textContent = say("lesson.link.title", { step });
    this.address.value = address.href;
    const why = lesson.id === OWN ? "lesson.link.own" : isHere(address) ? "lesson.link.here" : "";
    this.told.textContent = why && say(why);
    this.place.replaceChildren();
    this.dialog.showModal();
    if (why) return;
    const mark = await labour("mark", "mark", {}, { text: address.href }).catch(() => null);
    if (mark && this.address.value === address.href) this.place.replaceChildren(picture(mark));
  }
}

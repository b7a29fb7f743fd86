// The outlines of A over the drawing, in the same hand: made by the kernel's worker, painted over the canvas.

import { withSections } from "../answered.js";
import { byId } from "../dom.js";
import { Paper } from "../leaves.js";
import { questionOf } from "../questions.js";
import { textPx } from "../stage.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";

/** @typedef {import("../session.js").Session} Session */

/** Pitches that differ by more than this share are of chains too unlike to be laid over each other. */
const FAR = 0.1;

export class Ghost {
  paper = new Paper("ghost");
  name = "";
  shown = false;

  /**
   * @param {Session} session
   * @param {import("./shadow.js").Shadow} shadow A on its own bench
   */
  constructor(session, shadow) {
    this.session = session;
    this.shadow = shadow;
    /** @type {Steady<import("../leaves.js").Leaves>} */
    this.steady = new Steady("ghost", "compare", () => this.show());
    this.field = byId("field");
    new ResizeObserver(() => this.shown && this.want(this.name)).observe(this.field);
  }

  /** Whether A's pitch is so far from this chain's that its outlines would not lie over it. */
  get apart() {
    const [a, b] = [this.shadow, this.session].map(({ state }) => state.sizes.pitch_mm);
    return Math.abs(a - b) > FAR * b;
  }

  /** @param {string} name */
  want(name) {
    const { session, shadow } = this;
    this.name = name;
    if (questionOf(session.work.ask).open || session.worn_mm > 0 || this.apart) return this.clear(); // A is drawn as new only
    this.shown = true;
    const { at, held, springy, corner, how } = { ...session.work, ...(session.pulling || session.work.pulls.length > 0 ? { at: session.live.amplitude, held: null } : {}) };
    const { clientWidth: width_px, clientHeight: height_px } = this.field;
    const ghost = {
      how, at, held, springy, corner, a_springy: shadow.work.springy, times: session.state.factor.value,
      width_px, height_px, text_px: textPx(), views: session.bench.views(), name: say("compare.a"),
    };
    this.steady.want(plain(session.bench.scenario()), { ghost, a: plain(shadow.bench.scenario()) });
  }

  show() {
    if (!this.shown || this.steady.stale || !this.steady.answer) return;
    this.paper.show(this.steady.answer, say("compare.ghost", { name: this.name }));
    const canvas = byId("drawing");
    if (this.paper.picture.previousElementSibling !== canvas) canvas.after(this.paper.picture);
  }

  clear() {
    this.shown = false;
    this.paper.picture.remove();
  }
}

/** What can be seen of a scenario on the stage. @param {import("../kernel.js").Scenario} scenario */
const plain = (scenario) => withSections(scenario, ["load", "drive", "limits"]);

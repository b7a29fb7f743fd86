// The outlines of A over the drawing, in the same hand: made by the kernel's worker, painted over the canvas, clear of its letters.

import { withSections } from "../answered.js";
import { byId } from "../dom.js";
import { textPx } from "../stage.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";
import { Film } from "./film.js";
import { lettersOf } from "./letters.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../kernel.js").BenchLike} BenchLike */
/** The size of a picture and of its letters, px. @typedef {{width_px: number, height_px: number, text_px: number}} Size */

/** Pitches that differ by more than this share are of chains too unlike to be laid over each other. */
const FAR = 0.1;
const SMALL_PX = 2;

/** @type {Ghost|null} that of the chain which is held now */
let standing = null;
export const ghostNow = () => standing;

export class Ghost {
  film = new Film();
  name = "";

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
    new ResizeObserver(() => standing === this && this.want(this.name)).observe(this.field);
  }

  /** Whether its outlines would not lie over this chain. */
  get apart() {
    return isApart(this.shadow, this.session);
  }

  /**
   * What the worker is asked about A over a picture.
   * @param {BenchLike} bench what is on the picture
   * @param {Size} size
   * @param {Partial<import("../work.js").Work>} [hand] how the chain is held there, where it is not as on the stage
   */
  asked(bench, size, hand = {}) {
    const { session, shadow } = this;
    const pulled = session.pulling || session.work.pulls.length > 0 ? { at: session.live.amplitude, held: null } : {};
    const { at, held, springy, corner, how } = { ...session.work, ...pulled, ...hand };
    return {
      ghost: {
        how, at, held, springy, corner, a_springy: shadow.work.springy, worn_mm: session.stood_worn_mm, a_worn_mm: shadow.stood_worn_mm,
        times: session.state.factor.value, ...size, views: bench.views(), name: say("compare.a"),
      },
      a: plain(shadow.bench.scenario()),
    };
  }

  /** @param {string} name */
  want(name) {
    this.name = name;
    if (this.apart) return this.clear();
    standing = this;
    const { clientWidth: width_px, clientHeight: height_px } = this.field;
    if (width_px < SMALL_PX || height_px < SMALL_PX) return this.film.remove(); // no drawing is shown
    const { bench } = this.session;
    this.steady.want(plain(bench.scenario()), this.asked(bench, { width_px, height_px, text_px: textPx() }));
    this.show();
  }

  show() {
    if (standing !== this || this.steady.stale || !this.steady.answer || this.field.clientWidth < SMALL_PX) return;
    const { bench, lit } = this.session;
    this.film.show(this.steady.answer, say("compare.ghost", { name: this.name }), lettersOf(bench, lit));
    this.film.lay(byId("drawing"));
  }

  clear() {
    if (standing === this) standing = null;
    this.film.remove();
  }
}

/**
 * Whether two chains' pitches are so far from each other that outlines of one would not lie over the other.
 * @param {Session} a
 * @param {Session} b
 */
export function isApart(a, b) {
  const [one, other] = [a, b].map(({ state }) => state.sizes.pitch_mm);
  return Math.abs(one - other) > FAR * other;
}

/** What can be seen of a scenario on the stage. @param {import("../kernel.js").Scenario} scenario */
export const plain = (scenario) => withSections(scenario, ["load", "drive", "limits"]);

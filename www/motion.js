// Moving the chain: scrub, step, play and pause; and the first five seconds.

import { byId, dress, write } from "./dom.js";
import { reading } from "./work.js";
import { say } from "./words.js";

/** @typedef {import("./stage.js").Stage} Stage */

const STEP = 0.05;
const still = matchMedia("(prefers-reduced-motion: reduce)");

export class Motion {
  scrub = /** @type {HTMLInputElement} */ (byId("scrub"));
  play = byId("play");
  frame = 0;

  /** @param {Stage} stage */
  constructor(stage) {
    this.stage = stage;
    this.session = stage.session;
    this.scrub.addEventListener("input", () => this.to(Number(this.scrub.value), false));
    this.scrub.addEventListener("change", () => this.to(Number(this.scrub.value), true));
    byId("step-back").addEventListener("click", () => this.to(this.session.live.amplitude - STEP, true));
    byId("step-on").addEventListener("click", () => this.to(this.session.live.amplitude + STEP, true));
    this.play.addEventListener("click", () => (this.frame ? this.pause() : this.run()));
    this.session.listen(() => this.show(), false);
    for (const [id, word] of [["step-back", "step.back"], ["step-on", "step.on"]]) {
      dress(byId(id), { "aria-label": say(word), title: say(word) });
    }
  }

  low() {
    return ["bend", "load"].includes(this.session.work.how) ? 0 : -1;
  }

  /**
   * @param {number} at
   * @param {boolean} done
   */
  to(at, done) {
    this.pause();
    this.session.move({ at: Math.max(this.low(), Math.min(1, at)), held: null }, done);
  }

  /** Plays from where it stands, as a function of time alone. */
  run() {
    const { live, bench } = this.session;
    const from = live.amplitude;
    const start = performance.now();
    const draw = (/** @type {number} */ now) => {
      this.frame = requestAnimationFrame(draw);
      this.session.move({ at: bench.share_after(from, (now - start) / 1000), held: null }, false);
    };
    this.frame = requestAnimationFrame(draw);
    this.show();
  }

  pause() {
    if (!this.frame) return;
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.session.commit();
    this.show();
  }

  show() {
    const { work, live, state: { fits } } = this.session;
    dress(this.scrub, { min: this.low(), max: 1, disabled: !fits });
    if (document.activeElement !== this.scrub || this.frame) this.scrub.value = String(live.amplitude);
    const now = reading(work.how, live);
    write(byId("now"), fits ? now : "");
    this.scrub.setAttribute("aria-valuetext", now);
    const word = this.frame ? "pause" : "play";
    dress(this.play, { "aria-label": say(word), title: say(word), "data-on": this.frame > 0, disabled: !fits });
    for (const id of ["step-back", "step-on"]) dress(byId(id), { disabled: !fits });
  }
}

const OPENING_MS = 2400;
const INPUTS = ["pointerdown", "keydown", "wheel", "touchstart"];

/**
 * The one movement on load: straight, the swing to the stop, the faces one by one, the sentence.
 * Any input ends it; with reduced motion it is over at once.
 * @param {Stage} stage
 * @returns {Promise<void>} resolved when it is over
 */
export function openingMovement(stage) {
  const { session } = stage;
  const { body } = document;
  if (still.matches || !session.bench.state().fits) return Promise.resolve();
  return new Promise((over) => {
    session.bench.scrub(1);
    const touching = session.bench.contacts().filter((contact) => contact.number).map((contact) => contact.id);
    const start = performance.now();
    let frame = 0;
    const end = () => {
      cancelAnimationFrame(frame);
      for (const input of INPUTS) removeEventListener(input, end, true);
      body.classList.remove("opening");
      session.hidden = [];
      session.move({ at: 1 }, false);
      over();
    };
    const draw = (/** @type {number} */ now) => {
      if (now - start >= OPENING_MS) return end();
      frame = requestAnimationFrame(draw);
      const { share, lit } = session.bench.opening(Math.max(0, now - start) / 1000, touching.length);
      session.hidden = touching.slice(lit);
      session.bench.scrub(share);
      session.tell("pose");
    };
    for (const input of INPUTS) addEventListener(input, end, true);
    body.classList.add("opening");
    frame = requestAnimationFrame(draw);
  });
}

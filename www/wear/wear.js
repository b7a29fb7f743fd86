// Question 5: what wear adds. The worn joint, its wheel, a rule and a gauge, the heights on the teeth, the room to move.

import { amend } from "../amend.js";
import { Answered } from "../answered.js";
import { Chart } from "../chart.js";
import { beside } from "../chart-beside.js";
import { notesOfA, readingsWithA } from "../compare/note.js";
import { make } from "../dom.js";
import { Field } from "../field.js";
import { Steady } from "../steady.js";
import { say } from "../words.js";
import { chartOf } from "./chart.js";
import { jointPicture } from "./joint.js";
import { roomPicture } from "./room.js";
import { besides, inWords, readings, underPictures, wearSentences, workedOut } from "./said.js";
import { Stand } from "./stand.js";
import { stripPicture } from "./strip.js";
import { wheelPicture } from "./wheel.js";
import { widthOf } from "../wide.js";

/** @typedef {import("../session.js").Session} Session */
/** @typedef {import("../session.js").What} What */
/** @typedef {import("./types.js").WearState} WearState */

const QUIET_MS = 250;
/** The pictures that a step of a lesson can point at. */
const LOOKS = /** @type {Record<string, string>} */ ({ "wear.joint": "joint", "wear.wheel": "wheel", "wear.strip": "pitches" });

/** @param {Session} session */
export const open = (session) => new Wear(session);

/** @extends {Answered<WearState>} */
class Wear extends Answered {
  timer = 0;

  /** @param {Session} session */
  constructor(session) {
    super(session, "wear");
    /** @type {Steady<import("../kernel.js").Answer>} */
    this.friction = new Steady("wear.friction", "wear", () => this.show());
    this.chart = new Chart();
    this.field = new Field({ label: say("wear.given"), hint: say("wear.given.hint"), slider: true }, (mm, done) => this.set(mm, done));
    this.field.element.classList.add("wear-given");
    this.stand = new Stand(session);
    this.readings = make("dl", { class: "wear-readings" });
    const holder = () => make("div");
    this.pictures = { joint: holder(), wheel: holder(), strip: holder(), room: holder() };
    this.said = make("ul", {});
    const aside = make("section", { class: "wear-aside", "aria-label": say("wear.besides"), hidden: true }, make("h2", {}, say("wear.besides")), this.said);
    this.lay(this.sheet(), aside);
  }

  sheet() {
    const figure = (/** @type {string} */ word, /** @type {Node[]} */ ...inside) =>
      make("figure", { "data-look": LOOKS[word] }, make("figcaption", { class: "wear-title" }, say(word)), ...inside);
    const { joint, wheel, strip, room } = this.pictures;
    return make("section", { class: "wear none", "aria-label": say("ask.wear") },
      this.field.element, this.stand.element, this.readings,
      make("div", { class: "wear-pair" }, figure("wear.joint", joint), figure("wear.wheel", wheel)),
      figure("wear.strip", strip),
      figure("wear.chart", this.chart.picture, this.chart.key),
      figure("wear.room", room),
      this.fold("wear.twin", inWords), this.chart.table(say("wear.table")), this.fold("work.title", workedOut));
  }

  /** The chain, its drive and its wear. */
  get scenario() {
    return this.sections("drive", "load", "wear");
  }

  /** @param {Set<What>} what */
  heed(what) {
    const { scenario } = this;
    this.steady.want(scenario);
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.session.asked === this && this.friction.want(scenario, { friction: true }), QUIET_MS);
    this.heard(what);
  }

  /**
   * A wear that is given replaces one that is worked out.
   * @param {number} joint_wear_mm
   * @param {boolean} done
   */
  set(joint_wear_mm, done) {
    return this.session.alter((bench) => {
      const faults = bench.set("wear", { joint_wear_mm });
      if (faults.length === 0) this.stand.with(bench, joint_wear_mm);
      return faults;
    }, done);
  }

  /** @param {WearState} state */
  told(state) {
    return wearSentences(state);
  }

  /** @param {WearState} state */
  fill(state) {
    this.field.show(state.section.joint_wear_mm, { low: 0, high: state.limits.to_mm });
    if (this.session.asked === this && !this.waiting) this.stand.show(state.section.joint_wear_mm);
    const { joint, wheel, strip, room } = this.pictures;
    const [a, slide] = [this.beside, (/** @type {number} */ mm, /** @type {boolean} */ done) => this.set(mm, done)];
    amend(this.readings, ...readingsWithA(readings(state), a ? readings(a) : []));
    const note = notesOfA(underPictures, state, a);
    amend(joint, ...jointPicture(state.joint, widthOf(joint, this.show)), ...(note.joint ?? []));
    amend(wheel, ...wheelPicture(state.wheel, widthOf(wheel, this.show)), ...(note.wheel ?? []));
    amend(strip, ...stripPicture(state, widthOf(strip, this.show)), ...(note.strip ?? []));
    amend(room, ...roomPicture(state, widthOf(room, this.show), a), ...(note.room ?? []));
    this.chart.show(beside(chartOf(state, slide), a && chartOf(a, slide), ["main", "third"]));
    amend(this.said, ...besides(state, this.friction.known));
  }
}

// The hall: stage, sentence and step alone, large, by keys and clickers; and what to say, in a second window in step.

import { bring } from "../asking.js";
import { dress, make } from "../dom.js";
import { switchTheme } from "../theme.js";
import { say } from "../words.js";
import { widenLines } from "./wider.js";

/** @typedef {import("./lesson.js").Teaching} Teaching */

const ON = ["ArrowRight", "ArrowDown", "PageDown", " ", ".", "Enter"];
/**
 * What a question draws is enlarged by the window's height over the first, px, so that letters of 11 px are a fortieth of
 * it; the sentence by the height over the second, so that 16 px are three hundredths.
 */
const [DRAWN_FROM_PX, TYPE_FROM_PX] = [432, 533];
const BACK = ["ArrowLeft", "ArrowUp", "PageUp"];
/** What keeps these keys for itself. */
const OWN = "input, select, textarea, summary, dialog, [role=slider], #sheet, #grips *";

export class Hall {
  channel = new BroadcastChannel("lightgap.lesson");
  /** What the second window was told last. */
  told = "";

  /** @param {Teaching} teaching */
  constructor(teaching) {
    this.teaching = teaching;
    this.enter = make("button", { type: "button", class: "lesson-hall", onclick: () => this.toggle() });
    this.notes = make("button", { type: "button", class: "lesson-notes", onclick: () => this.open() }, say("lesson.notes"));
    // one file holds one window
    if ("addressOnShelf" in globalThis) this.notes.hidden = true;
    this.buttons = [this.enter, this.notes];
    bring(async () => {}, [], ["lesson/hall.css"]);
    const enlarge = () => {
      const { style } = document.documentElement;
      style.setProperty("--hall-zoom", String(Math.max(1, innerHeight / DRAWN_FROM_PX)));
      style.setProperty("--hall-type", String(Math.max(1, innerHeight / TYPE_FROM_PX)));
    };
    addEventListener("resize", enlarge);
    enlarge();
    this.channel.addEventListener("message", ({ data }) => data === "here" && this.tell());
  }

  get is() {
    return document.body.hasAttribute("data-hall");
  }

  toggle() {
    if (this.is) this.leave();
    else this.turn(true);
  }

  leave() {
    if (this.is) this.turn(false);
  }

  /** @param {boolean} on */
  turn(on) {
    for (const each of [document.body, document.documentElement]) each.toggleAttribute("data-hall", on);
    widenLines(on);
    switchTheme(null);
    this.show();
  }

  open() {
    open("say.html", "lightgap-say", "popup,width=560,height=640");
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    const { teaching } = this;
    if (!teaching.lesson || event.ctrlKey || event.metaKey || event.altKey || document.querySelector("dialog[open]")) return;
    const target = /** @type {Element} */ (event.target);
    const held = target.matches(OWN) || (target.matches("button, a") && (event.key === " " || event.key === "Enter"));
    const plain = /** @type {Record<string, () => void>} */ ({ h: () => !this.is && this.toggle(), Escape: () => this.leave(), d: () => this.is && switchTheme("other") });
    const act = plain[event.key.length === 1 ? event.key.toLowerCase() : event.key];
    if (act && !target.matches("input, textarea, select")) return act();
    if (held || (!this.is && !["PageDown", "PageUp", "."].includes(event.key))) return;
    const by = ON.includes(event.key) ? 1 : BACK.includes(event.key) ? -1 : 0;
    if (!by) return;
    event.preventDefault();
    teaching.turn(/** @type {1|-1} */ (by));
  }

  show() {
    dress(this.enter, { "aria-pressed": String(this.is) });
    dress(this.teaching.board.count, { role: this.is && "heading", "aria-level": this.is && 1 });
    this.enter.textContent = say(this.is ? "lesson.hall.out" : "lesson.hall");
    const now = JSON.stringify(this.said());
    if (now === this.told) return;
    this.told = now;
    this.tell();
  }

  /** Tells the second window where the lesson stands. */
  tell() {
    this.channel.postMessage(this.said());
  }

  said() {
    const { lesson, step, stand, guess, numbers } = this.teaching;
    if (!lesson || !stand || !numbers) return { over: say("lesson.over") };
    const after = lesson.stands[step];
    const asked = guess && { text: guess.write(guess.ask.text), hands: guess.hands, answer: guess.ask.answer,
      choices: guess.ask.choices.map((each) => guess.write(each)), because: guess.write(guess.ask.because ?? "") };
    return {
      title: lesson.title, step: say("lesson.count", { step, of: lesson.stands.length }), say: this.teaching.write(stand.say), asked,
      next: after ? say("lesson.then", { say: after.say.replace(/\{[\w.]+\}/g, "…") }) : say("lesson.last"),
      words: { lang: document.documentElement.lang, dir: document.documentElement.dir, title: say("lesson.notes"), answer: say("lesson.answer"), hands: guess?.hands.map((count) => say("lesson.hands.said", { count })) ?? [] },
    };
  }
}

// Keep and hand over: the link, the picture, the numbers, the scenario as a file; and a file opened again.

import { make } from "../dom.js";
import { faultSentence } from "../field.js";
import { labour } from "../labour.js";
import { say } from "../words.js";
import { shelve } from "../lesson/shelf.js";
import { teach } from "../lesson/lesson.js";
import { isCarried, LONGEST } from "./carry.js";
import { flat } from "./flat.js";
import { drawing, pixels, square, strip } from "./picture.js";
import { putOwn } from "./put-own.js";
import { hand, jsonOf, readFile } from "../files.js";
import { stepOf } from "../lessons.js";
import { OWN } from "../own.js";

/** @typedef {import("../session.js").Session} Session */

const WIDTHS_PX = [800, 1600, 3200];

/**
 * Hands a picture to whatever the phone shares with; where there is no such thing, as a file.
 * @param {Blob} blob
 * @param {string} name
 */
async function share(blob, name) {
  const files = [new File([blob], name, { type: blob.type })];
  if (!navigator.canShare?.({ files })) return hand(blob, name);
  await offer({ files });
}

/** Opens what a phone shares with. @param {ShareData} given */
const offer = (given) => navigator.share({ ...given, title: document.title }).catch((error) => {
  if (error.name !== "AbortError") throw error; // a visitor may change their mind
});

/** @param {Session} session */
export function open(session) {
  const told = make("p", { class: "keep-told", role: "status" });
  const fault = make("p", { class: "fault", role: "alert", hidden: true });
  const width = make("select", { id: "keep-width" }, ...WIDTHS_PX.map((px) => make("option", { value: px, selected: px === WIDTHS_PX[1] }, say("keep.px", { px }))));
  const link = make("input", { type: "text", readonly: true, id: "keep-link", "aria-label": say("keep.link") });
  const file = make("input", { type: "file", accept: ".json,application/json", id: "keep-file" });
  const name = () => session.work.on.replace(/[^\w-]/g, "-");
  const svg = () => drawing(session, Number(width.value));
  const report = () => labour("keep", "report", session.bench.scenario(), {});
  const ways = {
    copy: async () => navigator.clipboard.writeText(link.value),
    send: () => offer({ url: link.value }),
    svg: async () => hand(new Blob([await svg()], { type: "image/svg+xml" }), `${name()}.svg`),
    png: async () => hand(await pixels(await svg(), Number(width.value)), `${name()}.png`),
    square: async () => share(await pixels(await square(session)), `${name()}-square.png`),
    strip: async () => hand(await pixels(await strip(session)), `${name()}-strip.png`),
    json: async () => hand(jsonOf(await report()), `${name()}-report.json`),
    csv: async () => hand(new Blob([flat(await report())], { type: "text/csv" }), `${name()}-report.csv`),
    scenario: () => hand(jsonOf(session.bench.scenario()), `${name()}.json`),
  };
  const button = (/** @type {keyof typeof ways} */ way) => make("button", { type: "button", onclick: () => act(way) }, say(`keep.${way}`));

  /** @param {keyof typeof ways} way */
  async function act(way) {
    fault.hidden = true;
    try {
      await ways[way]();
      told.textContent = say(`keep.${way}.done`);
    } catch {
      if (way === "copy") link.select();
      told.textContent = say(`keep.${way}.failed`);
    }
  }

  /**
   * Puts a file's scenario on the bench; whatever is wrong with it, the present chain stays.
   * @param {File} given
   */
  async function take(given) {
    told.textContent = "";
    const refused = (/** @type {string} */ why) => {
      fault.textContent = why;
      fault.hidden = false;
    };
    const { name } = given;
    const found = await readFile(given);
    if ("why" in found) return refused(say(`keep.${found.why}`, { name }));
    const { read } = found;
    const faults = await putOwn(session, { name: String(read?.title ?? name), scenario: read });
    if (faults.length > 0) return refused(`${say("keep.refused", { name })} ${faults.map(faultSentence).join(" ")}`);
    dialog.close();
    if (read.lesson?.length > 0) {
      await teach(session).start(shelve(session, OWN, read), 1);
    }
  }

  async function review() {
    dialog.close();
    (await import("./sheet.js")).openSheet(session);
  }

  const part = (/** @type {string} */ word, /** @type {(Node|string)[]} */ ...children) =>
    make("section", {}, make("h3", {}, say(word)), make("div", { class: "keep-row" }, ...children));
  const dialog = make("dialog", { class: "keep", "aria-labelledby": "keep-title" },
    make("h2", { id: "keep-title" }, say("keep.title")),
    part("keep.link", link, button("copy"), ...("share" in navigator ? [button("send")] : [])),
    part("keep.picture", make("label", {}, say("keep.width"), " ", width), button("svg"), button("png"), button("square"), button("strip")),
    part("keep.numbers", button("json"), button("csv"), say("keep.numbers.hint")),
    part("keep.sheet", make("button", { type: "button", onclick: () => review() }, say("keep.sheet.open")), say("keep.sheet.hint")),
    part("keep.file", button("scenario"), make("label", { class: "keep-open", for: "keep-file" }, say("keep.open")), file),
    make("p", { class: "hint" }, say("keep.hint")), fault, told,
    make("button", { type: "button", class: "primary", onclick: () => dialog.close() }, say("close")));
  document.body.append(dialog);
  file.addEventListener("change", async () => {
    if (file.files?.[0]) await take(file.files[0]);
    file.value = "";
  });
  return {
    take,
    show() {
      link.value = location.href;
      const own = [session.work.on, stepOf(session.work.on)?.id].includes(OWN);
      told.textContent = own ? say(session.work.on === OWN && isCarried(session.work.file) ? "keep.own.carried" : "keep.own", { most: LONGEST }) : "";
      fault.hidden = true;
      if (!dialog.open) dialog.showModal();
    },
  };
}

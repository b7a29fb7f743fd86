// The stage alone, for a frame in a course page: drawing, answer, badge and the drawing in words, and a way to the whole page.

import { bring } from "../asking.js";
import { byId, make } from "../dom.js";
import { say } from "../words.js";

export async function standAlone() {
  document.body.dataset.alone = "";
  await bring(async () => {}, ["alone"], ["keep/alone.css"]);
  const link = make("a", { class: "alone-whole", target: "_blank", rel: "noopener", href: "./" }, say("alone.whole"));
  const follow = () => (link.href = location.pathname + location.hash);
  for (const moment of ["pointerenter", "focus", "click"]) link.addEventListener(moment, follow);
  byId("stage").append(link);
}

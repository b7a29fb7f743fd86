// A on a picture that is handed over: its outlines in the same hand, and under the picture what it is and what it answers.

import { sentences } from "../answer.js";
import { labour } from "../labour.js";
import { theme } from "../theme.js";
import { say } from "../words.js";
import { Film } from "./film.js";
import { ghostNow, plain } from "./ghost.js";
import { lettersOf } from "./letters.js";

/** @typedef {import("../kernel.js").BenchLike} BenchLike */

/**
 * The outlines of A over what is on a bench, as part of its SVG document; nothing where none is held or none would show.
 * @param {BenchLike} bench
 * @param {import("./ghost.js").Size} size
 * @param {Partial<import("../work.js").Work>} [hand]
 * @param {Record<string, string>} [inks] by role
 */
export async function ghostOver(bench, size, hand, inks = theme()) {
  const ghost = ghostNow();
  if (!ghost) return "";
  const leaves = /** @type {import("../leaves.js").Leaves|null} */ (await labour("ghost.paper", "compare", plain(bench.scenario()), ghost.asked(bench, size, hand)));
  if (!leaves || leaves.leaves.length === 0) return "";
  const film = new Film();
  film.show(leaves, "", lettersOf(bench));
  return film.written(inks);
}

/** What is said of A under a picture. */
export function ghostCaption() {
  const ghost = ghostNow();
  return ghost ? say("compare.caption", { name: ghost.name, answer: sentences(ghost.shadow).answer }) : "";
}

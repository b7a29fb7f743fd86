// Wiring: words, kernel, scenarios, then every part of the page.

import { startAnswer } from "./answer.js";
import { bring, startAsking } from "./asking.js";
import { startBadge } from "./badge.js";
import { startChange } from "./change.js";
import { startCompare } from "./compare.js";
import { startCorners } from "./corners.js";
import { byId } from "./dom.js";
import { startFaults } from "./fault.js";
import { startFound } from "./found.js";
import { Grips } from "./grips.js";
import { startHeader, startQuestions } from "./header.js";
import { openKernel } from "./kernel.js";
import { turned } from "./language.js";
import { Lens } from "./lens.js";
import { shelveAsked, startLessons } from "./lessons.js";
import { Motion, openingMovement } from "./motion.js";
import { once } from "./once.js";
import { restoreOwn, startKeeping } from "./own.js";
import { startRoom } from "./room.js";
import { loadScenarios } from "./scenarios.js";
import { Session } from "./session.js";
import { Stage } from "./stage.js";
import { startTheme } from "./theme.js";
import { fillPage, loadWords, say } from "./words.js";
import { startWorking } from "./working.js";

/** What is read when it is opened, and fetched then. @param {Session} session */
function startNotes(session) {
  const dialog = /** @type {HTMLDialogElement} */ (byId("cautions"));
  const notes = once(async () => (await bring(() => import("./notes.js"), ["notes"], [])).write());
  byId("reading-fold").addEventListener("toggle", () => notes(""));
  byId("left-out").addEventListener("click", () => {
    dialog.showModal();
    notes("");
  });
  byId("cautions-close").addEventListener("click", () => dialog.close());
  const words = once(async () => (await bring(() => import("./glossary/glossary.js"), ["glossary"], ["glossary/glossary.css"])).open(session));
  byId("glossary").addEventListener("click", async () => (await words("")).show());
}

/** What sets a load is fetched when one is first shown; where it did not come, every change tries again. @param {Session} session */
function startLoad(session) {
  const opened = once(async () => (await bring(() => import("./load.js"), ["rest"], ["load.css"])).open(session));
  session.listen(() => session.work.how === "load" && opened("").catch(() => {}));
}

/**
 * Words that the first screen can do without come once it stands; where they did not, every change tries again.
 * @param {Session} session
 */
function startSpeaking(session) {
  let whole = false;
  session.listen(() => whole || loadWords("rest").then(() => {
    if (!whole) session.tell("unit");
    whole = true;
  }, () => {}));
}

async function start() {
  const { hash, search } = location;
  const alone = /[?&]stage=alone\b/.test(search);
  if (alone) await (await import("./keep/alone.js")).standAlone();
  const words = await loadWords("first");
  fillPage();
  const linked = hash.length > 1; // what an address shows may need any word
  const [{ bench, another }, scenarios] = await Promise.all([openKernel(words), loadScenarios(), linked ? loadWords("rest") : words]);
  const session = new Session(bench, scenarios);
  restoreOwn(session);
  await shelveAsked(session);
  const asked = await session.readAddress();
  if (!asked) await session.begin(session.work);
  startNotes(session);
  startSpeaking(session);
  startAsking(session);
  startHeader(session);
  startQuestions(session);
  startLessons(session, another);
  startKeeping(session);
  startCompare(session);
  startChange(session);
  startLoad(session);
  startCorners(session);
  startBadge(session);
  startFound(session);
  startRoom(session);
  startAnswer(session);
  startWorking(session, another);
  const stage = new Stage(session);
  new Grips(stage);
  new Motion(stage);
  const lens = new Lens(stage);
  startTheme(() => {
    stage.paint();
    lens.show();
  });
  const resumed = session.history.resume(session.work);
  session.writeAddress();
  session.tell("chain", "pose", "look", "ask", "unit", "lit");
  document.body.classList.add("ready");
  if ((resumed || !asked) && !alone) import("./keep/resume.js").then((kept) => kept.resume(session, resumed, hash));
  if (turned()) import("./keep/turning.js").then(({ stand }) => stand());
  if (!asked) await openingMovement(stage);
}

startFaults();
start().then(() => import("./keep/offline.js").catch(() => {}), (fault) => {
  const place = byId("failure");
  place.hidden = false;
  place.textContent = `${say("failure")} ${fault.message}`;
  throw fault;
});

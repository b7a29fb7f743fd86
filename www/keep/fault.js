// Tells of a fault: one sentence, ways back, and a report that can be copied. The address holds every finished change, so
// that a reload starts the kernel again from the last good state.

import { bring } from "../asking.js";
import { make } from "../dom.js";
import { say } from "../words.js";
import { version } from "./version.js";

/** @type {HTMLDialogElement|null} */
let dialog = null;
/** How many lines of a stack a report holds. */
const LINES = 12;

/**
 * Which sentence tells of a fault: the kernel has stopped, its worker has, a part could not be fetched, anything else.
 * @param {unknown} fault
 */
function kindOf(fault) {
  const text = String(fault);
  if (fault instanceof WebAssembly.RuntimeError || /recursive use of an object|null pointer passed to rust/.test(text)) return "kernel";
  if (fault instanceof Error && fault.cause === "worker") return "worker";
  return /fetch|import|load failed/i.test(text) ? "part" : "page";
}

/**
 * What helps whoever mends it: version, address, the fault and where it was.
 * @param {unknown} fault
 */
function reportOf(fault) {
  const stack = fault instanceof Error ? (fault.stack ?? "").split("\n").slice(0, LINES).join("\n") : "";
  return [
    `lightgap ${version()}`, new Date().toISOString(), `${say("fault.address")}: ${location.href}`, `${say("fault.text")}: ${fault}`, ...(stack ? [stack] : []), navigator.userAgent,
  ].join("\n");
}

/** Leaves all that is kept in this browser but the choice of light or dark. */
function startAfresh() {
  for (const shelf of [sessionStorage, localStorage]) {
    for (const key of Object.keys(shelf)) if (key.startsWith("lightgap.") && key !== "lightgap.theme") shelf.removeItem(key);
  }
  history.replaceState(null, "", location.pathname + location.search);
  location.reload();
}

/**
 * @param {string} report
 * @param {HTMLElement} told
 */
async function copy(report, told) {
  try {
    await navigator.clipboard.writeText(report);
    told.textContent = say("fault.copied");
  } catch {
    const area = /** @type {HTMLTextAreaElement} */ (dialog?.querySelector("textarea"));
    /** @type {HTMLDetailsElement} */ (area.parentElement).open = true;
    area.select();
    told.textContent = say("fault.copy.failed");
  }
}

/**
 * Shows a fault, unless one is shown already; where the kernel stands still nothing else can be used.
 * @param {unknown} fault
 */
export async function tell(fault) {
  await bring(async () => {}, ["fault"], ["keep/fault.css"]);
  if (dialog?.open) return;
  dialog?.remove();
  const kind = kindOf(fault);
  const report = reportOf(fault);
  const told = make("p", { class: "fault-told", role: "status" });
  const button = (/** @type {string} */ word, /** @type {() => void} */ onclick, kind = "") => make("button", { type: "button", class: kind, onclick }, say(word));
  dialog = make("dialog", { class: "fault-box", role: "alertdialog", "aria-labelledby": "fault-title", "aria-describedby": "fault-sentence" },
    make("h2", { id: "fault-title" }, say("fault.title")), make("p", { id: "fault-sentence" }, say(`fault.${kind}`)),
    make("div", { class: "fault-row" }, button("fault.back", () => location.reload(), "primary"), button("fault.copy", () => copy(report, told)),
      button("fault.afresh", startAfresh), ...(kind === "kernel" ? [] : [button("close", () => dialog?.close())])),
    told, make("details", { class: "fold" }, make("summary", {}, say("fault.report")), make("textarea", { readonly: true, rows: 9, "aria-label": say("fault.report") }, report)));
  document.body.append(dialog);
  if (kind === "kernel") dialog.showModal();
  else dialog.show();
}

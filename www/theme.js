// Light, dark, or as the system says; and the colours of the drawing read from the style sheet.

import { byId } from "./dom.js";

const ROLES = ["sheet", "ink", "ink-soft", "touch", "rub", "overlap", "lit", "paper"];
const BODIES = ["held", "inner", "inner-near", "next", "roller"];
const KEY = "lightgap.theme";
const WATCHED = ["(prefers-color-scheme: dark)", "(forced-colors: active)", "(prefers-contrast: more)"];

/** Remembers the choice where the browser allows it. */
const memory = {
  read() {
    try {
      return localStorage.getItem(KEY) ?? "system";
    } catch {
      return "system";
    }
  },
  /** @param {string} value */
  write(value) {
    try {
      localStorage.setItem(KEY, value);
    } catch {
      // a browser that keeps nothing still shows the choice
    }
  },
};

/** @type {Record<string, string>} */
let colours = {};

/** The colours in force, by role. */
export const theme = () => colours;

/** Resolves every role to a plain colour, system colours too. */
function readColours() {
  const probe = document.createElement("span");
  probe.className = "probe";
  document.body.append(probe);
  const style = getComputedStyle(document.documentElement);
  const names = ROLES.concat(BODIES.flatMap((body) => [`fill-${body}`, `edge-${body}`]));
  colours = {};
  for (const name of names) {
    probe.style.color = "";
    probe.style.color = style.getPropertyValue(`--${name}`).trim();
    colours[name] = getComputedStyle(probe).color;
  }
  probe.remove();
}

/**
 * Wires the switch and tells `changed` whenever a colour may be another.
 * @param {() => void} changed
 */
export function startTheme(changed) {
  const choice = /** @type {HTMLSelectElement} */ (byId("theme"));
  const put = () => {
    if (choice.value === "system") delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = choice.value;
    readColours();
    changed();
  };
  choice.value = memory.read();
  if (!choice.value) choice.value = "system";
  choice.addEventListener("change", () => {
    memory.write(choice.value);
    put();
  });
  for (const query of WATCHED) matchMedia(query).addEventListener("change", put);
  put();
}

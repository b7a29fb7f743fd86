// Light, dark, or as the system says; and the colours of the drawing read from the style sheet.

import { byId, dress } from "./dom.js";
import { say } from "./words.js";

const ROLES = ["sheet", "ink", "ink-soft", "touch", "rub", "overlap", "lit", "paper"];
const BODIES = ["held", "inner", "inner-near", "next", "roller"];
const CHOICES = ["system", "light", "dark"];
const KEY = "lightgap.theme";
const WATCHED = ["(prefers-color-scheme: dark)", "(forced-colors: active)", "(prefers-contrast: more)"];

/** Remembers the choice where the browser allows it. */
const memory = {
  read() {
    try {
      const kept = localStorage.getItem(KEY) ?? "";
      return CHOICES.includes(kept) ? kept : "system";
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

/** @type {(to: "other"|null) => void} */
let turn = () => {};

/**
 * Reads the colours anew; with "other" light turns to dark and dark to light, for as long as the page is open.
 * @param {"other"|null} to
 */
export const switchTheme = (to) => turn(to);

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
  const button = byId("theme");
  const root = document.documentElement;
  let choice = memory.read();
  const put = () => {
    if (choice === "system") delete root.dataset.theme;
    else root.dataset.theme = choice;
    dress(button, { "aria-label": say(`theme.${choice}`), title: say(`theme.${choice}`), "data-choice": choice });
    readColours();
    changed();
  };
  button.addEventListener("click", () => {
    choice = CHOICES[(CHOICES.indexOf(choice) + 1) % CHOICES.length];
    memory.write(choice);
    put();
  });
  turn = (to) => {
    const dark = getComputedStyle(root).colorScheme === "dark";
    if (to === "other") choice = dark ? "light" : "dark";
    put();
  };
  for (const query of WATCHED) matchMedia(query).addEventListener("change", put);
  addEventListener("beforeprint", () => {
    root.dataset.theme = "light";
    readColours();
    changed();
  });
  addEventListener("afterprint", put);
  put();
}

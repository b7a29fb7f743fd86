// The walks of docs/keyboard.md: read from its tables and done key by key, each row held to what it says is heard or seen.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./server.js";

/** The most steps that `Tab` … may take, and how often it is looked whether a row has happened. */
const [MOST_TABS, MOST_LOOKS] = [60, 600];
/** Between two looks: looking without a pause keeps Firefox from handing on what the page's worker says. */
const PAUSE_MS = 50;
const KEY = /^(Tab|Enter|Space|Escape|Home|End|Page(Up|Down)|Arrow(Up|Down|Left|Right)|.|(Shift|Control)\+\w+)$/;

/**
 * One row of a table: what is pressed or typed, and what must then be heard and seen that was not before.
 * @typedef {{row: string, keys: {key: string, times: number}[], on: boolean, heard: string[], seen: string[]}} Row
 */
/** @typedef {{name: string, fragment: string, rows: Row[]}} Walk */

/** @param {string} cell @param {string} kind */
const quoted = (cell, kind) => [...cell.matchAll(new RegExp(`${kind} ((?:“[^”]+”(?: and )?)+)`, "g"))]
  .flatMap(([, quotes]) => [...quotes.matchAll(/“([^”]+)”/g)].map(([, quote]) => quote));

/** @param {string} line @returns {Row} */
function rowOf(line) {
  const [, pressed, , told] = line.split(/(?<!\\)\|/).map((cell) => cell.trim());
  const keys = [...pressed.matchAll(/`([^`]+)`(?: × (\d+))?/g)].map(([, key, times]) => ({ key, times: Number(times ?? 1) }));
  return { row: line, keys, on: pressed.includes("…"), heard: quoted(told, "heard"), seen: quoted(told, "seen") };
}

/** Every walk of the document. @returns {Walk[]} */
export function walksOf() {
  const text = readFileSync(join(ROOT, "docs/keyboard.md"), "utf8");
  return text.split(/^## /m).slice(1).map((part) => {
    const fragment = /^Opened at `([^`]+)`/m.exec(part)?.[1];
    assert.ok(fragment, `where a walk begins: ${part.slice(0, 40)}`);
    const rows = part.split("\n").filter((line) => /^\| .*`/.test(line)).map(rowOf);
    return { name: part.split("\n")[0], fragment, rows };
  });
}

/** In the page: what a screen reader has to say, of the focus alone or of what speaks of itself too; and what stands there. */
const told = (alone, look) => {
  const text = (each) => (each?.textContent ?? "").replace(/\s+/g, " ").trim();
  const byIds = (ids) => (ids ?? "").split(" ").map((id) => document.getElementById(id)).filter((each) => each && !each.hidden).map(text);
  const at = document.activeElement ?? document.body;
  const named = () => at.getAttribute("aria-label") ?? (at.labels?.length ? [...at.labels].map((label) => text(label).replace(text(at), "").trim()).join(" ") : byIds(at.getAttribute("aria-labelledby")).join(" ") || (at.matches("button, a, summary, h2") ? text(at) : ""));
  const value = at.getAttribute("aria-valuetext") ?? (at.localName === "select" ? text(at.selectedOptions[0]) : at.matches("input, textarea") ? at.value : "");
  const is = (name, word) => (at.getAttribute(name) && at.getAttribute(name) !== "false" ? [word] : []);
  const states = [...is("aria-pressed", "pressed"), ...is("aria-current", "current"), ...(at.checked ? ["checked"] : []),
    ...(at.localName === "summary" ? [at.parentElement.open ? "open" : "folded"] : [])];
  const focus = at === document.body ? [] : [named(), value, ...states, ...byIds(at.getAttribute("aria-describedby"))];
  const speaking = alone ? [] : [...document.querySelectorAll("[aria-live], [role=status], [role=alert], output")].filter((each) => each.checkVisibility()).map(text);
  const over = alone ? [] : [...document.querySelectorAll("dialog[open], [role=dialog]")].flatMap((each) => [each.getAttribute("aria-label") ?? "", ...byIds(each.getAttribute("aria-labelledby"))]);
  const spaced = (heard) => heard.replace(/[\u00a0\u202f]/g, " ");
  return { heard: spaced([focus.filter(Boolean).join(", "), ...speaking, ...over].join("\n")), seen: look ? spaced(document.body.innerText) : "" };
};

/** In the page: waits until all of these are heard and seen; gives what is told, however it ended. */
const waited = `async (heard, seen, looks) => {
  const told = ${told};
  for (let look = 0; ; look++) {
    const now = told(false, seen.length > 0);
    if (look >= looks || (heard.every((each) => now.heard.includes(each)) && seen.every((each) => now.seen.includes(each)))) return now;
    await new Promise((next) => setTimeout(next, ${PAUSE_MS}));
  }
}`;

/** A key, or letters that are typed over what a field holds. @param {any} page @param {string} key */
async function press(page, key) {
  if (!KEY.test(key)) {
    await press(page, "Control+a");
    return page.keyboard.type(key);
  }
  const [last, ...held] = key.length > 1 ? key.split("+").reverse() : [key];
  for (const each of held) await page.keyboard.down(each);
  await page.keyboard.press(last);
  for (const each of held) await page.keyboard.up(each);
}

/**
 * Does one row; gives what is wrong with it, or nothing.
 * @param {any} hand
 * @param {Row} row
 * @param {number} [looks] whether it has happened, at most
 */
export async function walkRow({ page, inside }, { row, keys, on, heard, seen }, looks = MOST_LOOKS) {
  const before = await inside(told, on, seen.length > 0);
  const gone = (/** @type {string} */ what) => inside(told, true, false).then((now) => now.heard.includes(what));
  for (const { key, times } of keys) {
    for (let time = 0; time < times; time++) await press(page, key);
  }
  for (let steps = 1; on && !(await gone(heard[0])); steps++) {
    if (steps > MOST_TABS) return `${row}\n  is never reached`;
    await press(page, keys[keys.length - 1].key);
  }
  const now = await inside(waited, heard, seen, looks);
  const [deaf, blind] = [heard.filter((each) => !now.heard.includes(each)), seen.filter((each) => !now.seen.includes(each))];
  if (deaf.length + blind.length > 0) return `${row}\n  not ${JSON.stringify([...deaf, ...blind])} but\n${now.heard.slice(0, 900)}`;
  const old = [...heard.filter((each) => before.heard.includes(each)), ...seen.filter((each) => before.seen.includes(each))];
  return old.length > 0 ? `${row}\n  was so before: ${JSON.stringify(old)}` : "";
}

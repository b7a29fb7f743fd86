// The state in the address: short, versioned, readable. #v=1&on=ferry-winch&ask=give&how=turn&at=1&bore_mm=3.63

import { PARTS } from "./work.js";

const VERSION = "1";
const KNOWN = ["v", "on", "ask", "how", "at", "aside", "yaw", "times", "unit", "corner", "pull", "beside", "springy", "a"];

/** @typedef {import("./work.js").Work} Work */

/** @param {number} value */
const short = (value) => String(Number(value.toPrecision(7)));

/**
 * @param {Work} work
 * @returns {string}
 */
export function toAddress(work) {
  const fields = new URLSearchParams({ v: VERSION, on: work.on, ask: work.ask, how: work.how });
  if (work.held) {
    fields.set("aside", short(work.held.offset_mm));
    fields.set("yaw", short(work.held.yaw_rad));
  } else fields.set("at", short(work.at));
  for (const { view, from, to } of work.pulls) fields.append("pull", [view, ...[...from, ...to].map(short)].join("_"));
  if (work.times !== null) fields.set("times", String(work.times));
  if (work.unit !== "mm") fields.set("unit", work.unit);
  if (work.springy) fields.set("springy", "1");
  if (work.a) fields.set("a", JSON.stringify(work.a));
  if (work.corner !== "middle") fields.set("corner", work.corner);
  if (work.beside !== "paper") fields.set("beside", work.beside);
  for (const [key, value] of Object.entries(work.chain)) {
    fields.set(key, value === null ? "" : typeof value === "number" ? short(value) : String(value));
  }
  for (const [key, value] of Object.entries(work.drive)) fields.set(`drive.${key}`, value === null ? "" : short(value));
  for (const [key, value] of Object.entries(work.parts)) fields.set(`part.${key}`, value === null ? "" : JSON.stringify(value));
  if (work.on === "own" && work.file) fields.set("file", work.file);
  for (const [key, text] of Object.entries(work.own ?? {})) fields.set(`own.${key}`, text);
  return `#${fields}`;
}

/**
 * What an address asks for; null where it asks for nothing we know.
 * @param {string} fragment
 * @returns {Partial<Work> | null}
 */
export function fromAddress(fragment) {
  const fields = new URLSearchParams(fragment.replace(/^#/, ""));
  if (fields.get("v") !== VERSION) return null;
  const number = (/** @type {string} */ name) => {
    const text = fields.get(name);
    return text === null || text === "" || !Number.isFinite(Number(text)) ? null : Number(text);
  };
  const [aside, yaw] = [number("aside"), number("yaw")];
  return {
    on: fields.get("on") ?? undefined,
    file: fields.get("file") ?? undefined,
    ask: fields.get("ask") ?? undefined,
    how: fields.get("how") ?? undefined,
    at: number("at") ?? 1,
    pulls: fields.getAll("pull").flatMap(pullOf),
    held: aside !== null && yaw !== null ? { offset_mm: aside, yaw_rad: yaw } : null,
    times: number("times"),
    unit: fields.get("unit") === "in" ? "in" : "mm",
    springy: fields.get("springy") === "1",
    a: plain(fields.get("a") ?? ""),
    corner: ["tightest", "loosest"].find((each) => each === fields.get("corner")) ?? "middle",
    beside: fields.get("beside") ?? "paper",
    chain: chainOf(fields),
    drive: driveOf(fields),
    parts: partsOf(fields),
    own: Object.fromEntries([...fields].flatMap(([key, text]) => (key.startsWith("own.") ? [[key.replace("own.", ""), text]] : []))),
  };
}

/**
 * A pull as the address writes it; none where it cannot be read.
 * @param {string} text
 */
function pullOf(text) {
  const [view, ...places] = text.split("_");
  const numbers = places.map(Number);
  if (numbers.length !== 4 || !numbers.every(Number.isFinite)) return [];
  return [{ view, from: numbers.slice(0, 2), to: numbers.slice(2) }];
}

/** @param {URLSearchParams} fields */
function chainOf(fields) {
  /** @type {Record<string, any>} */
  const chain = {};
  for (const [key, text] of fields) {
    if (KNOWN.includes(key) || /^(drive|part|own)\./.test(key)) continue;
    if (key === "construction") chain[key] = text;
    else if (key.endsWith("_mm")) chain[key] = text === "" ? null : Number(text);
  }
  return chain;
}

/** @param {URLSearchParams} fields */
function driveOf(fields) {
  const named = [...fields].filter(([key]) => key.startsWith("drive."));
  return Object.fromEntries(named.map(([key, text]) => [key.replace("drive.", ""), text === "" ? null : Number(text)]));
}

/** @param {URLSearchParams} fields */
function partsOf(fields) {
  const named = [...fields].filter(([key]) => PARTS.includes(key.replace("part.", "")) && key.startsWith("part."));
  return Object.fromEntries(named.map(([key, text]) => [key.replace("part.", ""), plain(text)]));
}

/**
 * A section as the address writes it; null where it is gone or cannot be read.
 * @param {string} text
 */
function plain(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

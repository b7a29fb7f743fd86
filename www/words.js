// Every visible sentence, by id, from words/<language>/: those of the first screen, and those of each later question.

import { figure, together } from "./figures.js";
import { language } from "./language.js";
import { once } from "./once.js";

/** @type {Record<string, string>} */
let words = {};
/** What is said for a word that has yet to come: those the first screen can do without come after it. */
let missing = "…";

/**
 * Fetches words of the page's language; gives all that have been fetched.
 * @param {string} part `first`, or the id of a question
 */
export const loadWords = once(async (part) => {
  const answer = await fetch(`words/${language}/${part}.json`);
  if (!answer.ok) throw new Error(`words: ${answer.status}`);
  const more = await answer.json(); // others may have come meanwhile
  words = { ...words, ...more };
  if (part === "rest") missing = "";
  return words;
});

/**
 * Is there a sentence of this id?
 * @param {string} id
 */
export const has = (id) => Object.hasOwn(words, id);

/**
 * The sentence of this id with its {places} filled; a number is written by the ending of its name.
 * @param {string} id
 * @param {Record<string, unknown>} [numbers]
 */
export function say(id, numbers = {}) {
  const sentence = words[id] ?? (missing || id);
  return together(sentence.replace(/\{(\w+)\}/g, (_, name) => place(name, numbers[name])));
}

/**
 * A label inside a sentence: its first letter is small, but where nouns are written large.
 * @param {string} id
 */
export const inside = (id) => (language === "de" ? say(id) : say(id).toLowerCase());

/**
 * @param {string} name
 * @param {unknown} value
 */
function place(name, value) {
  if (value === undefined || value === null) return "–";
  if (typeof value !== "string") return figure(name, value);
  return words[`${name}.${value}`] ?? words[value] ?? value;
}

/** Fills every element of the page that names its word, and lets it run as the language does. */
export function fillPage() {
  document.documentElement.dir = say("language.direction");
  for (const element of document.querySelectorAll("[data-word]")) {
    element.textContent = say(element.getAttribute("data-word") ?? "");
  }
  for (const element of document.querySelectorAll("[data-label]")) {
    element.setAttribute("aria-label", say(element.getAttribute("data-label") ?? ""));
  }
}

/**
 * The sentence of this id for a construction, or the one for both.
 * @param {string} id
 * @param {string} construction
 */
export const variant = (id, construction) => (has(`${id}.${construction}`) ? `${id}.${construction}` : id);

/**
 * The name of a contact, built from its parts: who, and where.
 * @param {{id: string, kind: string, joint: string, end: string, side: string}} contact
 * @param {string} construction
 */
export function contactName(contact, construction) {
  const places = { ...contact, plate: contact.end, tip: contact.id.endsWith(".inner") ? "inner" : "outer" };
  const who = say(`who.${contact.kind}`, places);
  const first = variant(variant(`where.${contact.kind}`, construction), contact.end);
  const named = (words[first] ?? "").includes("{plate}");
  const parts = [first, ...(named ? [] : [`end.${contact.end}`]), `side.${contact.side}`];
  const where = parts.filter(has).map((id) => say(id, places)).join(", ");
  return { who: who.charAt(0).toUpperCase() + who.slice(1), where };
}

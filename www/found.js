// What touches and what is open: the lists beside the stage, in step with the drawing.

import { byId, dress, make, write } from "./dom.js";
import { gap } from "./figures.js";
import { contactName, say } from "./words.js";

/** @typedef {import("./session.js").Session} Session */
/** @typedef {import("./kernel.js").Contact} Contact */

const SHORT = 6;
/** Where the lists stand beside the drawing and scroll by themselves. */
const BESIDE = matchMedia("(min-width: 68rem)");

/** @param {Session} session */
export function startFound(session) {
  const lists = { touching: new Rows("touching", session), open: new Rows("open", session) };
  const more = make("button", { type: "button", class: "link", "aria-expanded": "false" });
  byId("open").after(more);
  let whole = false;
  const show = () => {
    const { contacts } = session;
    const touching = contacts.filter(({ mark, id }) => mark !== "open" && !session.hidden.includes(id));
    const open = contacts.filter((contact) => contact.mark === "open");
    lists.touching.show(touching);
    const all = whole || session.work.ask === "touch";
    lists.open.show(open.filter(({ id }, i) => all || i < SHORT || id === session.lit));
    write(byId("touching-count"), session.state.fits ? String(touching.length) : "");
    write(byId("open-count"), session.state.fits ? String(open.length) : "");
    more.hidden = session.work.ask === "touch" || open.length <= SHORT;
    write(more, whole ? say("open.fewer") : say("open.more", { count: open.length - SHORT }));
    dress(more, { "aria-expanded": String(whole) });
  };
  more.addEventListener("click", () => {
    whole = !whole;
    show();
  });
  session.listen((what) => {
    if (!session.listed) return;
    show();
    if (what.has("lit") && session.lit && BESIDE.matches) lists.touching.reveal(session.lit) || lists.open.reveal(session.lit);
  }, false);
}

/** A list of contacts whose rows are kept, so that focus stays where it is. */
class Rows {
  /** @type {Map<string, {item: HTMLLIElement, button: HTMLButtonElement, disc: HTMLElement, size: HTMLElement}>} */
  rows = new Map();

  /**
   * @param {string} id
   * @param {Session} session
   */
  constructor(id, session) {
    this.list = byId(id);
    this.kind = id;
    this.session = session;
    this.nothing = make("li", { class: "nothing" });
    this.made = "";
  }

  /** @param {Contact[]} contacts */
  show(contacts) {
    const { construction } = this.session.state;
    if (this.made !== construction) this.rows.clear(); // the same places have other names
    this.made = construction;
    write(this.nothing, say(this.session.state.fits ? `${this.kind}.nothing` : `${this.kind}.apart`));
    const rows = contacts.map((contact) => this.row(contact));
    const wanted = rows.length > 0 ? rows : [this.nothing];
    const now = [...this.list.children];
    if (now.length === wanted.length && now.every((item, i) => item === wanted[i])) return;
    const focused = document.activeElement;
    this.list.replaceChildren(...wanted);
    if (focused instanceof HTMLElement && this.list.contains(focused)) focused.focus({ preventScroll: true });
  }

  /**
   * Scrolls the row of a contact into sight; false when it is not in this list.
   * @param {string} id
   */
  reveal(id) {
    const row = this.rows.get(id);
    if (!row?.item.isConnected) return false;
    row.item.scrollIntoView({ block: "nearest" });
    return true;
  }

  /** @param {Contact} contact */
  row(contact) {
    const row = this.rows.get(contact.id) ?? this.add(contact);
    write(row.disc, contact.number ? String(contact.number) : "");
    row.disc.dataset.mark = contact.mark;
    write(row.size, sizeOf(contact));
    const lit = this.session.lit === contact.id;
    dress(row.button, { "aria-pressed": String(lit) });
    return row.item;
  }

  /** @param {Contact} contact */
  add(contact) {
    const { who, where } = contactName(contact, this.session.state.construction);
    const disc = make("span", { class: "disc" });
    const size = make("span", { class: "size" });
    const name = make("span", { class: "contact" }, make("b", {}, who), " ", make("span", { class: "where" }, where));
    const button = make("button", { type: "button", class: "row" }, disc, name, size);
    const light = () => this.session.light(contact.id);
    button.addEventListener("click", () => this.session.light(this.session.lit === contact.id ? null : contact.id));
    button.addEventListener("focus", () => button.matches(":focus-visible") && light());
    const row = { item: make("li", {}, button), button, disc, size };
    this.rows.set(contact.id, row);
    return row;
  }
}

/**
 * What stands at the end of a contact's row: its gap, its force, or that it rubs.
 * @param {Contact} contact
 */
function sizeOf(contact) {
  if (contact.mark === "open") return gap(contact.gap_mm);
  if (contact.force_n > 0) return say("force", contact);
  return contact.mark === "rubbing" ? say("rubbing") : "";
}

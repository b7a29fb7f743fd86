// Elements that stand are amended: what is to stand is described, and of what stands already only that is written which
// has changed. A picture that is told anew with every answer so keeps its elements, and whoever is on one of them stays.
//
//   amend(list, ...gaps.map((mm) => make("li", {}, gap(mm))));
//
// Nobody else may write on the elements that are made here.

const SVG = "http://www.w3.org/2000/svg";

/** An element to be; a node of the page is put in as it is, and keeps its place. @typedef {Wish|Node|string} Wanted */
/** What stands for what was wanted. @typedef {{wanted: Wanted, node: ChildNode, inside: Standing[]}} Standing */

class Wish {
  /**
   * @param {string} tag
   * @param {boolean} drawn whether it is part of a drawing
   * @param {Record<string, any>} attributes
   * @param {Wanted[]} children
   */
  constructor(tag, drawn, attributes, children) {
    this.tag = tag;
    this.drawn = drawn;
    this.attributes = attributes;
    this.children = children;
  }
}

const NONE = {};

/**
 * An element to be, with attributes and children; a property `on...` is a listener, `false`, null and undefined leave one out.
 * @param {string} tag
 * @param {Record<string, any>} [attributes]
 * @param {...Wanted} children
 */
export const make = (tag, attributes = NONE, ...children) => new Wish(tag, false, attributes, children);

/**
 * The same for a drawing.
 * @param {string} tag
 * @param {Record<string, any>} [attributes]
 * @param {...Wanted} children
 */
export const draw = (tag, attributes = NONE, ...children) => new Wish(tag, true, attributes, children);

/** @type {WeakMap<Element, Standing[]>} */
const standing = new WeakMap();

/**
 * Lets an element hold these and nothing else.
 * @param {Element} element
 * @param {...Wanted} wanted
 */
export function amend(element, ...wanted) {
  const last = standing.get(element);
  if (!last) element.replaceChildren();
  standing.set(element, filled(element, last ?? [], wanted));
}

/**
 * Something that was described, as a node.
 * @param {Wanted} wanted
 * @returns {ChildNode}
 */
export const raised = (wanted) => raise(wanted).node;

/** Amends the children of an element, one after the other. @param {Element} parent @param {Standing[]} last @param {Wanted[]} wanted */
function filled(parent, last, wanted) {
  while (last.length > wanted.length) last.pop()?.node.remove();
  for (let index = 0; index < wanted.length; index++) {
    const old = last[index];
    if (old && turned(old, wanted[index])) continue;
    last[index] = raise(wanted[index]);
    if (old) old.node.replaceWith(last[index].node);
    else parent.append(last[index].node);
  }
  return last;
}

/** Turns what stands into what is wanted; false where that is another kind of thing. @param {Standing} old @param {Wanted} wanted */
function turned(old, wanted) {
  const { wanted: last, node } = old;
  if (last === wanted) return true;
  if (last instanceof Wish) {
    if (!(wanted instanceof Wish) || wanted.tag !== last.tag || wanted.drawn !== last.drawn) return false;
    write(/** @type {Element} */ (node), last.attributes, wanted.attributes);
    filled(/** @type {Element} */ (node), old.inside, wanted.children);
  } else if (typeof last === "string" && typeof wanted === "string") /** @type {Text} */ (node).data = wanted;
  else return false;
  old.wanted = wanted;
  return true;
}

/** @param {Wanted} wanted @returns {Standing} */
function raise(wanted) {
  if (typeof wanted === "string") return { wanted, node: document.createTextNode(wanted), inside: [] };
  if (!(wanted instanceof Wish)) return { wanted, node: /** @type {ChildNode} */ (wanted), inside: [] };
  const node = wanted.drawn ? document.createElementNS(SVG, wanted.tag) : document.createElement(wanted.tag);
  write(node, NONE, wanted.attributes);
  return { wanted, node, inside: filled(node, [], wanted.children) };
}

/** @param {Element} element @param {Record<string, any>} last @param {Record<string, any>} now */
function write(element, last, now) {
  if (last === now) return;
  for (const name in now) if (now[name] !== last[name]) put(element, name, now[name]);
  for (const name in last) if (!(name in now)) put(element, name, null);
}

/** @param {Element} element @param {string} name @param {any} value */
function put(element, name, value) {
  if (name.startsWith("on")) /** @type {any} */ (element)[name] = value;
  else if (value === false || value === null || value === undefined) element.removeAttribute(name);
  else element.setAttribute(name, value === true ? "" : String(value));
}

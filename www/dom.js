// Making elements without markup strings.

const SVG = "http://www.w3.org/2000/svg";

/**
 * The element of the page with this id; a missing one is a fault of the page.
 * @template {HTMLElement} [T=HTMLElement]
 * @param {string} id
 * @returns {T}
 */
export function byId(id) {
  const found = document.getElementById(id);
  if (!found) throw new Error(`no element ${id}`);
  return /** @type {T} */ (found);
}

/**
 * A new element with attributes and children; a property `on...` is a listener, `class` and ARIA names are attributes.
 * @template {keyof HTMLElementTagNameMap} K
 * @param {K} tag
 * @param {Record<string, any>} [attributes]
 * @param {...(Node|string)} children
 * @returns {HTMLElementTagNameMap[K]}
 */
export function make(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  dress(made, attributes);
  made.append(...children);
  return made;
}

/**
 * The same for a drawing.
 * @param {string} tag
 * @param {Record<string, any>} [attributes]
 * @param {...(Node|string)} children
 * @returns {SVGElement}
 */
export function draw(tag, attributes = {}, ...children) {
  const made = /** @type {SVGElement} */ (document.createElementNS(SVG, tag));
  dress(made, attributes);
  made.append(...children);
  return made;
}

/**
 * Sets attributes that are not so already; `false`, null and undefined leave one out.
 * @param {Element} element
 * @param {Record<string, any>} attributes
 */
export function dress(element, attributes) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else if (value === false || value === null || value === undefined) element.removeAttribute(name);
    else {
      const text = value === true ? "" : String(value);
      if (element.getAttribute(name) !== text) element.setAttribute(name, text);
    }
  }
}

/**
 * A text that stands already is not written again: the browser would lay the page out anew for it.
 * @param {HTMLElement} element
 * @param {string} text
 */
export function write(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/**
 * Runs `work` once on the next frame however often it is asked for.
 * @param {() => void} work
 * @returns {() => void}
 */
export function onceAFrame(work) {
  let asked = false;
  return () => {
    if (asked) return;
    asked = true;
    requestAnimationFrame(() => {
      asked = false;
      work();
    });
  };
}

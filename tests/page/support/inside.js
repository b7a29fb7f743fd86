// What the tests do inside the page. Each function is sent there as text, so it stands alone.

/**
 * What the page gave, its spaces that do not break as plain ones: whether a line may end there is a question of its own.
 * @param {any} value
 * @returns {any}
 */
export const spaced = (value) => {
  if (typeof value === "string") return value.replaceAll("\u00a0", " ");
  if (Array.isArray(value)) return value.map(spaced);
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, spaced(each)]));
};

/** Two frames: what was asked for is computed in the first and painted by the second. */
export const twoFrames = () =>
  new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))));

/** Waits, frame by frame, until the page has opened; gives what went wrong, or nothing. */
export const opened = () =>
  new Promise((done) => {
    let frames = 0;
    const look = () => {
      const answer = document.querySelector("#answer")?.textContent;
      const failure = /** @type {HTMLElement|null} */ (document.querySelector("#failure"));
      const moving = document.body.classList.contains("opening");
      if (answer && !moving) done("");
      else if ((failure && !failure.hidden) || ++frames > 600) done(failure?.textContent || "it did not open");
      else requestAnimationFrame(look);
    };
    look();
  });

/** Looks at every frame until something holds in so many of them on end, and fails when it does not in a minute. */
const watch = async (holds, frames, ...values) => {
  for (let [seen, held] = [0, 0]; seen < 3600; seen++) {
    held = holds(...values) ? held + 1 : 0;
    if (held >= frames) return true;
    await new Promise((next) => requestAnimationFrame(next));
  }
  throw new Error(`never came to hold: ${holds} of ${JSON.stringify(values)}`);
};

/**
 * The text of a function that waits in the page until another holds in so many frames on end.
 * @param {Function} holds is given the values that are sent with the text
 * @param {number} [frames]
 */
export const until = (holds, frames = 1) => `(...values) => (${watch})(${holds}, ${frames}, ...values)`;

/** Waits until what is asked has its answer and shows it. */
export const answered = until(
  () => !(document.body.hasAttribute("data-own") && !document.querySelector(".own:not(.waiting)")), 4);

/** @param {string} selector */
export const textOf = (selector) => document.querySelector(selector)?.textContent ?? "";

/** @param {string} selector */
export const centreOf = (selector) => {
  const element = document.querySelector(selector);
  if (!element) throw new Error(`no ${selector}`);
  element.scrollIntoView({ block: "center" });
  const box = element.getBoundingClientRect();
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

/** @param {string} selector */
export const focusOn = (selector) => {
  const element = /** @type {HTMLElement|null} */ (document.querySelector(selector));
  if (!element) throw new Error(`no ${selector}`);
  for (let fold = element.closest("details"); fold; fold = fold.parentElement?.closest("details") ?? null) {
    fold.open = true;
  }
  element.focus();
  return document.activeElement === element;
};

/** A short mark of everything drawn: unlike pictures have unlike marks. */
export const pictureMark = () => {
  const canvas = /** @type {HTMLCanvasElement} */ (document.querySelector("#drawing"));
  const copy = new OffscreenCanvas(canvas.width, canvas.height).getContext("2d", { willReadFrequently: true });
  copy.drawImage(canvas, 0, 0);
  const { data } = copy.getImageData(0, 0, canvas.width, canvas.height);
  let mark = 0;
  const colours = new Set();
  for (let at = 0; at < data.length; at += 4) {
    const colour = (data[at] << 16) | (data[at + 1] << 8) | data[at + 2];
    mark = (Math.imul(mark, 31) + colour) | 0;
    if (data[at + 3] > 0) colours.add(colour);
  }
  return { mark, colours: colours.size };
};

/**
 * The selector of the field for a size, found by its label as a reader finds it.
 * @param {string} label
 */
export const fieldLabelled = (label) => {
  const found = [...document.querySelectorAll("#sizes label")].find((each) => each.textContent === label);
  if (!found) throw new Error(`no field ${label}`);
  return `#${found.getAttribute("for")}`;
};

/** @param {string} selector */
export const fieldState = (selector) => {
  const input = /** @type {HTMLInputElement} */ (document.querySelector(selector));
  const fault = /** @type {HTMLElement} */ (document.querySelector(`${selector}-fault`));
  return {
    value: input.value,
    invalid: input.getAttribute("aria-invalid"),
    fault: fault.hidden ? "" : (fault.textContent ?? ""),
    described: (input.getAttribute("aria-describedby") ?? "").includes(fault.id),
  };
};

/**
 * The number that stands beside a term.
 * @param {string} list
 * @param {string} name
 */
export const readingOf = (list, name) => {
  const term = [...document.querySelectorAll(`${list} dt`)].find((each) => each.textContent === name);
  return Number.parseFloat(term.nextElementSibling.textContent.replace("\u2212", "-"));
};

/**
 * How wide texts come out in the letters of the drawing, in em, plain or bold, whichever is wider.
 * @param {string[]} texts
 * @param {string[]} plain those that the drawing never writes bold
 */
export const widthsOf = (texts, plain) => {
  const family = "system-ui, -apple-system, 'DejaVu Sans', sans-serif"; // the painter's; the canvas forgets it
  const pen = new OffscreenCanvas(1, 1).getContext("2d");
  const size = 100;
  return texts.map((text) =>
    Math.max(...(plain.includes(text) ? [400] : [400, 700]).map((weight) => {
      pen.font = `${weight} ${size}px ${family}`;
      return pen.measureText(text).width / size;
    })));
};

/**
 * Makes a size a hundredth of a millimetre smaller by typing.
 * @param {Pick<import("./hand.js").Hand, "inside" | "type">} hand
 * @param {string} field
 */
export async function makeSmaller(hand, field) {
  await hand.inside(focusOn, field);
  const { value } = await hand.inside(fieldState, field);
  await hand.type(String(Number((Number(value) - 0.01).toFixed(4))));
}

// Which language the page speaks: asked for in the address, chosen here before, or the browser's own.

/** The languages there are, each by its own name; their words lie in words/<language>/. */
export const LANGUAGES = /** @type {Record<string, string>} */ ({ en: "English", de: "Deutsch" });

const [FIRST, KEY, ASKED] = ["en", "lightgap.language", "lang"];

/** The choice that was made here, where the browser keeps one. */
function chosen() {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

/** @param {string} address the part of it behind the question mark */
const askedIn = (address) => new URLSearchParams(address).get(ASKED);

const wishes = [askedIn(location.search), chosen(), ...navigator.languages].map((tag) => (tag ?? "").toLowerCase().split("-")[0]);

export const language = wishes.find((tag) => Object.hasOwn(LANGUAGES, tag)) ?? FIRST;
document.documentElement.lang = language;

/**
 * The page in another language: opened anew where it stands. The address carries the choice where nothing can be kept.
 * @param {string} wanted
 */
export function speak(wanted) {
  const search = new URLSearchParams(location.search);
  search.delete(ASKED);
  try {
    localStorage.setItem(KEY, wanted);
  } catch {
    search.set(ASKED, wanted);
  }
  history.replaceState(history.state, "", `${location.pathname}${String(search) && `?${search}`}${location.hash}`);
  location.reload();
}

/** What is kept while the page turns to another language. */
export const TURNING = "lightgap.turning";

/** Whether the page has just turned to this language, and something was kept. */
export function turned() {
  try {
    return sessionStorage.getItem(TURNING) !== null;
  } catch {
    return false;
  }
}

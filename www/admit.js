// The one policy of trusted types: what the page may run beside its modules.

const WORKER = "lightgap_worker.js";
const SCRIPTS = [WORKER, "keeper.js"];
/** @type {Map<string, string>} */
const addresses = new Map();
/** @type {any} */
let policy;

/**
 * The address of a script of ours; the page in one file makes one.
 * @param {string} name
 */
function addressOf(name) {
  const shelf = /** @type {any} */ (globalThis).addressOnShelf;
  const address = addresses.get(name) ?? (shelf && name === WORKER ? shelf(name) : new URL(name, document.baseURI).href);
  addresses.set(name, address);
  return address;
}

/**
 * An address that the page may run: the browser admits no other.
 * @param {string} name
 * @returns {any}
 */
export function admitted(name) {
  const { trustedTypes } = /** @type {any} */ (globalThis);
  const createScriptURL = (/** @type {string} */ asked) => {
    if (!SCRIPTS.some((each) => addressOf(each) === asked)) throw new TypeError(`no script of the page's: ${asked}`);
    return asked;
  };
  policy ??= trustedTypes?.createPolicy("lightgap", { createScriptURL });
  const ours = addressOf(name);
  return policy ? policy.createScriptURL(ours) : ours;
}

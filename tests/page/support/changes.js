// What a drag changes on the page, in counts that no load of the machine moves. Run in the page, as text.

/** Begins to count: elements made, nodes put in and taken out, attributes and texts written, calls of the kernel. */
export async function countChanges() {
  const counts = { made: 0, added: 0, removed: 0, attributes: 0, texts: 0, calls: 0 };
  const all = (/** @type {NodeList} */ nodes) => [...nodes].reduce((sum, node) => sum + 1 + (node instanceof Element ? node.querySelectorAll("*").length : 0), 0);
  const watch = new MutationObserver((changes) => {
    for (const { type, addedNodes, removedNodes } of changes) {
      if (type === "attributes") counts.attributes++;
      else if (type === "characterData") counts.texts++;
      else [counts.added, counts.removed] = [counts.added + all(addedNodes), counts.removed + all(removedNodes)];
    }
  });
  watch.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
  const counted = (/** @type {any} */ owner, /** @type {string} */ name, /** @type {"made"|"calls"} */ what) => {
    const done = owner[name];
    owner[name] = function (/** @type {unknown[]} */ ...given) {
      counts[what]++;
      return done.apply(this, given);
    };
  };
  for (const name of ["createElement", "createElementNS"]) counted(document, name, "made");
  const { Bench } = await import(new URL("lightgap_stage.js", location.href).href);
  for (const name of Object.getOwnPropertyNames(Bench.prototype)) {
    if (name !== "constructor" && typeof Object.getOwnPropertyDescriptor(Bench.prototype, name)?.value === "function") counted(Bench.prototype, name, "calls");
  }
  Object.assign(globalThis, { changes: counts });
}

/** What has been counted. */
export const changesSoFar = () => /** @type {any} */ (globalThis).changes;

// Work that is done once for each name.

/**
 * The same work by name: done when it is first asked for, then known; what failed is tried again.
 * @template T
 * @param {(name: string) => Promise<T>} work
 * @returns {(name: string) => Promise<T>}
 */
export function once(work) {
  /** @type {Map<string, Promise<T>>} */
  const known = new Map();
  return (name) => {
    const begun = known.get(name) ?? work(name);
    known.set(name, begun);
    begun.catch(() => known.delete(name));
    return begun;
  };
}

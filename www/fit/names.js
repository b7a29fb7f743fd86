// What a dimension is called: a chain with collars has no bush.

import { say, variant } from "../words.js";

let construction = "bushed";

/** @param {string} made how the chain on the bench is made */
export function useConstruction(made) {
  construction = made;
}

/** @param {string} dimension */
export const sizeName = (dimension) => say(variant(`size.${dimension}`, construction));

// The accessibility rules under the questions of wear, reach, surface and width: as they open, refused, and where a chain
// does not go together; light and dark.

import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { focusOn } from "../support/inside.js";
import { broken } from "../support/rules.js";
import { standing } from "../support/standing.js";

/** Where each question stands, and a field of it. */
const ASKED = /** @type {Record<string, [string, string]>} */ ({
  wear: ["tired-trike", ".wear-given input[inputmode=decimal]"], reach: ["oiled-winch", "#reach-bristle_mm"],
  surface: ["dusty-trike", "#surface-rz_um"], width: ["ferry-trike", ".width input[inputmode=decimal]"],
});

for (const colorScheme of ["light", "dark"]) {
  describe(`access of questions, in Chromium, ${colorScheme}`, () => {
    const hand = standing({ colorScheme });
    for (const [ask, [on, field]] of Object.entries(ASKED)) {
      test(`no accessibility rule is broken under ${ask}`, async () => {
        await hand.open(`#v=1&on=${on}&ask=${ask}`);
        assert.deepEqual(await broken(hand), [], "open");
        await hand.put(field, "-3");
        assert.equal(await hand.inside(focusOn, field), true);
        assert.deepEqual(await broken(hand), [], "refused");
        await hand.open(`#v=1&on=stiff-link&ask=${ask}`);
        assert.deepEqual(await broken(hand), [], "a chain that does not go together");
      });
    }
  });
}

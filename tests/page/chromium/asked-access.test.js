// The accessibility rules under the questions of wear, reach, surface and width: as they open, refused, and where a chain
// does not go together; light, and once more in dark what depends on colours.

import assert from "node:assert/strict";
import { before, describe, test } from "node:test";
import { focusOn } from "../support/inside.js";
import { broken, CONTRAST } from "../support/rules.js";
import { standing } from "../support/standing.js";

/** Where each question stands, and a field of it. */
const ASKED = /** @type {Record<string, [string, string]>} */ ({
  wear: ["tired-trike", ".wear-given input[inputmode=decimal]"], reach: ["oiled-winch", "#reach-bristle_mm"],
  surface: ["dusty-trike", "#surface-rz_um"], width: ["ferry-trike", ".width input[inputmode=decimal]"],
});

describe("access of questions, in Chromium", () => {
  const hand = standing({ colorScheme: "light" });
  before(() => hand.open());

  /** In both themes. @param {string} state */
  const unbroken = async (state) => {
    assert.deepEqual(await broken(hand), [], state);
    await hand.page.emulateMedia({ colorScheme: "dark" });
    assert.deepEqual(await broken(hand, CONTRAST), [], `${state}, dark`);
    await hand.page.emulateMedia({ colorScheme: "light" });
  };

  for (const [ask, [on, field]] of Object.entries(ASKED)) {
    test(`no accessibility rule is broken under ${ask}`, async () => {
      await hand.go(`#v=1&on=${on}&ask=${ask}`);
      await unbroken("open");
      await hand.put(field, "-3");
      assert.equal(await hand.inside(focusOn, field), true);
      await unbroken("refused");
    });
  }

  test("nor where a chain does not go together", async () => {
    for (const ask of Object.keys(ASKED)) {
      await hand.open(`#v=1&on=stiff-link&ask=${ask}`);
      await unbroken(ask);
    }
  });
});

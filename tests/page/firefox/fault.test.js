import { describe, test } from "node:test";
import { comesBackFromFault } from "../support/faults.js";
import { openFirefox } from "../support/hand.js";
import { standing } from "../support/standing.js";

describe("a fault, in Firefox", () => {
  const hand = standing({}, openFirefox);

  test("a kernel that stops is told of, and the last finished change comes back", async () => {
    await hand.open();
    await comesBackFromFault(hand);
  });
});

import { openChromium } from "../support/hand.js";
import { policySuite } from "../support/policy.js";

policySuite("Chromium", openChromium);

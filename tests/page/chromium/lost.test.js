import { openChromium } from "../support/hand.js";
import { lostSuite } from "../support/lost.js";

lostSuite("Chromium", openChromium);

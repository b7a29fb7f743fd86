import { faultSuite } from "../support/faults.js";
import { openChromium } from "../support/hand.js";

faultSuite("Chromium", openChromium);

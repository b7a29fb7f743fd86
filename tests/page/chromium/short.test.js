import { openChromium } from "../support/hand.js";
import { shortSuite } from "../support/short.js";

shortSuite("Chromium", openChromium);

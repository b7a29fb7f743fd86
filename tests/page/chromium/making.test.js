import { openChromium } from "../support/hand.js";
import { makingSuite } from "../support/making.js";

makingSuite("Chromium", openChromium);

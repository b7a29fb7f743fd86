import { openChromium } from "../support/hand.js";
import { teachingSuite } from "../support/teaching.js";

teachingSuite("Chromium", openChromium);

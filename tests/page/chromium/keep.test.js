import { openChromium } from "../support/hand.js";
import { keepSuite } from "../support/keep.js";

keepSuite("Chromium", openChromium);

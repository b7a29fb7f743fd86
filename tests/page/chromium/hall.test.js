import { hallSuite } from "../support/hall.js";
import { openChromium } from "../support/hand.js";

hallSuite("Chromium", openChromium);

import { openChromium } from "../support/hand.js";
import { offlineSuite } from "../support/offline.js";

offlineSuite("Chromium", openChromium);

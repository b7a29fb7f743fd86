import { besideSuite } from "../support/beside.js";
import { openChromium } from "../support/hand.js";

besideSuite("Chromium", openChromium);

import { comparedSuite } from "../support/compared.js";
import { openChromium } from "../support/hand.js";

comparedSuite("Chromium", openChromium);

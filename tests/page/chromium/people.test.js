import { openChromium } from "../support/hand.js";
import { peopleSuite } from "../support/people.js";

peopleSuite("Chromium", openChromium);

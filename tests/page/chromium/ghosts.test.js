import { ghostsSuite } from "../support/ghosts.js";
import { openChromium } from "../support/hand.js";

ghostsSuite("Chromium", openChromium);

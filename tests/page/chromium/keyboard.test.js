import { openChromium } from "../support/hand.js";
import { keyboardSuite } from "../support/keyboard.js";

keyboardSuite("Chromium", openChromium);

import { openFirefox } from "../support/hand.js";
import { keyboardSuite } from "../support/keyboard.js";

/** The browser's own list of what was saved takes no focus from the page. */
const QUIET = { "browser.download.alwaysOpenPanel": false };

keyboardSuite("Firefox", () => openFirefox({}, QUIET));

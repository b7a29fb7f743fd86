import { forcedSuite } from "../support/forced.js";
import { openChromium } from "../support/hand.js";

forcedSuite("Chromium", (colorScheme) => openChromium({ colorScheme, forcedColors: "active" }), openChromium);

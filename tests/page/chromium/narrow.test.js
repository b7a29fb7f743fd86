// Every question in a window made small: at 200 % zoom, and as wide as a small phone.

import { fitsSuite } from "../support/asked.js";
import { openChromium } from "../support/hand.js";

fitsSuite("every question at 200 % zoom and at 320 px, in Chromium", () => openChromium({ deviceScaleFactor: 2 }), [{ width: 640, height: 450 }, { width: 320, height: 640 }]);

// Every question in a window made small: at 200 % zoom, and as wide as a small phone.

import { fitsSuite } from "../support/asked.js";

fitsSuite("every question at 200 % zoom, in Chromium", { viewport: { width: 640, height: 450 }, deviceScaleFactor: 2 });
fitsSuite("every question at 320 px, in Chromium", { viewport: { width: 320, height: 640 } });

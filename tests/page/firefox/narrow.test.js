import { fitsSuite } from "../support/asked.js";
import { openFirefox } from "../support/hand.js";

fitsSuite("every question at 200 % zoom and at 320 px, in Firefox", () => openFirefox({}, {}, { deviceScaleFactor: 2 }), [{ width: 640, height: 450 }, { width: 320, height: 640 }]);

import { openChromium } from "../support/hand.js";
import { tonguesSuite } from "../support/tongues.js";

tonguesSuite("Chromium", openChromium, () => openChromium({ locale: "de-DE" }), [360, 1280]);

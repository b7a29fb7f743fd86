import { openChromium } from "../support/hand.js";
import { inertSuite } from "../support/inert.js";

inertSuite("Chromium", openChromium, (hand, path) => hand.page.pdf({ path, preferCSSPageSize: true, printBackground: true }));

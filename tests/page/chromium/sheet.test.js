import { openChromium } from "../support/hand.js";
import { reviewSuite } from "../support/review.js";

reviewSuite("Chromium", openChromium, (hand, path) => hand.page.pdf({ path, preferCSSPageSize: true, printBackground: true }));

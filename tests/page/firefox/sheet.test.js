import { openFirefox } from "../support/hand.js";
import { reviewSuite } from "../support/review.js";

const MARGIN = { top: "12mm", bottom: "12mm", left: "12mm", right: "12mm" };

reviewSuite("Firefox", openFirefox, (hand, path, format) => hand.page.pdf({ path, format, margin: MARGIN, printBackground: true }));

import { openFirefox } from "../support/hand.js";
import { inertSuite } from "../support/inert.js";

inertSuite("Firefox", openFirefox, (hand, path) => hand.page.pdf({ path, format: "A4", printBackground: true }));

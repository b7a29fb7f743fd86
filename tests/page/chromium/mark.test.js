import { openChromium } from "../support/hand.js";
import { HOST, markSuite } from "../support/mark.js";

markSuite("Chromium", () => openChromium({}, [`--host-resolver-rules=MAP ${HOST} 127.0.0.1`]));

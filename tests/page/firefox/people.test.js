import { openFirefox } from "../support/hand.js";
import { peopleSuite } from "../support/people.js";

/** A pointer that is a finger, and touches that pages may hear of. */
const FINGER = { "dom.w3c_touch_events.enabled": 1, "ui.primaryPointerCapabilities": 1, "ui.allPointerCapabilities": 1 };

peopleSuite("Firefox", () => openFirefox({}, FINGER, { hasTouch: true }));

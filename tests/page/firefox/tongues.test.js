import { openFirefox } from "../support/hand.js";
import { tonguesSuite } from "../support/tongues.js";

tonguesSuite("Firefox", openFirefox, () => openFirefox({}, { "intl.accept_languages": "de-DE, en" }), [1280]);

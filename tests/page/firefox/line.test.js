import { crookedSuite } from "../support/crooked.js";
import { openFirefox } from "../support/hand.js";

crookedSuite("Firefox", openFirefox);

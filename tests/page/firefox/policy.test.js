import { openFirefox } from "../support/hand.js";
import { policySuite } from "../support/policy.js";

policySuite("Firefox", openFirefox);

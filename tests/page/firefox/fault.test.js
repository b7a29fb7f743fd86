import { faultSuite } from "../support/faults.js";
import { openFirefox } from "../support/hand.js";

faultSuite("Firefox", openFirefox);

import { openFirefox } from "../support/hand.js";
import { lostSuite } from "../support/lost.js";

lostSuite("Firefox", openFirefox);

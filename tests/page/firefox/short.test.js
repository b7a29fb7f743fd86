import { openFirefox } from "../support/hand.js";
import { shortSuite } from "../support/short.js";

shortSuite("Firefox", openFirefox);

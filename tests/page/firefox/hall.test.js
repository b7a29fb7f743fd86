import { hallSuite } from "../support/hall.js";
import { openFirefox } from "../support/hand.js";

hallSuite("Firefox", openFirefox);

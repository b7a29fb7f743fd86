import { openFirefox } from "../support/hand.js";
import { teachingSuite } from "../support/teaching.js";

teachingSuite("Firefox", openFirefox);

import { openFirefox } from "../support/hand.js";
import { keepSuite } from "../support/keep.js";

keepSuite("Firefox", openFirefox);

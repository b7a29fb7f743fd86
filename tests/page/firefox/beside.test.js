import { besideSuite } from "../support/beside.js";
import { openFirefox } from "../support/hand.js";

besideSuite("Firefox", openFirefox);

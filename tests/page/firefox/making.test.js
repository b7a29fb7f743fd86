import { openFirefox } from "../support/hand.js";
import { makingSuite } from "../support/making.js";

makingSuite("Firefox", openFirefox);

import { comparedSuite } from "../support/compared.js";
import { openFirefox } from "../support/hand.js";

comparedSuite("Firefox", openFirefox);

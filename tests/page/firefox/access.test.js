import { openFirefox } from "../support/hand.js";
import { rulesSuite } from "../support/asked.js";

rulesSuite("access, in Firefox", openFirefox);

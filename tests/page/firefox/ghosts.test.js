import { ghostsSuite } from "../support/ghosts.js";
import { openFirefox } from "../support/hand.js";

ghostsSuite("Firefox", openFirefox);

import { openFirefox } from "../support/hand.js";
import { offlineSuite } from "../support/offline.js";

offlineSuite("Firefox", openFirefox);

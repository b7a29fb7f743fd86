import { openFirefox } from "../support/hand.js";
import { HOST, markSuite } from "../support/mark.js";

markSuite("Firefox", () => openFirefox({}, { "network.dns.localDomains": HOST }));

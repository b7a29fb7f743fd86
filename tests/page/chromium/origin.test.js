import { openChromium } from "../support/hand.js";
import { originSuite } from "../support/origin.js";

originSuite("Chromium", (port) => openChromium({}, [`--proxy-server=http://127.0.0.1:${port}`, "--proxy-bypass-list=<-loopback>"]));

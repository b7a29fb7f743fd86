import { openFirefox } from "../support/hand.js";
import { originSuite } from "../support/origin.js";

originSuite("Firefox", (port) => openFirefox({}, {
  "network.proxy.type": 1, "network.proxy.http": "127.0.0.1", "network.proxy.http_port": port,
  "network.proxy.ssl": "127.0.0.1", "network.proxy.ssl_port": port, "network.proxy.allow_hijacking_localhost": true,
}));

import { forcedSuite } from "../support/forced.js";
import { openFirefox } from "../support/hand.js";

/** Pages may not choose their colours; the system's are these. */
const FORCED = { "browser.display.document_color_use": 2, "browser.display.use_system_colors": false };
const DARK = { "ui.systemUsesDarkTheme": 1 };

forcedSuite("Firefox", (scheme) => openFirefox({}, { ...FORCED, ...(scheme === "dark" ? DARK : {}) }), openFirefox);

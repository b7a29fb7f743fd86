import { shortSuite } from "../support/short.js";
import { openWebkit } from "../support/webkit.js";

shortSuite("WebKitGTK", openWebkit);

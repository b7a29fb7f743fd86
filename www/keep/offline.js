// Keeps the page for use without a network, and says when a newer version is there. The page in one file needs none of it.

import { admitted } from "../admit.js";
import { make } from "../dom.js";
import { language } from "../language.js";
import { notice } from "./notice.js";

const served = /^https?:/.test(location.protocol) && !("addressOnShelf" in globalThis) && window === window.top;
/** @type {ServiceWorker|null} the newer version that has been told of */
let told = null;

/** @param {ServiceWorkerRegistration} registration */
function look({ waiting }) {
  if (!waiting || waiting === told || !navigator.serviceWorker.controller) return;
  told = waiting;
  notice("notice.newer", {}, [["notice.newer.take", () => {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload());
    waiting.postMessage("replace");
  }]]);
}

/** A browser may refuse to keep anything: the page then works as long as its server does. */
async function keepPage() {
  const registration = await navigator.serviceWorker.register(admitted("keeper.js"), { updateViaCache: "none" });
  const heed = () => registration.installing?.addEventListener("statechange", () => look(registration));
  registration.addEventListener("updatefound", heed);
  heed();
  look(registration);
  document.addEventListener("visibilitychange", () => document.hidden || registration.update().catch(() => {}));
}

if (served) {
  document.head.append(make("link", { rel: "manifest", href: `lightgap${language === "en" ? "" : `.${language}`}.webmanifest` }));
  if (navigator.serviceWorker) keepPage().catch(() => {});
}

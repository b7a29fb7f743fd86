// A fault of the page or its kernel: what tells of it is fetched then.

export function startFaults() {
  const tell = (/** @type {unknown} */ fault) => import("./keep/fault.js").then((module) => module.tell(fault), () => {});
  addEventListener("error", ({ error }) => error && tell(error));
  addEventListener("unhandledrejection", ({ reason }) => tell(reason));
}

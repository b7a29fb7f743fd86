// A fault of the page or its kernel: what was last said on the console is kept, and what tells of it is fetched then.

export function startFaults() {
  let said = "";
  const speak = console.error;
  console.error = (...texts) => {
    said = texts.join(" "); // a kernel that panics says why here before it stops
    speak(...texts);
  };
  const tell = (/** @type {unknown} */ fault) => import("./keep/fault.js").then((module) => module.tell(fault, said), () => {});
  addEventListener("error", ({ error }) => error && tell(error));
  addEventListener("unhandledrejection", ({ reason }) => tell(reason));
}

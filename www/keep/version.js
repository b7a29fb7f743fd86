// Which version of the page this is, as the tool that built it wrote it into the page.

/** The version and the commit it was built from; nothing where the page was put together by hand. */
export const version = () => document.querySelector('meta[name="version"]')?.getAttribute("content") ?? "";

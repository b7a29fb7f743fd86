((files) => {
  // Hands out the files of the page in one piece: what would be fetched stands in this table.
  const bytes = (text) => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const folder = new URL(".", document.baseURI).href;
  globalThis.fetch = async (asked) => {
    const address = new URL(asked instanceof Request ? asked.url : asked, document.baseURI);
    address.search = "";
    address.hash = "";
    const file = files[address.href.slice(folder.length)];
    if (!address.href.startsWith(folder) || !file) return new Response("", { status: 404 });
    return new Response(bytes(file[1]), { headers: { "content-type": file[0] } });
  };
  // An address for one of them, where a script has to be named and cannot be fetched.
  globalThis.addressOnShelf = (name) => URL.createObjectURL(new Blob([bytes(files[name][1])], { type: files[name][0] }));
})

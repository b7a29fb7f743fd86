// Fetches the first screen's program once and starts it; it stands in the place of the loader that wasm-bindgen writes,
// which takes five times the words. A host that sends WebAssembly by another name is served too, only slower.
let begun;
async function begin(given = new URL(`lightgap_stage_bg.wasm`,import.meta.url)) {
    const imports = __wbg_get_imports();
    const plain = given instanceof URL || typeof given === 'string';
    const answer = plain ? await fetch(given) : await given;
    if (!(answer instanceof Response)) return WebAssembly.instantiate(answer, imports);
    if (!answer.ok) throw new Error(`${answer.url}: ${answer.status}`);
    if (answer.headers.get('content-type') === 'application/wasm') return WebAssembly.instantiateStreaming(answer, imports);
    return WebAssembly.instantiate(await answer.arrayBuffer(), imports);
}
function __wbg_init({ module_or_path } = {}) {
    begun ??= begin(module_or_path).then(
        ({ instance, module }) => __wbg_finalize_init(instance, module),
        (fault) => { begun = undefined; throw fault; },
    );
    return begun;
}

export { __wbg_init as default };


// The worker's side of labour.js: one head, one request after another. First comes its program, compiled
// by the page; a request is {id, question, scenario, asked}, and what it gives carries the same id. While it
// lives it holds the lock `life`, where the browser has locks: the page hears by it of an end that nobody tells.
{
  let ready = Promise.resolve();
  let head;
  const live = (life) => navigator.locks?.request(life, () => {
    postMessage({ life });
    return new Promise(() => {});
  }).catch(() => {});
  const begin = async ({ module, life }) => {
    live(life);
    await wasm_bindgen({ module_or_path: module });
    head = new wasm_bindgen.Labourer();
  };
  const answer = async ({ id, question, scenario, asked }) => {
    await ready;
    return { id, ...head.answer(question, scenario, asked) };
  };
  onmessage = async ({ data }) => {
    try {
      if (data.module) await (ready = begin(data));
      else postMessage(await answer(data));
    } catch (error) {
      postMessage({ id: data.id, died: String(error?.message ?? error) });
    }
  };
}

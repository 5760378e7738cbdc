/**
 * Runs in the page that is measured, before its own scripts. Asks after every frame whether the page can be used: what is
 * in the page then is on the screen. `globalThis.isUsable` is set by the bench; `globalThis.seen` is the answer.
 */
const { port1, port2 } = new MessageChannel();
const ask = () => requestAnimationFrame(() => port2.postMessage(null));
port1.onmessage = () => {
  if (!globalThis.isUsable()) {
    ask();
    return;
  }
  const usable = performance.now();
  globalThis.seen = { usable, fetched: performance.getEntriesByType('resource').map(({ name }) => name) };
};
ask();

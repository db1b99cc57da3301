/** Lets the browser keep the whole guide, once the page the reader came for is there. Where it cannot, nothing is lost. */
if ('serviceWorker' in navigator && import.meta.env.PROD) {
  const { serviceWorker } = navigator;
  const base = import.meta.env.BASE_URL.replace(/\/*$/, '/');
  // What a first visit shows came past the worker, which was not there yet: it is told what the reader has seen.
  const isFirst = serviceWorker.controller === null;
  const seen = () =>
    isFirst ? [...document.images].filter(({ naturalWidth }) => naturalWidth > 0).map((image) => image.currentSrc) : [];
  const catchUp = () =>
    serviceWorker.ready.then(({ active }) => active?.postMessage({ seen: seen() })).catch(() => undefined);
  addEventListener('load', () => {
    serviceWorker
      .register(`${base}service-worker.js`, { scope: base, updateViaCache: 'none' })
      .then(catchUp)
      .catch(() => undefined);
  });
  addEventListener('online', catchUp);
}

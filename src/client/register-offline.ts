/** Lets the browser keep the whole guide, once the page the reader came for is there. Where it cannot, nothing is lost. */
if ('serviceWorker' in navigator && import.meta.env.PROD) {
  const { serviceWorker } = navigator;
  const base = import.meta.env.BASE_URL.replace(/\/*$/, '/');
  const catchUp = () =>
    serviceWorker.ready.then(({ active }) => active?.postMessage('catch-up')).catch(() => undefined);
  addEventListener('load', () => {
    serviceWorker
      .register(`${base}service-worker.js`, { scope: base, updateViaCache: 'none' })
      .then(catchUp)
      .catch(() => undefined);
  });
  addEventListener('online', catchUp);
}

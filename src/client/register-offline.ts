/** Lets the browser keep the whole guide, once the page the reader came for is there. Where it cannot, nothing is lost. */
if ('serviceWorker' in navigator && import.meta.env.PROD) {
  addEventListener('load', () => {
    const base = import.meta.env.BASE_URL.replace(/\/*$/, '/');
    navigator.serviceWorker.register(`${base}service-worker.js`, { scope: base }).catch(() => undefined);
  });
}

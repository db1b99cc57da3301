import { phoneStore } from './phone-store.ts';

/**
 * The plumb guide is fetched once the depth table comes near the screen, or at once where this phone keeps a depth or a
 * reading of the board that belongs on it: most readers never plumb with it.
 */
for (const guide of document.querySelectorAll<HTMLElement>('[data-plumb-guide]')) {
  // Where a browser refuses the store, there is nothing to offer.
  const store = phoneStore();
  if (store === null) continue;
  const start = async () => (await import('./plumb-guide.ts')).startPlumbGuide(guide);
  const keeps = Object.keys(store).some((name) => /^peg-atlas.*(?:depths|gauge-board)\//.test(name));
  if (keeps) {
    start();
    continue;
  }
  const watch = new IntersectionObserver(
    (seen) => {
      if (!seen.some(({ isIntersecting }) => isIntersecting)) return;
      watch.disconnect();
      start();
    },
    { rootMargin: '300px' },
  );
  watch.observe(guide);
}

/**
 * Once the page has loaded and the map comes into view, the drawn map gives way to one that can be moved, zoomed and
 * located on. The library is fetched only then; where that fails, the drawn map stays as it is.
 */
for (const frame of document.querySelectorAll<HTMLElement>('[data-map]')) {
  if (document.readyState === 'complete') whenSeen(frame);
  else addEventListener('load', () => whenSeen(frame), { once: true });
}

function whenSeen(frame: HTMLElement): void {
  const watcher = new IntersectionObserver((entries) => {
    if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
    watcher.disconnect();
    void import('./live-map.ts').then(({ showLiveMap }) => showLiveMap(frame)).catch(() => undefined);
  });
  watcher.observe(frame);
}

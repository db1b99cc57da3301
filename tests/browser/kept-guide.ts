import type { Page } from 'playwright-core';

/** Whether the browser of a page keeps a guide wholly, so that it can be read without a signal. */
export function isWhollyKept(page: Page): Promise<boolean> {
  return page.evaluate(async () => {
    const cache = await caches.open('peg-atlas / kept');
    return (await cache.match('/.kept/whole')) !== undefined;
  });
}

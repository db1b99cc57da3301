import type { Browser } from 'playwright-core';
import { PHONE } from '../../browser/chromium.ts';

/** What a page costs a phone on a thin line, and how far down its answers stand. Null: the page has no such thing. */
export interface PageCost {
  readonly largestPaintMilliseconds: number;
  readonly layoutShift: number;
  readonly htmlBytes: number;
  readonly scriptBytes: number;
  /** From the top of the page to the top of each, in CSS pixels. */
  readonly pixelsTo: Readonly<Record<keyof typeof ANSWERS, number | null>>;
  /** Lower edge of the strip of answers. */
  readonly answersEnd: number | null;
  readonly wider: boolean;
}

/** Where the first of each stands on a page that has one. */
const ANSWERS = {
  hazard: '.dangers > *, .hazard-group',
  bag: '[data-answer="bag"]',
  frame: '[data-answer="frame"]',
  depth: '[data-answer="depth"]',
} as const;

/** 1.6 Mbit/s down, half of it up, 150 ms there and back; a quarter of this machine's speed. */
const LINE = { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 100_000 };
const SLOWER = 4;
/** Time for late scripts and shifts once the page has loaded. */
const SETTLED_MILLISECONDS = 1500;

/** Opens a page in a fresh window of a phone without any copy of the guide, and measures it. */
export async function measurePage(browser: Browser, address: string, throttled = true): Promise<PageCost> {
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block' });
  const page = await context.newPage();
  if (throttled) {
    const session = await context.newCDPSession(page);
    await session.send('Network.enable');
    await session.send('Network.emulateNetworkConditions', LINE);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  }
  await page.addInitScript(() => {
    const seen = { paint: 0, shift: 0 };
    Object.assign(globalThis, { seen });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) seen.paint = entry.startTime;
    }).observe({ type: 'largest-contentful-paint', buffered: true });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) seen.shift += (entry as PerformanceEntry & { value: number }).value;
    }).observe({ type: 'layout-shift', buffered: true });
  });
  await page.goto(address, { waitUntil: 'load' });
  await page.waitForTimeout(throttled ? SETTLED_MILLISECONDS : 0);
  const cost = await page.evaluate((answers) => {
    const { seen } = globalThis as unknown as { seen: { paint: number; shift: number } };
    const boxOf = (selector: string) => {
      const shown = [...document.querySelectorAll(selector)].find((element) => element.getClientRects().length > 0);
      return shown?.getBoundingClientRect() ?? null;
    };
    const [navigation] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
    const resources = performance.getEntriesByType('resource') as PerformanceResourceTiming[];
    const strip = boxOf('[data-answers]');
    return {
      largestPaintMilliseconds: Math.round(seen.paint),
      layoutShift: Math.round(seen.shift * 10_000) / 10_000,
      htmlBytes: navigation?.encodedBodySize ?? 0,
      scriptBytes: resources
        .filter(({ name }) => new URL(name).pathname.endsWith('.js'))
        .reduce((sum, { encodedBodySize }) => sum + encodedBodySize, 0),
      pixelsTo: Object.fromEntries(
        Object.entries(answers).map(([name, selector]) => {
          const box = boxOf(selector);
          return [name, box === null ? null : Math.round(box.top)];
        }),
      ) as Record<keyof typeof answers, number | null>,
      answersEnd: strip === null ? null : Math.round(strip.bottom),
      wider: document.documentElement.scrollWidth > innerWidth,
    };
  }, ANSWERS);
  await context.close();
  return cost;
}

import type { Page } from 'playwright-core';
import { PHONE } from './chromium.ts';

/** A phone, a narrow one, and a phone whose reader has the letters twice as large. */
const READING_SIZES = [
  [390, '100%'],
  [320, '100%'],
  [390, '200%'],
] as const;

/** Shows a page at each size that a reader may have, and looks at it there; `at` names the size for a test's own words. */
export async function atEachReadingSize(page: Page, look: (at: string, width: number) => Promise<void>): Promise<void> {
  for (const [width, percent] of READING_SIZES) {
    await page.setViewportSize({ ...PHONE, width });
    await page.evaluate((size) => {
      document.documentElement.style.fontSize = size;
    }, percent);
    await look(`${width} pixels at ${percent}`, width);
  }
}

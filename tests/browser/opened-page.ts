import type { Browser, Page } from 'playwright-core';
import { inject } from 'vitest';
import { PHONE } from './chromium.ts';

/** A page of the built demo on a phone of its own. */
export async function openedPage(
  browser: Browser,
  path: string,
  options: Parameters<Browser['newContext']>[0] = {},
): Promise<Page> {
  const context = await browser.newContext({ viewport: PHONE, ...options });
  const page = await context.newPage();
  await page.goto(inject('siteUrl') + path);
  return page;
}

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { openBrowser } from './chromium.ts';
import { openedPage } from './opened-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

it('two tabs of one phone keep what each chose, and neither undoes the other', async () => {
  const first = await openedPage(browser, 'kiln-pool/7/', { serviceWorkers: 'block' });
  const second = await first.context().newPage();
  await second.goto(`${inject('siteUrl')}eelback/5/`);
  await first.getByRole('combobox', { name: 'Month' }).selectOption({ label: 'August' });
  await second.locator('#units').scrollIntoViewIfNeeded();
  await second.getByLabel('Weights in').selectOption('kg');
  await second.waitForURL(/weight=kg/);
  await first.locator('#units').scrollIntoViewIfNeeded();
  await first.getByLabel('For the day').fill('2027-08-14');
  for (const [tab, path] of [
    [first, 'tallyman-lake/'],
    [second, 'kiln-pool/'],
  ] as const) {
    await tab.goto(inject('siteUrl') + path);
    await expect.poll(() => tab.url()).toMatch(/weight=kg/);
    expect(await tab.locator('select[name="month"]').inputValue()).toBe('8');
    expect(await tab.locator('.mast').innerText()).toContain('Shown for 14 Aug 2027');
  }
  await first.context().close();
});

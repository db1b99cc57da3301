import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { openBrowser, PHONE } from './chromium.ts';

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block', javaScriptEnabled: false });
  page = await context.newPage();
  await page.goto(`${inject('siteUrl')}kiln-pool/`);
});
afterAll(() => browser.close());

it('scrolls within its own box, by the keyboard too, and shows the month chosen, without script', async () => {
  const strip = page.locator('.strip').first();
  const box = (await strip.boundingBox())!;
  expect(box.x + box.width).toBeLessThanOrEqual(PHONE.width);
  const last = strip.locator('a.b-peg').last();
  expect((await last.boundingBox())!.x).toBeGreaterThan(PHONE.width);
  await strip.focus();
  const before = (await last.boundingBox())!.x;
  await page.keyboard.press('ArrowRight');
  await expect.poll(async () => (await last.boundingBox())!.x).toBeLessThan(before);
  const months = strip.locator('svg').first().locator('.of-month:visible');
  expect(await months.count()).toBe(1);
  await page.locator('select[name="month"]').selectOption({ label: 'August' });
  expect(await months.getAttribute('data-month')).toBe('8');
});

it('has every peg of the water once, and breaks into lines on paper', async () => {
  const drawn = await page.locator('.map-scroll svg a.m-peg').count();
  expect(await page.locator('.strip a.b-peg').count()).toBe(drawn);
  await page.emulateMedia({ media: 'print' });
  for (const tile of await page.locator('.strip > svg').all()) {
    const box = (await tile.boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(PHONE.width);
  }
  await page.emulateMedia({ media: 'screen' });
});

it('opens the sheet of the peg that is tapped', async () => {
  await page.locator('.strip a.b-peg').first().click();
  expect(await page.locator('h1').innerText()).toMatch(/\d+/);
  expect(page.url()).toMatch(/\/kiln-pool\/\w+\/$/);
});

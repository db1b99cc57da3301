import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openBrowser, PHONE } from './chromium.ts';

/** Interval words as a peg sheet prints them: "0.60 likely 0.48 to 0.75". */
const WORTH_WITH_INTERVAL = /\d\.\d\d\s+likely \d\.\d\d to \d\.\d\d/;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function homePage(javaScriptEnabled: boolean): Promise<Page> {
  const context = await browser.newContext({ viewport: PHONE, javaScriptEnabled });
  const page = await context.newPage();
  await page.goto(inject('siteUrl'));
  return page;
}

async function expectSheet(page: Page, peg: string): Promise<void> {
  await page.waitForURL(new RegExp(`/${peg}/$`));
  expect(await page.textContent('h1')).toContain(peg);
  const safety = page.getByRole('region', { name: 'Safety at this peg' });
  expect(await safety.isVisible()).toBe(true);
  expect(await safety.innerText()).toMatch(/peg|line|water|bank|edge/i);
  const worths = await page.getByRole('region', { name: 'What to expect' }).innerText();
  expect(worths.replace(/\s+/g, ' ')).toMatch(WORTH_WITH_INTERVAL);
  expect(await page.locator('#emergency').innerText()).toMatch(/999[\s\S]*grid [A-Z]{2} \d{4} \d{4}/);
}

describe('the angler who has just drawn a peg', () => {
  it('types a number that one water has and is on its sheet at once', async () => {
    const page = await homePage(true);
    await page.getByRole('textbox').first().fill('37');
    await page.keyboard.press('Enter');
    await expectSheet(page, '37');
    await page.context().close();
  });

  it('is asked which water where several have that number', async () => {
    const page = await homePage(true);
    await page.getByRole('textbox').first().fill('23');
    await page.keyboard.press('Enter');
    await page.locator('[data-find-said] a', { hasText: 'Kiln Pool' }).click();
    await expectSheet(page, '23');
    expect(page.url()).toContain('/kiln-pool/');
    await page.context().close();
  });

  it('is told where no peg has that number', async () => {
    const page = await homePage(true);
    await page.getByRole('textbox').first().fill('999');
    expect(await page.locator('[data-find-said]').innerText()).toContain('no peg 999');
    await page.context().close();
  });

  it('finds the same sheet with scripting off', async () => {
    const page = await homePage(false);
    await page
      .getByRole('region', { name: /Kiln Pool/ })
      .getByRole('link', { name: '23', exact: true })
      .click();
    await expectSheet(page, '23');
    await page.context().close();
  });

  it('reads at once that a peg is closed, and why', async () => {
    const page = await homePage(false);
    await page
      .getByRole('region', { name: /Kiln Pool/ })
      .getByRole('link', { name: '14 closed' })
      .click();
    await page.waitForURL(/\/14\/$/);
    expect(await page.locator('main').innerText()).toMatch(/Closed since 3 Feb 2025[\s\S]*stand-off/);
    await page.context().close();
  });
});

describe('a phone that carries an old copy', () => {
  it('marks a check as out of date on the day it is read', async () => {
    const context = await browser.newContext({ viewport: PHONE });
    const page = await context.newPage();
    await page.clock.setFixedTime(new Date('2027-06-01T10:00:00'));
    await page.goto(`${inject('siteUrl')}kiln-pool/23/`);
    expect(await page.locator('.safe .late').count()).toBeGreaterThan(0);
    expect(await page.locator('[data-age]').first().innerText()).toMatch(/192 days old|6 months old/);
    await context.close();
  });
});

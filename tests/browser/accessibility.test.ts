import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { axeFindings } from './axe-findings.ts';
import { openBrowser, PHONE } from './chromium.ts';
import { PAGE_KINDS } from './page-kinds.ts';

/** And what a page shows only once something was chosen on it. */
const STATES = {
  ...PAGE_KINDS,
  'drawn peg, opened': 'draw/kiln-pool/?peg=23',
  'way to a peg on the live map': 'kiln-pool/#map-23',
  'another day': 'kiln-pool/23/?day=2027-08-14',
};

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(['light', 'dark'] as const)('in %s', (colorScheme) => {
  it('a match day with a peg weighed, a change and all of it opened has nothing axe objects to', async () => {
    const context = await browser.newContext({ viewport: PHONE, colorScheme, bypassCSP: true });
    const page = await context.newPage();
    await page.goto(`${inject('siteUrl')}${PAGE_KINDS['match day']}`);
    await page.waitForSelector('#day:not([hidden])');
    const saved = (notes: number) =>
      page.waitForFunction(
        (kept) => document.querySelector('#day-saved')?.textContent === `${kept} ${kept === 1 ? 'note' : 'notes'} kept`,
        notes,
      );
    for (const [i, name] of ['Pat Example', 'Jo Sample'].entries()) {
      await page.fill('[name="entry"]', name);
      await page.press('[name="entry"]', 'Enter');
      await saved(i + 1);
    }
    await page.getByRole('button', { name: 'Withdraws' }).first().click();
    await saved(4);
    await page.locator('[data-peg]').first().click();
    for (const [i, [part, pounds]] of [['silvers', '4'] as const, ['carp', '9'] as const].entries()) {
      await page.fill('.net-form [name="lb"]', pounds);
      await page.click(`.net-part label:has([value="${part}"])`);
      await page.click('.net-form [type="submit"]');
      await saved(5 + i);
    }
    await page.fill('.net-form [name="lb"]', '7');
    await page.$$eval('#day details:not([open]) > summary', (closed) => {
      for (const summary of closed as HTMLElement[]) summary.click();
    });
    expect(await axeFindings(page)).toEqual([]);
    await context.close();
  });

  it.each(Object.entries(STATES))('%s has nothing axe objects to', async (_kind, path) => {
    const context = await browser.newContext({ viewport: PHONE, colorScheme, bypassCSP: true });
    const page = await context.newPage();
    await page.goto(inject('siteUrl') + path);
    if (path.includes('#map-')) await page.locator('.live-way').waitFor({ state: 'attached' });
    // The match day is filled by its script.
    await page.waitForFunction(() => document.querySelector<HTMLElement>('#day')?.hidden !== true);
    expect(await axeFindings(page)).toEqual([]);
    await context.close();
  });
});

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, PHONE } from './chromium.ts';
import { isWhollyKept } from './kept-guide.ts';
import { openedPage } from './opened-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const opened = (path: string, options?: Parameters<Browser['newContext']>[0]) => openedPage(browser, path, options);

const shownPegs = (page: Page) =>
  page
    .locator('table.pegs tbody tr:visible')
    .evaluateAll((rows) => rows.map((row) => (row as HTMLElement).dataset.peg));

describe('the table of pegs before the draw', () => {
  it('is ordered by carp in the chosen month, closed pegs last and worth nothing', async () => {
    const page = await opened('kiln-pool/');
    const byNumber = await shownPegs(page);
    await page.getByLabel('Order by').selectOption('worth-carp');
    expect(page.url()).toContain('order=worth-carp');
    const byCarp = await shownPegs(page);
    expect(byCarp).not.toEqual(byNumber);
    expect([...byCarp].sort()).toEqual([...byNumber].sort());
    const closed = await page
      .locator('table.pegs tbody tr:visible')
      .evaluateAll((rows) => rows.map((row) => row.querySelector('.closed-words:not([hidden])') !== null));
    expect(closed.filter((isClosed) => isClosed).length).toBeGreaterThan(2);
    expect(closed).toEqual([...closed].sort());
    expect(await page.locator('tr[data-peg="14"]').innerText()).not.toMatch(/\d\.\d\d \(/);
    const figures = (await page.locator('[data-part-worth]').allInnerTexts()).map((line) =>
      Number(/carp: (\d+\.\d+)/.exec(line)?.[1]),
    );
    expect(figures.length).toBeGreaterThan(20);
    expect(figures).toEqual([...figures].sort((a, b) => b - a));
    await page.getByLabel('Worth in').selectOption({ label: 'August' });
    const inAugust = await shownPegs(page);
    expect(inAugust).not.toEqual(byCarp);
    // Nothing can be chosen on paper.
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.keep-peg:visible').count()).toBe(0);
    await page.context().close();
  });

  it('leaves in the pegs with a feature, says how many, and refuses an order there is not', async () => {
    const page = await opened('kiln-pool/?order=luck&with=corner');
    expect(await page.locator('#peg-choice-said').innerText()).toMatch(/“luck”.*\d+ of 34 pegs/);
    for (const row of await page.locator('table.pegs tbody tr:visible').all())
      expect(await row.getAttribute('data-features')).toContain('corner');
    await page.context().close();
  });
});

describe('pegs side by side', () => {
  it('are four at most, kept over a restart and read without a signal', async () => {
    const page = await opened('kiln-pool/');
    for (const peg of ['3', '7', '14', '23']) await page.getByLabel(`Compare peg ${peg}`, { exact: true }).check();
    await page.getByLabel('Compare peg 30', { exact: true }).click();
    expect(await page.getByLabel('Compare peg 30', { exact: true }).isChecked()).toBe(false);
    expect(await page.locator('#kept-said').innerText()).toContain('4 pegs at most');
    await expect.poll(() => isWhollyKept(page), { timeout: 60_000 }).toBe(true);
    await page.context().setOffline(true);
    await page.getByRole('link', { name: 'Side by side: 3, 7, 14, 23' }).click();
    await page.waitForURL(/\/compare\/kiln-pool\/\?pegs=3,7,14,23/);
    const cards = page.locator('.side-by-side > li:visible');
    expect(await cards.locator('h2').allInnerTexts()).toEqual(
      ['3', '7', '14', '23'].map((peg) => expect.stringContaining(peg)),
    );
    const tops = await cards
      .locator('h3:text("Depth")')
      .evaluateAll((heads) => heads.map((head) => head.getBoundingClientRect().top));
    expect(new Set(tops.map(Math.round)).size).toBe(1);
    expect(await cards.nth(0).innerText()).toMatch(/Bag[\s\S]*Total[\s\S]*to[\s\S]*Worth[\s\S]*carp/i);
    expect(await cards.nth(2).innerText()).toMatch(/closed[\s\S]*Bag\s+closed/);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
    await page.getByRole('textbox', { name: 'Peg to add' }).fill('99');
    await page.keyboard.press('Enter');
    expect(await page.locator('#compare-said').innerText()).toBe('There is no peg 99 on Kiln Pool.');
    await page.context().close();
  });

  it('all stand in the order of their numbers without script', async () => {
    const page = await opened('compare/kiln-pool/', { javaScriptEnabled: false });
    const pegs = await page.locator('.side-by-side > li:visible h2').allInnerTexts();
    expect(pegs).toHaveLength(34);
    expect(pegs[0]).toMatch(/1$/);
    expect(await page.locator('.compare-add').isVisible()).toBe(false);
    await page.context().close();
  });
});

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { DESK, openBrowser, PHONE } from './chromium.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function opened(path: string, options: { javaScriptEnabled?: boolean; viewport?: typeof PHONE } = {}) {
  const context = await browser.newContext({ viewport: DESK, ...options });
  const page = await context.newPage();
  await page.goto(inject('siteUrl') + path);
  return page;
}

const table = (page: Page) => page.locator('table[data-ledger]').first();
const rowsOf = (page: Page) => table(page).locator('tbody tr:visible');
const valuesOf = (page: Page, column: number) =>
  table(page)
    .locator(`tbody tr > :nth-child(${column})`)
    .evaluateAll((cells) => cells.map((cell) => cell.getAttribute('data-value') ?? ''));

describe('the hazard register', () => {
  it('is whole without script', async () => {
    const page = await opened('register/', { javaScriptEnabled: false });
    const said = await page.locator('main > p').first().innerText();
    expect(await rowsOf(page).count()).toBe(Number(/(\d+) current/.exec(said)?.[1]));
    expect(await page.locator('form.filter').count()).toBe(0);
    await page.context().close();
  });

  it('can be narrowed to a water and a kind, and says how much is shown', async () => {
    const page = await opened('register/');
    const all = await rowsOf(page).count();
    await page.getByLabel('Water').first().selectOption('eelback');
    const shown = await rowsOf(page).count();
    expect(shown).toBeGreaterThan(0);
    expect(shown).toBeLessThan(all);
    expect(await table(page).locator('tbody tr:visible:not([data-water="eelback"])').count()).toBe(0);
    expect(await page.locator('form.filter output').first().innerText()).toBe(`${shown} of ${all} shown`);
    await page.context().close();
  });

  it('sorts by a heading with the keyboard, the highest risk first, and back', async () => {
    const page = await opened('register/');
    const heading = page.getByRole('button', { name: 'risk before' });
    await heading.focus();
    await page.keyboard.press('Enter');
    const falling = (await valuesOf(page, 4)).map(Number);
    expect(falling).toEqual([...falling].sort((a, b) => b - a));
    expect(await table(page).getByRole('columnheader', { name: 'risk before' }).getAttribute('aria-sort')).toBe(
      'descending',
    );
    await page.keyboard.press('Enter');
    const rising = (await valuesOf(page, 4)).map(Number);
    expect(rising).toEqual([...falling].reverse().sort((a, b) => a - b));
    await page.context().close();
  });

  it('can be put in order on a phone too, where cards have no headings', async () => {
    const page = await opened('register/', { viewport: PHONE });
    await page.getByLabel('Order').first().selectOption({ label: 'due' });
    const days = await valuesOf(page, 8);
    expect(days).toEqual([...days].sort());
    await page.context().close();
  });
});

describe('the tables of the club', () => {
  it.each(['register/', 'due/', 'due/round-sheet/kiln-pool/', 'due/clearance/kiln-pool/'])(
    '%s fits a phone without moving sideways',
    async (path) => {
      const page = await opened(path, { viewport: PHONE });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
      await page.context().close();
    },
  );

  it('print the round sheet on A4 across, with a row for every peg', async () => {
    const page = await opened('due/round-sheet/kiln-pool/');
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    const [width, height] = /MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)?.slice(1).map(Number) ?? [];
    // ISO 216: A4 is 210 by 297 mm; a point is 1/72 in.
    expect(width).toBeCloseTo((297 / 25.4) * 72, 0);
    expect(height).toBeCloseTo((210 / 25.4) * 72, 0);
    const rows = await page.locator('.round-sheet').first().locator('tbody tr').count();
    await page.goto(`${inject('siteUrl')}due/clearance/kiln-pool/`);
    expect(rows).toBe(await page.locator('.clearance > section').count());
    await page.context().close();
  });
});

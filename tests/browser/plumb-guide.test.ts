import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openBrowser, PHONE } from './chromium.ts';

const PEG = 'kiln-pool/7/';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const openPeg = async (javaScriptEnabled = true) => {
  const context = await browser.newContext({ viewport: PHONE, javaScriptEnabled });
  const page = await context.newPage();
  await page.goto(inject('siteUrl') + PEG);
  // The forms are fetched as the table comes near the screen.
  await page.locator('.depths').scrollIntoViewIfNeeded();
  return page;
};
const keep = async (page: Page, line: string, depth: string) => {
  await page.locator('.own-depth-form select').selectOption({ label: line });
  await page.locator('.own-depth-form input').fill(depth);
  await page.getByRole('button', { name: 'Save' }).click();
};

describe('the plumb guide', () => {
  it('keeps an own depth on the phone under its line, with the float set 3 in over it', async () => {
    const page = await openPeg();
    await keep(page, '11 m pole', '2.10');
    await page.reload();
    const row = page.locator('tr[data-line="pole-11"] + tr.own');
    await row.waitFor();
    expect(await row.locator('td').allTextContents()).toEqual(['2.10 m', '2.18 m', '']);
    await page.context().close();
  });

  it('takes feet and inches as well, and one depth a line', async () => {
    const page = await openPeg();
    await keep(page, '13 m pole', '2.00');
    await keep(page, '13 m pole', '6 ft 9 in');
    expect(await page.locator('tr.own td:first-of-type').allTextContents()).toEqual(['2.06 m']);
    await page.context().close();
  });

  it('forgets it again', async () => {
    const page = await openPeg();
    await keep(page, 'Margin', '0.8');
    await page.getByRole('button', { name: 'Forget your depth at Margin' }).click();
    expect(await page.locator('tr.own').count()).toBe(0);
    await page.reload();
    expect(await page.locator('tr.own').count()).toBe(0);
    await page.context().close();
  });

  it.each([
    ['deep', /^Expected a length such as 1\.4 m/],
    ['6 ft 14 in', /^Expected inches below 12/],
    ['45', /^Expected a depth between 0 and 30 m/],
  ])('says what it expected instead of %s', async (typed, message) => {
    const page = await openPeg();
    await keep(page, 'Margin', typed);
    expect(await page.locator('#own-depth-form-fault').textContent()).toMatch(message);
    expect(await page.locator('tr.own').count()).toBe(0);
    await page.context().close();
  });

  it('leaves the table whole and offers nothing without script', async () => {
    const page = await openPeg(false);
    expect(await page.locator('.own-depth form').count()).toBe(0);
    expect(await page.locator('table.depths tbody tr').count()).toBeGreaterThan(6);
    await page.context().close();
  });
});

describe('the gauge board', () => {
  it('sets every depth by the reader’s own reading, for that day alone, on every sheet of the water', async () => {
    const page = await openPeg();
    const datum = Number(await page.locator('tr[data-line="pole-11"]').getAttribute('data-datum'));
    await page.locator('.gauge-board input').fill('-0.50');
    await page.getByRole('button', { name: 'Use' }).click();
    await page.reload();
    await page.locator('.gauge-board').waitFor();
    const shown = page.locator('tr[data-line="pole-11"] td b');
    expect(Number(await shown.textContent())).toBeCloseTo(datum - 0.5, 2);
    expect(await page.locator('[data-strip-line="pole-11"] b').textContent()).toBe(await shown.textContent());
    expect(await page.locator('.depth-today [data-level-day]').textContent()).toBe('by your reading');
    await page.goto(`${inject('siteUrl')}kiln-pool/9/`);
    const levelDay = page.locator('.depth-today [data-level-day]');
    await expect.poll(() => levelDay.textContent()).toBe('by your reading');
    await page.clock.setFixedTime(new Date(Date.now() + 36 * 3600_000));
    await page.reload();
    await page.locator('.gauge-board').waitFor();
    expect(await page.locator('.depth-today [data-level-day]').textContent()).not.toBe('by your reading');
    await page.context().close();
  });

  it('says beside the field what no board shows', async () => {
    const page = await openPeg();
    await page.locator('.gauge-board input').fill('low');
    await page.getByRole('button', { name: 'Use' }).click();
    const fault = await page.locator('.gauge-board input').getAttribute('aria-describedby');
    expect(await page.locator(`#${fault}`).textContent()).toContain('Expected a length such as');
    await page.context().close();
  });
});

describe('the choice of a month', () => {
  it('shows that month’s bag and worth without script', async () => {
    const page = await openPeg(false);
    expect(await page.locator('.of-month:visible [class^="evidence-"]').count()).toBe(1);
    await page.getByRole('combobox', { name: 'Month' }).selectOption({ label: 'August' });
    const shown = page.locator('tbody.of-month:visible');
    expect(await shown.evaluateAll((all) => all.map((each) => each.getAttribute('data-month')))).toEqual(['8']);
    await page.getByRole('combobox', { name: 'Month' }).selectOption({ label: 'every month' });
    expect(await shown.count()).toBe(12);
    expect(await page.locator('.month-name:visible').allTextContents()).toContain('December');
    await page.context().close();
  });
});

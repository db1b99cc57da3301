import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openBrowser, PHONE } from './chromium.ts';

/** The demo's poplar works close Tallyman Lake 16 to 20 from 30 Nov to 2 Dec 2026. */
const CLOSED_THEN = 'tallyman-lake/17/';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function phone(
  today: string,
  path: string,
  options: Parameters<Browser['newContext']>[0] = {},
): Promise<{ readonly context: BrowserContext; readonly page: Page }> {
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block', ...options });
  const page = await context.newPage();
  await page.clock.setFixedTime(new Date(`${today}T10:00:00`));
  await page.goto(inject('siteUrl') + path);
  return { context, page };
}

const field = async (page: Page) => {
  await page.locator('#units').scrollIntoViewIfNeeded();
  return page.getByLabel('For the day');
};
const isShownClosed = (page: Page) => page.locator('main .closed-words:visible, main .shut:visible').count();

describe('the day a reader chose', () => {
  it('holds on five pages and after a restart, is in the address, and closes what is closed then', async () => {
    const { context, page } = await phone('2026-11-24', CLOSED_THEN);
    await page.locator('.answer').waitFor();
    const open = await page.locator('main').innerText();
    expect(open).not.toContain('Closed until');
    await (await field(page)).fill('2026-12-01');
    await expect.poll(() => page.locator('main').innerText()).toContain('Closed until 2 Dec 2026');
    expect(page.url()).toContain('day=2026-12-01');
    expect(await page.locator('.answer').isVisible()).toBe(false);
    for (const path of ['tallyman-lake/', 'kiln-pool/', 'kiln-pool/23/', 'compare/tallyman-lake/', 'rules/']) {
      await page.goto(inject('siteUrl') + path);
      expect(await page.locator('.mast').innerText()).toContain('Shown for 1 Dec 2026');
      expect(page.url()).toContain('day=2026-12-01');
    }
    await page.goto(`${inject('siteUrl')}kiln-pool/23/`);
    expect(await page.locator('select[name="month"]').inputValue()).toBe('12');

    const later = await phone('2026-11-25', 'tallyman-lake/', { storageState: await context.storageState() });
    expect(await later.page.locator('tr[data-peg="17"]').innerText()).toMatch(/closed/i);
    await later.page.getByRole('button', { name: 'Move and zoom the map' }).click();
    await later.page.locator('.live-peg').first().waitFor({ state: 'attached' });
    expect(await later.page.getByRole('link', { name: /^Peg 17, closed/ }).count()).toBeGreaterThan(0);
    await (await field(later.page)).fill('2026-11-25');
    await expect.poll(() => later.page.locator('tr[data-peg="17"]').innerText()).not.toMatch(/closed/i);
    expect(later.page.url()).not.toContain('day=');
    await later.context.close();
    await context.close();
  });

  it('never opens what is closed today, and is over once it has come', async () => {
    const { context, page } = await phone('2026-12-01', `${CLOSED_THEN}?day=2026-12-06`);
    expect(await page.locator('.mast').innerText()).toContain('Shown for 6 Dec 2026');
    expect(await page.locator('main').innerText()).toContain('Closed until 2 Dec 2026');
    expect(await page.locator('.answer').isVisible()).toBe(false);
    await (await field(page)).fill('2026-12-07');
    await expect.poll(() => page.locator('.mast').innerText()).toContain('Shown for 7 Dec 2026');
    const state = await context.storageState();
    await context.close();
    const later = await phone('2026-12-07', CLOSED_THEN, { storageState: state });
    expect(await later.page.locator('.mast').innerText()).not.toContain('Shown for');
    expect(await isShownClosed(later.page)).toBe(0);
    await later.context.close();
  });

  it.each([
    ['2026-02-30', 'There is no day “2026-02-30”'],
    ['2026-11-01', '1 Nov 2026 is not to come'],
    ['<img src=x onerror=alert(1)>', 'There is no day “<img src=x'],
  ])('that is none is answered in words, at the head and beside the field: %s', async (day, words) => {
    const { context, page } = await phone('2026-11-24', `kiln-pool/23/?day=${encodeURIComponent(day)}`);
    expect(await page.locator('.mast [role="status"]').innerText()).toContain(words);
    const input = await field(page);
    const said = await input.getAttribute('aria-describedby');
    expect(await page.locator(`#${said}`).innerText()).toContain(words);
    expect(await input.inputValue()).toBe('2026-11-24');
    await input.fill('2026-11-02');
    expect(await input.getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator(`#${said}`).innerText()).toContain('2 Nov 2026 is not to come');
    await context.close();
  });

  it('is kept from the sun and wind of a sheet, too, and stands there on the next', async () => {
    const { context, page } = await phone('2026-11-24', 'kiln-pool/23/');
    await page.getByRole('button', { name: 'Another day or wind' }).click();
    await page.getByLabel('Day', { exact: true }).fill('2026-12-06');
    await page.getByLabel('Day', { exact: true }).blur();
    await expect.poll(() => page.locator('.mast').innerText()).toContain('Shown for 6 Dec 2026');
    await page.goto(`${inject('siteUrl')}eelback/5/`);
    await page.getByRole('button', { name: 'Another day or wind' }).click();
    expect(await page.getByLabel('Day', { exact: true }).inputValue()).toBe('2026-12-06');
    await context.close();
  });
});

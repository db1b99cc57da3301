import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openBrowser } from './chromium.ts';
import { isWhollyKept } from './kept-guide.ts';
import { openedPage } from './opened-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const opened = (path: string, options?: Parameters<Browser['newContext']>[0]) => openedPage(browser, path, options);

const found = (page: Page) => page.locator('[data-found] li');

describe('a search', () => {
  it('for lilies from the first page leads to their pegs, and loads its index with the search alone', async () => {
    const page = await opened('', { serviceWorkers: 'block' });
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    expect(asked).toEqual([]);
    await page.getByRole('searchbox').fill('lilies');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/search\/\?for=lilies/);
    await found(page).first().waitFor();
    expect(asked.filter((url) => url.includes('entries.json'))).toHaveLength(1);
    const pegs = await page.locator('[data-found] section', { hasText: 'Pegs' }).locator('li > a').allInnerTexts();
    expect(pegs.length).toBeGreaterThan(3);
    await page.getByRole('link', { name: pegs[0]!, exact: true }).click();
    await page.locator('h1').waitFor();
    expect(await page.locator('main').innerText()).toMatch(/lilies/i);
    await page.context().close();
  });

  it('answers without a signal', async () => {
    const page = await opened('search/');
    await expect.poll(() => isWhollyKept(page), { timeout: 60_000 }).toBe(true);
    await page.context().setOffline(true);
    await page.goto(`${inject('siteUrl')}search/?for=kiln+23`);
    await found(page).first().waitFor();
    expect(await page.locator('[data-found] li > a').allInnerTexts()).toEqual(['Kiln Pool 23']);
    await page.context().close();
  });

  it('says what is closed, what was, and what is not there, tied to the field', async () => {
    const page = await opened('search/?for=K14');
    await found(page).first().waitFor();
    expect(await found(page).first().innerText()).toMatch(/Kiln Pool 14\s+closed since/);
    const field = page.getByRole('searchbox');
    await field.fill('999');
    const said = page.locator(`#${await field.getAttribute('aria-describedby')}`);
    await expect.poll(() => said.innerText()).toContain('There is no peg 999 here.');
    await field.fill('<img src=x onerror=alert(1)>');
    await expect.poll(() => said.innerText()).toContain('Nothing here has “<img');
    expect(await page.locator('main img').count()).toBe(0);
    await page.context().close();
  });

  it('on the first page reads K23 and 23 kiln as pegs, and says which water has none', async () => {
    const page = await opened('');
    const field = page.getByRole('textbox').first();
    const said = page.locator(`#${await field.getAttribute('aria-describedby')}`);
    await field.fill('K38');
    expect(await said.innerText()).toContain('Kiln Pool has no peg 38.');
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await field.fill('reeds');
    expect(await said.innerText()).toBe('Search the guide for “reeds”');
    await field.fill('23 kiln');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/kiln-pool\/23\/$/);
    await page.context().close();
  });
});

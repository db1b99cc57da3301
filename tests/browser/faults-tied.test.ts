import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openBrowser, PHONE } from './chromium.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function opened(path: string): Promise<Page> {
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(inject('siteUrl') + path, { waitUntil: 'networkidle' });
  return page;
}

/** What a screen reader says of a field beside its name: whether it is wrong, and the words it is described by. */
function toldOf(field: Locator) {
  return field.evaluate((control) => ({
    invalid: control.getAttribute('aria-invalid'),
    words: (control.getAttribute('aria-describedby') ?? '')
      .split(' ')
      .map((id) => document.getElementById(id)?.textContent ?? '')
      .join(' '),
  }));
}

async function isTold(field: Locator, words: RegExp): Promise<void> {
  await expect.poll(() => toldOf(field)).toEqual({ invalid: 'true', words: expect.stringMatching(words) });
}

// WCAG 2.2, 3.3.1 Error Identification; ARIA 1.2, aria-invalid and aria-describedby.
describe('a fault is tied to its field', () => {
  it.each([
    ['home', '', '#find-peg-said', '999'],
    ['drawn peg', 'draw/kiln-pool/', '#drawn-said', '999'],
    ['pegs side by side', 'compare/kiln-pool/', '#compare-said', '999'],
  ])('%s', async (_kind, path, said, typed) => {
    const page = await opened(path);
    const field = page.locator(`[aria-describedby="${said.slice(1)}"]`).first();
    await field.fill(typed);
    await field.press('Enter');
    await isTold(field, /999/);
    await field.fill('23');
    await field.press('Enter');
    await expect.poll(async () => page.url().includes('23') || (await toldOf(field)).invalid !== 'true').toBe(true);
    await page.context().close();
  });

  it('peg sheet: an own depth that is none', async () => {
    const page = await opened('kiln-pool/23/');
    // It is fetched once the depths come near the screen.
    await page.locator('#depth').scrollIntoViewIfNeeded();
    const field = page.locator('.own-depth-form input');
    await field.fill('deep');
    await field.press('Enter');
    await isTold(field, /Expected a length/);
    await page.context().close();
  });

  it('bank round: the gauge, a length and a hazard without its kind', async () => {
    const page = await opened('bank-round/kiln-pool/');
    await page.locator('#round-begin').click();
    const level = page.locator('#round-gauge [name=level]');
    await level.fill('high');
    await isTold(level, /“high” is not a level/);
    await level.fill('0.12');
    await expect.poll(async () => (await toldOf(level)).invalid).toBe(null);
    const stop = page.locator('[data-stop="1"]');
    await stop.locator('[data-open]').click();
    const length = stop.locator('[name="line-distance"]');
    await length.fill('far');
    await isTold(length, /“far” is not a length/);
    await length.fill('44');
    await expect.poll(async () => (await toldOf(length)).invalid).toBe(null);
    expect((await toldOf(stop.locator('[name="line-method"]').first())).words).toMatch(/how the distance/);
    await stop.locator('[data-add-hazard]').click();
    await isTold(stop.locator('[data-field=kind]'), /choose what it is/i);
    await isTold(stop.locator('[data-field=place]'), /say where it is/i);
    await page.context().close();
  });
});

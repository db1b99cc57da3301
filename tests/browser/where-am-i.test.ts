import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { PegPlaces } from '../../src/atlas/peg-places.ts';
import { DESK, openBrowser, PHONE } from './chromium.ts';
import { isWhollyKept } from './kept-guide.ts';
import { PAGE_KINDS } from './page-kinds.ts';

const PLACES = JSON.parse(readFileSync(join(inject('siteFolder'), 'data/where.json'), 'utf8')) as PegPlaces;
const [, latitude, longitude] = PLACES.find(({ water }) => water === 'Kiln Pool')!.pegs.find(([peg]) => peg === '23')!;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function opened(path: string, accuracy: number | null, options: Parameters<Browser['newContext']>[0] = {}) {
  const context = await browser.newContext({
    viewport: PHONE,
    ...(accuracy === null
      ? {}
      : { geolocation: { latitude, longitude, accuracy }, permissions: ['geolocation' as const] }),
    ...options,
  });
  const page = await context.newPage();
  await page.goto(inject('siteUrl') + path);
  return page;
}

const asked = async (page: Page) => {
  await page.locator('.where-here').click();
  return page.locator('.where-said [role="status"]');
};

describe('where am I', () => {
  it.each(Object.entries(PAGE_KINDS))('is told on a page of its own kind, to read out: %s', async (_kind, path) => {
    const page = await opened(path, 4, { serviceWorkers: 'block' });
    const said = await asked(page);
    await expect.poll(() => said.innerText()).toMatch(/You are at [A-Z]{2} \d{4,5} \d{4,5}, \d+\.\d+ N/);
    expect(await said.innerText()).toContain('Nearest: peg 23 of Kiln Pool, 0 m');
    await page.context().close();
  });

  it('names all pegs it may be where the fix is not sure, and none where it is rough', async () => {
    const unsure = await opened('rules/', 12, { serviceWorkers: 'block' });
    await expect
      .poll(async () => (await asked(unsure)).innerText())
      .toMatch(/Nearest may be peg .* or .*Read the number/);
    await unsure.context().close();
    const rough = await opened('rules/', 180, { serviceWorkers: 'block' });
    const said = await asked(rough);
    await expect.poll(() => said.innerText()).toContain('Too rough');
    expect(await said.innerText()).not.toContain('peg 23');
    await rough.context().close();
  });

  it('works without a signal, moves nothing on the page, and closes again', async () => {
    const page = await opened('', 4);
    await expect.poll(() => isWhollyKept(page), { timeout: 60_000 }).toBe(true);
    await page.context().setOffline(true);
    await page.goto(`${inject('siteUrl')}kiln-pool/23/`);
    const places = () =>
      page.locator('h1, .answer').evaluateAll((all) => all.map((one) => one.getBoundingClientRect().top + scrollY));
    const before = await places();
    const said = await asked(page);
    await expect.poll(() => said.innerText()).toContain('peg 23 of Kiln Pool');
    expect(await places()).toEqual(before);
    await page.getByRole('button', { name: 'Close' }).click();
    expect(await said.isVisible()).toBe(false);
    await page.context().close();
  });

  it('says why there is no fix, and stands at the emergency block where there is no strip', async () => {
    const page = await opened('kiln-pool/23/', null, { viewport: DESK, serviceWorkers: 'block' });
    expect(await page.locator('#emergency .where-here').count()).toBe(1);
    const said = await asked(page);
    await expect.poll(() => said.innerText()).toContain('allow it in the settings');
    expect(await said.innerText()).toContain('Go by the numbers on the posts');
    await page.context().close();
  });
});

import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, inject, it } from 'vitest';
import { openBrowser, PHONE } from './chromium.ts';
import { isWhollyKept } from './kept-guide.ts';
import { TamperedHost } from './tampered-host.ts';

const SHEET = /^\/[^/]+\/\d+[a-z]?\/$/;

let browser: Browser;
let folder: string;
let host: TamperedHost;
let context: BrowserContext;
beforeAll(async () => {
  folder = join(mkdtempSync(join(tmpdir(), 'half-filled-')), 'guide');
  cpSync(inject('siteFolder'), folder, { recursive: true });
  host = await TamperedHost.of(folder);
  browser = await openBrowser();
});
afterEach(async () => {
  host.tamper = () => ({});
  await context?.close();
});
afterAll(async () => {
  await browser?.close();
  host?.close();
  rmSync(join(folder, '..'), { recursive: true, force: true });
});

async function visit(): Promise<Page> {
  context = await browser.newContext({ viewport: PHONE });
  const page = await context.newPage();
  await page.goto(host.address);
  return page;
}

/** What the foot of a page says of the phone's copy. */
const edition = (page: Page) => page.locator('[data-edition]').innerText();
const standing = (page: Page) => page.locator('[data-standing]').innerText();

/** How many pages are kept on the phone by now. */
function keptFiles(page: Page): Promise<number> {
  return page.evaluate(async () => (await (await caches.open('peg-atlas / kept')).keys()).length);
}

/** Waits until no more comes. */
async function isStill(page: Page): Promise<void> {
  let before = -1;
  await expect
    .poll(
      async () => {
        const now = await keptFiles(page);
        const same = now > 10 && now === before;
        before = now;
        return same;
      },
      { timeout: 30_000, interval: 1500 },
    )
    .toBe(true);
}

describe('a copy half filled', () => {
  it('serves what it has, says what is not there, and is called ready only when it is whole', async () => {
    let sheets = 0;
    // The signal goes after ten sheets: what is needed first has come by then.
    host.tamper = (path) => (SHEET.test(path) && ++sheets > 10 ? { status: 503 } : {});
    const page = await visit();
    await isStill(page);
    await context.setOffline(true);

    await page.goto(`${host.address}kiln-pool/`);
    expect(await standing(page)).toMatch(/Only part of the guide is on this phone\. \d+ of \d+ files so far/);
    await expect.poll(() => edition(page)).toMatch(/\d+ of \d+ files kept/);
    expect(await edition(page)).not.toContain('ready');
    expect(await page.locator('.map-scroll svg a.m-peg').count()).toBeGreaterThan(20);

    const sheetPaths = await page
      .locator('table.pegs tbody a')
      .evaluateAll((links) => links.map((link) => new URL((link as HTMLAnchorElement).href).pathname));
    const statuses: (number | undefined)[] = [];
    for (const path of [...sheetPaths.slice(0, 3), ...sheetPaths.slice(-3)]) {
      const answer = await page.goto(new URL(path, host.address).href);
      statuses.push(answer?.status());
      if (answer?.status() === 503) {
        expect(await page.locator('h1').innerText()).toBe('This page is not on this phone yet');
        expect(await page.locator('main').innerText()).toMatch(/signal/);
      }
      // Whoever stands there with no page still reads whom to call.
      expect(await page.locator('#emergency a[href^="tel:"]').count()).toBeGreaterThan(0);
    }
    expect(new Set(statuses)).toContain(503);

    host.tamper = () => ({});
    await context.setOffline(false);
    await page.goto(host.address);
    await expect.poll(() => isWhollyKept(page), { timeout: 60_000 }).toBe(true);
    await expect
      .poll(() => edition(page), { timeout: 20_000 })
      .toMatch(/ready without a signal, data to \d+ \w+ \d{4}/);
    expect(await standing(page)).not.toContain('Only part');
    await context.setOffline(true);
    for (const path of sheetPaths.slice(-3))
      expect((await page.goto(new URL(path, host.address).href))?.status()).toBe(200);
  });

  it('where data are to be saved holds what is needed first, says so, and the rest at the reader’s word', async () => {
    const worker = join(folder, 'service-worker.js');
    const script = readFileSync(worker, 'utf8');
    // The browser's own setting, as the worker reads it.
    writeFileSync(worker, `Object.defineProperty(navigator, 'connection', { value: { saveData: true } });\n${script}`);
    try {
      host.asked = [];
      const page = await visit();
      await expect.poll(() => isWhollyKept(page), { timeout: 60_000 }).toBe(true);
      await expect.poll(() => edition(page), { timeout: 20_000 }).toMatch(/\d+ pages are not on this phone/);
      expect(await edition(page)).not.toContain('ready');
      expect(host.asked.filter(({ path }) => SHEET.test(path))).toEqual([]);
      await context.setOffline(true);
      expect((await page.goto(`${host.address}draw/kiln-pool/?peg=23`))?.status()).toBe(200);
      await context.setOffline(false);
      await page.goto(`${host.address}kiln-pool/`);
      await page.getByRole('button', { name: 'Keep them too' }).click();
      await expect.poll(() => edition(page), { timeout: 60_000 }).toContain('ready without a signal');
      await context.setOffline(true);
      expect((await page.goto(`${host.address}kiln-pool/30/`))?.status()).toBe(200);
    } finally {
      writeFileSync(worker, script);
    }
  });

  it('on a full phone tells that there is no room, and shows each page that comes', async () => {
    const worker = join(folder, 'service-worker.js');
    const script = readFileSync(worker, 'utf8');
    writeFileSync(
      worker,
      `let room = 60; const put = Cache.prototype.put; Cache.prototype.put = function (...of) { return room-- > 0 ? put.apply(this, of) : Promise.reject(new DOMException('full', 'QuotaExceededError')); };\n${script}`,
    );
    try {
      const page = await visit();
      await expect.poll(() => standing(page), { timeout: 30_000 }).toContain('The phone has no room for more');
      expect(await edition(page)).not.toContain('ready');
      expect((await page.goto(`${host.address}kiln-pool/30/`))?.status()).toBe(200);
      await context.setOffline(true);
      expect((await page.goto(host.address))?.status()).toBe(200);
      expect(await standing(page)).toContain('Only part of the guide');
    } finally {
      writeFileSync(worker, script);
    }
  });

  it('holds the pictures of the very first page that was opened', async () => {
    // The worker comes when the picture is there already: it never sees it fetched.
    const { promise: until, resolve: answer } = Promise.withResolvers<void>();
    host.tamper = (path) => (path === '/service-worker.js' ? { until } : {});
    context = await browser.newContext({ viewport: PHONE });
    const page = await context.newPage();
    await page.goto(`${host.address}eelback/14/`);
    const picture = page.locator('main img').first();
    await picture.scrollIntoViewIfNeeded();
    await expect.poll(() => picture.evaluate((one: HTMLImageElement) => one.naturalWidth)).toBeGreaterThan(0);
    answer();
    const path = await picture.evaluate((one: HTMLImageElement) => new URL(one.currentSrc).pathname.slice(1));
    const isKept = () =>
      page.evaluate(async (picturePath) => {
        const cache = await caches.open('peg-atlas / kept');
        const list = await (await cache.match('/.kept/whole'))?.json();
        const digest = list?.files.find(([each]: string[]) => each === picturePath)?.[1];
        return digest !== undefined && (await cache.match(`/.kept/file/${digest}`)) !== undefined;
      }, path);
    await expect.poll(isKept, { timeout: 30_000 }).toBe(true);
  });
});

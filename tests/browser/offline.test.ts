import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { OfflineList } from '../../src/client/offline/offline-list.ts';
import { writeOfflineList } from '../../src/commands/offline-list.ts';
import { openBrowser, PHONE } from './chromium.ts';
import { TamperedHost } from './tampered-host.ts';

const eventually = <T>(look: () => Promise<T> | T) => expect.poll(look, { timeout: 20_000 });

let browser: Browser;
let context: BrowserContext;
let page: Page;
let folder: string;
let host: TamperedHost;
let address: string;

/** The edition that is wholly kept in the browser. */
function keptEdition(): Promise<string | undefined> {
  return page.evaluate(async () => {
    const cache = await caches.open('peg-atlas / kept');
    return (await (await cache.match('/.kept/whole'))?.json())?.edition;
  });
}

function publishedList(): OfflineList {
  return JSON.parse(readFileSync(join(folder, 'offline-list.json'), 'utf8'));
}

/** Pages that a visitor's phone keeps. */
function visitorsPages(): string[] {
  return publishedList()
    .files.filter(([, , set]) => set === 'first' || set === 'guide')
    .map(([path]) => path)
    .filter((path) => path === '' || path.endsWith('/'));
}

beforeAll(async () => {
  folder = join(mkdtempSync(join(tmpdir(), 'offline-')), 'guide');
  cpSync(inject('siteFolder'), folder, { recursive: true });
  host = await TamperedHost.of(folder);
  address = host.address;
  browser = await openBrowser();
  context = await browser.newContext({ viewport: PHONE });
  page = await context.newPage();
  await page.goto(address);
});

afterAll(async () => {
  await browser?.close();
  host?.close();
  rmSync(join(folder, '..'), { recursive: true, force: true });
});

describe('the guide after one visit', () => {
  it('opens every page without signal, and the scripts of each', async () => {
    await eventually(keptEdition).toBe(publishedList().edition);
    await context.setOffline(true);
    const failed: string[] = [];
    // What the page was still fetching when the test went on to the next one was given up, not refused.
    page.on('requestfailed', (request) => {
      if (request.failure()?.errorText !== 'net::ERR_ABORTED') failed.push(request.url());
    });
    const pages = visitorsPages();
    expect(pages.length).toBeGreaterThan(100);
    // Each kind of page in the browser, all others from the worker's store.
    for (const path of [
      '',
      ...pages.filter((one) => /^(kiln-pool\/(1\/)?|safety\/|notices\/|features\/|rules\/)$/.test(one)),
    ]) {
      const response = await page.goto(address + path, { waitUntil: 'networkidle' });
      expect(response?.status(), path).toBe(200);
      expect(response?.fromServiceWorker(), path).toBe(true);
      expect(await page.locator('h1').count(), path).toBe(1);
    }
    const missing = await page.evaluate(async (paths) => {
      const kept = new Set(
        (await (await caches.open('peg-atlas / kept')).keys()).map(({ url }) => new URL(url).pathname),
      );
      const list = await (await caches.match('/.kept/whole'))?.json();
      return paths.filter(
        (path) => !kept.has(`/.kept/file/${list.files.find(([each]: string[]) => each === path)[1]}`),
      );
    }, pages);
    expect(missing).toEqual([]);
    expect(failed).toEqual([]);
  });

  it('finds a page by an address with a mark or without its last slash', async () => {
    expect((await page.goto(`${address}kiln-pool/1/?from=plate#depth`))?.status()).toBe(200);
    expect((await page.goto(`${address}kiln-pool/1`))?.status()).toBe(200);
  });

  it('says that a page is not there instead of showing a browser’s fault', async () => {
    const response = await page.goto(`${address}kiln-pool/999/`);
    expect(response?.status()).toBe(404);
    expect(await page.locator('h1').count()).toBe(1);
    await context.setOffline(false);
  });

  it('shows a page published since at once where there is signal', async () => {
    const file = join(folder, 'safety/index.html');
    writeFileSync(file, readFileSync(file, 'utf8').replace('</h1>', ' of a new guide</h1>'));
    await writeOfflineList(folder, '/');
    await page.goto(`${address}safety/`);
    expect(await page.locator('h1').innerText()).toContain('of a new guide');
  });

  it('takes a new guide over, fetches only what changed, and lets the old one go', async () => {
    await eventually(keptEdition).toBe(publishedList().edition);
    const before = publishedList().edition;
    const file = join(folder, 'safety/index.html');
    writeFileSync(file, readFileSync(file, 'utf8').replace(' of a new guide', ' of a new guide again'));
    await writeOfflineList(folder, '/');
    const { edition } = publishedList();
    expect(edition).not.toBe(before);
    host.asked = [];
    await page.goto(address);
    await eventually(keptEdition).toBe(edition);
    const pages = host.asked.map(({ path }) => path).filter((path) => path.endsWith('/'));
    // The first page is the one that was opened.
    expect([...new Set(pages)].sort()).toEqual(['/', '/safety/']);
    await context.setOffline(true);
    await page.goto(`${address}safety/`);
    expect(await page.locator('h1').innerText()).toContain('of a new guide again');
    await context.setOffline(false);
  });

  it('keeps what the bailiff uses once it was used', async () => {
    await context.setOffline(true);
    expect((await page.goto(`${address}bank-round/kiln-pool/`))?.status()).toBe(503);
    expect(await page.locator('h1').innerText()).toBe('This page is not on this phone yet');
    await context.setOffline(false);
    await page.goto(`${address}bank-round/`);
    await page.goto(address);
    await eventually(async () => {
      await context.setOffline(true);
      const response = await page.goto(`${address}bank-round/kiln-pool/`);
      await context.setOffline(false);
      await page.goto(address);
      return response?.status();
    }).toBe(200);
  });

  it('keeps what belongs to the very first page that was opened, though no worker was there to see it used', async () => {
    const first = await browser.newContext({ viewport: PHONE });
    const used = await first.newPage();
    await used.goto(`${address}bank-round/`);
    const isKept = () =>
      used.evaluate(async () => {
        const cache = await caches.open('peg-atlas / kept');
        const list = await (await cache.match('/.kept/whole'))?.json();
        const digest = list?.files.find(([path]: string[]) => path === 'bank-round/kiln-pool/')?.[1];
        return digest !== undefined && (await cache.match(`/.kept/file/${digest}`)) !== undefined;
      });
    await eventually(isKept).toBe(true);
    await first.setOffline(true);
    expect((await used.goto(`${address}bank-round/kiln-pool/`))?.status()).toBe(200);
    await first.close();
  });

  it('keeps pictures that were seen over a new guide', async () => {
    const picture = publishedList().files.find(([path]) => /^photos\/.*\.webp$/.test(path))?.[0] ?? '';
    const isShown = () =>
      page.evaluate(
        (path) =>
          new Promise<boolean>((resolve) => {
            const image = new Image();
            image.onload = () => resolve(true);
            image.onerror = () => resolve(false);
            image.src = `/${path}`;
          }),
        picture,
      );
    expect(await isShown()).toBe(true);
    const file = join(folder, 'rules/index.html');
    writeFileSync(file, readFileSync(file, 'utf8').replace('</h1>', ' anew</h1>'));
    await writeOfflineList(folder, '/');
    await page.goto(address);
    await eventually(keptEdition).toBe(publishedList().edition);
    await context.setOffline(true);
    // A tab of its own, so that no picture in the browser's memory stands in for the kept one.
    await page.close();
    page = await context.newPage();
    await page.goto(address);
    expect(await isShown()).toBe(true);
    await context.setOffline(false);
  });
});

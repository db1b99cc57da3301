import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { writeOfflineList } from '../../src/commands/offline-list.ts';
import { openBrowser, PHONE } from './chromium.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
};
const eventually = <T>(look: () => Promise<T> | T) => expect.poll(look, { timeout: 20_000 });

let browser: Browser;
let context: BrowserContext;
let page: Page;
let folder: string;
let server: Server;
let address: string;
let asked: string[] = [];

/** Serves a copy of the guide that the test may change, and notes what is asked for. */
function serve(): Promise<void> {
  server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
    asked.push(path);
    const file = join(folder, path.endsWith('/') ? `${path}index.html` : path);
    if (!existsSync(file) || statSync(file).isDirectory()) return response.writeHead(404).end();
    response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' });
    return response.end(readFileSync(file));
  });
  return new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
}

/** Versions of the guide that are wholly kept in the browser. */
function keptVersions(): Promise<string[]> {
  return page.evaluate(async () => {
    const names = await caches.keys();
    const lists = names.map(async (name) => (await (await caches.open(name)).match('/offline-list.json'))?.json());
    return (await Promise.all(lists)).flatMap((list) => (list === undefined ? [] : [list.version]));
  });
}

function publishedList(): { version: string; files: [string, string][] } {
  return JSON.parse(readFileSync(join(folder, 'offline-list.json'), 'utf8'));
}

beforeAll(async () => {
  folder = join(mkdtempSync(join(tmpdir(), 'offline-')), 'guide');
  cpSync(inject('siteFolder'), folder, { recursive: true });
  await serve();
  address = `http://localhost:${(server.address() as AddressInfo).port}/`;
  browser = await openBrowser();
  context = await browser.newContext({ viewport: PHONE });
  page = await context.newPage();
  await page.goto(address);
});

afterAll(async () => {
  await browser?.close();
  server?.close();
  rmSync(join(folder, '..'), { recursive: true, force: true });
});

describe('the guide after one visit', () => {
  it('opens every page without signal, and the scripts of each', async () => {
    await eventually(keptVersions).toEqual([publishedList().version]);
    await context.setOffline(true);
    const failed: string[] = [];
    // What the page was still fetching when the test went on to the next one was given up, not refused.
    page.on('requestfailed', (request) => {
      if (request.failure()?.errorText !== 'net::ERR_ABORTED') failed.push(request.url());
    });
    const pages = publishedList()
      .files.map(([path]) => path)
      .filter((path) => path === '' || path.endsWith('/'));
    expect(pages.length).toBeGreaterThan(100);
    // Each kind of page in the browser, all others from the worker's store.
    for (const path of [
      '',
      ...pages.filter((one) => /^(kiln-pool\/(1\/)?|safety\/|register\/|bank-round\/(kiln-pool\/)?|due\/)$/.test(one)),
    ]) {
      const response = await page.goto(address + path, { waitUntil: 'networkidle' });
      expect(response?.status(), path).toBe(200);
      expect(response?.fromServiceWorker(), path).toBe(true);
      expect(await page.locator('h1').count(), path).toBe(1);
    }
    const missing = await page.evaluate(async (paths) => {
      const cache = await caches.open((await caches.keys())[0] ?? '');
      const kept = new Set((await cache.keys()).map(({ url }) => new URL(url).pathname));
      return paths.filter((path) => !kept.has(`/${path}`));
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
    await page.goto(`${address}safety/`);
    expect(await page.locator('h1').innerText()).toContain('of a new guide');
  });

  it('takes a new guide over, fetches only what changed, and lets the old one go', async () => {
    const before = publishedList().version;
    await writeOfflineList(folder, '/');
    const { version } = publishedList();
    expect(version).not.toBe(before);
    asked = [];
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    await eventually(keptVersions).toEqual([version]);
    expect(asked.filter((path) => path.endsWith('/')).sort()).toEqual(['/safety/']);
    await context.setOffline(true);
    await page.goto(`${address}safety/`);
    expect(await page.locator('h1').innerText()).toContain('of a new guide');
    await context.setOffline(false);
  });
});

import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { addDays } from '../../src/domain/day.ts';
import { openBrowser, PHONE } from './chromium.ts';
import { closedGuide } from './closed-guide.ts';
import { TamperedHost } from './tampered-host.ts';

const SHEET = 'kiln-pool/2/';
const eventually = <T>(look: () => Promise<T> | T) => expect.poll(look, { timeout: 30_000 });

let browser: Browser;
let oldFolder: string;
let closed: Awaited<ReturnType<typeof closedGuide>>;
let host: TamperedHost;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  oldFolder = mkdtempSync(join(tmpdir(), 'old-guide-'));
  cpSync(inject('siteFolder'), oldFolder, { recursive: true });
  closed = await closedGuide('kiln-pool', '2');
  browser = await openBrowser();
});

afterAll(async () => {
  await browser?.close();
  closed?.remove();
  rmSync(oldFolder, { recursive: true, force: true });
});

beforeEach(async () => {
  host = await TamperedHost.of(oldFolder);
  context = await browser.newContext({ viewport: PHONE, timezoneId: 'Europe/London' });
  page = await context.newPage();
});

afterEach(async () => {
  await context?.close();
  host?.close();
});

/** The phone keeps the guide in which the peg is open. */
async function keepOldGuide(): Promise<void> {
  await page.goto(host.address);
  await eventually(() => page.locator('[data-edition]').innerText()).toContain('ready without a signal');
}

function dayOf(folder: string): string {
  return JSON.parse(readFileSync(join(folder, 'offline-list.json'), 'utf8')).day;
}

async function saysClosed(of: Page = page): Promise<boolean> {
  return /^Closed since|Closed since .{5,12}\./m.test(await of.locator('main').innerText());
}

async function isClosedOffline(): Promise<boolean> {
  await context.setOffline(true);
  await page.goto(host.address + SHEET);
  const told = await saysClosed();
  await context.setOffline(false);
  return told;
}

describe('a peg closed since the phone took its copy', () => {
  it('is open in the copy it took, or nothing below would show anything', async () => {
    await keepOldGuide();
    await page.goto(host.address + SHEET);
    expect(await saysClosed()).toBe(false);
    expect(await page.locator('[data-standing-kind]').count()).toBe(0);
    await context.setOffline(true);
    await page.goto(host.address + SHEET);
    expect(await saysClosed()).toBe(false);
    expect(await page.locator('[data-standing-kind="unchecked"]').innerText()).toContain('Not checked with the club');
  });

  it('stays closed offline after a visit while the new guide was being uploaded, in any later copy', async () => {
    await keepOldGuide();
    // Uploaded so far: the list and the now file, no page yet.
    host.folder = closed.folder;
    host.tamper = (path) => (path.endsWith('/') ? { folder: oldFolder } : {});
    await page.goto(host.address + SHEET);
    expect(await saysClosed()).toBe(true);
    await page.waitForTimeout(1500);
    expect(await isClosedOffline()).toBe(true);
    host.tamper = () => ({});
    await page.goto(host.address);
    await eventually(() => page.locator('[data-edition]').innerText()).toContain(
      `data to ${Number(closed.day.slice(8))} Nov`,
    );
    expect(await isClosedOffline()).toBe(true);
    expect(await page.locator('[data-standing-kind="older"]').count()).toBe(0);
  });

  it('comes with the notices that came since, over a page of the copy', async () => {
    await keepOldGuide();
    host.folder = closed.folder;
    host.tamper = (path) => (path.endsWith('/') ? { folder: oldFolder } : {});
    await page.goto(`${host.address}kiln-pool/3/`);
    const notice = page.locator('[data-standing-kind="notice"]');
    await eventually(() => notice.innerText()).toContain('Loose handrail');
    await context.setOffline(true);
    await page.goto(`${host.address}kiln-pool/3/`);
    await eventually(() => notice.innerText()).toContain('Hazard notice. Loose handrail');
    await page.goto(`${host.address}kiln-pool/4/`);
    expect(await notice.count()).toBe(0);
    await context.setOffline(false);
  });

  it('is closed on the live map, whose data are kept, where the page is not', async () => {
    await keepOldGuide();
    host.folder = closed.folder;
    host.tamper = (path) => (path.endsWith('.geojson') ? { folder: oldFolder } : {});
    await page.goto(`${host.address}kiln-pool/`);
    await page.getByRole('button', { name: 'Move and zoom the map' }).click();
    const mark = page.locator('.live-map a[href$="/kiln-pool/2/"]');
    await eventually(() => mark.getAttribute('aria-label')).toContain('closed');
    await eventually(() => page.locator('.live-map .is-closed a[href$="/kiln-pool/2/"]').count()).toBe(1);
  });

  it('is closed where the first byte of its page does not come', async () => {
    await keepOldGuide();
    host.folder = closed.folder;
    const { promise: until, resolve: answer } = Promise.withResolvers<void>();
    host.tamper = (path) => (path.endsWith('/') ? { until } : {});
    await page.goto(host.address + SHEET);
    await eventually(() => saysClosed()).toBe(true);
    expect(await page.locator('[data-standing-kind="older"]').innerText()).toContain('Older copy');
    answer();
  });

  it('is told as not checked while no answer comes, and closed once one is here', async () => {
    await keepOldGuide();
    host.folder = closed.folder;
    const { promise: until, resolve: answer } = Promise.withResolvers<void>();
    host.tamper = () => ({ until });
    await page.goto(host.address + SHEET, { waitUntil: 'commit' });
    await eventually(() => page.locator('[data-standing-kind]').first().innerText()).toContain('Not checked');
    answer();
    await eventually(() => saysClosed()).toBe(true);
  });

  it('is closed where the host sets no Cache-Control and the browser would rather not ask', async () => {
    // RFC 9111, section 4.2.2: without an expiry a cache may guess one from Last-Modified, here ten per cent of a year.
    const aYearAgo = new Date(Date.now() - 365 * 86_400_000).toUTCString();
    host.tamper = () => ({ headers: { 'last-modified': aYearAgo } });
    await page.goto(host.address + SHEET);
    expect(await saysClosed()).toBe(false);
    await page.goto('about:blank');
    host.folder = closed.folder;
    await page.goto(host.address + SHEET);
    await eventually(() => saysClosed()).toBe(true);
  });

  it('is closed where one other page of the new guide answers 404, and the copy says that it is older', async () => {
    await keepOldGuide();
    host.folder = closed.folder;
    host.tamper = (path) => (path === '/rules/' ? { status: 404 } : {});
    await page.goto(host.address + SHEET);
    expect(await saysClosed()).toBe(true);
    // Everything but the one page has come: nothing is asked for any more.
    await eventually(async () => {
      const before = host.asked.length;
      await page.waitForTimeout(2000);
      return host.asked.length - before;
    }).toBe(0);
    expect(await isClosedOffline()).toBe(true);
    host.tamper = () => ({});
    host.asked = [];
    await page.goto(host.address);
    await eventually(() => page.locator('[data-edition]').innerText()).toContain(
      `data to ${Number(closed.day.slice(8))} Nov`,
    );
    // What came before the page that failed was kept.
    expect(host.asked.filter(({ path }) => path.endsWith('/') && path !== '/rules/').length).toBeLessThan(3);
  });

  it('is closed at once on a page that is open when a new copy is taken, and its map goes on working', async () => {
    await keepOldGuide();
    await page.goto(host.address + SHEET);
    expect(await saysClosed()).toBe(false);
    host.folder = closed.folder;
    const other = await context.newPage();
    await other.goto(host.address);
    await eventually(() => other.locator('[data-edition]').innerText()).toContain(
      `data to ${Number(closed.day.slice(8))} Nov`,
    );
    await eventually(() => saysClosed()).toBe(true);
    expect(await page.locator('[data-standing-kind="older"]').innerText()).toContain('Older copy');
  });

  it('is closed on a page left open for thirty days, which tells its age as it grows', async () => {
    await page.clock.install({ time: `${addDays(dayOf(oldFolder), 1)}T12:00:00Z` });
    await keepOldGuide();
    await page.goto(host.address + SHEET);
    expect(await page.locator('[data-age]').innerText()).toContain('1 day old');
    host.folder = closed.folder;
    // The worker's own clock cannot be moved: an answer it has just had serves for ten seconds.
    await page.waitForTimeout(10_500);
    await page.clock.fastForward(30 * 86_400_000);
    await eventually(() => page.locator('[data-age]').innerText()).toContain('31 days old');
    await eventually(() => saysClosed()).toBe(true);
  });

  it.each([403, 404, 429, 503])('is read from the copy, closed or open, where the host answers %i', async (status) => {
    await keepOldGuide();
    host.tamper = () => ({ status });
    await page.goto(host.address + SHEET);
    expect(await page.locator('h1').innerText()).toContain('2');
    expect(await page.locator('[data-standing-kind="unchecked"]').count()).toBe(1);
    host.folder = closed.folder;
    host.tamper = (path) => (path === '/now.json' ? {} : { status });
    await page.goto(host.address + SHEET);
    expect(await saysClosed()).toBe(true);
  });
});

import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { RoundFile } from '../../src/content/round-file/round-file.ts';
import { formatDay } from '../../src/domain/day.ts';
import { childEnvironment } from '../child-environment.ts';
import { openBrowser, PHONE } from './chromium.ts';

/** The guide is built anew, ratings and all. */
const BUILD_MILLISECONDS = 600_000;

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const HERE = { latitude: 52.93126, longitude: 0.2252 };

/** What is looked at until it is so; a machine that builds beside it is slow. */
const eventually = <T>(look: () => Promise<T>) => expect.poll(look, { timeout: 20_000 });

let browser: Browser;
let context: BrowserContext;
let page: Page;
let scratch: string;
let water: string;

function venueCommand(args: readonly string[]) {
  return spawnSync(process.execPath, ['src/commands/venue.ts', ...args], {
    cwd: PROJECT,
    env: childEnvironment({ VENUE_DIR: join(scratch, 'venue') }),
    encoding: 'utf8',
  });
}

/** Waits until the guide is wholly kept and, once a page of the round was opened, all that the round needs with it. */
async function keptOffline(set: string | null): Promise<void> {
  await page.evaluate(async (wanted) => {
    await navigator.serviceWorker.ready;
    const isKept = async () => {
      const cache = await caches.open('peg-atlas / kept');
      const list = await (await cache.match('/.kept/whole'))?.json();
      if (list === undefined) return false;
      const files = (list.files as [string, string, string][]).filter(([, , each]) => each === wanted);
      const kept = await Promise.all(files.map(([, digest]) => cache.match(`/.kept/file/${digest}`)));
      return kept.every((file) => file !== undefined);
    };
    while (!(await isKept())) await new Promise((resolve) => setTimeout(resolve, 100));
  }, set);
}

/** Lets two taps stand apart: a second one at the same place within half a second is taken for a slip. */
async function apart(): Promise<void> {
  await page.waitForTimeout(600);
}

/** Waits until the last change is on the phone. */
async function saved(): Promise<void> {
  await page.waitForFunction(() => document.querySelector('#round-saved')?.textContent?.startsWith('Saved'));
}

beforeAll(async () => {
  scratch = mkdtempSync(join(tmpdir(), 'bank-round-'));
  cpSync(join(PROJECT, 'content'), join(scratch, 'venue'), { recursive: true });
  browser = await openBrowser();
  context = await browser.newContext({
    viewport: PHONE,
    hasTouch: true,
    acceptDownloads: true,
    geolocation: HERE,
    permissions: ['geolocation'],
  });
  page = await context.newPage();
  await page.goto(inject('siteUrl'));
  await keptOffline(null);
  // The bailiff opens the round where there is a signal: its pages are kept for those who use them.
  await page.goto(`${inject('siteUrl')}bank-round/`);
  await keptOffline('bank-round');
  await context.setOffline(true);
});

afterAll(async () => {
  await browser?.close();
  rmSync(scratch, { recursive: true, force: true });
});

describe('a bank round walked without signal', () => {
  let peg: string;
  let place: string;
  let file: string;
  let round: RoundFile;

  it('opens from the kept guide and begins', async () => {
    await page.goto(`${inject('siteUrl')}bank-round/`);
    await page.locator('main .row a').first().click();
    await page.waitForURL(/bank-round\/[^/]+\/$/);
    water = new URL(page.url()).pathname.split('/').at(-2) ?? '';
    await page.locator('#round-begin').click();
    await eventually(() => page.locator('#round-count').textContent()).toMatch(/^0 of \d+ pegs seen$/);
  });

  it('notes a hazard at the first peg of the way, with its photo and place', async () => {
    const stop = page.locator('[data-stop]').first();
    peg = (await stop.getAttribute('data-stop')) ?? '';
    place = 'third step from the top <script>alert(1)</script>';
    await stop.locator('[data-open]').click();
    await stop.locator('[data-add-hazard]').click();
    await stop.locator('[data-field=kind]').selectOption('trip');
    await stop.locator('[data-field=place]').fill(place);
    await stop.locator('[data-level=severity][value="4"]').check();
    await stop.locator('[data-level=likelihood][value="2"]').check();
    await stop.locator('[data-hazard-place]').check();
    await eventually(() => stop.locator('[data-hazard-said]').textContent()).toMatch(/^Position kept/);
    const photo = await sharp({ create: { width: 3000, height: 2000, channels: 3, background: '#465' } })
      .withExif({ IFD0: { Make: 'Example Phone' } })
      .jpeg()
      .toBuffer();
    await stop
      .locator('[data-hazard-photo]')
      .setInputFiles({ name: 'step.jpg', mimeType: 'image/jpeg', buffer: photo });
    await eventually(() => stop.locator('[data-hazard-picture] img').count()).toBe(1);
    await stop.locator('[name=note]').fill('half a no');
    await saved();
  });

  it('is all there when the page is reloaded half-way, still without signal', async () => {
    await page.reload();
    const stop = page.locator(`[data-stop="${peg}"]`);
    await eventually(() => stop.locator('[data-state]').textContent()).toBe('seen, 1 hazard found');
    await stop.locator('[data-open]').click();
    expect(await stop.locator('[data-field=place]').inputValue()).toBe(place);
    expect(await stop.locator('[data-level=severity][value="4"]').isChecked()).toBe(true);
    expect(await stop.locator('[name=note]').inputValue()).toBe('half a no');
    await eventually(() => stop.locator('[data-hazard-picture] img').count()).toBe(1);
    await stop.locator('[name=note]').fill('half a note made whole');
    await saved();
  });

  it('says what has to be mended before it is handed over, and leads there', async () => {
    const second = page.locator('[data-stop]').nth(1);
    await apart();
    await second.locator('[data-open]').click();
    await second.locator('[name=clear-width]').fill('wide');
    await apart();
    await page.locator('[data-make]').click();
    await eventually(() => page.locator('#round-end li button').allTextContents()).toHaveLength(1);
    await apart();
    await page.locator('#round-end li button').click();
    await second.locator('[name=clear-width]').fill('4,5');
    await saved();
  });

  it('is handed over as one file that holds everything', async () => {
    await apart();
    await page.locator('[data-make]').click();
    await apart();
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('[data-save]').click()]);
    file = join(scratch, download.suggestedFilename());
    await download.saveAs(file);
    round = JSON.parse(readFileSync(file, 'utf8')) as RoundFile;
    expect(download.suggestedFilename()).toBe(`bank-round-${round.day}-${round.ref}.txt`);
    expect(round.pegs.map((one) => one.peg)).toContain(peg);
    const finding = round.pegs.find((one) => one.peg === peg);
    expect(finding).toMatchObject({
      note: 'half a note made whole',
      hazards: expect.arrayContaining([
        expect.objectContaining({
          did: 'found',
          kind: 'trip',
          severity: 4,
          likelihood: 2,
          at: { lat: 52.93126, lng: 0.2252, accuracyMetres: 1 },
        }),
      ]),
    });
    expect(round.pegs.find((one) => one.clearWidthMetres !== undefined)?.clearWidthMetres).toBe(4.5);
    const shrunk = await sharp(Buffer.from(round.photos[0]?.jpeg ?? '', 'base64')).metadata();
    expect({ width: shrunk.width, height: shrunk.height, exif: shrunk.exif }).toEqual({
      width: 1600,
      height: 1067,
      exif: undefined,
    });
    await eventually(() => page.locator('#round-again').isVisible()).toBe(true);
  });

  it('can be read back in from its file', async () => {
    await page.goto(`${inject('siteUrl')}bank-round/`);
    const kept = page.locator('.kept-round');
    await kept.locator('[data-delete]').click();
    await apart();
    await kept.locator('[data-really]').click();
    await eventually(() => kept.count()).toBe(0);
    await page.locator('#round-read-back').setInputFiles(file);
    await eventually(() => page.locator('#read-back-said').textContent()).toContain(`Round ${round.ref} was loaded`);
    await page.goto(`${inject('siteUrl')}bank-round/${water}/`);
    await eventually(() => page.locator(`[data-stop="${peg}"] [data-state]`).textContent()).toBe(
      'seen, 1 hazard found',
    );
  });

  it(
    'is taken in by the command, and the guide built anew shows the hazard with its dates',
    async () => {
      const taken = venueCommand(['intake', file, '--yes']);
      expect(taken.stderr).toBe('');
      expect(taken.stdout).toContain(`Taken in: round ${round.ref}`);
      const out = join(scratch, 'guide');
      const built = venueCommand(['build', '--out', out]);
      expect(built.status, built.stderr).toBe(0);
      await context.setOffline(false);
      const sheet = await context.newPage();
      await sheet.setContent(readFileSync(join(out, water, peg, 'index.html'), 'utf8'));
      for (const line of await sheet.locator('.dangers summary').all()) await line.click();
      const said = (await sheet.locator('main').innerText()).replace(/\s+/g, ' ');
      expect(said).toContain(place);
      const after = said.slice(said.indexOf(place)).toLowerCase();
      expect(after).toContain(`found ${formatDay(round.day)}`.toLowerCase());
      expect(after).toContain(`checked ${formatDay(round.day)}`.toLowerCase());
      const again = venueCommand(['intake', file, '--yes']);
      expect(again.stdout).toContain('nothing was changed');
    },
    BUILD_MILLISECONDS,
  );
});

it('says when the phone is full, keeps what was saved, and saves again once there is room', async () => {
  const full = await browser.newContext({ viewport: PHONE });
  const phone = await full.newPage();
  await phone.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...args) {
      if (sessionStorage.getItem('full') === 'yes') throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, args);
    };
  });
  await phone.goto(`${inject('siteUrl')}bank-round/${water}/`);
  await phone.locator('#round-begin').click();
  const stop = phone.locator('[data-stop]').first();
  await stop.locator('[data-open]').click();
  await stop.locator('[name=note]').fill('saved before');
  const told = () => phone.locator('#round-saved').textContent();
  await eventually(told).toMatch(/^Saved/);
  await phone.evaluate(() => sessionStorage.setItem('full', 'yes'));
  await stop.locator('[name=note]').fill('saved before, and more');
  await eventually(told).toMatch(/NOT saved.*phone is full.*Everything saved before is still here/);
  await phone.evaluate(() => sessionStorage.setItem('full', 'no'));
  await stop.locator('[name=note]').fill('saved before, and more now');
  await eventually(told).toMatch(/^Saved/);
  await phone.reload();
  await stop.locator('[data-open]').click();
  expect(await stop.locator('[name=note]').inputValue()).toBe('saved before, and more now');
  await full.close();
});

import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import jsqr from 'jsqr';
import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { squareCode } from '../../src/atlas/drawing/square-code.ts';
import { slipCode } from '../../src/client/pace/slip-code.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import type { Slip } from '../../src/match-day/slip.ts';
import { readSlipFile, slipFileText } from '../../src/match-day/slip-file.ts';
import { openBrowser, PHONE } from './chromium.ts';
import { runVenue } from './run-venue.ts';

const WATER = 'eelback';

// A general-purpose decoder is CommonJS: its function is the module or its default, as the loader will have it.
const decode = (typeof jsqr === 'function' ? jsqr : (jsqr as { default: typeof jsqr }).default) as typeof jsqr;

async function codeIn(picture: Buffer): Promise<string | undefined> {
  const { data, info } = await sharp(picture).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return decode(new Uint8ClampedArray(data), info.width, info.height)?.data;
}

let browser: Browser;
let folder: string;
beforeAll(async () => {
  browser = await openBrowser();
  folder = mkdtempSync(join(tmpdir(), 'peg-atlas-slip-'));
  cpSync('content', join(folder, 'venue'), { recursive: true });
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

it('from the pace page by the code on its screen into the log and onto the water’s page', {
  timeout: 600_000,
}, async () => {
  const { venue } = await loadVenue(join(folder, 'venue'));
  const match = venue!.events.findLast(
    ({ water, kind, listing }) => water === WATER && kind === 'match' && listing === 'full',
  )!;
  const { peg } = venue!.sessions.find(
    (one) => one.event === match.id && one.status === 'weighed' && one.painted === undefined,
  )!;
  const at = (hour: number, minute: number) => new Date(`${match.day}T${hour}:${String(minute).padStart(2, '0')}:00`);

  const context = await browser.newContext({ viewport: PHONE, deviceScaleFactor: 2, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.clock.install({ time: at(10, 30) });
  await page.goto(`${inject('siteUrl')}draw/${WATER}/?peg=${peg}`);
  await page.fill('[name="all-in"]', '10:00');
  await page.click('.times-form [type="submit"]');
  const caught = async (pounds: string) => {
    await page.locator('[aria-label="What is caught"] [name="lb"]').fill(pounds);
    await page.locator('[aria-label="What is caught"] [data-part]').first().click();
  };
  await caught('1');
  await page.clock.setSystemTime(at(12, 20));
  await caught('3');
  await page.click('.slip summary');
  await page.getByRole('button', { name: 'Make the slip' }).click();
  const picture = await page.locator('.slip-code canvas').screenshot();
  const text = await codeIn(picture);
  await context.close();

  const file = join(folder, 'slip.txt');
  writeFileSync(file, text ?? '');
  await runVenue(['intake', file, '--yes', '--venue', join(folder, 'venue')]);
  const hours = readFileSync(join(folder, 'venue', 'sessions', match.day.slice(0, 4), 'hours.csv'), 'utf8');
  const part = venue!.settings.bagParts[0]!.id;
  expect(hours).toContain(`${match.id},${peg},1,${part},1-00\n${match.id},${peg},3,${part},3-00\n`);

  const guide = join(folder, 'guide');
  await runVenue(['build', '--out', guide, '--quiet', '--venue', join(folder, 'venue')]);
  const built = await browser.newPage();
  await built.setContent(readFileSync(join(guide, WATER, 'index.html'), 'utf8'), { waitUntil: 'domcontentloaded' });
  const section = built.locator('section[aria-labelledby="hours"]');
  const month = section.locator(`[data-month="${Number(match.day.slice(5, 7))}"]`);
  expect(await month.textContent()).toMatch(
    /from 1 bag of one match\.(?: It lasted \d\.5 hours: hour \d is 30 minutes\.)? Thin/,
  );
  expect(await month.textContent()).toContain('hour 1 25%, hour 2 0%, hour 3 75%');
  expect(readFileSync(join(inject('siteFolder'), WATER, 'index.html'), 'utf8')).toContain(
    'Nobody has logged hours here.',
  );
});

const SLIP: Slip = {
  id: 'a1b2c3d4',
  venue: 'Osierholt Fishery',
  water: WATER,
  peg: '3',
  day: '2026-12-06',
  match: null,
  hours: 5,
  caught: [{ minute: 30, part: 'carp', grams: 900 }],
  fed: [],
  depths: [],
  spot: '',
  method: 'pole',
  bait: '',
  lines: null,
  waterDegreesC: null,
};

async function photograph(slip: Slip): Promise<Buffer> {
  const drawn = squareCode(slipCode(await slipFileText(slip))!, 'Code').replace(
    '<svg ',
    '<svg xmlns="http://www.w3.org/2000/svg" ',
  );
  return sharp(Buffer.from(drawn)).resize(700, 700).flatten({ background: '#fff' }).png().toBuffer();
}

it('is photographed by the organiser, whose phone makes the file of it, or says why not', async () => {
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block', acceptDownloads: true });
  const page = await context.newPage();
  // Chromium on Linux has no reader of codes of its own: the test's decoder stands in for the one phones have.
  await page.exposeFunction('decodeInTest', (png: string) => codeIn(Buffer.from(png.split(',')[1]!, 'base64')));
  await page.addInitScript(() => {
    class Reader {
      async detect(bitmap: ImageBitmap) {
        const canvas = Object.assign(document.createElement('canvas'), { width: bitmap.width, height: bitmap.height });
        canvas.getContext('2d')!.drawImage(bitmap, 0, 0);
        const { decodeInTest } = globalThis as unknown as {
          decodeInTest: (png: string) => Promise<string | undefined>;
        };
        const rawValue = await decodeInTest(canvas.toDataURL());
        return rawValue === undefined ? [] : [{ rawValue }];
      }
    }
    Object.assign(globalThis, { BarcodeDetector: Reader });
  });
  await page.goto(`${inject('siteUrl')}matches/2026-12-06-winter-three/day/`);
  await page.waitForSelector('#day:not([hidden])');
  const take = (buffer: Buffer) =>
    page.setInputFiles('#day-hand-over [capture]', { name: 'photo.png', mimeType: 'image/png', buffer });
  const said = () => page.textContent('#slip-read');

  const [download] = await Promise.all([page.waitForEvent('download'), photograph(SLIP).then(take)]);
  expect(download.suggestedFilename()).toBe('slip-eelback-3-2026-12-06.txt');
  expect(await readSlipFile(readFileSync(await download.path(), 'utf8'))).toEqual({ ok: true, slip: SLIP });
  await take(await photograph({ ...SLIP, venue: 'Elsewhere' }));
  await expect.poll(said, { timeout: 20_000 }).toBe('That slip is of Elsewhere, not of this venue.');
  await take(
    await sharp({ create: { width: 60, height: 60, channels: 3, background: '#888' } })
      .png()
      .toBuffer(),
  );
  await expect.poll(said, { timeout: 20_000 }).toContain('No code was found');
  await context.close();
});

it('tells the organiser to ask for the file where the browser reads no codes', async () => {
  const page = await browser.newPage();
  await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'BarcodeDetector'));
  await page.goto(`${inject('siteUrl')}matches/2026-12-06-winter-three/day/`);
  await page.waitForSelector('#day:not([hidden])');
  expect(await page.textContent('#slip-read')).toContain('ask for the file');
  expect(await page.locator('#day-hand-over [capture]').count()).toBe(0);
  await page.close();
});

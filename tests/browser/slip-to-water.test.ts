import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import jsqr from 'jsqr';
import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { loadVenue } from '../../src/content/load-venue.ts';
import { openBrowser, PHONE } from './chromium.ts';
import { runVenue } from './run-venue.ts';

const WATER = 'eelback';

// A general-purpose decoder is CommonJS: its function is the module or its default, as the loader will have it.
const decode = (typeof jsqr === 'function' ? jsqr : (jsqr as { default: typeof jsqr }).default) as typeof jsqr;

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
  timeout: 300_000,
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
  const { data, info } = await sharp(picture).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  const text = decode(new Uint8ClampedArray(data), info.width, info.height)?.data;
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
  expect(await month.textContent()).toContain('from 1 bag of one match. Thin');
  expect(await month.textContent()).toContain('hour 1 25%, hour 2 0%, hour 3 75%');
  expect(readFileSync(join(inject('siteFolder'), WATER, 'index.html'), 'utf8')).toContain(
    'Nobody has logged hours here.',
  );
});

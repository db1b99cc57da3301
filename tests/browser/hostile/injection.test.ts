import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { DOMParser } from '@xmldom/xmldom';
import { parse } from 'csv-parse/sync';
import ICAL from 'ical.js';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { guideServer } from '../../../src/commands/guide-folder/serve-guide.ts';
import { DESK, openBrowser } from '../chromium.ts';
import { runVenue } from '../run-venue.ts';
import { writeHostileVenue } from './hostile-venue.ts';
import { payload } from './payloads.ts';
import { textFields } from './text-fields.ts';
import { strangeElements, watchedPage } from './watched-page.ts';

/** Fields whose text is read as something else (a place, a slope, a file, an id), and so is refused where it is none. */
const READ_AS_OTHER = new Set(
  'grid address slope gradient nesting-months file photo cleared-photo round line replaces mapped-as mapped_as matches section'.split(
    ' ',
  ),
);

let browser: Browser;
let scratch: string;
let guide: string;
let siteUrl: string;
let files: readonly string[];
let stop: () => void;

beforeAll(async () => {
  scratch = mkdtempSync(join(tmpdir(), 'hostile-'));
  guide = join(scratch, 'guide');
  writeHostileVenue(join(scratch, 'venue'));
  await runVenue(['build', '--venue', join(scratch, 'venue'), '--out', guide]);
  files = readdirSync(guide, { recursive: true, encoding: 'utf8' }).sort();
  const server = guideServer(guide, '/');
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  siteUrl = `http://127.0.0.1:${(server.address() as { port: number }).port}/`;
  stop = () => server.close();
  browser = await openBrowser();
}, 600_000);

afterAll(async () => {
  await browser?.close();
  stop?.();
  rmSync(scratch, { recursive: true, force: true });
});

const text = (path: string) => readFileSync(join(guide, path), 'utf8');
const ending = (pattern: RegExp) => files.filter((path) => pattern.test(path) && !path.startsWith('schema'));
const pages = () => ending(/\.html$/).map((path) => path.replace(/(^|\/)index\.html$/, '$1'));

it('fills every text field that a club may write', () => {
  const written = readdirSync(join(scratch, 'venue'), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.(?:md|csv|geojson)$/.test(path))
    .map((path) => readFileSync(join(scratch, 'venue', path), 'utf8'));
  const headers = written.map((each) => each.slice(0, each.indexOf('\n')));
  const missing = textFields(fileURLToPath(new URL('../../../public/schema', import.meta.url))).filter(
    (field) =>
      !READ_AS_OTHER.has(field) &&
      !written.some((each) => new RegExp(`\\b${field}"?: ?\\[?"=HYPERLINK`).test(each)) &&
      !headers.some((header) => header.split(',').includes(field)),
  );
  expect(missing).toEqual([]);
});

/** Does what a reader does: opens what is folded, and points at everything that says something when pointed at. */
async function handle(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const folded of document.querySelectorAll('details')) folded.open = true;
  });
  if ((await page.locator('[data-map]').count()) === 0) return;
  await page.getByRole('button', { name: 'Move and zoom the map' }).click();
  await page.locator('.live-map .leaflet-interactive').first().waitFor({ state: 'attached' });
  const said = await page.evaluate(() => {
    let tooltips = 0;
    for (const shape of document.querySelectorAll('.live-map .leaflet-interactive')) {
      for (const kind of ['mouseover', 'mousemove', 'click'])
        shape.dispatchEvent(new MouseEvent(kind, { bubbles: true, clientX: 100, clientY: 300 }));
      tooltips += document.querySelectorAll('.leaflet-tooltip').length;
      shape.dispatchEvent(new MouseEvent('mouseout', { bubbles: true }));
    }
    return tooltips;
  });
  expect(said).toBeGreaterThan(0);
}

describe.each([
  ['as it is', false],
  ['with its content security policy switched off', true],
])('the guide %s', (_name, bypassCSP) => {
  it('runs, loads and leads to nothing that a text said, on any page', async () => {
    const context = await browser.newContext({
      viewport: DESK,
      bypassCSP,
      serviceWorkers: bypassCSP ? 'block' : 'allow',
    });
    const found: string[] = [];
    let seen = 0;
    for (const path of pages()) {
      const { page, trouble } = await watchedPage(context, siteUrl);
      await page.goto(siteUrl + path);
      const address = page.url();
      await handle(page);
      await page.waitForTimeout(50);
      if ((await page.locator('text=alert(1)').count()) > 0) seen++;
      if (page.url().replace(/#.*/, '') !== address) trouble.push(`a navigation to ${page.url()}`);
      found.push(...[...trouble, ...(await strangeElements(page))].map((what) => `/${path}: ${what}`));
      await page.close();
    }
    expect(found).toEqual([]);
    // The texts are there, as text.
    expect(seen).toBeGreaterThan(pages().length / 2);
    console.info(`${pages().length} pages opened, ${seen} of them show what was written; nothing ran`);
    await context.close();
  }, 400_000);
});

it('runs nothing that a bailiff types, now or when the round is opened again', async () => {
  const context = await browser.newContext({ viewport: DESK, bypassCSP: true, serviceWorkers: 'block' });
  const { page, trouble } = await watchedPage(context, siteUrl);
  await page.goto(`${siteUrl}bank-round/mill-pond/`);
  await page.locator('#round-begin').click();
  const stopAt = page.locator('[data-stop]').first();
  await stopAt.locator('[data-open]').click();
  await stopAt.locator('[data-add-hazard]').click();
  for (const field of await stopAt
    .locator('input[type=text]:visible, input:not([type]):visible, textarea:visible')
    .all())
    await field.fill(payload().slice(0, 1900));
  await page.waitForFunction(() => document.querySelector('#round-saved')?.textContent?.startsWith('Saved'));
  await page.reload();
  await page.locator('[data-stop]').first().locator('[data-open]').click();
  await page.waitForTimeout(200);
  const strange = await strangeElements(page);
  await page.goto(`${siteUrl}bank-round/`);
  await page.waitForTimeout(300);
  expect([...trouble, ...strange, ...(await strangeElements(page))]).toEqual([]);
  await context.close();
});

describe('every data file of the guide', () => {
  it('of them there are these kinds and no other', () => {
    const kinds = new Set(files.map((path) => /\.([a-z]+)$/.exec(path)?.[1] ?? '').filter((kind) => kind !== ''));
    expect([...kinds].sort()).toEqual([
      'avif',
      'css',
      'csv',
      'geojson',
      'html',
      'ics',
      'jpg',
      'js',
      'json',
      'nojekyll',
      'png',
      'svg',
      'txt',
      'webp',
      'xml',
    ]);
  });

  it.each(['csv'])('has cells and no formulas: %s', () => {
    for (const path of ending(/\.csv$/)) {
      const rows = parse(text(path)) as string[][];
      expect(rows.length).toBeGreaterThan(1);
      for (const row of rows) {
        expect(row).toHaveLength(rows[0]!.length);
        for (const value of row) expect(value).not.toMatch(/^[=+\-@\t\r](?!\d)/);
      }
      expect(text(path)).toContain("'=HYPERLINK");
    }
  });

  it('has as many events as the calendar means, none of them forged', () => {
    for (const path of ending(/\.ics$/)) {
      const calendar = new ICAL.Component(ICAL.parse(text(path)));
      const events = calendar.getAllSubcomponents('vevent');
      expect(events.length).toBeGreaterThan(0);
      const summaries = events.map((event) => event.getFirstPropertyValue('summary'));
      expect(summaries.filter((summary) => summary === 'forged')).toEqual([]);
      for (const line of text(path).split('\r\n')) expect(line).not.toMatch(/[\r\n]|^SUMMARY:forged/);
    }
  });

  it('has the entries of the feed as text and as harmless HTML', () => {
    for (const path of ending(/\.xml$/)) {
      const feed = new DOMParser().parseFromString(text(path), 'text/xml');
      const entries = [...feed.getElementsByTagName('entry')];
      const idOf = (entry: (typeof entries)[number]) => entry.getElementsByTagName('id')[0]?.textContent ?? '';
      // Three notices, and a hazard of the whole water and one of a path, each once.
      expect(new Set(entries.map(idOf)).size).toBe(entries.length);
      expect(entries.length).toBe(5);
      for (const name of ['script', 'img', 'iframe', 'meta']) expect(feed.getElementsByTagName(name)).toHaveLength(0);
      for (const content of feed.getElementsByTagName('content')) {
        const tags = (content.textContent ?? '').match(/<[^>]*>/g)?.join('\n') ?? '';
        expect(tags).not.toMatch(
          /<(?:script|iframe|meta|img|svg|form|base|style|object|link)\b|\son\w+\s*=|javascript:/i,
        );
      }
    }
  });

  it('has JSON that is whole, and no address that is a script', () => {
    for (const path of ending(/\.(?:geo)?json$/)) {
      const strings: string[] = [];
      JSON.parse(text(path), (key, value: unknown) => {
        if (typeof value === 'string' && /^(?:sheet|url|href|address|page)$/.test(key)) strings.push(value);
        return value;
      });
      for (const address of strings) expect(address).not.toMatch(/^\s*(?:javascript|data|vbscript):|evil/i);
    }
  });

  it('has drawings and pictures that hold no script', () => {
    for (const path of ending(/\.svg$/))
      expect(text(path)).not.toMatch(/<script|\son\w+\s*=|evil\.example|<foreignObject/i);
    expect(ending(/\.webp$/).length).toBeGreaterThan(0);
  });
});

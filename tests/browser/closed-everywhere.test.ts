import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { PegDatum } from '../../src/atlas/peg-data.ts';
import { openBrowser } from './chromium.ts';

/** A link to the sheet of a closed peg whose surroundings, as built and without script, do not say that it is closed. */
interface Silent {
  readonly href: string;
  readonly words: string;
}

const SITE = inject('siteFolder');
const FILES = readdirSync(SITE, { recursive: true, encoding: 'utf8' });
const PEGS = (JSON.parse(readFileSync(join(SITE, 'data/pegs.json'), 'utf8')) as { readonly pegs: readonly PegDatum[] })
  .pegs;
const CLOSED = PEGS.filter(({ status }) => status === 'closed').map(({ water, peg }) => `/${water}/${peg}/`);

/** Every file of the guide that is no page; a new one is added here with what holds it to the verdict. */
const KNOWN_FILES: Readonly<Record<string, string>> = {
  'data/hazards\\.csv': 'tests/atlas/verdict/places.ts',
  'data/pegs\\.json': 'tests/atlas/verdict/places.ts',
  'data/where\\.json': 'tests/atlas/verdict/places.ts',
  'data/hours(\\.schema)?\\.json': 'shares of a bag by the hour, of waters alone',
  'data/gone\\.json': 'tests/atlas/stand-history.test.ts',
  'data/(venue|waters/[^/]+)\\.geojson': 'tests/atlas/verdict/places.ts',
  'due/checks\\.ics': 'tests/atlas/verdict/places.ts',
  'now\\.json': 'tests/atlas/verdict/places.ts',
  'notices/feed\\.xml': 'gives the words and days of each notice and finding, and calls no peg open',
  'search/entries\\.json': 'tests/atlas/verdict/places.ts',
  'offline-list\\.json': 'addresses and digests alone',
  'changes/[0-9a-f]+\\.json': 'pieces of the files listed, held by their digests',
  'third-party-notices\\.txt': 'licences of what the guide is built with',
  'schema/.+\\.json': 'describes the folder, not a venue',
};

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser();
  page = await browser.newPage();
});
afterAll(() => browser.close());

/** Runs in the browser, for its parser: every place of a page that names a closed peg by a link to its sheet. */
function silentLinks([html, closed]: readonly [string, readonly string[]]): readonly Silent[] {
  const shown = new DOMParser().parseFromString(html, 'text/html');
  const says = (element: Element) => {
    const label = element.getAttribute('aria-label') ?? '';
    return /\bclosed\b/i.test(`${element.textContent} ${label}`) || element.classList.contains('m-closed');
  };
  const isSaid = (link: Element) => {
    if (says(link)) return true;
    const entry = link.closest('tr, li, article, figure') ?? link.closest('section[id^="peg-"]');
    return entry !== null && says(entry);
  };
  return [...shown.querySelectorAll('a[href]')]
    .filter((link) => closed.includes((link.getAttribute('href') ?? '').replace(/[#?].*$/, '')))
    .filter((link) => !isSaid(link))
    .map((link) => ({ href: link.getAttribute('href') ?? '', words: (link.textContent ?? '').trim() }));
}

// Walks what was built, whatever it is: a page made tomorrow that names a peg is held to it without being listed here.
describe('every page of the built guide that names a closed peg', () => {
  it('says that it is closed beside the name, without script', async () => {
    const pages = FILES.filter((file) => file.endsWith('.html'));
    const silent: Record<string, readonly Silent[]> = {};
    let named = 0;
    for (const file of pages) {
      const html = readFileSync(join(SITE, file), 'utf8');
      named += CLOSED.filter((href) => html.includes(`href="${href}"`)).length;
      const found = await page.evaluate(silentLinks, [html, CLOSED] as const);
      if (found.length > 0) silent[file] = found;
    }
    expect(silent).toEqual({});
    expect(CLOSED.length).toBeGreaterThan(1);
    expect(named).toBeGreaterThan(CLOSED.length * 4);
  });

  it.each(FILES.filter((file) => /\.(csv|json|geojson|xml|ics|txt|gpx|kml)$/.test(file)))(
    'is a page, or a file of which it is known what it says of pegs: %s',
    (file) => {
      expect(Object.keys(KNOWN_FILES).filter((known) => new RegExp(`^(${known})$`).test(file))).toHaveLength(1);
    },
  );
});

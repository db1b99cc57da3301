import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openBrowser, PHONE } from './chromium.ts';
import { PAGE_KINDS } from './page-kinds.ts';

/** The demo venue writes in lb and m. */
const CHOICES = [
  ['kg', 'm'],
  ['lb', 'ft'],
  ['kg', 'ft'],
] as const;

/** What an angler reads; the club's own pages and paper are in the club's units. */
const PAGES: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    ['home', 'water', 'peg sheet', 'pegs side by side', 'search', 'features', 'features of a bag part'].map((kind) => [
      kind,
      PAGE_KINDS[kind]!,
    ]),
  ),
  'a sheet with limits': 'kiln-pool/19/',
  'a closed peg': 'kiln-pool/14/',
  'another water': 'eelback/',
  'a sheet of it': 'eelback/5/',
  'drawn peg, opened': 'draw/kiln-pool/?peg=23',
};

/**
 * What is not told otherwise, each for its reason: the club's own words (notices, notes, hazards, closings, findings), safety
 * (limits, stand-offs, lines, first steps), the trade's names of lines ("11 m pole"), and the other unit beside a figure.
 */
const AS_WRITTEN = [
  '[data-notice], .notice, #about p, [aria-labelledby="about"], .peg-notes, [aria-labelledby="notes"], .dangers, .safe, .closed-words',
  '[data-standing], [aria-labelledby="bank"] > p, [aria-labelledby="feature-deep-water-name"] small, h3, .limit, .side-by-side ul, [data-found], .lines, #lines, .photo, .placed-findings, [aria-labelledby="findings"]',
  'th, dt, option, .line-name, .strip-key, [data-line-name], .chart:not(.depth-profile), [class*="evidence-"], table.rated',
  'small:has(+ *), td > small, td.middle > small, [data-answer="frame"] span, script, style',
].join(', ');

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** Figures of units that nobody chose, with where they stand. */
function unconverted(page: Page, weight: string, length: string): Promise<readonly string[]> {
  return page.evaluate(
    ([asWritten, chosenWeight, chosenLength]) => {
      const wrong = [
        chosenWeight === 'kg' ? /\b\d+ (lb|oz)\b/ : /\b\d+(\.\d+)? (kg|g)\b/,
        chosenLength === 'ft' ? /\b\d+(\.\d+)? (m|mm)\b(?![²³])|Depths in metres/ : /\b\d+ (ft|in)\b(?! \d)/,
      ];
      const walker = document.createTreeWalker(document.querySelector('main')!, NodeFilter.SHOW_TEXT);
      const found: string[] = [];
      while (walker.nextNode()) {
        const text = walker.currentNode as Text;
        const holder = text.parentElement!;
        if (holder.closest(asWritten!) !== null) continue;
        const shortDepth = holder.matches('.figure, .depths td, .depths td b, [data-strip-line] b');
        const isWrongDepth = shortDepth && (chosenLength === 'ft' ? /^\s*\d+\.\d\d\s*$/ : /[′″]/).test(text.data);
        if (isWrongDepth || wrong.some((figure) => figure.test(text.data)))
          found.push(
            `${holder.tagName}.${holder.getAttribute('class')} in ${holder.closest('section')?.getAttribute('aria-labelledby')}: ${text.data.trim().slice(0, 80)}`,
          );
      }
      return found;
    },
    [AS_WRITTEN, weight, length],
  );
}

describe.each(CHOICES)('in %s and %s', (weight, length) => {
  it.each(Object.entries(PAGES))('no figure is left in another unit: %s', async (_kind, path) => {
    const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.goto(`${inject('siteUrl')}${path}${path.includes('?') ? '&' : '?'}weight=${weight}&length=${length}`);
    await page.waitForLoadState('networkidle');
    expect(await unconverted(page, weight, length)).toEqual([]);
    await context.close();
  });
});

describe('the walk over the pages', () => {
  it('finds the figures of a page that is not told otherwise', async () => {
    const context = await browser.newContext({ viewport: PHONE, javaScriptEnabled: true, serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.goto(`${inject('siteUrl')}kiln-pool/23/`);
    expect((await unconverted(page, 'kg', 'ft')).length).toBeGreaterThan(20);
    await context.close();
  });
});

it('tells a stand-off, a limit and a rule as the club wrote them', async () => {
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block' });
  const page = await context.newPage();
  const words = async (query: string) => {
    await page.goto(`${inject('siteUrl')}kiln-pool/19/${query}`);
    await page.waitForLoadState('networkidle');
    return page.locator('.safe, .dangers').allTextContents();
  };
  expect(await words('?weight=kg&length=ft')).toEqual(await words(''));
  await context.close();
});

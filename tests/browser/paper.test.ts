import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { PegDatum } from '../../src/atlas/peg-data.ts';
import { openBrowser } from './chromium.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const MARGIN = { top: '10mm', right: '10mm', bottom: '10mm', left: '10mm' };

/** How many pages a page of the guide prints on. Chromium writes every page of a PDF as plain text of its own. */
async function printedPages(path: string, format: 'A4' | 'A5'): Promise<number> {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(inject('siteUrl') + path);
  const options = format === 'A4' ? { format, margin: MARGIN } : { preferCSSPageSize: true };
  const pdf = await page.pdf({ ...options, tagged: true });
  await context.close();
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

const pegsOf = (water: string) =>
  (JSON.parse(readFileSync(join(inject('siteFolder'), 'data/pegs.json'), 'utf8')).pegs as readonly PegDatum[]).filter(
    (peg) => peg.water === water,
  );

describe('on paper', () => {
  it.each(['kiln-pool/23/', 'kiln-pool/14/', 'eelback/11/', 'tallyman-lake/5/'])(
    'a sheet is two pages: %s',
    async (path) => {
      expect(await printedPages(path, 'A4')).toBe(2);
    },
  );

  it('the emergency block of a sheet stands before all else', async () => {
    const context = await browser.newContext({ serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.goto(`${inject('siteUrl')}kiln-pool/23/`);
    await page.emulateMedia({ media: 'print' });
    const top = (selector: string) =>
      page
        .locator(selector)
        .first()
        .evaluate((element) => element.getBoundingClientRect().top);
    expect(await top('#emergency')).toBeLessThan(await top('h1'));
    await context.close();
  });

  it('cards are two to a side, plates one, and neither is cut off', async () => {
    const pegs = pegsOf('eelback').length;
    expect(await printedPages('paper/cards/eelback/', 'A5')).toBe(Math.ceil(pegs / 2));
    expect(await printedPages('paper/plates/eelback/', 'A5')).toBe(pegs);
    const context = await browser.newContext({ serviceWorkers: 'block' });
    const page = await context.newPage();
    for (const path of [
      'cards/eelback',
      'plates/eelback',
      'cards/kiln-pool',
      'plates/kiln-pool',
      'cards/tallyman-lake',
    ]) {
      await page.goto(`${inject('siteUrl')}paper/${path}/`);
      await page.emulateMedia({ media: 'print' });
      const cut = await page
        .locator('.card, .plate')
        .evaluateAll((all) =>
          all.filter((one) => one.scrollHeight > one.clientHeight + 1).map((one) => one.textContent),
        );
      expect(cut).toEqual([]);
    }
    await context.close();
  });

  it('no plate is cut off on a phone', async () => {
    const context = await browser.newContext({ serviceWorkers: 'block', viewport: { width: 320, height: 640 } });
    const page = await context.newPage();
    await page.goto(`${inject('siteUrl')}paper/plates/kiln-pool/`);
    const cut = await page
      .locator('.plate')
      .evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth + 1).map((one) => one.textContent));
    expect(cut).toEqual([]);
    await context.close();
  });

  it('a closed peg has the sign of it on its plate, and no bag on its card', async () => {
    const context = await browser.newContext({ serviceWorkers: 'block', javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(`${inject('siteUrl')}paper/plates/kiln-pool/`);
    expect(await page.locator('.plate[data-peg="14"]').innerText()).toContain('Not to be fished.');
    // The demo states no address, so its plates say why they have no code.
    expect(await page.locator('.plate[data-peg="14"]').innerText()).toContain('No code');
    await page.goto(`${inject('siteUrl')}paper/cards/kiln-pool/`);
    expect(await page.locator('.card[data-peg="14"]').innerText()).not.toContain('typical');
    await context.close();
  });
});

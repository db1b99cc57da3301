import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { DrawData } from '../../src/atlas/draw-page.ts';
import type { PegDatum } from '../../src/atlas/peg-data.ts';
import { readSlipFile } from '../../src/match-day/slip-file.ts';
import { openBrowser, PHONE } from './chromium.ts';
import { isWhollyKept } from './kept-guide.ts';
import { atEachReadingSize } from './reading-sizes.ts';

const DRAW = 'draw/kiln-pool/';
const CLOSED = (
  JSON.parse(readFileSync(join(inject('siteFolder'), 'data/pegs.json'), 'utf8')) as {
    readonly pegs: readonly PegDatum[];
  }
).pegs.find(({ water, status }) => water === 'kiln-pool' && status === 'closed')!;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** A phone whose clock stands where the test says. */
async function phone(at: Date, path = DRAW): Promise<{ readonly context: BrowserContext; readonly page: Page }> {
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.clock.install({ time: at });
  await page.goto(inject('siteUrl') + path);
  return { context, page };
}

async function catches(page: Page, part: string, pounds: string, ounces: string): Promise<void> {
  await page.locator('[aria-label="What is caught"] [name="lb"]').fill(pounds);
  await page.locator('[aria-label="What is caught"] [name="oz"]').fill(ounces);
  await page.locator(`[data-part="${part}"]`).click();
}

const status = (page: Page) => page.locator('[data-pace-status]').innerText();

describe('the page of a drawn peg', () => {
  it('from a cold start without a signal tells the bag by the hour', { timeout: 120_000 }, async () => {
    const context = await browser.newContext({ viewport: PHONE });
    const visit = await context.newPage();
    await visit.goto(inject('siteUrl'));
    await expect.poll(() => isWhollyKept(visit), { timeout: 60_000 }).toBe(true);
    await visit.close();
    await context.setOffline(true);
    const page = await context.newPage();
    await page.goto(`${inject('siteUrl')}${DRAW}?peg=23`);
    await page.locator('.bag-by-hour').first().waitFor();
    expect(await page.locator('.bag-by-hour tbody tr').allInnerTexts()).toHaveLength(2 * 5);
    // The last part is as much in sight as the first: nothing has to be slid on a phone.
    const box = page.locator('.bags-by-hour');
    expect(await box.evaluate((element) => element.scrollWidth - element.clientWidth)).toBe(0);
    expect(await page.locator('#drawn').innerText()).toMatch(
      /by when fish came here in .* bags of \d+ matches, noted by anglers/,
    );
    expect(await page.locator('#drawn h2').first().innerText()).toBe('Peg 23');
    expect(await page.locator('[data-drawn-pegs]').isVisible()).toBe(false);
    await context.close();
  });

  it('keeps the pace of a match begun before midnight over a restart, with undo', async () => {
    const { context, page } = await phone(new Date(2026, 10, 28, 0, 30));
    await page.fill('#drawn-peg', 'K23');
    await page.keyboard.press('Enter');
    await page.fill('[name="all-in"]', '22:30');
    await page.click('.times-form [type="submit"]');
    expect(await page.locator('.times-form').innerText()).toContain('All in was on 2026-11-27.');
    await catches(page, 'carp', '3', '4');
    await catches(page, 'silvers', '', '12');
    expect(await status(page)).toMatch(/^4 lb 0 oz/);
    expect(await status(page)).toContain('3 h 00 min left.');
    expect(await status(page)).toContain('an hour from here');

    await page.close();
    const again = await context.newPage();
    await again.clock.install({ time: new Date(2026, 10, 28, 1, 30) });
    await again.goto(inject('siteUrl') + DRAW);
    await again.locator('[data-pace-status]').waitFor();
    expect(await status(again)).toMatch(/^4 lb 0 oz/);
    expect(await status(again)).toContain('2 h 00 min left.');
    await again.getByRole('button', { name: 'Undo: Silvers 12 oz' }).click();
    expect(await status(again)).toMatch(/^3 lb 4 oz/);

    await again.getByLabel('own weight').check();
    await again.locator('.aims [name="lb"]').fill('3');
    await again.getByRole('button', { name: 'Aim at this' }).click();
    expect(await status(again)).toContain('That is the weight you set out for.');
    await context.close();
  });

  it('answers impossible weights, times and pegs beside their fields', async () => {
    const { context, page } = await phone(new Date(2026, 10, 27, 12, 0));
    await page.fill('#drawn-peg', '999');
    await page.keyboard.press('Enter');
    expect(await page.locator('#drawn-said').innerText()).toBe('There is no peg 999 on Kiln Pool.');
    expect(await page.locator('#drawn-peg').getAttribute('aria-invalid')).toBe('true');
    await page.fill('#drawn-peg', '23');
    await page.keyboard.press('Enter');
    await catches(page, 'carp', '3', '4');
    expect(await page.locator('#catch-why').innerText()).toContain('Set the all in first');
    await page.fill('[name="all-in"]', '10:00');
    await page.fill('[name="hours"]', '90');
    await page.click('.times-form [type="submit"]');
    expect(await page.locator('#times-why').innerText()).toContain('half an hour to 24');
    await page.fill('[name="hours"]', '5');
    await page.click('.times-form [type="submit"]');
    for (const [pounds, ounces] of [
      ['', ''],
      ['3', '17'],
      ['9999', ''],
      ['-3', '0'],
      ['x', ''],
    ] as const) {
      await catches(page, 'carp', pounds, ounces);
      expect(await page.locator('#catch-why').innerText()).toContain('Whole pounds');
    }
    await catches(page, 'carp', '320', '0');
    expect(await page.locator('#catch-why').innerText()).toContain('at one go?');
    expect(await status(page)).toMatch(/^Nothing yet/);
    await context.close();
  });

  it('hands over a slip of what was noted, with no name in it, and keeps its words while the match goes on', async () => {
    const { context, page } = await phone(new Date(2026, 10, 27, 12, 0), `${DRAW}?peg=23`);
    await page.fill('[name="all-in"]', '10:00');
    await page.click('.times-form [type="submit"]');
    await page.click('.slip summary');
    await page.fill('[name="method"]', 'pole');
    await page.fill('[name="waterDegreesC"]', '99');
    await page.getByRole('button', { name: 'Make the slip' }).click();
    expect(await page.locator('#slip-said').innerText()).toContain('Degrees Celsius from -1 to 35.');
    expect(await page.locator('[name="waterDegreesC"]').getAttribute('aria-invalid')).toBe('true');
    await page.fill('[name="waterDegreesC"]', '6,5');
    await page.fill('[name="lines"]', '2');
    await catches(page, 'carp', '3', '4');
    // What was folded out stays so when the next fish is noted.
    expect(await page.locator('[name="method"]').inputValue()).toBe('pole');
    await page.click('.fed summary');
    await page.getByRole('button', { name: 'Fed now' }).click();
    expect(await page.locator('#fed-why').innerText()).toBe('Say what you fed.');
    await page.fill('[name="fed"]', ' hemp; 13 m ');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: '+ hemp 13 m' }).click();
    await page.getByRole('button', { name: /^Undo: hemp 13 m/ }).click();
    const { lines } = (JSON.parse((await page.textContent('#draw-data'))!) as DrawData).pegs['23']!;
    const line = lines.find(({ id, depth }) => id.startsWith('pole') && depth !== null)!;
    await page.selectOption('[name="line"]', line.id);
    const plumb = async (metres: string) => {
      await page.fill('[name="plumbed"]', metres);
      await page.getByRole('button', { name: 'Save this depth' }).click();
      return page.locator('#plumbed-why').innerText();
    };
    expect(await plumb('deep')).toContain('Expected a length');
    expect(await plumb('31 m')).toContain('between 0 and 30 m');
    expect(await plumb('9.5 m')).toContain('The guide has');
    const own = Math.round((line.depth! + 0.1) * 100) / 100;
    expect(await plumb(`${own} m`)).toBe('');
    expect(await page.locator('[aria-label="What you plumbed"] li').innerText()).toContain(line.name);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Make the slip' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('slip-kiln-pool-23-2026-11-27.txt');
    const read = await readSlipFile(readFileSync(await download.path(), 'utf8'));
    expect(read).toMatchObject({
      ok: true,
      slip: {
        peg: '23',
        day: '2026-11-27',
        method: 'pole',
        lines: 2,
        waterDegreesC: 6.5,
        caught: [{ minute: 120, part: 'carp' }],
        fed: [{ minute: 120, what: 'hemp 13 m' }],
        depths: [{ lineMetres: line.metres, depthMetres: own }],
      },
    });
    await context.close();
  });

  it('says where a phone keeps nothing, and goes on', async () => {
    const { context, page } = await phone(new Date(2026, 10, 27, 12, 0), 'safety/');
    await page.addInitScript(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
    await page.goto(`${inject('siteUrl')}${DRAW}?peg=23`);
    expect(await page.locator('#drawn .notice').innerText()).toContain('keeps nothing');
    await page.fill('[name="all-in"]', '10:00');
    await page.click('.times-form [type="submit"]');
    await catches(page, 'carp', '3', '4');
    expect(await status(page)).toMatch(/^3 lb 4 oz/);
    await context.close();
  });

  it('gives a closed peg no bag and no pace', async () => {
    const { context, page } = await phone(new Date(2026, 10, 27, 12, 0), `${DRAW}?peg=${CLOSED.peg}`);
    expect(await page.locator('#drawn').innerText()).toMatch(/closed[\s\S]*Do not fish it/);
    expect(await page.locator('.bag-by-hour, .net-form').count()).toBe(0);
    await context.close();
  });

  it('gives every control 48 pixels and scrolls sideways nowhere, at 320 pixels and twice the text too', async () => {
    const { context, page } = await phone(new Date(2026, 10, 27, 12, 0), `${DRAW}?peg=23`);
    await page.fill('[name="all-in"]', '10:00');
    await page.click('.times-form [type="submit"]');
    await catches(page, 'carp', '3', '4');
    for (const summary of await page.locator('#drawn summary').all()) await summary.click();
    await atEachReadingSize(page, async (at) => {
      const faults = await page.evaluate(() => {
        const small = [
          ...document.querySelectorAll(
            '#drawn :is(button, summary, select, input:not([type="radio"]), .aim, a), .draw-peg :is(button, input)',
          ),
        ].filter((one) => one.getBoundingClientRect().height > 0 && one.getBoundingClientRect().height < 48);
        const outside = [...document.querySelectorAll('main *')].filter(
          (one) => one.closest('.wide') === null && one.getBoundingClientRect().right > innerWidth + 1,
        );
        return [...small, ...outside].map((one) => one.outerHTML.slice(0, 90));
      });
      expect(faults, at).toEqual([]);
    });
    await context.close();
  });
});

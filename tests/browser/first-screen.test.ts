import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openBrowser, PHONE } from './chromium.ts';
import { PAGE_KINDS } from './page-kinds.ts';

/** A first flight of packets: what a sheet may weigh, zipped. */
const SHEET_BYTES = 14_600;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

function sheets(): readonly string[] {
  const site = inject('siteFolder');
  return ['eelback', 'kiln-pool', 'tallyman-lake'].flatMap((water) =>
    readdirSync(join(site, water), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => `${water}/${name}/`),
  );
}

async function opened(path: string, width = PHONE.width): Promise<Page> {
  const context = await browser.newContext({ viewport: { ...PHONE, width }, serviceWorkers: 'block', bypassCSP: true });
  const page = await context.newPage();
  await page.goto(inject('siteUrl') + path);
  return page;
}

describe('the first screen of every sheet', () => {
  it('holds the whole strip of answers, and the sheet its weight', async () => {
    const page = await opened('');
    const low: string[] = [];
    let strips = 0;
    for (const path of sheets()) {
      const size = gzipSync(readFileSync(join(inject('siteFolder'), path, 'index.html')), { level: 9 }).length;
      if (size > SHEET_BYTES) low.push(`${path} weighs ${size}`);
      await page.goto(inject('siteUrl') + path);
      const bottom = await page.evaluate(
        () => document.querySelector('[data-answers]')?.getBoundingClientRect().bottom ?? 0,
      );
      if (bottom > 0) strips++;
      if (bottom > PHONE.height) low.push(`${path} ends at ${bottom}`);
    }
    expect(low).toEqual([]);
    expect(strips).toBeGreaterThan(80);
    await page.context().close();
  });

  it('sells nothing at a closed peg, and opens each hazard to its full text', async () => {
    const closed = await opened('kiln-pool/14/');
    expect(await closed.locator('[data-answers], .own-depth, #worth').count()).toBe(0);
    await closed.locator('.dangers summary').first().click();
    expect(await closed.locator('.dangers li').first().innerText()).toContain('30 m');
    await closed.emulateMedia({ media: 'print' });
    const bodies = closed.locator('.dangers details > p:first-of-type');
    expect(await bodies.count()).toBeGreaterThan(2);
    for (const body of await bodies.all()) expect(await body.isVisible()).toBe(true);
    // On paper nothing opens: no sign says that it does, of an opened line or of a folded one.
    const signs = await closed
      .locator('.dangers summary')
      .evaluateAll((lines) => lines.map((line) => getComputedStyle(line, '::after').content));
    expect(new Set(signs)).toEqual(new Set(['none']));
    await closed.context().close();
  });
});

describe('the month a reader chose', () => {
  it('holds on five pages and after a restart, and is in the address', async () => {
    const page = await opened('kiln-pool/23/');
    await page.getByRole('combobox', { name: 'Month' }).selectOption({ label: 'August' });
    expect(page.url()).toContain('?month=8');
    for (const path of ['kiln-pool/', 'eelback/', 'features/', 'tallyman-lake/5/', 'features/silvers/']) {
      await page.goto(inject('siteUrl') + path);
      expect(await page.locator('select[name="month"]').inputValue()).toBe('8');
      expect(await page.locator('.of-month:visible').first().getAttribute('data-month')).toBe('8');
    }
    const state = await page.context().storageState();
    const later = await browser.newContext({ viewport: PHONE, storageState: state });
    const again = await later.newPage();
    await again.goto(`${inject('siteUrl')}kiln-pool/1/`);
    expect(await again.locator('select[name="month"]').inputValue()).toBe('8');
    await again.goto(`${inject('siteUrl')}kiln-pool/1/?month=14`);
    const said = await again.locator('select[name="month"]').getAttribute('aria-describedby');
    expect(await again.locator(`#${said}`).innerText()).toContain('“14”');
    await later.close();
    await page.context().close();
  });
});

describe('the units a reader chose', () => {
  it('hold on five pages and after a restart, reach the drawings, and are in the address', async () => {
    const page = await opened('kiln-pool/7/');
    expect(await page.locator('[data-answer="bag"]:visible').innerText()).toMatch(/ lb.*\([\d.]+ kg\)/);
    await page.locator('#units').scrollIntoViewIfNeeded();
    await page.getByLabel('Weights in').selectOption('kg');
    await page.waitForURL(/weight=kg/);
    await page.waitForFunction(() =>
      /kg/.test(document.querySelector('[data-answer="bag"] .middle')?.textContent ?? ''),
    );
    await page.locator('#units').scrollIntoViewIfNeeded();
    await page.locator('#units select').nth(1).selectOption('ft');
    await page.waitForURL(/weight=kg&length=ft/);
    await page.waitForFunction(() => document.querySelector('[data-strip-line] b')?.textContent?.includes('′'));
    for (const path of ['kiln-pool/1/', 'eelback/5/', 'tallyman-lake/5/']) {
      await page.goto(inject('siteUrl') + path);
      await page.waitForFunction(() => document.querySelector('[data-strip-line] b')?.textContent?.includes('′'));
      expect(page.url()).toContain('weight=kg&length=ft');
      expect(await page.locator('[data-answer="bag"]:visible').innerText()).toMatch(/ kg\t[\d.]+ kg \(\d+ lb/);
      expect(await page.locator('.depth-profile .figure').first().textContent()).toContain('″');
    }
    for (const path of ['kiln-pool/', 'eelback/']) {
      await page.goto(inject('siteUrl') + path);
      await page.waitForFunction(() =>
        /\d kg/.test(document.querySelector('[aria-labelledby="weights"]')?.textContent ?? ''),
      );
      expect(await page.locator('.framing-year').textContent()).toMatch(/kg$/);
    }
    const state = await page.context().storageState();
    const later = await browser.newContext({ viewport: PHONE, storageState: state });
    const again = await later.newPage();
    await again.goto(`${inject('siteUrl')}kiln-pool/23/`);
    await again.waitForFunction(() => document.querySelector('[data-strip-line] b')?.textContent?.includes('′'));
    // A stand-off is a rule, not a figure to be told otherwise.
    expect(await again.locator('.safe').textContent()).toMatch(/\d+ m/);
    await again.goto(`${inject('siteUrl')}kiln-pool/1/?weight=stone`);
    await again.locator('#units').scrollIntoViewIfNeeded();
    const said = await again.getByLabel('Weights in').getAttribute('aria-describedby');
    expect(await again.locator(`#${said}`).innerText()).toContain('“stone”');
    await later.close();
    await page.context().close();
  });

  it('are said to be kept by nothing but the address where the phone keeps nothing', async () => {
    const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block', bypassCSP: true });
    const page = await context.newPage();
    await page.addInitScript(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
    await page.goto(`${inject('siteUrl')}kiln-pool/1/`);
    await page.getByRole('combobox', { name: 'Month' }).selectOption({ label: 'August' });
    expect(await page.locator('#month-fault').innerText()).toContain('keeps nothing');
    await page.locator('#units').scrollIntoViewIfNeeded();
    await page.getByLabel('Weights in').selectOption('kg');
    expect(await page.locator('#units-said').innerText()).toContain('keeps nothing');
    await page.waitForFunction(() =>
      /kg/.test(document.querySelector('[data-answer="bag"] .middle')?.textContent ?? ''),
    );
    expect(page.url()).toContain('month=8&weight=kg');
    await context.close();
  });
});

describe('no page is wider than the screen', () => {
  it.each(Object.entries(PAGE_KINDS))('at 320 px: %s', async (_kind, path) => {
    const page = await opened(path, 320);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await page.context().close();
  });

  it('shows every number to call whole with text twice as large', async () => {
    const page = await opened('kiln-pool/23/');
    await page.addStyleTag({ content: 'html{font-size:212.5%!important}' });
    const numbers = page.locator('.numbers a');
    expect(await numbers.count()).toBeGreaterThan(1);
    for (const number of await numbers.all()) {
      const box = await number.boundingBox();
      expect(box!.x + box!.width).toBeLessThanOrEqual(PHONE.width);
    }
    await page.context().close();
  });
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { PegDatum } from '../../src/atlas/peg-data.ts';
import { openBrowser, PHONE } from './chromium.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function opened(path: string, place?: { latitude: number; longitude: number; accuracy: number }): Promise<Page> {
  const context = await browser.newContext({
    viewport: PHONE,
    serviceWorkers: 'block',
    ...(place === undefined ? {} : { geolocation: place, permissions: ['geolocation'] }),
  });
  const page = await context.newPage();
  await page.goto(inject('siteUrl') + path);
  return page;
}

/** What a screen reader calls the element with the focus. */
function focusName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const focus = document.activeElement;
    return (focus?.getAttribute('aria-label') ?? focus?.textContent ?? '').trim();
  });
}

describe('the map that moves', () => {
  it('starts on a key alone, is walked, zoomed and left by the keyboard, and no stop is without a name', async () => {
    const page = await opened('kiln-pool/');
    expect(await page.locator('.live-map').count()).toBe(0);
    await page.getByRole('button', { name: 'Move and zoom the map' }).focus();
    await page.keyboard.press('Enter');
    await page.locator('.live-peg').first().waitFor({ state: 'attached' });
    expect(await focusName(page)).toContain('arrow keys move it');
    const before = await page.locator('.leaflet-map-pane').getAttribute('style');
    await page.keyboard.press('ArrowRight');
    await page.waitForTimeout(400);
    expect(await page.locator('.leaflet-map-pane').getAttribute('style')).not.toBe(before);
    const stops: string[] = [];
    for (let i = 0; i < 60; i++) {
      await page.keyboard.press('Tab');
      stops.push(await focusName(page));
      if (stops.at(-1) === 'Where am I?') break;
    }
    expect(stops.filter((name) => name === '')).toEqual([]);
    expect(stops).toEqual(
      expect.arrayContaining(['Peg 1', 'Zoom in', 'Move west', 'Show all of the water', 'Where am I?']),
    );
    await page.context().close();
  });

  it('shows every number whole at every zoom: none is dropped, none hides another', async () => {
    const page = await opened('kiln-pool/');
    const drawn = await page.locator('.map-scroll svg a.m-peg').count();
    await page.getByRole('button', { name: 'Move and zoom the map' }).click();
    await page.locator('.live-peg').first().waitFor({ state: 'attached' });
    for (let zoom = 0; zoom < 3; zoom++) {
      const middles = await page.locator('.live-peg a').evaluateAll((links) =>
        links.map((link) => {
          const { x, y, width, height } = link.getBoundingClientRect();
          return [x + width / 2, y + height / 2, width] as const;
        }),
      );
      expect(middles.filter(([, , width]) => width > 20)).toHaveLength(drawn);
      const close = middles.flatMap(([x, y], i) =>
        middles.slice(i + 1).filter(([x2, y2]) => Math.hypot(x - x2, y - y2) < 20),
      );
      expect(close).toEqual([]);
      // Wherever a contour is in sight, so is a depth.
      const figures = await page.locator('.live-depth span').evaluateAll((spans) => {
        const { left, right, top, bottom } = document.querySelector('.leaflet-container')!.getBoundingClientRect();
        return spans.filter((span) => {
          const box = span.getBoundingClientRect();
          return box.left >= left && box.right <= right && box.top >= top && box.bottom <= bottom;
        }).length;
      });
      expect(figures).toBeGreaterThan(0);
      await page.getByRole('button', { name: 'Zoom in' }).click();
      await page.waitForTimeout(400);
    }
    await page.context().close();
  });

  it('opens from a sheet with that peg marked, with or without script', async () => {
    const page = await opened('kiln-pool/23/');
    await page.locator('a.where').click();
    await page.locator('.live-peg .is-asked').waitFor({ state: 'attached' });
    expect(await page.locator('.live-peg .is-asked').innerText()).toBe('23');
    await page.context().close();
    const context = await browser.newContext({ viewport: PHONE, javaScriptEnabled: false });
    const plain = await context.newPage();
    await plain.goto(`${inject('siteUrl')}kiln-pool/23/`);
    await plain.locator('a.where').click();
    expect(await plain.locator('.m-peg:target').getAttribute('aria-label')).toBe('Peg 23');
    await context.close();
  });

  it('tells a fix that is rough or away from the water, and does not go there', async () => {
    for (const [latitude, accuracy, words] of [
      [52.0, 5, 'not on this map'],
      [48.0, 500, 'not on this map'],
    ] as const) {
      const page = await opened('kiln-pool/', { latitude, longitude: -0.05, accuracy });
      await page.locator('.locate-row').getByRole('button', { name: 'Where am I?' }).click();
      const said = page.locator('.locate-row [role="status"]').first();
      await page.waitForFunction(() =>
        document.querySelector('.locate-row [role="status"]')?.textContent?.includes('You are at'),
      );
      expect(await said.innerText()).toContain(words);
      expect(await page.locator('.live-here').count()).toBe(0);
      await page.context().close();
    }
  });

  it('draws the way to the peg of the sheet it was opened from, and tells it as the sheet does', async () => {
    const page = await opened('kiln-pool/23/');
    const walk = (await page.locator('dl', { hasText: 'From' }).locator('dd').first().innerText()).trim();
    await page.locator('a.where').click();
    await page.locator('.live-way').waitFor({ state: 'attached' });
    expect(await page.getByLabel('Way to peg').inputValue()).toBe('23');
    expect(await page.locator('.way-said').innerText()).toContain(walk.replace(/\.$/, ''));
    // Another peg, by the keyboard alone.
    const first = await page.locator('.live-way').getAttribute('d');
    await page.getByLabel('Way to peg').focus();
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => page.locator('.live-way').getAttribute('d')).not.toBe(first);
    expect(await page.locator('.way-said').innerText()).toContain('Peg 24');
    await page.context().close();
  });

  it('tells the way from where the phone stands, once it says so', async () => {
    const { pegs } = JSON.parse(readFileSync(join(inject('siteFolder'), 'data/pegs.json'), 'utf8')) as {
      readonly pegs: readonly PegDatum[];
    };
    const { lat, lng } = pegs.find(({ water, peg }) => water === 'kiln-pool' && peg === '3')!.position;
    const page = await opened('kiln-pool/#map-23', { latitude: lat, longitude: lng, accuracy: 4 });
    await page.locator('.locate-row').getByRole('button', { name: 'Where am I?' }).click();
    await expect.poll(() => page.locator('.way-said').innerText()).toContain('from where you stand');
    expect(await page.locator('.locate-row').innerText()).toMatch(/Nearest: peg 3, [\s\S]*Peg 23, \d+ m to the/);
    expect(await page.locator('.live-here').count()).toBe(1);
    await page.context().close();
  });

  it('says in words why there is no fix', async () => {
    const page = await opened('kiln-pool/');
    await page.locator('.locate-row').getByRole('button', { name: 'Where am I?' }).click();
    await expect.poll(() => page.locator('.locate-row').innerText()).toContain('allow it in the settings');
    await page.context().close();
  });
});

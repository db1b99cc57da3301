import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
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
      expect.arrayContaining(['Peg 1', 'Zoom in', 'Move west', 'Show the whole water', 'Where am I?']),
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
      await page.getByRole('button', { name: 'Zoom in' }).click();
      await page.waitForTimeout(400);
    }
    await page.context().close();
  });

  it('opens from a sheet with that peg marked, with or without script', async () => {
    const page = await opened('kiln-pool/23/');
    await page.locator('a.where').click();
    expect(await page.locator('.m-peg:target').getAttribute('aria-label')).toBe('Peg 23');
    await page.getByRole('button', { name: 'Move and zoom the map' }).click();
    expect(await page.locator('.live-peg .is-asked').innerText()).toBe('23');
    await page.context().close();
  });

  it('tells a fix that is rough or away from the water, and does not go there', async () => {
    for (const [latitude, accuracy, words] of [
      [52.0, 5, 'not on this map'],
      [48.0, 500, 'not on this map'],
    ] as const) {
      const page = await opened('kiln-pool/', { latitude, longitude: -0.05, accuracy });
      await page.getByRole('button', { name: 'Where am I?' }).click();
      const said = page.locator('.locate-row [role="status"]');
      await page.waitForFunction(() =>
        document.querySelector('.locate-row [role="status"]')?.textContent?.includes('You are at'),
      );
      expect(await said.innerText()).toContain(words);
      expect(await page.locator('.live-here').count()).toBe(0);
      await page.context().close();
    }
  });
});

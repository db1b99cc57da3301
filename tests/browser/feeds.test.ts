import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ICAL from 'ical.js';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { isDay } from '../../src/domain/day.ts';
import { openBrowser } from './chromium.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const published = (path: string) => readFileSync(join(inject('siteFolder'), path), 'utf8');

describe('the feed of the notices', () => {
  // RFC 4287: well-formed XML; ids unique; every date a date-time (RFC 3339); links that lead somewhere.
  it('is read by the browser’s own XML reader, with an entry for each notice of the page', async () => {
    const page = await browser.newPage();
    await page.goto(`${inject('siteUrl')}notices/`);
    const notices = await page.locator('[data-notice]').evaluateAll((elements) => elements.map(({ id }) => id));
    const feed = await page.evaluate((text) => {
      const xml = new DOMParser().parseFromString(text, 'application/xml');
      const textOf = (element: Element, name: string) => element.getElementsByTagName(name)[0]?.textContent ?? '';
      return {
        broken: xml.querySelector('parsererror') !== null,
        updated: textOf(xml.documentElement, 'updated'),
        entries: [...xml.getElementsByTagName('entry')].map((entry) => ({
          id: textOf(entry, 'id'),
          updated: textOf(entry, 'updated'),
          link: entry.getElementsByTagName('link')[0]?.getAttribute('href') ?? '',
          content: textOf(entry, 'content'),
        })),
      };
    }, published('notices/feed.xml'));
    expect(feed.broken).toBe(false);
    expect(feed.entries.map(({ link }) => link.slice(link.indexOf('#') + 1)).sort()).toEqual([...notices].sort());
    expect(new Set(feed.entries.map(({ id }) => id)).size).toBe(feed.entries.length);
    for (const { updated, content } of feed.entries) {
      expect(updated).toMatch(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/);
      expect(updated <= feed.updated).toBe(true);
      expect(content).toMatch(/^<p>.*(from|on) \d+ [A-Z][a-z]{2} \d{4}/);
    }
    await page.close();
  });
});

describe('the calendar of checks due', () => {
  // RFC 5545, read back by an independent program.
  it('holds whole days with unique ids, as many checks as the page', async () => {
    const calendar = new ICAL.Component(ICAL.parse(published('due/checks.ics')));
    const events = calendar.getAllSubcomponents('vevent').map((component) => new ICAL.Event(component));
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
    for (const event of events) {
      expect(event.startDate.isDate).toBe(true);
      expect(isDay(event.startDate.toString())).toBe(true);
    }
    const counted = events.reduce((sum, { summary }) => sum + Number(/(\d+) checks? due/.exec(summary)?.[1]), 0);
    const page = await browser.newPage();
    await page.goto(`${inject('siteUrl')}due/`);
    expect(counted).toBe(await page.locator('table[data-ledger] .each').count());
    await page.close();
  });
});

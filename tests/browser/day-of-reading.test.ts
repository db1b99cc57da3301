import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { addDays, type Day } from '../../src/domain/day.ts';
import { openBrowser, PHONE } from './chromium.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** A page as a phone shows it whose clock says noon of that day. */
async function readOn(day: Day, path: string): Promise<Page> {
  const context = await browser.newContext({ viewport: PHONE, timezoneId: 'Europe/London' });
  await context.clock.setFixedTime(`${day}T12:00:00Z`);
  const page = await context.newPage();
  await page.goto(inject('siteUrl') + path);
  return page;
}

describe('an old copy of the guide', () => {
  it('marks a check as out of date from the day after it was due, not before', async () => {
    const due = await (await readOn('2000-01-01', 'due/')).locator('[data-due]').first().getAttribute('data-due');
    const said = async (day: Day) => {
      const page = await readOn(day, 'due/');
      const text = await page.locator(`[data-due="${due}"]`).first().innerText();
      await page.context().close();
      return text;
    };
    expect(await said(due as Day)).not.toContain('check overdue');
    expect(await said(addDays(due as Day, 1))).toContain('check overdue by 1 day');
    expect(await said(addDays(due as Day, 40))).toContain('check overdue by 40 days');
  });

  it('moves a notice from upcoming to live to past as its days come', async () => {
    const notice = (page: Page) => page.locator('[data-notice-group="upcoming"] [data-notice][data-until]').first();
    const early = await readOn('2000-01-01', 'notices/');
    const id = await notice(early).getAttribute('id');
    const [from, until] = await Promise.all(
      ['data-from', 'data-until'].map((name) => notice(early).getAttribute(name)),
    );
    const groupOn = async (day: Day) => {
      const page = await readOn(day, 'notices/');
      const group = await page
        .locator(`[id="${id}"]`)
        .evaluate((element) => element.closest('[data-notice-group]')?.getAttribute('data-notice-group'));
      await page.context().close();
      return group;
    };
    expect(await groupOn(addDays(from as Day, -1))).toBe('upcoming');
    expect(await groupOn(from as Day)).toBe('live');
    expect(await groupOn(until as Day)).toBe('live');
    expect(await groupOn(addDays(until as Day, 1))).toBe('past');
    await early.context().close();
  });

  it('says of a notice on the first page that it is over', async () => {
    const page = await readOn('2099-01-01', '');
    const over = page.locator('[data-notice][data-until]').first();
    expect(await over.innerText()).toContain('Over since');
    await page.context().close();
  });
});

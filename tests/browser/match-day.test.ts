import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { PegDatum } from '../../src/atlas/peg-data.ts';
import { childEnvironment } from '../child-environment.ts';
import { openBrowser, PHONE } from './chromium.ts';
import { atEachReadingSize } from './reading-sizes.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const MATCH = '2026-12-06-winter-three';
const DAY = `matches/${MATCH}/day/`;

/** The pegs of the demo's match, in the order of its plan. */
const PEGS = [
  ...readFileSync(join(PROJECT, `content/matches/${MATCH}.md`), 'utf8').matchAll(/^ {2}[A-Z]: \[(.*)\]$/gm),
].flatMap(([, pegs = '']) => pegs.split(', '));
/** What each peg weighs, in pounds and ounces; every seventh did not weigh. */
const WEIGHTS = PEGS.map((peg, i) => ({ peg, pounds: 3 + ((i * 7) % 23), ounces: (i * 5) % 16, isDnw: i % 7 === 6 }));

let browser: Browser;
let scratch: string;

beforeAll(async () => {
  browser = await openBrowser();
  scratch = mkdtempSync(join(tmpdir(), 'peg-atlas-match-day-'));
  cpSync(join(PROJECT, 'content'), join(scratch, 'venue'), { recursive: true });
});
afterAll(async () => {
  await browser.close();
  rmSync(scratch, { recursive: true });
});

function venueCommand(...args: string[]) {
  return spawnSync(process.execPath, ['src/commands/venue.ts', ...args], {
    cwd: PROJECT,
    env: childEnvironment({ VENUE_DIR: join(scratch, 'venue') }),
    encoding: 'utf8',
  });
}

/** A phone with the page of the day open, its signal gone. */
async function phone(): Promise<{ readonly context: BrowserContext; readonly page: Page }> {
  const context = await browser.newContext({ viewport: PHONE, acceptDownloads: true });
  const page = await context.newPage();
  await page.goto(inject('siteUrl') + DAY);
  await page.waitForSelector('#day:not([hidden])');
  await context.setOffline(true);
  return { context, page };
}

/** Notes kept, as the page tells; it tells them once they are on the disk. */
function notesKept(page: Page): Promise<number> {
  return page.$eval('#day-saved', (line) => Number(/^(\d+)/.exec(line.textContent ?? '')?.[1]));
}

/** The count and its noun agree. */
async function hasItsPlural(page: Page): Promise<boolean> {
  return /^(1 note|(?!1 )\d+ notes) kept/.test(await page.locator('#day-saved').innerText());
}

async function afterNote(page: Page, act: () => Promise<void>): Promise<void> {
  const before = await notesKept(page);
  await act();
  await expect.poll(() => notesKept(page), { timeout: 20_000 }).toBe(before + 1);
}

async function openPeg(page: Page, peg: string): Promise<void> {
  const row = page.locator(`[data-peg="${peg}"]`);
  if ((await row.getAttribute('aria-expanded')) !== 'true') await row.click();
  await page.waitForSelector(`[data-peg="${peg}"][aria-expanded="true"]`);
}

async function weigh(page: Page, { peg, pounds, ounces, isDnw }: (typeof WEIGHTS)[number]): Promise<void> {
  await openPeg(page, peg);
  await afterNote(page, async () => {
    if (isDnw) return page.click('[data-status="dnw"]');
    await page.fill('.net-form [name="lb"]', String(pounds));
    await page.fill('.net-form [name="oz"]', String(ounces));
    await page.click('.net-form [type="submit"]');
  });
}

async function handOver(page: Page, words: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: words }).click(),
  ]);
  const path = join(scratch, download.suggestedFilename());
  await download.saveAs(path);
  return path;
}

describe('a match day on two phones without a signal', () => {
  it('draws, weighs, survives restarts, merges with conflicts shown, and writes the log', {
    timeout: 600_000,
  }, async () => {
    const one = await phone();
    const other = await phone();
    const middle = PEGS.length / 2;

    // The draw by the first phone: entries, a promise, a word, and the order that anybody can check.
    for (const name of ['Pat Example', 'Jo Sample', 'Sam Instance']) {
      await one.page.fill('[name="entry"]', name);
      await afterNote(one.page, () => one.page.click('.add-entry [type="submit"]'));
    }
    await one.page.click('.phone-draw summary');
    await afterNote(one.page, () => one.page.getByRole('button', { name: 'Make the secret number' }).click());
    expect(await one.page.textContent('.digest')).toMatch(/^[0-9a-f]{64}$/);
    await one.page.fill('[name="salt"]', 'Blue bucket');
    await one.page.getByRole('button', { name: 'Draw', exact: true }).click();
    await expect.poll(() => one.page.textContent('.phone-draw pre'), { timeout: 20_000 }).toContain('Peg Atlas draw');
    const held = await one.page.$$eval('.entries input', (inputs) =>
      inputs.map((input) => (input as HTMLInputElement).value),
    );
    expect(new Set(held).size).toBe(3);
    expect(held.every((peg) => PEGS.includes(`kiln-pool/${peg}`))).toBe(true);
    // Nobody waits: the draw that was held stays to be checked.
    expect(await one.page.getByRole('button', { name: 'Draw again for who has none' }).count()).toBe(0);

    // Each scale does its half; the phone is killed in the middle of it and loses nothing.
    for (const [i, weight] of WEIGHTS.slice(0, middle).entries()) {
      await weigh(one.page, weight);
      if (i === 4) {
        const kept = await notesKept(one.page);
        await one.context.setOffline(false);
        await one.page.close();
        const again = await one.context.newPage();
        await again.goto(inject('siteUrl') + DAY);
        await again.waitForSelector('#day:not([hidden])');
        await one.context.setOffline(true);
        expect(await notesKept(again)).toBe(kept);
        Object.assign(one, { page: again });
      }
    }
    for (const weight of WEIGHTS.slice(middle)) await weigh(other.page, weight);

    // Both weighed the first peg of the second half, and differ.
    const twice = WEIGHTS[middle]!;
    await weigh(one.page, { ...twice, isDnw: false, pounds: 1, ounces: 1 });

    const file = await handOver(other.page, 'Hand over without names');
    await one.page.setInputFiles('input[type="file"]', file);
    await expect.poll(() => one.page.textContent('#day-saved'), { timeout: 20_000 }).toContain('1 to be settled');
    await afterNote(one.page, () => one.page.click(`#settle .wide-button:has-text("${twice.pounds} lb")`));
    expect(await one.page.textContent('#day-saved')).not.toContain('to be settled');

    // The same file again adds nothing; a net of another digit is asked about.
    const notes = await notesKept(one.page);
    await one.page.setInputFiles('input[type="file"]', file);
    await expect
      .poll(() => one.page.textContent('#day-hand-over [role="status"]'), { timeout: 20_000 })
      .toContain('here already');
    expect(await notesKept(one.page)).toBe(notes);
    await openPeg(one.page, PEGS[0]!);
    await one.page.fill('.net-form [name="lb"]', '320');
    await one.page.click('.net-form [type="submit"]');
    expect(await one.page.textContent('.net-form .why')).toContain('five times the heaviest');

    // Results: every peg in, the heaviest first.
    expect(await one.page.textContent('#day-results')).toContain(`All ${PEGS.length} pegs have been to the scales.`);
    const heaviest = WEIGHTS.filter(({ isDnw }) => !isDnw).toSorted(
      (a, b) => b.pounds * 16 + b.ounces - a.pounds * 16 - a.ounces,
    )[0]!;
    expect(await one.page.textContent('.results tbody tr:first-child td')).toBe(heaviest.peg.split('/')[1]);

    // Into the log: shown, written, and the same file again changes nothing.
    const whole = await handOver(one.page, 'Hand over with names');
    const keys = join(scratch, 'keys');
    const taken = venueCommand('intake', whole, '--yes', '--keys', keys);
    expect(taken.stderr).toContain('Taken in.');
    expect(taken.stdout).toContain(`2026-12-06-kiln-pool: new, ${PEGS.length} sessions`);
    const log = readFileSync(join(scratch, 'venue/sessions/2026/sessions.csv'), 'utf8');
    const rows = log.split('\n').filter((row) => row.startsWith('2026-12-06-kiln-pool,'));
    expect(rows).toHaveLength(PEGS.length);
    expect(rows.filter((row) => /,a-[0-9a-z]+,/.test(row))).toHaveLength(3);
    expect(log).not.toMatch(/Pat|Example|Sample|Instance/);
    expect(readFileSync(join(scratch, `venue/matches/${MATCH}.md`), 'utf8')).toContain('status: fished');
    expect(venueCommand('intake', whole, '--yes', '--keys', keys).stderr).toContain('nothing new');

    // A corrected weight takes the place of the old one.
    await openPeg(one.page, PEGS[1]!);
    await afterNote(one.page, () => one.page.getByRole('button', { name: 'Take it all back' }).click());
    await weigh(one.page, { ...WEIGHTS[1]!, pounds: 2, ounces: 2 });
    const corrected = venueCommand('intake', await handOver(one.page, 'Hand over with names'), '--yes', '--keys', keys);
    expect(corrected.stdout).toContain('corrected');
    const after = readFileSync(join(scratch, 'venue/sessions/2026/sessions.csv'), 'utf8');
    expect(after.split('\n').filter((row) => row.startsWith('2026-12-06-kiln-pool,'))).toHaveLength(PEGS.length);
    expect(after).toMatch(new RegExp(`^2026-12-06-kiln-pool,A,${PEGS[1]!.split('/')[1]},[^,]*,weighed,2-02,`, 'm'));
    expect(venueCommand('check').status).toBe(0);

    // The guide built anew shows the match: its results by peg, and one more match behind the figures.
    const sessionsIn = (site: string) =>
      (JSON.parse(readFileSync(join(site, 'data/pegs.json'), 'utf8')) as { readonly pegs: readonly PegDatum[] }).pegs
        .flatMap(({ worths }) => worths)
        .reduce((sum, { sessions }) => sum + sessions, 0);
    const built = join(scratch, 'guide');
    expect(venueCommand('build', '--out', built).status).toBe(0);
    const matchHtml = readFileSync(join(built, `matches/${MATCH}/index.html`), 'utf8');
    expect(matchHtml).toContain(`${PEGS.length} pegs in the log`);
    expect(matchHtml).not.toMatch(/Pat Example|Jo Sample|Sam Instance/);
    expect(sessionsIn(built)).toBe(sessionsIn(inject('siteFolder')) + PEGS.length);
    await one.context.close();
    await other.context.close();
  });

  it('keeps all it has shown when it is killed at any moment, and nothing by halves', async () => {
    const { context, page: first } = await phone();
    let page = first;
    // Seeded, so that a failure can be had again.
    let seed = 20_261_206;
    const below = (limit: number) => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed % limit;
    };
    for (const { peg, pounds, ounces } of WEIGHTS.slice(0, 10)) {
      await openPeg(page, peg);
      await page.fill('.net-form [name="lb"]', String(pounds));
      await page.fill('.net-form [name="oz"]', String(ounces));
      const shown = await notesKept(page);
      await page.evaluate(() => document.querySelector<HTMLButtonElement>('.net-form [type="submit"]')?.click());
      await page.waitForTimeout(below(40));
      const last = await notesKept(page);
      await context.setOffline(false);
      await page.close({ runBeforeUnload: false });
      page = await context.newPage();
      await page.goto(inject('siteUrl') + DAY);
      await page.waitForSelector('#day:not([hidden])');
      await context.setOffline(true);
      const kept = await notesKept(page);
      expect(kept).toBeGreaterThanOrEqual(last);
      expect(kept - shown).toBeLessThanOrEqual(1);
      const said = await page.textContent(`[data-peg="${peg}"] .said`);
      expect(kept === shown ? '' : `${pounds} lb ${ounces} oz`).toBe((said ?? '').replace(/ · .*/, ''));
    }
    await context.close();
  });

  it('keeps fish counted by part, and says what is no count instead of dropping it', async () => {
    const { context, page } = await phone();
    await weigh(page, { ...WEIGHTS[0]!, isDnw: false });
    await openPeg(page, PEGS[0]!);
    const fish = page.locator('.fish input').first();
    const notes = await notesKept(page);
    await fish.fill('1x');
    await fish.blur();
    expect(await page.locator('#fish-why').innerText()).toContain('A whole number of fish');
    expect(await fish.getAttribute('aria-invalid')).toBe('true');
    expect(await notesKept(page)).toBe(notes);
    await afterNote(page, async () => {
      await fish.fill('14');
      await fish.blur();
    });
    expect(await page.locator('.fish input').first().inputValue()).toBe('14');
    await context.close();
  });

  it.each(['matches/', `matches/${MATCH}/`, `matches/${MATCH}/sheet/`, `matches/${MATCH}/tickets/`])(
    'gives every control of %s 48 pixels both ways, at 320 pixels and at twice the text too',
    async (address) => {
      const context = await browser.newContext({ viewport: PHONE });
      const page = await context.newPage();
      await page.goto(inject('siteUrl') + address);
      await atEachReadingSize(page, async (at) => {
        const small = await page.evaluate(() => {
          // Words in a sentence are as high as it; each peg of the map is in the list below it too, where it is large.
          return [...document.querySelectorAll('main :is(a, button, input, select, summary)')]
            .filter((one) => one.closest('svg') === null && getComputedStyle(one).display !== 'inline')
            .filter((one) => {
              const { width: across, height } = one.getBoundingClientRect();
              return height > 0 && Math.min(across, height) < 47.5;
            })
            .map((one) => one.outerHTML.slice(0, 80));
        });
        expect(small, at).toEqual([]);
      });
      await context.close();
    },
  );

  it('keeps the parts of the day under the thumb, and what is focused clear of them', async () => {
    const { context, page } = await phone();
    await page.fill('[name="entry"]', 'Pat Example');
    await afterNote(page, () => page.click('.add-entry [type="submit"]'));
    await weigh(page, { ...WEIGHTS[0]!, isDnw: false });
    await openPeg(page, PEGS[1]!);
    await atEachReadingSize(page, async (at) => {
      const seen = await page.evaluate(async () => {
        await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
        const edges = (selector: string) => document.querySelector(selector)!.getBoundingClientRect();
        const covered: string[] = [];
        const beside: string[] = [];
        const controls = [...document.querySelectorAll<HTMLElement>('#day :is(a, button, input, select, summary)')];
        // Down the page as by the Tab key, and up again.
        for (const control of [...controls, ...controls.toReversed()]) {
          control.focus();
          if (document.activeElement !== control) continue;
          const { top, bottom, right } = control.getBoundingClientRect();
          if (bottom > edges('#day-parts').top + 1 || top < edges('.saved').bottom - 1) covered.push(control.outerHTML);
          if (right > innerWidth) beside.push(control.outerHTML);
        }
        const parts = edges('#day-parts');
        const small = [...document.querySelectorAll('#day-parts a')].filter((link) => {
          const box = link.getBoundingClientRect();
          return Math.min(box.width, box.height) < 48;
        });
        return {
          covered,
          beside,
          small: small.length,
          isAboveStrip: Math.abs(parts.bottom - edges('.help-strip').top) <= 1,
          isLow: parts.top > innerHeight / 2 && parts.bottom <= innerHeight,
        };
      });
      expect(seen, at).toEqual({
        covered: [],
        beside: [],
        small: 0,
        isAboveStrip: true,
        isLow: true,
      });
      await page.click('#day-parts a[href="#results"]');
      const table = await page.$eval('.results', (one) => one.scrollWidth <= one.parentElement!.clientWidth);
      expect(table, `results, ${at}`).toBe(true);
    });
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('#day-parts').isVisible()).toBe(false);
    await context.close();
    const plain = await browser.newContext({ viewport: PHONE, javaScriptEnabled: false });
    const still = await plain.newPage();
    await still.goto(inject('siteUrl') + DAY);
    expect(await still.locator('#day-parts').isVisible()).toBe(false);
    await plain.close();
  });

  it('shows the chance of every section without a sideways scroll, at twice the text too', async () => {
    const context = await browser.newContext({ viewport: PHONE });
    const page = await context.newPage();
    await page.goto(`${inject('siteUrl')}matches/${MATCH}/`);
    await atEachReadingSize(page, async (at, width) => {
      const rights = await page.evaluate(() => {
        return [...document.querySelectorAll('.match-sections tbody td:last-child')].map(
          (cell) => cell.getBoundingClientRect().right,
        );
      });
      expect(rights.length).toBeGreaterThan(0);
      expect(Math.max(...rights), at).toBeLessThanOrEqual(width);
    });
    await context.close();
  });

  it('prints one ticket as large as another, so that none is told by the feel', async () => {
    const page = await browser.newPage();
    await page.goto(`${inject('siteUrl')}matches/${MATCH}/tickets/`);
    await page.emulateMedia({ media: 'print' });
    const heights = await page.$$eval('.tickets li', (tickets) =>
      tickets.map((ticket) => ticket.getBoundingClientRect().height),
    );
    expect(heights.length).toBeGreaterThan(4);
    expect(Math.max(...heights) - Math.min(...heights)).toBeLessThan(1);
    await page.close();
  });

  it('gives every control 48 pixels and scrolls sideways nowhere', async () => {
    const { context, page } = await phone();
    expect(await hasItsPlural(page)).toBe(true);
    await openPeg(page, PEGS[0]!);
    await afterNote(page, () => page.locator('.scale-statuses button').first().click());
    expect(await hasItsPlural(page)).toBe(true);
    await openPeg(page, PEGS[1]!);
    const small = await page.$$eval(
      '#day button, #day select, #day input:not([type="file"]), #day-parts a, #day summary',
      (controls) =>
        controls
          // A radio button's target is its label.
          .filter((control) => {
            const { width, height } = (control.closest('label:has([type="radio"])') ?? control).getBoundingClientRect();
            return height > 0 && Math.min(width, height) < 48;
          })
          .map((control) => control.outerHTML.slice(0, 80)),
    );
    expect(small).toEqual([]);
    await context.setOffline(false);
    for (const address of [DAY, `matches/${MATCH}/`, `matches/${MATCH}/sheet/`, `matches/${MATCH}/tickets/`]) {
      await page.goto(inject('siteUrl') + address);
      for (const percent of ['100%', '200%']) {
        const outside = await page.evaluate((size) => {
          document.documentElement.style.fontSize = size;
          document.querySelector<HTMLElement>('[data-peg][aria-expanded="false"]')?.click();
          return [...document.querySelectorAll('main *')]
            .filter(
              (element) => element.closest('.wide') === null && element.getBoundingClientRect().right > innerWidth + 1,
            )
            .map((element) => element.outerHTML.slice(0, 80));
        }, percent);
        expect(outside, `${address} at ${percent}`).toEqual([]);
      }
    }
    await context.close();
  });
});

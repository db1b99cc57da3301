import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { RoundFile } from '../../src/content/round-file/round-file.ts';
import { childEnvironment } from '../child-environment.ts';
import { openBrowser, PHONE } from './chromium.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const HERE = { latitude: 52.93126, longitude: 0.2252 };
const eventually = <T>(look: () => Promise<T>) => expect.poll(look, { timeout: 20_000 });

let browser: Browser;
let scratch: string;
let water: string;

const roundUrl = (): string => `${inject('siteUrl')}bank-round/${water}/`;

async function phone(options: Parameters<Browser['newContext']>[0] = {}): Promise<BrowserContext> {
  return browser.newContext({ viewport: PHONE, hasTouch: true, acceptDownloads: true, ...options });
}

/** Opens a stop, well after the last tap: a second one at the same place at once is taken for a slip. */
async function open(at: Locator): Promise<void> {
  await at.page().waitForTimeout(600);
  await at.locator('[data-open]').click();
}

/** The round as its file says it. */
async function handedOver(page: Page): Promise<RoundFile> {
  await page.locator('[data-make]').click();
  // A second tap at once is taken for a slip.
  await page.waitForTimeout(600);
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator('[data-save]').click()]);
  const file = join(scratch, download.suggestedFilename());
  await download.saveAs(file);
  return JSON.parse(readFileSync(file, 'utf8')) as RoundFile;
}

async function saved(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector('#round-saved')?.textContent?.startsWith('Saved'));
}

const stop = (page: Page, index: number) => page.locator('ol.stops > li').nth(index);
const nameOf = async (page: Page, index: number) => (await stop(page, index).getAttribute('data-stop')) ?? '';

beforeAll(async () => {
  scratch = mkdtempSync(join(tmpdir(), 'bank-round-tabs-'));
  cpSync(join(PROJECT, 'content'), join(scratch, 'venue'), { recursive: true });
  browser = await openBrowser();
  const context = await phone();
  const page = await context.newPage();
  await page.goto(`${inject('siteUrl')}bank-round/`);
  await page.locator('main .row a').first().click();
  await page.waitForURL(/bank-round\/[^/]+\/$/);
  water = new URL(page.url()).pathname.split('/').at(-2) ?? '';
  await context.close();
});

afterAll(async () => {
  await browser?.close();
  rmSync(scratch, { recursive: true, force: true });
});

describe('one round in two tabs', () => {
  let context: BrowserContext;
  let one: Page;
  let two: Page;
  let round: RoundFile;
  let peg: string;

  beforeAll(async () => {
    context = await phone({ geolocation: { ...HERE, accuracy: 2500 }, permissions: ['geolocation'] });
    one = await context.newPage();
    await one.goto(roundUrl());
    await one.locator('#round-begin').click();
    two = await context.newPage();
    await two.goto(roundUrl());
    peg = await nameOf(one, 0);
  });
  afterAll(() => context.close());

  it('says who sees it, whom to call now, and whether the browser keeps it', async () => {
    const words = (await one.locator('main').innerText()).replace(/\s+/g, ' ');
    expect(words).toContain('Nobody sees what is noted here until the club has taken the round in.');
    expect(words).toMatch(/tape it off first, keep people away, and call: Danger to life: 999 Bailiff on duty [\d ]+/);
    await eventually(() => one.locator('#round-storage').innerText()).toMatch(/^This browser (keeps|has not promised)/);
  });

  it('keeps what both tabs note at one peg, and shows each what the other noted', async () => {
    await open(stop(one, 0));
    await open(stop(two, 0));
    await stop(one, 0).locator('[name=status][value=closed]').check();
    await stop(one, 0).locator('[name=reason]').fill('the bank has slipped');
    await stop(two, 0).locator('[name=note]').fill('noted in the other tab');
    await saved(one);
    await saved(two);
    await eventually(() => stop(two, 0).locator('[name=reason]').inputValue()).toBe('the bank has slipped');
    await eventually(() => stop(one, 0).locator('[name=note]').inputValue()).toBe('noted in the other tab');
    await one.reload();
    await open(stop(one, 0));
    expect(await stop(one, 0).locator('[name=status][value=closed]').isChecked()).toBe(true);
    expect(await stop(one, 0).locator('[name=note]').inputValue()).toBe('noted in the other tab');
  });

  it('marks one peg at a double tap, and moves on by one', async () => {
    const visited = stop(one, 1).locator('[data-visited]');
    await open(stop(one, 1));
    await visited.scrollIntoViewIfNeeded();
    const box = (await visited.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await one.touchscreen.tap(x, y);
    await one.touchscreen.tap(x, y);
    await eventually(() => one.locator('#round-count').innerText()).toMatch(/^2 of/);
    const next = stop(one, 1).locator('[data-next]');
    await next.scrollIntoViewIfNeeded();
    const under = (await next.boundingBox())!;
    await one.waitForTimeout(600);
    await one.touchscreen.tap(under.x + 40, under.y + 20);
    await one.touchscreen.tap(under.x + 40, under.y + 20);
    await one.waitForTimeout(600);
    expect(await one.locator('[aria-expanded=true]').count()).toBe(1);
    expect(await stop(one, 2).locator('[data-open]').getAttribute('aria-expanded')).toBe('true');
    expect(await one.locator('#round-count').innerText()).toMatch(/^2 of/);
  });

  it('says of a visit that nothing was inspected, and takes an entry back', async () => {
    await one.waitForTimeout(600);
    await stop(one, 2).locator('[data-visited]').click();
    expect(await stop(one, 2).locator('[data-noted]').innerText()).toContain('Nothing is noted as inspected');
    await eventually(() => one.locator('#round-count').innerText()).toMatch(/^3 of/);
    await one.locator('#round-undo').click();
    await eventually(() => one.locator('#round-count').innerText()).toMatch(/^2 of/);
  });

  it('does not keep a position good to 2,500 m unless it is asked to, and keeps how good it is', async () => {
    await open(stop(one, 0));
    await stop(one, 0).locator('[data-place]').click();
    const said = stop(one, 0).locator('[data-place-said]');
    await eventually(() => said.innerText()).toMatch(/good to 2,500 m only, so it was not kept/);
    await stop(one, 0).locator('[data-place-anyway]').click();
    await eventually(() => said.innerText()).toMatch(/^Position kept: 52\.93126, 0\.22520, good to some 2,500 m/);
    await context.setGeolocation({ ...HERE, accuracy: 8 });
    await open(stop(one, 2));
    await stop(one, 2).locator('[name=line-distance]').fill('150');
    await stop(one, 2).locator('[name=line-method][value=tape]').check();
    await stop(one, 2).locator('[data-place]').click();
    await eventually(() => stop(one, 2).locator('[data-place-said]').innerText()).toMatch(/good to some 8 m/);
    await saved(one);
  });

  it('notes what is at no peg: rescue kit, the water, a notice', async () => {
    const kit = one.locator('ul.stops > li', { hasText: /throw line/i }).first();
    await open(kit);
    await kit.locator('[name=kit][value=missing]').check();
    await kit.locator('[data-add-hazard]').click();
    await kit.locator('[data-field=kind]').selectOption('missing-kit');
    await kit.locator('[data-field=place]').fill('the post is bare');
    // Where it stands may have been tapped a moment ago, to add the hazard.
    await one.waitForTimeout(600);
    await kit.locator('[data-level=severity][value="5"]').check();
    await kit.locator('[data-level=likelihood][value="2"]').check();
    const whole = one.locator('ul.stops > li').first();
    await open(whole);
    await whole.locator('[name=notice-title]').fill('Throw line gone from the dam');
    await whole.locator('[name=note]').fill('=HYPERLINK("x")');
    await saved(one);
  });

  it('says that the store was cleared, has everything still, and puts it back', async () => {
    await one.evaluate(async () => {
      const opening = indexedDB.open('peg-atlas-rounds');
      const database = await new Promise<IDBDatabase>((resolve) => {
        opening.onsuccess = () => resolve(opening.result);
      });
      const names = [...database.objectStoreNames];
      const transaction = database.transaction(names, 'readwrite');
      for (const name of names) transaction.objectStore(name).clear();
      await new Promise((resolve) => {
        transaction.oncomplete = resolve;
      });
      database.close();
    });
    await open(stop(one, 3));
    await stop(one, 3).locator('[name=note]').fill('after the clearing');
    await eventually(() => one.locator('#round-saved').innerText()).toMatch(/NOT saved.*no longer on this phone/);
    expect(await one.locator('#round-saved').innerText()).not.toMatch(/still here/);
    await one.locator('#round-put-back').click();
    await saved(one);
    await one.reload();
    await eventually(() => one.locator('#round-count').innerText()).toMatch(/^4 of/);
    expect(await one.locator('#round-go-on').innerText()).toContain(await nameOf(one, 3));
  });

  it('lists what nobody visited, and hands over all of it and nothing else', async () => {
    await one.locator('[data-make]').click();
    const left = one.locator('[data-unvisited]');
    await eventually(() => left.innerText()).toContain('not visited: ');
    expect(await left.innerText()).toContain('not walked');
    round = await handedOver(one);
    const names = await Promise.all([0, 1, 2, 3].map((index) => nameOf(one, index)));
    expect(round.pegs.map((finding) => finding.peg).sort()).toEqual([...names].sort());
    const [first, second, third, fourth] = names.map((name) => round.pegs.find((finding) => finding.peg === name));
    expect(first).toMatchObject({
      status: 'closed',
      reason: 'the bank has slipped',
      note: 'noted in the other tab',
      at: { accuracyMetres: 2500 },
    });
    expect(second).toMatchObject({ hazards: [] });
    expect(second).not.toHaveProperty('platform');
    expect(third).toMatchObject({ lineDistanceMetres: 150, lineMethod: 'tape', at: { accuracyMetres: 8 } });
    expect(fourth).toMatchObject({ note: 'after the clearing' });
    expect(round.places?.find(({ kit }) => kit === 'missing')?.hazards).toMatchObject([{ kind: 'missing-kit' }]);
    expect(round.notices).toMatchObject([{ title: 'Throw line gone from the dam' }]);
    await eventually(() => two.locator('#round-again').isVisible()).toBe(true);
  });

  it('is taken in: the peg is closed, the kit is missing, the notice is there, the note is told', async () => {
    const file = join(scratch, `bank-round-${round.day}-${round.ref}.txt`);
    const taken = spawnSync(process.execPath, ['src/commands/venue.ts', 'intake', file, '--yes'], {
      cwd: PROJECT,
      env: childEnvironment({ VENUE_DIR: join(scratch, 'venue') }),
      encoding: 'utf8',
    });
    expect(taken.stderr).toBe('');
    const read = (path: string) => readFileSync(join(scratch, 'venue', path), 'utf8');
    expect(read(`pegs/${water}/${peg}.md`)).toContain('status-reason: the bank has slipped');
    expect(read(`waters/${water}.md`)).toContain('kind: missing-kit');
    expect(read(`notices/${round.day}-round-${round.ref}-1.md`)).toContain('Throw line gone from the dam');
    expect(read(`rounds/${round.day}-${round.ref}.csv`)).toContain(`'=HYPERLINK(""x"")`);
    expect(taken.stdout).toContain('note to the club: =HYPERLINK("x")');
  });
});

it('asks for the day where the clock says 2019, and dates every entry by the answer', async () => {
  const context = await phone();
  const page = await context.newPage();
  await page.clock.setFixedTime(new Date('2019-03-03T12:00:00'));
  await page.goto(roundUrl());
  await eventually(() => page.locator('#round-clock-why').innerText()).toMatch(/clock says 3 Mar 2019/);
  await page.locator('#round-begin').click();
  expect(await page.locator('#round-now').isVisible()).toBe(false);
  await page.locator('#round-clock-day').fill('2026-11-26');
  // With a key: a second tap within half a second is taken for a double one, and a machine is that quick.
  await page.locator('#round-begin').press('Enter');
  await eventually(() => page.locator('#round-name').innerText()).toContain('26 Nov 2026');
  await open(stop(page, 0));
  await stop(page, 0).locator('[data-visited]').click();
  await saved(page);
  const round = await handedOver(page);
  expect([round.day, round.pegs[0]?.day]).toEqual(['2026-11-26', '2026-11-26']);
  await context.close();
});

it('says that a position was refused, and keeps none', async () => {
  const context = await phone({ permissions: [] });
  const page = await context.newPage();
  await page.goto(roundUrl());
  await page.locator('#round-begin').click();
  await open(stop(page, 0));
  await stop(page, 0).locator('[data-place]').click();
  await eventually(() => stop(page, 0).locator('[data-place-said]').innerText()).toMatch(
    /told not to give its position.*Nothing was kept/,
  );
  expect(await page.locator('#round-count').innerText()).toMatch(/^0 of/);
  await context.close();
});

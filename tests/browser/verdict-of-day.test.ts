import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Day } from '../../src/domain/day.ts';
import { childEnvironment } from '../child-environment.ts';
import { replacing, smallVenue } from '../content/small-venue.ts';
import { openBrowser, PHONE } from './chromium.ts';

/**
 * A folder with what a club may say against a peg, walked from the file to the words on the built pages, on the day of
 * the guide (21 Nov 2026) and after it, with script and without:
 * peg 1: wires in its record that no map shows, 90 m off; peg 2: closed by a notice from the guide's day to the 23rd; peg 10: to be
 * closed on the 25th and 26th; peg 11: open by its status, with a scum of 5 × 5. No line is on the map.
 */
const RECORD = 'pegs/mill-pond/10.md';
const closure = (title: string, from: Day, until: Day, peg: string) =>
  `---\ntitle: ${title}\nkind: closure\nfrom: ${from}\nuntil: ${until}\npegs: [mill-pond/${peg}]\n---\n\nKeep off.\n`;
const original = smallVenue().texts.get(RECORD) ?? '';
const FOLDER = smallVenue({
  'waters/mill-pond.geojson': (text) =>
    text
      .split('\n')
      .filter((line) => !line.includes('overhead-line'))
      .join('\n'),
  'pegs/mill-pond/1.md': replacing(
    'hazards:\n',
    'hazards:\n  - kind: overhead-line\n    place: new wires over the path\n    action: Carry nothing upright here.\n    distance: 90 m\n    severity: 5\n    likelihood: 2\n    found-on: 2026-11-10\n',
  ),
  'pegs/mill-pond/11.md': original
    .replace('peg: "10"', 'peg: "11"')
    .replace('-0.0502', '-0.05')
    .replace('kind: slippery', 'kind: algae-scum')
    .replace('severity: 2', 'severity: 5')
    .replace('likelihood: 3', 'likelihood: 5'),
  'notices/2026-11-21-boards.md': closure('Boards gone', '2026-11-21', '2026-11-23', '2'),
  'notices/2026-11-25-trees.md': closure('Tree work', '2026-11-25', '2026-11-26', '10'),
});

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'verdicts-'));
const guide = join(scratch, 'guide');
let browser: Browser;
let server: ChildProcess;
let address = '';

function command(args: readonly string[]) {
  return spawn(process.execPath, ['src/commands/venue.ts', ...args], {
    cwd: PROJECT,
    env: childEnvironment(),
    stdio: ['ignore', 'pipe', 'inherit'],
  });
}

/** A port nobody listens on. */
function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}

beforeAll(async () => {
  for (const [path, text] of FOLDER.texts) {
    const file = join(scratch, 'venue', path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  const build = command(['build', '--venue', join(scratch, 'venue'), '--out', guide]);
  build.stdout.resume();
  expect(await new Promise((resolve) => build.on('exit', resolve))).toBe(0);
  const serving = command(['serve', '--out', guide, '--port', String(await freePort())]);
  server = serving;
  address = await new Promise((resolve) => {
    let printed = '';
    serving.stdout.on('data', (chunk: Buffer) => {
      printed += chunk.toString();
      const found = /http:\/\/\S+/.exec(printed)?.[0];
      if (found !== undefined) resolve(found);
    });
  });
  browser = await openBrowser();
}, 600_000);

afterAll(async () => {
  await browser.close();
  server.kill();
  rmSync(scratch, { recursive: true });
});

/** Reads a page on a day; without script a phone's clock changes nothing. */
async function read<T>(path: string, day: Day, look: (page: Page) => Promise<T>, javaScriptEnabled = true): Promise<T> {
  const context = await browser.newContext({ viewport: PHONE, timezoneId: 'Europe/London', javaScriptEnabled });
  await context.clock.setFixedTime(`${day}T12:00:00Z`);
  try {
    const page = await context.newPage();
    await page.goto(address + path);
    return await look(page);
  } finally {
    await context.close();
  }
}

/** Pegs that a place shows as closed on a day. */
const PLACES: Readonly<Record<string, (day: Day, script?: boolean) => Promise<readonly string[]>>> = {
  'home grid': (day, script) =>
    read(
      '',
      day,
      (page) =>
        page
          .locator('.peg-grid a')
          .evaluateAll((links) =>
            links
              .filter((link) => link.classList.contains('shut') && (link as HTMLElement).innerText.includes('closed'))
              .map((link) => link.firstChild!.textContent!.trim()),
          ),
      script,
    ),
  'peg table': (day, script) =>
    read(
      'mill-pond/',
      day,
      (page) =>
        page
          .locator('table.pegs tbody tr')
          .evaluateAll((rows) =>
            rows
              .filter((row) => /\bclosed\b/i.test((row as HTMLElement).innerText))
              .map((row) => row.querySelector('th')!.innerText.trim()),
          ),
      script,
    ),
  'drawn map': (day, script) =>
    read(
      'mill-pond/',
      day,
      (page) =>
        page.locator('svg.water-map a.m-peg').evaluateAll((marks) =>
          marks
            .filter((mark) => {
              const square = [...mark.querySelectorAll('path')].some(
                (shape) => shape.getAttribute('d')!.startsWith('M-34-34') && getComputedStyle(shape).display !== 'none',
              );
              const circle = [...mark.querySelectorAll('circle')].some(
                (shape) => getComputedStyle(shape).display !== 'none',
              );
              const isSaid = mark.getAttribute('aria-label')!.includes('closed');
              if (square === circle || square !== isSaid) throw new Error(`a mark of two minds: ${mark.outerHTML}`);
              return square;
            })
            .map((mark) => mark.querySelector('text')!.textContent!),
        ),
      script,
    ),
  sheets: async (day, script) => {
    const names = ['1', '2', '10', '11'];
    const isClosed = await Promise.all(
      names.map((peg) =>
        read(`mill-pond/${peg}/`, day, (page) => page.locator('div.closed').filter({ visible: true }).count(), script),
      ),
    );
    return names.filter((_, index) => isClosed[index] === 1);
  },
  'safety page': (day, script) =>
    read(
      'safety/',
      day,
      (page) => page.locator('.closed-pegs li').filter({ visible: true }).locator('.pegs a').allInnerTexts(),
      script,
    ),
  'bank round': (day, script) =>
    read(
      'bank-round/mill-pond/',
      day,
      (page) =>
        page
          .locator('[data-stop]')
          .evaluateAll((stops) =>
            stops
              .filter((stop) =>
                [...stop.querySelectorAll<HTMLElement>('.closed-words')].some((words) => words.offsetParent !== null),
              )
              .map((stop) => (stop as HTMLElement).dataset.stop!),
          ),
      script,
    ),
};

const byNumber = (pegs: readonly string[]) => [...pegs].sort((a, b) => Number(a) - Number(b));

describe.each(Object.entries(PLACES))('%s', (_, closedOn) => {
  it('shows what is closed on the day of the guide without script', async () => {
    expect(byNumber(await closedOn('2026-11-21', false))).toEqual(['2', '11']);
  });

  it('shows what is closed on each day of reading', async () => {
    expect(byNumber(await closedOn('2026-11-21'))).toEqual(['2', '11']);
    expect(byNumber(await closedOn('2026-11-23'))).toEqual(['2', '11']);
    expect(byNumber(await closedOn('2026-11-24'))).toEqual(['11']);
    expect(byNumber(await closedOn('2026-11-25'))).toEqual(['10', '11']);
    expect(byNumber(await closedOn('2026-11-27'))).toEqual(['11']);
  });

  it('is no more open on a phone whose clock stands years before the guide', async () => {
    expect(byNumber(await closedOn('2019-01-01'))).toEqual(['2', '11']);
  });
});

it('says on the sheet until when and why, and for the scum what closes it', async () => {
  const words = (peg: string, day: Day) =>
    read(`mill-pond/${peg}/`, day, (page) => page.locator('div.closed').innerText());
  expect(await words('2', '2026-11-22')).toContain('Closed until 23 Nov 2026');
  expect(await words('2', '2026-11-22')).toContain('Boards gone');
  expect(await words('10', '2026-11-25')).toContain('Closed until 26 Nov 2026');
  expect(await words('10', '2026-11-25')).toContain('Tree work');
  expect(await words('11', '2026-11-22')).toContain('Blue-green algae scum');
});

it('tells the bailiff’s own words of wires that no map shows, and never that the peg is clear', async () => {
  const sheet = await read('mill-pond/1/', '2026-11-21', async (page) => {
    for (const line of await page.locator('.dangers summary').all()) await line.click();
    return page.locator('main').innerText();
  });
  expect(sheet).toContain('new wires over the path');
  expect(sheet).toContain('Carry nothing upright here.');
  expect(sheet).not.toContain('clear of');
});

it('says on each sheet and map that no line is on the map, and when, by whom and how they were looked for', async () => {
  for (const path of ['mill-pond/', 'mill-pond/1/', 'mill-pond/11/', 'bank-round/mill-pond/']) {
    const text = readFileSync(join(guide, path, 'index.html'), 'utf8');
    expect(text).toContain('No line is on the club’s map.');
    expect(text).toContain('surveyed 3 Mar 2026 by role: Bailiff; how: walked with the network operator’s plan');
  }
});

it('marks them on the live map too, for the day of reading', async () => {
  const closedOn = (day: Day) =>
    read('mill-pond/', day, async (page) => {
      await page.getByRole('button', { name: 'Move and zoom the map' }).click();
      await page.locator('.live-peg').first().waitFor({ state: 'attached' });
      return page.locator('.live-peg .is-closed').evaluateAll((marks) => marks.map((mark) => mark.textContent!));
    });
  expect(byNumber(await closedOn('2026-11-21'))).toEqual(['2', '11']);
  expect(byNumber(await closedOn('2026-11-25'))).toEqual(['10', '11']);
});

it('publishes them as data, with what decides on a later day', () => {
  const { format, pegs } = JSON.parse(readFileSync(join(guide, 'data/pegs.json'), 'utf8')) as {
    readonly format: number;
    readonly pegs: readonly { readonly peg: string; readonly status: string; readonly closedUntil: string | null }[];
  };
  expect(format).toBe(2);
  expect(pegs.map(({ peg, status, closedUntil }) => [peg, status, closedUntil])).toEqual([
    ['1', 'open', null],
    ['2', 'closed', '2026-11-23'],
    ['10', 'open', null],
    ['11', 'closed', null],
  ]);
  const feed = readFileSync(join(guide, 'notices/feed.xml'), 'utf8');
  expect(feed).toContain('Closure: Boards gone');
});

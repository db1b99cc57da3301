import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESK, openBrowser } from './chromium.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const COMMAND = join(PROJECT, 'src', 'commands', 'venue.ts');
const MATCHES = 6;

let root: string;
let server: ChildProcess;
let browser: Browser;
let page: Page;
let said = '';
const file = (path: string) => join(root, 'venue', path);
const rewrite = (path: string, change: (text: string) => string) =>
  writeFileSync(file(path), change(readFileSync(file(path), 'utf8')));

beforeAll(async () => {
  root = mkdtempSync(join(tmpdir(), 'follow-'));
  spawnSync(process.execPath, [COMMAND, 'start', join(root, 'venue'), '--example', '--day', '2026-11-21'], {
    cwd: root,
  });
  writeLog();
  const port = await freePort();
  server = spawn(process.execPath, [COMMAND, 'dev', '--venue', join(root, 'venue'), '--port', String(port)], {
    cwd: root,
    // Astro serves no pages where a variable says that its tests are running.
    env: { PATH: process.env.PATH, HOME: process.env.HOME, PEG_ATLAS_CACHE: join(root, 'cache') },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const address = await new Promise<string>((resolve, reject) => {
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const found = /http:\S+/.exec(said)?.[0];
      if (found !== undefined) resolve(found);
    };
    server.stdout?.on('data', hear);
    server.stderr?.on('data', hear);
    server.once('exit', (code) => reject(new Error(`dev ended with ${code}: ${said}`)));
  });
  browser = await openBrowser();
  page = await browser.newPage({ viewport: DESK });
  // The first page of a development server is put together as it is asked for; the next ones are not.
  await page.goto(`${address}first-water/1/`, { timeout: 90_000 });
  await page.locator('h1').waitFor();
}, 180_000);
afterAll(async () => {
  await browser?.close();
  server?.kill();
  rmSync(root, { recursive: true, force: true });
});

/** A few matches of two pegs, so that there is something to rate. */
function writeLog(): void {
  const events: string[] = [];
  const sessions: string[] = [];
  for (let match = 1; match <= MATCHES; match++) {
    events.push(`m${match},2026-0${match}-11,first-water,match,5,full,1,,,,,,`);
    sessions.push(`m${match},,1,,weighed,${10 + match} lb,,,,,,,,`, `m${match},,2,,weighed,${4 + match} lb,,,,,,,,`);
  }
  rewrite('sessions/2026/events.csv', (head) => `${head}${events.join('\n')}\n`);
  rewrite('sessions/2026/sessions.csv', (head) => `${head}${sessions.join('\n')}\n`);
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number };
      probe.close(() => resolve(port));
    });
  });
}

const overlay = () => page.locator('vite-error-overlay');
const oldRatings = () => page.locator('[data-old-ratings]');

test('an edited record shows within two seconds', async () => {
  const waited: number[] = [];
  let before = 'What those who know this peg';
  // Three edits, since a machine may be at something else just then.
  for (const words of ['Swallows fly elsewhere.', 'Swallows fly over.', 'Swallows fly low.']) {
    const started = performance.now();
    rewrite('pegs/first-water/1.md', (text) => text.replace(before, words));
    await page.getByText(words).waitFor({ timeout: 20_000 });
    waited.push((performance.now() - started) / 1000);
    before = words;
  }
  console.log(`edited records were on the page after ${waited.map((seconds) => seconds.toFixed(2)).join(', ')} s`);
  expect(Math.min(...waited)).toBeLessThan(2);
});

test('a broken record stands over the page with file and line, while the last good page stays, and goes when it is mended', async () => {
  await oldRatings().waitFor({ state: 'detached', timeout: 60_000 });
  rewrite('pegs/first-water/1.md', (text) => text.replace('status: open', 'status: opne'));
  await overlay().waitFor({ timeout: 10_000 });
  const shown = await overlay().evaluate((element) => element.shadowRoot?.textContent ?? '');
  expect(shown).toMatch(/pegs\/first-water\/1\.md:\d+/);
  expect(shown).toContain('opne');
  expect(await page.locator('main').innerText()).toContain('Swallows fly low.');
  expect(said).toMatch(/pegs\/first-water\/1\.md:\d+:\d+ error/);
  // Opened anew, the page is still the last good one, and still told to be behind.
  await page.reload();
  expect(await page.locator('main').innerText()).toContain('Swallows fly low.');
  await overlay().waitFor({ timeout: 10_000 });
  rewrite('pegs/first-water/1.md', (text) => text.replace('status: opne', 'status: open'));
  await overlay().waitFor({ state: 'detached', timeout: 10_000 });
});

test('while worth is worked out anew the old stands, marked so', async () => {
  await oldRatings().waitFor({ state: 'detached', timeout: 60_000 });
  rewrite('sessions/2026/sessions.csv', (text) => text.replace('11 lb', '31 lb'));
  await oldRatings().waitFor({ timeout: 10_000 });
  expect(await oldRatings().innerText()).toContain('earlier log');
  await oldRatings().waitFor({ state: 'detached', timeout: 60_000 });
  expect(said).toContain('Worth is of the log as it is now.');
});

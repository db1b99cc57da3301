import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { run as runBuild } from '../../src/commands/build.ts';
import { guideServer } from '../../src/commands/guide-folder/serve-guide.ts';
import { AssociationOnDisk } from '../commands/association/association-on-disk.ts';
import { recordedIo } from '../commands/recorded-io.ts';
import { axeFindings } from './axe-findings.ts';
import { DESK, openBrowser, PHONE } from './chromium.ts';

let waters: AssociationOnDisk;
let home: string;
let folder: string;

beforeAll(() => {
  waters = new AssociationOnDisk();
  ({ home, folder } = waters);
});
afterAll(() => waters.remove());

const put = (path: string, change: (text: string) => string) => waters.put(path, change);
const breakBirch = () => waters.breakBirch();

/** Opens the first page, follows it to a guide, and asks for an address that is none. */
async function walk(out: string): Promise<readonly string[]> {
  const server = guideServer(out, '/guides/');
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as { port: number };
  const browser = await openBrowser();
  try {
    const page = await browser.newPage({ viewport: PHONE });
    const problems: string[] = [];
    page.on('console', (message) => message.type() === 'error' && problems.push(message.text()));
    await page.goto(`http://127.0.0.1:${port}/guides/`);
    const first = await page.locator('h1').innerText();
    const isStyled = await page.evaluate(() => getComputedStyle(document.body).fontVariantNumeric);
    const isWide = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
    expect([first, isStyled, isWide, problems]).toEqual([
      'Example Vale Association',
      'lining-nums tabular-nums',
      false,
      [],
    ]);
    await lookAtFirstPage(browser, page.url());
    await page.getByRole('link', { name: 'Alder Lakes' }).click();
    const guide = new URL(page.url()).pathname;
    await page.goto(`http://127.0.0.1:${port}/guides/none/`);
    return [guide, await page.locator('h1').innerText()];
  } finally {
    await browser.close();
    server.close();
  }
}

/** The first page on a phone and a desk, by day, in the dark and on paper: nothing wide, nothing axe objects to. */
async function lookAtFirstPage(browser: Browser, address: string): Promise<void> {
  for (const viewport of [PHONE, DESK]) {
    for (const colorScheme of ['light', 'dark'] as const) {
      const context = await browser.newContext({ viewport, colorScheme, bypassCSP: true });
      const page = await context.newPage();
      await page.goto(address);
      const isWide = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
      expect([viewport.width, colorScheme, isWide, await axeFindings(page)]).toEqual([
        viewport.width,
        colorScheme,
        false,
        [],
      ]);
      const pages = (await page.pdf({ format: 'A4' })).toString('latin1').match(/\/Type\s*\/Page\b/g);
      expect(pages).toHaveLength(1);
      await context.close();
    }
  }
}

test('writes a guide for each venue and a first page, keeps both where a venue has faults, and builds the sound one', async () => {
  const out = join(home, 'site');
  const build = async () => {
    // Of the tests' own variables none may reach a build.
    const { PATH } = process.env;
    const io = recordedIo({ PATH, HOME: home, PEG_ATLAS_CACHE: join(home, 'cache') });
    return { code: await runBuild(['--venue', folder, '--out', out, '--address', '/guides/'], io), io };
  };
  const first = await build();
  expect([first.io.errors.join('\n'), first.code]).toEqual([expect.stringContaining('Building 1 to'), 0]);
  const index = readFileSync(join(out, 'index.html'), 'utf8');
  expect(index).toContain('<a href="/guides/alder/">Alder Lakes</a>');
  expect(index).toContain('<a href="/guides/birch/">Example Fishery</a>');
  expect(index).toContain('<p>Two waters, one card.</p>');
  expect(readFileSync(join(out, 'alder/mill-pond/1/index.html'), 'utf8')).toContain('data-guide-base="/guides/alder/"');
  expect(existsSync(join(out, '_headers'))).toBe(true);

  expect(await walk(out)).toEqual(['/guides/alder/', 'No such page']);

  breakBirch();
  put('alder/venue.md', (text) => text.replace('name: Alder Lakes', 'name: Alder Meres'));
  const birch = readFileSync(join(out, 'birch/index.html'), 'utf8');
  const second = await build();
  expect(second.code).toBe(1);
  expect(second.io.errors.join('\n')).toContain('birch: the guide built before is untouched.');
  expect(second.io.errors.join('\n')).toContain('The first page was not written anew');
  expect(readFileSync(join(out, 'index.html'), 'utf8')).toBe(index);
  expect(readFileSync(join(out, 'birch/index.html'), 'utf8')).toBe(birch);
  expect(readFileSync(join(out, 'alder/index.html'), 'utf8')).toContain('Alder Meres');

  rmSync(join(folder, 'birch'), { recursive: true });
  const third = await build();
  expect(third.code).toBe(0);
  expect(third.io.errors.join('\n')).toContain('is a guide without a venue folder');
  expect(readFileSync(join(out, 'index.html'), 'utf8')).not.toContain('birch');
}, 240_000);

import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LANGUAGES } from '../../src/words/languages.ts';
import { openBrowser, PHONE } from './chromium.ts';
import { runVenue } from './run-venue.ts';
import { TamperedHost } from './tampered-host.ts';

const CONTENT = fileURLToPath(new URL('../../content', import.meta.url));
const temporary = mkdtempSync(join(tmpdir(), 'welsh-guide-'));

/** Messages whose words differ and that stand whole on a page, English first. */
const ENGLISH_WORDS = Object.entries(LANGUAGES.en.messages)
  .filter(([key, words]) => words.length > 12 && !/[{|]/.test(words) && !key.startsWith('frame.'))
  .filter(([key, words]) => (LANGUAGES.cy.messages as Record<string, string>)[key] !== words)
  .map(([, words]) => words);

let browser: Browser;
let host: TamperedHost;
beforeAll(async () => {
  const content = join(temporary, 'content');
  cpSync(CONTENT, content, { recursive: true });
  const venue = readFileSync(join(content, 'venue.md'), 'utf8');
  writeFileSync(join(content, 'venue.md'), venue.replace(/^guide-day:/m, 'language: cy\nguide-day:'));
  await runVenue(['build', '--venue', content, '--out', join(temporary, 'guide')]);
  host = await TamperedHost.of(join(temporary, 'guide'));
  browser = await openBrowser();
}, 180_000);
afterAll(async () => {
  await browser.close();
  host.close();
  rmSync(temporary, { recursive: true, force: true });
});

async function opened(path: string): Promise<Page> {
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block', timezoneId: 'Europe/London' });
  const page = await context.newPage();
  await page.clock.install({ time: new Date('2026-11-27T12:00:00Z') });
  await page.goto(host.address + path);
  return page;
}

/** What a page says, with the parts that are marked as English taken out. */
async function welshOf(page: Page): Promise<string> {
  return page.evaluate(() => {
    const main = document.querySelector('main')!.cloneNode(true) as HTMLElement;
    for (const part of main.querySelectorAll('[lang|=en], script, style, noscript')) part.remove();
    const told = [...main.querySelectorAll('[aria-label], [placeholder]')].map(
      (one) => `${one.getAttribute('aria-label') ?? ''} ${one.getAttribute('placeholder') ?? ''}`,
    );
    return [main.textContent, ...told].join('\n').replace(/\s+/g, ' ');
  });
}

/** Fails where a page says in English what the guide says in Welsh, or is wider than the phone. */
async function expectWelsh(page: Page): Promise<void> {
  const said = await welshOf(page);
  expect(ENGLISH_WORDS.filter((words) => said.includes(words))).toEqual([]);
  expect(said).toContain('Nid oes siaradwr brodorol');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
  expect(await page.locator('html').getAttribute('lang')).toBe('cy');
}

describe('a Welsh guide', () => {
  it('searches in Welsh, and says in English what is closed', async () => {
    const page = await opened('search/?for=K14');
    await page.locator('[data-found] li').first().waitFor();
    expect(await page.locator('[data-found] h2').first().innerText()).toBe('Pegiau');
    expect(await page.locator('[data-found] [lang|=en]').first().innerText()).toMatch(/^closed since/);
    await expectWelsh(page);
    const said = page.locator('#search-said');
    await page.getByRole('searchbox').fill('lilies');
    await expect.poll(() => said.innerText()).toMatch(/^\d+ peg, 1 nodwedd/);
    await page.getByRole('searchbox').fill('999');
    await expect.poll(() => said.innerText()).toContain('Nid oes peg 999 yma. Cafwyd er hynny:');
    await page.context().close();
  });

  it('sets pegs side by side in Welsh, and what to watch for in English', async () => {
    const page = await opened('compare/kiln-pool/?pegs=3,14,99');
    const card = page.locator('.side-by-side > li:visible').first();
    expect(await card.innerText()).toMatch(/Watch for[\s\S]*Dalfa[\s\S]*Cyfanswm[\s\S]* i [\s\S]*Gwerth[\s\S]*Dyfnder/);
    expect(await page.locator('#compare-said').innerText()).toBe('Nid oes peg 99 yma.');
    expect(await card.getByRole('button').innerText()).toBe('Tynnu allan');
    await expectWelsh(page);
    for (const english of await page.locator('.side-by-side > li:visible [lang|=en]').allInnerTexts())
      expect(english).toMatch(/Watch for|closed|^From /);
    await page.context().close();
  });

  it('tells the pace of a drawn peg in Welsh, and that a closed one is not to be fished in English', async () => {
    const page = await opened('draw/kiln-pool/?peg=23');
    await page.fill('[name="all-in"]', '10:00');
    await page.click('.times-form [type="submit"]');
    await page.locator('.net-form [name="lb"]').last().fill('3');
    await page.click('[data-part="carp"]');
    expect(await page.locator('[data-pace-status]').innerText()).toMatch(
      /3 h 00 min ar ôl\.[\s\S]*yr awr o hyn ymlaen/,
    );
    for (const summary of await page.locator('#drawn summary').all()) await summary.click();
    await page.getByRole('button', { name: 'Gwneud y slip' }).waitFor();
    await page.getByRole('button', { name: 'Bwydwyd nawr' }).click();
    expect(await page.locator('#fed-why').innerText()).toBe('Dywedwch beth y bwydoch chi.');
    await expectWelsh(page);
    await page.fill('#drawn-peg', '14');
    await page.keyboard.press('Enter');
    expect(await page.locator('#drawn .notice').innerText()).toContain('Do not fish it');
    expect(await page.locator('#drawn .notice').getAttribute('lang')).toBe('en-GB');
    await page.context().close();
  });

  it('prints cards, plates and the booklet in Welsh, and in English what can hurt and what is closed', async () => {
    const page = await opened('paper/cards/kiln-pool/');
    expect(await page.locator('.card[data-peg="3"]').innerText()).toMatch(/Emergency 999[\s\S]*diwrnod gwael/i);
    await expectWelsh(page);
    // Cards are cut by measure: what stands above them on the screen would push them off the cut.
    await page.emulateMedia({ media: 'print' });
    expect((await page.locator('.card').first().boundingBox())!.y).toBeLessThan(1);
    expect(await page.locator('.card footer').first().innerText()).toContain('heb eu gwirio');
    await page.emulateMedia({ media: 'screen' });
    await page.goto(`${host.address}paper/plates/kiln-pool/`);
    expect(await page.locator('.plate[data-peg="14"] [lang|=en]').first().innerText()).toContain('Not to be fished.');
    await expectWelsh(page);
    await page.goto(`${host.address}paper/booklet/`);
    expect(await page.locator('.booklet-cover [lang|=en]').allInnerTexts()).toContain('This paper ages');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.booklet-contents').innerText()).toMatch(/Cynnwys[\s\S]*Ei begiau, dalen yr un, o/);
    await expectWelsh(page);
    await page.context().close();
  });
});

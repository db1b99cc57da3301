import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { run as booklet } from '../../src/commands/booklet.ts';
import { EXIT } from '../../src/commands/command-io.ts';
import { recordedIo } from '../commands/recorded-io.ts';
import { type ReadPdf, readPdf } from './pdf-text.ts';

/** Some sheets stand for all: a closed peg, one limited by a line, and two of another water. */
const SHEETS = ['kiln-pool/12/', 'kiln-pool/14/', 'eelback/11/', 'eelback/19/'];

let folder: string;
let printed: ReadPdf;
const io = recordedIo(process.env.CHROMIUM === undefined ? {} : { CHROMIUM: process.env.CHROMIUM });

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'booklet-'));
  const guide = join(folder, 'guide');
  cpSync(inject('siteFolder'), guide, { recursive: true });
  const own = join(guide, 'paper/booklet/index.html');
  const fewer = readFileSync(own, 'utf8').replace(/ data-parts="([^"]* [^"]*)"/g, (_all, sheets: string) => {
    const kept = sheets.split(' ').filter((href) => SHEETS.includes(href.slice(1)));
    return kept.length === 0 ? '' : ` data-parts="${kept.join(' ')}"`;
  });
  const named = fewer.replace(
    /<li><a href="([^"]*)"(?:(?!<\/li>).)*<span class="page-number"(?:(?!<\/li>).)*<\/li>/g,
    (entry, href) => (href.startsWith('#') || SHEETS.includes(href.slice(1)) ? entry : ''),
  );
  writeFileSync(own, named);
  expect([await booklet(['--out', guide, '--to', folder], io), io.errors]).toEqual([EXIT.clean, []]);
  printed = readPdf(readFileSync(join(folder, 'booklet.pdf')));
}, 600_000);
afterAll(() => rmSync(folder, { recursive: true }));

/** Letters of a page without the spaces between them: the browser places each letter by itself. */
const lettersOf = (page: number) => (printed.pages[page - 1] ?? '').replaceAll(' ', '');
/** The page whose number stands behind some words of contents or index. */
const pageBehind = (words: string, from: string) =>
  Number(new RegExp(`${words.replaceAll(' ', '')}(\\d+)`).exec(from)?.[1] ?? 0);
const contents = () => /Contents(.*)$/.exec(lettersOf(1))?.[1] ?? '';
const index = () =>
  printed.pages.map((_page, at) => lettersOf(at + 1)).findLast((page) => page.includes('Eachpeg’snumber')) ?? '';

describe('venue booklet', () => {
  it('is tagged, in the guide’s language, with all parts and sheets in its outline', () => {
    expect([printed.isTagged, printed.language]).toEqual([true, 'en-GB']);
    const titles = printed.outline.map((title) => title.replaceAll(' ', ''));
    for (const title of [
      'Contents',
      'Safety',
      'Banknotices',
      'Eelback',
      'KilnPool',
      'Featuresbymonth',
      'Rules',
      'Index',
    ]) {
      expect(titles).toContain(title);
    }
    expect(titles).toEqual(expect.arrayContaining(['KilnPool,peg14', 'Eelback,peg11']));
  });

  it('says on each page how old it is, and first of all what closes pegs and what was closed', () => {
    for (const [at] of printed.pages.entries()) {
      expect(lettersOf(at + 1)).toContain('datato21Nov2026.Apegmayhaveclosedsince');
      expect(lettersOf(at + 1)).toMatch(new RegExp(`^${at + 1}|OsierholtFishery`));
    }
    expect(lettersOf(1)).toContain('Thispaperages');
    expect(lettersOf(1)).toMatch(/Whatclosesapeg.*nearerthan30m.*Closedon21Nov2026.*closedKilnPool14,15/);
    expect(lettersOf(1)).toContain('Someoneisinthewater');
  });

  it('has in its contents the page that each part begins on', () => {
    for (const part of ['Safety', 'Bank notices', 'Eelback', 'Kiln Pool', 'Features by month', 'Rules', 'Index']) {
      const page = pageBehind(part, contents());
      expect([part, lettersOf(page).includes(part.replaceAll(' ', ''))]).toEqual([part, true]);
    }
    expect(pageBehind('Safety', contents())).toBe(2);
  });

  it('has in its index the page of each sheet, the front of a leaf, and a sheet on two pages', () => {
    const found =
      /PegsEelbackEelback(\d\d)11(\d\d)19(\d\d)KilnPoolKilnPool(\d\d)12(\d\d)14closed(\d\d)Tallyman/.exec(index()) ??
      [];
    const [eelback, eelback11, eelback19, kilnPool, kilnPool12, kilnPool14] = found.slice(1).map(Number);
    expect([eelback, kilnPool]).toEqual([pageBehind('Eelback', contents()), pageBehind('Kiln Pool', contents())]);
    for (const [name, page = 0] of [
      ['Eelback,peg11', eelback11],
      ['Eelback,peg19', eelback19],
      ['KilnPool,peg12', kilnPool12],
      ['KilnPool,peg14', kilnPool14],
    ] as const) {
      expect(page % 2).toBe(1);
      expect(lettersOf(page)).toContain(`near Gedmarsh: ${name}·`.replaceAll(' ', ''));
      expect(lettersOf(page + 1)).toContain('Depthandreach');
    }
    expect(eelback19).toBe(eelback11! + 2);
    expect(kilnPool14).toBe(kilnPool12! + 2);
  });

  it('leads nowhere but inside itself where the club states no address, and never to the machine it was made on', () => {
    expect(printed.addresses.filter((address) => !/^(tel|mailto):/.test(address))).toEqual([]);
  });
});

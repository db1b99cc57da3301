import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { countWords } from '../../domain/count-words.ts';
import type { CommandIo } from '../command-io.ts';
import { assembleBooklet } from './assemble-booklet.ts';
import { type OnLeaves, onLeaves } from './on-leaves.ts';
import { pagesOfNames } from './pages-of-names.ts';
import { type OpenGuide, openPage, type PaperOptions, pagePdf, printGuide } from './print-guide.ts';

/** More than ever needed: two. */
const PRINTINGS = 4;

/** Prints the whole venue of the built guide into one PDF, `booklet.pdf`. */
export async function printBooklet(options: PaperOptions, io: CommandIo): Promise<number> {
  return printGuide(
    'paper/booklet',
    options,
    io,
    () => undefined,
    async (guide) => {
      io.showProgress?.('putting the booklet together');
      const page = await bookletPage(guide);
      const file = join(guide.folder, 'booklet.pdf');
      writeFileSync(file, await numberedPdf(page, (step) => io.showProgress?.(step)));
      io.print(file);
    },
  );
}

/** The booklet as one page of the browser. */
async function bookletPage({ browser, out, address }: OpenGuide): Promise<Page> {
  const own = await openPage(browser, `${address}paper/booklet/`);
  const base = new URL(address).pathname;
  const read = (href: string) => readFileSync(join(out, decodeURIComponent(href.slice(base.length))), 'utf8');
  const { hrefs, styles, foot } = await own.evaluate(bookletParts);
  const pages = hrefs.map((href) => ({ href, html: read(`${href}index.html`) }));
  const html = await own.evaluate(assembleBooklet, [pages, read(styles), foot] as const);
  await own.route(own.url(), (route) => route.fulfill({ contentType: 'text/html; charset=utf-8', body: html }));
  await own.goto(own.url(), { timeout: 0 });
  return own;
}

/** Runs in the browser on the booklet's own page: the pages it holds in their order, the styles of paper, and the foot of each page. */
function bookletParts() {
  const lists = [...document.querySelectorAll<HTMLElement>('[data-parts]')];
  return {
    hrefs: lists.flatMap(({ dataset }) => dataset.parts!.split(' ')),
    styles: document.querySelector('link[media="print"]')!.getAttribute('href')!,
    foot: document.querySelector<HTMLElement>('[data-foot]')!.dataset.foot!,
  };
}

/**
 * Prints until every number in contents and index is that of the page it speaks of: the browser knows no page numbers of
 * links, so they are read out of the printing before. Numbers have their room from the beginning, so the second is right.
 */
async function numberedPdf(page: Page, progress: (step: string) => void): Promise<Buffer> {
  const { parts, sheets } = await page.evaluate(namesOfParts);
  let expected = '';
  for (let printing = 1; printing <= PRINTINGS; printing++) {
    progress(`printing the booklet, time ${printing}`);
    const pdf = await pagePdf(page, printing === 1);
    const found = pagesOfNames(pdf);
    const pages = parts.map((name) => [name, found.get(name) ?? 0] as const);
    const [unknown] = pages.find(([, number]) => number === 0) ?? [];
    if (unknown !== undefined) throw new Error(`The browser wrote a PDF that does not tell the page of ${unknown}.`);
    if (JSON.stringify(pages) === expected) return pdf;
    const { numbers, emptyBefore } = onLeaves(pages, new Set(sheets));
    expected = JSON.stringify(numbers);
    await page.evaluate(numberPages, [numbers, emptyBefore] as const);
  }
  throw new Error(`The pages of the booklet were not the same after ${countWords(PRINTINGS, 'printing')}.`);
}

/** Runs in the browser: the names of all that has a page number, in their order, and which of them are sheets. */
function namesOfParts() {
  const parts = [...document.querySelectorAll('.booklet-part, #booklet-index')];
  const sheets = parts.filter((part) => part.querySelector('.booklet-sheet') !== null);
  return { parts: parts.map(({ id }) => id), sheets: sheets.map(({ id }) => id) };
}

/** Runs in the browser: writes the page numbers, and puts an empty page before the sheets that ask for one. */
function numberPages([pages, emptyBefore]: readonly [OnLeaves['numbers'], readonly string[]]): void {
  const numbers = new Map(pages);
  for (const place of document.querySelectorAll<HTMLElement>('[data-page]')) {
    place.textContent = `${numbers.get(place.dataset.page!) ?? ''}`;
  }
  for (const name of emptyBefore) {
    const empty = document.createElement('div');
    empty.className = 'empty-page';
    document.getElementById(name)!.before(empty);
  }
}

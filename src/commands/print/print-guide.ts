import { once } from 'node:events';
import { existsSync, mkdirSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join, resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { typed } from '../../content/typed-command.ts';
import { type CommandIo, EXIT } from '../command-io.ts';
import { baseOfGuide } from '../guide-folder/guide-base.ts';
import { recoverGuide } from '../guide-folder/replace-guide.ts';
import { guideServer } from '../guide-folder/serve-guide.ts';
import { openPrintingBrowser } from './open-browser.ts';

export interface PaperOptions {
  /** The folder of the built guide. */
  readonly out?: string | undefined;
  /** The folder that the PDFs go into. */
  readonly to?: string | undefined;
  readonly browser?: string | undefined;
}

/** What every command that prints takes. */
export const PRINT_ARGUMENTS = {
  venue: { type: 'string' },
  out: { type: 'string' },
  to: { type: 'string' },
  browser: { type: 'string' },
} as const;

/** A built guide that is served on this machine, with a browser that prints. */
export interface OpenGuide {
  readonly browser: Browser;
  /** The built guide's folder. */
  readonly out: string;
  /** Where it is served, with a slash at its end. */
  readonly address: string;
  /** The folder that the PDFs go into; it is there. */
  readonly folder: string;
}

/**
 * Prints out of the built guide: finds it and a browser, or says in words what is missing, and tells at the end that paper ages.
 * @param paper the folder of the guide that what is printed comes from: `paper/cards`
 * @param check called before anything is opened, with that folder on the disk
 * @throws UsageError as `check` does
 */
export async function printGuide(
  paper: string,
  options: PaperOptions,
  io: CommandIo,
  check: (pages: string) => void,
  print: (guide: OpenGuide) => Promise<void>,
): Promise<number> {
  const out = resolve(options.out ?? 'dist');
  recoverGuide(out);
  const pages = join(out, paper);
  if (!existsSync(pages)) {
    const what = paper.replace(/^.*\//, '');
    io.printError(`There is no guide with ${what} in ${options.out ?? 'dist'} yet. Build it first: ${typed('build')}`);
    return EXIT.faults;
  }
  check(pages);
  const browser = await openPrintingBrowser(options.browser ?? io.environment.CHROMIUM);
  if (typeof browser === 'string') {
    io.printError(browser);
    return EXIT.faults;
  }
  const base = baseOfGuide(out);
  const server = guideServer(out, base).listen(0, '127.0.0.1');
  try {
    await once(server, 'listening');
    const folder = resolve(options.to ?? '.');
    mkdirSync(folder, { recursive: true });
    const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}${base}`;
    await print({ browser, out, address, folder });
  } finally {
    await browser.close();
    server.close();
  }
  io.print(
    `What is printed says what the guide said when it was built: if a line, limit or closing has changed since, build it and print anew.`,
  );
  return EXIT.clean;
}

/** Opens a page as it is built, without script. */
export async function openPage(browser: Browser, address: string): Promise<Page> {
  const context = await browser.newContext({ serviceWorkers: 'block', javaScriptEnabled: false });
  const page = await context.newPage();
  // A busy machine is waited for.
  await page.goto(address, { timeout: 0 });
  return page;
}

/**
 * A page as PDF: tagged for screen readers, its headings as an outline, in the size its own style asks for.
 * @param isDraft without either, which is sooner done: for who asks nothing but where things lie
 */
export async function pagePdf(page: Page, isDraft = false): Promise<Buffer> {
  await page.evaluate(leadToPublished);
  return page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: !isDraft, outline: !isDraft });
}

/** Runs in the browser: on paper a link leads to the published guide, or nowhere where no address is stated; never to this machine. */
function leadToPublished(): void {
  const published = document.querySelector('link[rel="canonical"]')?.getAttribute('href');
  for (const link of document.querySelectorAll('a[href]')) {
    const href = link.getAttribute('href') ?? '';
    const to = new URL(href, document.baseURI);
    if (href.startsWith('#') || to.origin !== location.origin) continue;
    if (published) link.setAttribute('href', new URL(to.pathname + to.search + to.hash, published).href);
    else link.removeAttribute('href');
  }
}

import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join, resolve } from 'node:path';
import type { Browser } from 'playwright-core';
import { type CommandIo, EXIT } from '../command-io.ts';
import { baseOfGuide } from '../guide-folder/guide-base.ts';
import { recoverGuide } from '../guide-folder/replace-guide.ts';
import { guideServer } from '../guide-folder/serve-guide.ts';
import { typed } from '../package-folder.ts';
import { UsageError } from '../read-arguments.ts';
import { openPrintingBrowser } from './open-browser.ts';

interface PaperOptions {
  /** The folder of the built guide. */
  readonly out?: string | undefined;
  /** The folder that the PDFs go into. */
  readonly to?: string | undefined;
  readonly browser?: string | undefined;
}

/**
 * Prints a kind of paper of the built guide into a PDF a water, as it would come out of a browser by hand.
 * @param waters the waters that are asked for; all where none is
 */
export async function printPaper(
  kind: 'cards' | 'plates',
  waters: readonly string[],
  options: PaperOptions,
  io: CommandIo,
): Promise<number> {
  const out = resolve(options.out ?? 'dist');
  recoverGuide(out);
  const pages = join(out, 'paper', kind);
  if (!existsSync(pages)) {
    io.printError(`There is no guide with ${kind} in ${options.out ?? 'dist'} yet. Build it first: ${typed('build')}`);
    return EXIT.faults;
  }
  const known = readdirSync(pages).filter((name) => existsSync(join(pages, name, 'index.html')));
  const strange = waters.filter((water) => !known.includes(water));
  if (strange.length > 0) {
    throw new UsageError(`Unexpected water "${strange.join('", "')}", expected one of ${known.sort().join(', ')}.`);
  }
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
    for (const water of waters.length === 0 ? known.sort() : new Set(waters)) {
      io.showProgress?.(`${kind} of ${water}`);
      const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}${base}paper/${kind}/${water}/`;
      const file = join(folder, `${kind}-${water}.pdf`);
      writeFileSync(file, await pagePdf(browser, address));
      io.print(file);
    }
  } finally {
    await browser.close();
    server.close();
  }
  io.print(
    `They say what the guide said when it was built: if a line, limit or closing has changed since, build it and print them anew.`,
  );
  return EXIT.clean;
}

/** A page as PDF: tagged for screen readers, its headings as an outline, in the size its own style asks for. */
async function pagePdf(browser: Browser, address: string): Promise<Buffer> {
  const context = await browser.newContext({ serviceWorkers: 'block', javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(address);
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true, outline: true });
  await context.close();
  return pdf;
}

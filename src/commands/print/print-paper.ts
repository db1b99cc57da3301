import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CommandIo } from '../command-io.ts';
import { readArguments, UsageError } from '../read-arguments.ts';
import { openPage, type PaperOptions, PRINT_ARGUMENTS, pagePdf, printGuide } from './print-guide.ts';

type PaperKind = 'cards' | 'plates';

/** The command that prints a kind of paper: `cards [WATER…] [--to FOLDER] [--browser PATH] [--out FOLDER]`. */
export function printsPaper(kind: PaperKind): (args: readonly string[], io: CommandIo) => Promise<number> {
  return async (args, io) => {
    const { values, positionals } = readArguments(args, PRINT_ARGUMENTS, true);
    return printPaper(kind, positionals, values, io);
  };
}

/**
 * Prints a kind of paper of the built guide into a PDF a water, as it would come out of a browser by hand.
 * @param waters the waters that are asked for; all where none is
 */
async function printPaper(
  kind: PaperKind,
  waters: readonly string[],
  options: PaperOptions,
  io: CommandIo,
): Promise<number> {
  let known: readonly string[] = [];
  const check = (pages: string) => {
    known = readdirSync(pages)
      .filter((name) => existsSync(join(pages, name, 'index.html')))
      .sort();
    const strange = waters.filter((water) => !known.includes(water));
    if (strange.length > 0) {
      throw new UsageError(`Unexpected water "${strange.join('", "')}", expected one of ${known.join(', ')}.`);
    }
  };
  return printGuide(`paper/${kind}`, options, io, check, async ({ browser, address, folder }) => {
    for (const water of waters.length === 0 ? known : new Set(waters)) {
      io.showProgress?.(`${kind} of ${water}`);
      const page = await openPage(browser, `${address}paper/${kind}/${water}/`);
      const file = join(folder, `${kind}-${water}.pdf`);
      writeFileSync(file, await pagePdf(page));
      await page.context().close();
      io.print(file);
    }
  });
}

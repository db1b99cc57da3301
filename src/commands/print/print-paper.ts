import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CommandIo } from '../command-io.ts';
import { UsageError } from '../read-arguments.ts';
import { openPage, type PaperOptions, pagePdf, printGuide } from './print-guide.ts';

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

import type { CommandIo } from './command-io.ts';
import { printPaper } from './print/print-paper.ts';
import { readArguments } from './read-arguments.ts';

/** `cards [WATER…] [--to FOLDER] [--browser PATH] [--out FOLDER]`: peg cards of A6, two to a side of A5, a PDF a water, out of the built guide. */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = readArguments(
    args,
    {
      venue: { type: 'string' },
      out: { type: 'string' },
      to: { type: 'string' },
      browser: { type: 'string' },
    },
    true,
  );
  return printPaper('cards', positionals, values, io);
}

import type { CommandIo } from './command-io.ts';
import { printPaper } from './print/print-paper.ts';
import { readArguments } from './read-arguments.ts';

/** `plates [WATER…] [--to FOLDER] [--browser PATH] [--out FOLDER]`: peg plates of A5 for the posts, a PDF a water, out of the built guide. */
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
  return printPaper('plates', positionals, values, io);
}

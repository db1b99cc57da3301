import type { CommandIo } from './command-io.ts';
import { printBooklet } from './print/print-booklet.ts';
import { PRINT_ARGUMENTS } from './print/print-guide.ts';
import { readArguments } from './read-arguments.ts';

/** `booklet [--to FOLDER] [--browser PATH] [--out FOLDER]`: the venue as one tagged PDF with contents and index, out of the built guide. */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values } = readArguments(args, PRINT_ARGUMENTS);
  return printBooklet(values, io);
}

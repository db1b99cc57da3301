import { relative } from 'node:path';
import type { Fault, LeftOut } from '../content/fault.ts';
import { formatFaults, formatLeftOut } from '../content/format-fault.ts';
import { quoted, typed } from '../content/typed-command.ts';
import type { CommandIo } from './command-io.ts';

/** Prints every fault of a venue folder, and what was left out of it, to standard error. Prints nothing where there is none. */
export function printFaults(
  folder: string,
  faults: readonly Fault[],
  leftOut: readonly LeftOut[],
  io: CommandIo,
): void {
  const here = shownFolder(folder);
  const named = faults.map((fault) => ({ ...fault, file: inFolder(here, fault.file) }));
  for (const line of formatFaults(named)) io.printError(line);
  const left = leftOut.map((entry) => ({ ...entry, file: inFolder(here, entry.file) }));
  for (const line of formatLeftOut(left)) io.printError(line);
}

/** How a person types a command for this venue folder, from where they stand. */
export function typedFor(words: string, folder: string): string {
  const shown = shownFolder(folder);
  return typed(shown === 'content' ? words : `${words} --venue ${quoted(shown)}`);
}

/** A folder as a person below the working directory would type it. */
export function shownFolder(folder: string): string {
  const here = relative(process.cwd(), folder);
  return here === '' ? '.' : here.startsWith('..') ? folder : here;
}

function inFolder(folder: string, file: string): string {
  return file === '' ? folder : `${folder}/${file}`;
}

import { type CommandIo, EXIT } from '../command-io.ts';

export const NOTHING_CHANGED = 'Nothing was changed.';

/** Asks before anything is written. The exit code where it is not to be. */
export async function askToWrite(isAgreed: boolean, io: CommandIo): Promise<number | true> {
  if (isAgreed) return true;
  if (io.ask === undefined) return refuse(['Add --yes to write this without being asked.'], io);
  if ((await io.ask('Write this? [y/n] ')).trim().toLowerCase().startsWith('y')) return true;
  io.printError(NOTHING_CHANGED);
  return EXIT.clean;
}

/** Says why nothing was done. @param ending said last: empty where nobody knows whether anything was changed */
export function refuse(lines: readonly string[], io: CommandIo, ending: string = NOTHING_CHANGED): number {
  for (const line of lines) io.printError(line);
  if (ending !== '') io.printError(ending);
  return EXIT.faults;
}

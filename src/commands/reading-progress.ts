import type { CommandIo } from './command-io.ts';
import { shownFolder } from './print-faults.ts';

/** A folder is mostly read before anybody wonders. */
const QUIET_MS = 1000;
/** A line that is written over is read no faster. */
const SHOWN_EVERY_MS = 100;
/** From how many files and checks on a line is written where no terminal is: counted, so that a log never tells how busy the machine was. */
const LARGE = 500;

/**
 * Tells of the reading and checking of a folder: on a terminal, once it has taken a second, in one line that is written over;
 * elsewhere in one plain line, of a large folder alone.
 * @returns to be told of each file that was read and each check that was made
 */
export function readingProgress(folder: string, io: CommandIo): (what: string) => void {
  const step = `Reading and checking ${shownFolder(folder)}`;
  const begun = performance.now();
  let count = 0;
  let shown = begun + QUIET_MS - SHOWN_EVERY_MS;
  return (what) => {
    count += 1;
    if (io.showProgress === undefined) {
      if (count === LARGE) io.printError(`${step}.`);
      return;
    }
    const now = performance.now();
    if (now - shown < SHOWN_EVERY_MS) return;
    shown = now;
    io.showProgress(`${step}: ${what} (${count} done, ${Math.round((now - begun) / 1000)} s)`);
  };
}

import type { CommandIo } from './command-io.ts';

/** Without a terminal, no more often than this. */
const SECONDS_BETWEEN_LINES = 10;

/**
 * Tells of a step that takes longer than a second: on a terminal in one line that is written over, what it is at and how far;
 * elsewhere in one plain line, and in another for what is begun once the last is ten seconds old. Says nothing where there is nothing to do.
 * @param step what is done, such as "Working out worth from 812 sessions"
 */
export function progressLine(step: string, io: CommandIo): { readonly progress: (what: string) => void } {
  const begun = performance.now();
  let count = 0;
  let saidAt = 0;
  return {
    progress: (what) => {
      count += 1;
      const seconds = Math.round((performance.now() - begun) / 1000);
      const howFar = `${step}: ${what} (${count} done, ${seconds} s)`;
      if (io.showProgress !== undefined) io.showProgress(howFar);
      else if (count === 1) io.printError(`${step}.`);
      else if (seconds - saidAt >= SECONDS_BETWEEN_LINES) {
        io.printError(howFar);
        saidAt = seconds;
      }
    },
  };
}

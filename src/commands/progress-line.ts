import type { CommandIo } from './command-io.ts';

/**
 * Tells of a step that takes longer than a second: on a terminal in one line that is written over, what it is at and how far;
 * elsewhere in one plain line. Says nothing where there is nothing to do.
 * @param step what is done, such as "Working out worth from 812 sessions"
 */
export function progressLine(step: string, io: CommandIo): { readonly progress: (what: string) => void } {
  const begun = performance.now();
  let count = 0;
  return {
    progress: (what) => {
      count += 1;
      const seconds = Math.round((performance.now() - begun) / 1000);
      if (io.showProgress !== undefined) io.showProgress(`${step}: ${what} (${count} done, ${seconds} s)`);
      else if (count === 1) io.printError(`${step}.`);
    },
  };
}

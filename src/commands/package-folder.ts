import { fileURLToPath } from 'node:url';

/** The program's own folder, whether it runs as it was written or compiled: both lie as deep below it. */
export const PACKAGE_FOLDER = fileURLToPath(new URL('../..', import.meta.url));

/** Whether this is the compiled program of a package, in somebody else's project. */
const IS_INSTALLED = import.meta.url.endsWith('.js');

/** How a person types a command of this program, where they are: `typed('build --out guide')`. */
export function typed(words: string): string {
  return IS_INSTALLED ? `npx peg-atlas ${words}` : `npm run -s venue -- ${words}`;
}

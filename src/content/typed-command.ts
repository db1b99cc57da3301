/** Whether this is the compiled program of a package, in somebody else's project. */
const IS_INSTALLED = import.meta.url.endsWith('.js');

/** How a person types a command of this program, where they are: `typed('build --out guide')`. */
export function typed(words: string): string {
  return IS_INSTALLED ? `npx peg-atlas ${words}` : `npm run -s venue -- ${words}`;
}

/** A word of a command as every shell takes it, those of Windows too: in double quotes where it holds a blank or a sign. */
export function quoted(word: string): string {
  return /^[\p{L}\p{N}_.,:/\\+-]+$/u.test(word) ? word : `"${word}"`;
}

import type { AnglerName } from './angler-name.ts';

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';
/** Of a shorter surname a letter is too much of it: Fox is no slip for Cox. */
const LEAST_LETTERS = 4;

/**
 * The names that are this one but for a slip of the pen in the surname: one letter left out, added, changed, or swapped with
 * the next (the edits of Damerau 1964). The register knows names by digest alone, so what is near must be written out to be found.
 */
export function nearNames({ full, surname }: Pick<AnglerName, 'full' | 'surname'>): readonly string[] {
  const first = full.slice(0, full.length - surname.length);
  if (surname.length < LEAST_LETTERS || first === '') return [];
  const near = new Set<string>();
  for (let at = 0; at <= surname.length; at++) {
    const [before, after] = [surname.slice(0, at), surname.slice(at)];
    near.add(before + after.slice(1));
    if (after.length > 1) near.add(before + after[1] + after[0] + after.slice(2));
    for (const letter of LETTERS) {
      near.add(before + letter + after);
      near.add(before + letter + after.slice(1));
    }
  }
  near.delete(surname);
  return [...near].map((other) => first + other);
}

import { decimalsOf, numberPlus, type TextChange, tokensOf, unitsOf } from '../../client/offline/file-changes.ts';

/** How far ahead two texts that went apart are looked through for where they meet again. */
const LOOK_AHEAD = 240;
/** So many tokens alike, one behind the other, are no accident: the cells of a table share four between two numbers. */
const ALIKE = 5;
/** Longer ones are no longer exact as numbers. */
const MAX_FIGURES = 10;

/**
 * How one text becomes another, for two texts that differ here and there, as two editions of one page do. Whatever they
 * are, the change makes the second of the first; where they have little in common it is merely longer than it could be.
 */
export function textChange(before: string, after: string): TextChange {
  const a = tokensOf(before);
  const b = tokensOf(after);
  const change: (number | readonly [number, string])[] = [];
  let kept = 0;
  let i = 0;
  let j = 0;
  while (i < a.length && j < b.length) {
    if (a[i] === b[j]) {
      kept++;
      i++;
      j++;
      continue;
    }
    const units = a[i + 1] === b[j + 1] ? unitsBetween(a[i]!, b[j]!) : null;
    const [leftOut, put] = units === null ? meeting(a, i, b, j) : [1, 1];
    change.push(kept, units ?? [leftOut, b.slice(j, j + put).join('')]);
    kept = 0;
    i += leftOut;
    j += put;
  }
  if (i < a.length || j < b.length) change.push(kept, [a.length - i, b.slice(j).join('')]);
  return change;
}

/** What has to be added to one number to make the other, written alike; null where they are none, or written otherwise. */
function unitsBetween(from: string, to: string): number | null {
  const isNumber = [from, to].every((text) => /^\d+(?:\.\d+)?$/.test(text) && text.length < MAX_FIGURES);
  if (!isNumber || decimalsOf(from) !== decimalsOf(to)) return null;
  const units = unitsOf(to) - unitsOf(from);
  // Nothing to add: written otherwise, as 07 and 7 are.
  return units !== 0 && numberPlus(from, units) === to ? units : null;
}

/** The nearest places, counted from i and j, from which on the two run alike again. */
function meeting(a: readonly string[], i: number, b: readonly string[], j: number): readonly [number, number] {
  for (let sum = 1; sum <= LOOK_AHEAD; sum++) {
    for (let ahead = 0; ahead <= sum; ahead++) {
      let alike = 0;
      const other = sum - ahead;
      while (alike < ALIKE && a[i + ahead + alike] !== undefined && a[i + ahead + alike] === b[j + other + alike])
        alike++;
      const isEnd = i + ahead + alike === a.length && j + other + alike === b.length;
      if (alike === ALIKE || (alike > 0 && isEnd)) return [ahead, other];
    }
  }
  // Nothing alike near by: one token for one, and on.
  return [1, 1];
}

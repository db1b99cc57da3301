import type { TextChange } from '../../client/offline/file-changes.ts';

/** Words, numbers and tags, each with what parts it from the next. */
const TOKENS = /[^\s<>",;]*[\s<>",;]?/g;
/** How far ahead two texts that went apart are looked through for where they meet again. */
const LOOK_AHEAD = 120;
/** So many tokens alike, one behind the other, are no accident. */
const ALIKE = 3;

/**
 * How one text becomes another, for two texts that differ here and there, as two editions of one page do. Whatever they
 * are, the change makes the second of the first; where they have little in common it is merely longer than it could be.
 */
export function textChange(before: string, after: string): TextChange {
  const a = before.match(TOKENS) ?? [];
  const b = after.match(TOKENS) ?? [];
  const change: (number | string)[] = [];
  let kept = 0;
  let i = 0;
  let j = 0;
  while (i < a.length && j < b.length) {
    if (a[i] === b[j]) {
      kept += a[i]!.length;
      i++;
      j++;
      continue;
    }
    const [di, dj] = meeting(a, i, b, j);
    kept = pushed(change, kept, a.slice(i, i + di).join(''), b.slice(j, j + dj).join(''));
    i += di;
    j += dj;
  }
  const restA = a.slice(i).join('');
  const restB = b.slice(j).join('');
  if (restA !== '' || restB !== '') pushed(change, kept, restA, restB);
  return change;
}

/** Adds a step; what both texts begin with is kept. Gives back how much of the next step is kept already. */
function pushed(change: (number | string)[], kept: number, from: string, to: string): number {
  let head = 0;
  while (head < from.length && head < to.length && from[head] === to[head]) head++;
  let tail = 0;
  while (tail < from.length - head && tail < to.length - head && from.at(-1 - tail) === to.at(-1 - tail)) tail++;
  change.push(kept + head, from.length - head - tail, to.slice(head, to.length - tail));
  return tail;
}

/** The nearest places, counted from i and j, from which on the two run alike again. */
function meeting(a: readonly string[], i: number, b: readonly string[], j: number): readonly [number, number] {
  for (let sum = 1; sum <= LOOK_AHEAD; sum++) {
    for (let di = 0; di <= sum; di++) {
      const dj = sum - di;
      let alike = 0;
      while (alike < ALIKE && a[i + di + alike] !== undefined && a[i + di + alike] === b[j + dj + alike]) alike++;
      const isEnd = i + di + alike === a.length && j + dj + alike === b.length;
      if (alike === ALIKE || (alike > 0 && isEnd)) return [di, dj];
    }
  }
  // Nothing alike near by: one token for one, and on.
  return [1, 1];
}

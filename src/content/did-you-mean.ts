/**
 * The candidate a slip of the pen most likely meant, or null where none is near: at most a third of its letters changed,
 * added, left out or swapped with the next (the restricted edit distance of Damerau 1964), capitals not counted.
 */
export function nearestWord(written: string, candidates: Iterable<string>): string | null {
  const word = written.toLowerCase();
  let nearest: string | null = null;
  // Something of the word must be left: 7 is no slip for 1.
  let least = Math.min(3, Math.max(1, Math.floor(word.length / 3)), word.length - 1) + 1;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - word.length) >= least) continue;
    const distance = editDistance(word, candidate.toLowerCase());
    if (distance < least) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}

/** "Did you mean x?", or the other advice where nothing is near. */
export function didYouMean(written: string, candidates: Iterable<string>, otherwise: string): string {
  const nearest = nearestWord(written, candidates);
  return nearest === null ? otherwise : `Did you mean ${nearest}?`;
}

/** Words for a person: all of them where they are few, else the first ones and how many more. */
export function listed(words: readonly string[], most = 12): string {
  if (words.length <= most) return words.join(', ');
  return `${words.slice(0, most).join(', ')} and ${words.length - most} more`;
}

function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      row[j] = Math.min(row[j - 1]! + 1, last[j]! + 1, last[j - 1]! + change);
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (isSwap) row[j] = Math.min(row[j]!, beforeLast[j - 2]! + 1);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}

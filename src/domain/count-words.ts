/** A count with its noun, which takes an s from two on and at nought: `1 peg`, `3,512 sessions`, `0 steps`. */
export function countWords(count: number, noun: string): string {
  return `${count.toLocaleString('en-GB')} ${noun}${count === 1 ? '' : 's'}`;
}

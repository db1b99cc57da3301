/** A count with its noun, which from two on and at nought takes an s, or its own plural where it has one: `1 peg`, `0 steps`, `2 matches`. */
export function countWords(count: number, noun: string, plural = `${noun}s`): string {
  return `${count.toLocaleString('en-GB')} ${count === 1 ? noun : plural}`;
}

import type { TextPlace } from './text-place.ts';

/** Gives the place of any offset of a text; the line breaks are looked for once, so that a thousand places cost no more than one. */
export function lineIndex(text: string): (offset: number) => TextPlace {
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return (offset) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - starts[low]! + 1 };
  };
}

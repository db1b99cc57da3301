/** Where something stands in a text file, both counted from 1. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** The first character of a file. */
export const FILE_START: TextPlace = { line: 1, column: 1 };

const MOST_CHARACTERS_SHOWN = 60;

/** The line and column of an offset. */
export function placeAtOffset(text: string, offset: number): TextPlace {
  const before = text.slice(0, offset);
  const lineStart = before.lastIndexOf('\n') + 1;
  return { line: before.split('\n').length, column: offset - lineStart + 1 };
}

/** Text as a fault shows what was found: in quotes, on one line, cut where it is long; `nothing` where there is none. */
export function shown(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not reach a terminal
  const oneLine = text.trim().replace(/[\s\u0000-\u001f\u007f-\u009f]+/g, ' ');
  if (oneLine === '') return 'nothing';
  return oneLine.length > MOST_CHARACTERS_SHOWN ? `"${oneLine.slice(0, MOST_CHARACTERS_SHOWN)}…"` : `"${oneLine}"`;
}

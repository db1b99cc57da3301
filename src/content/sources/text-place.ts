import { visibleLine } from '../../domain/hidden-characters.ts';

/** Where something stands in a text file, both counted from 1. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** The first character of a file. */
export const FILE_START: TextPlace = { line: 1, column: 1 };

const MAX_CHARACTERS_SHOWN = 60;
const MAX_CHARACTERS_LOOKED_AT = 400;

/** The line and column of an offset. */
export function placeAtOffset(text: string, offset: number): TextPlace {
  let line = 1;
  let lineStart = 0;
  for (let at = text.indexOf('\n'); at !== -1 && at < offset; at = text.indexOf('\n', at + 1)) {
    line++;
    lineStart = at + 1;
  }
  return { line, column: offset - lineStart + 1 };
}

/** Text as a fault shows what was found: in quotes, on one line, cut where it is long; `nothing` where there is none. */
export function shown(text: string): string {
  // Cut first: a value may be a map of twenty megabytes.
  const start = text.trimStart().slice(0, MAX_CHARACTERS_LOOKED_AT);
  const oneLine = visibleLine(start.trim().replace(/[ \t\n]+/g, ' '));
  if (oneLine === '') return 'nothing';
  const characters = [...oneLine];
  return characters.length > MAX_CHARACTERS_SHOWN
    ? `"${characters.slice(0, MAX_CHARACTERS_SHOWN).join('')}…"`
    : `"${oneLine}"`;
}

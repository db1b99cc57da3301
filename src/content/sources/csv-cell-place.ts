import type { TextPlace } from './text-place.ts';

/**
 * Where a cell of a CSV record begins: commas and line breaks inside quotation marks divide nothing, so a record may go on
 * over several lines and its later cells stand in the last of them.
 * @param lines all lines of the file
 * @param line the line on which the record begins, from 1
 * @param cell the number of the cell, from 0
 */
export function cellPlace(lines: readonly string[], line: number, cell: number): TextPlace {
  let isQuoted = false;
  let passed = 0;
  for (let number = line; number <= lines.length; number++) {
    const text = lines[number - 1] ?? '';
    let column = number === line ? 1 : 0;
    for (let i = 0; i < text.length && passed < cell; i++) {
      if (text[i] === '"') isQuoted = !isQuoted;
      else if (text[i] === ',' && !isQuoted) {
        passed++;
        column = i + 2;
      }
    }
    if (passed === cell && column > 0) return { line: number, column };
    if (!isQuoted) break;
  }
  return { line, column: 1 };
}

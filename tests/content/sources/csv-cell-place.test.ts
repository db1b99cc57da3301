import fc from 'fast-check';
import { expect, test } from 'vitest';
import { csvLine } from '../../../src/content/intake/csv-line.ts';
import { cellPlace } from '../../../src/content/sources/csv-cell-place.ts';

test.each([
  ['a,b,c', 0, 1, 1],
  ['a,b,c', 2, 1, 5],
  [',,c', 2, 1, 3],
  ['"a, with a comma",b', 1, 1, 19],
  ['"a ""quoted"" word",b', 1, 1, 21],
  ['a,"two\nlines",c', 1, 1, 3],
  ['a,"two\nlines",c', 2, 2, 8],
])('finds where a cell of %j begins', (record, cell, line, column) => {
  expect(cellPlace(record.split('\n'), 1, cell)).toEqual({ line, column });
});

test('finds every cell of every record, however many lines a cell has', () => {
  const cell = fc.string({ unit: fc.constantFrom('a', '"', ',', '\n', ' '), maxLength: 8 });
  fc.assert(
    fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 4 }), (records) => {
      const lines = records.map(csvLine).join('\n').split('\n');
      let first = 1;
      for (const record of records) {
        record.forEach((_, index) => {
          const { line, column } = cellPlace(lines, first, index);
          // The text from the first line of the record to the cell, written as CSV again, is the cells before it.
          const before = [...lines.slice(first - 1, line - 1), lines[line - 1]!.slice(0, column - 1)].join('\n');
          expect(before).toBe(index === 0 ? '' : `${csvLine(record.slice(0, index))},`);
        });
        first += csvLine(record).split('\n').length;
      }
    }),
  );
});

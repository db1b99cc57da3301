import { expect, test } from 'vitest';
import { cellColumn } from '../../../src/content/sources/csv-cell-column.ts';

test.each([
  ['a,b,c', 0, 1],
  ['a,b,c', 2, 5],
  [',,c', 2, 3],
  ['"a, with a comma",b', 1, 19],
  ['"a ""quoted"" word",b', 1, 21],
])('finds where a cell of %s begins', (line, cell, column) => {
  expect(cellColumn(line, cell)).toBe(column);
});

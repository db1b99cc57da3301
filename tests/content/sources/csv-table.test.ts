import { expect, test } from 'vitest';
import { readCsvTable } from '../../../src/content/sources/csv-table.ts';

const COLUMNS = { required: ['peg'], optional: ['note'] };

test('tells the line of a row that follows cells of several lines, and of what is wrong in it', () => {
  const text = 'peg,note\n1,"one\ntwo\nthree"\n2,plain\n"3\n","a\nb"\n4\n5,last\n';
  const { table, faults } = readCsvTable('a.csv', text, COLUMNS);
  expect(table?.rows.map(({ line, cells }) => [line, cells.peg])).toEqual([
    [2, '1'],
    [5, '2'],
    [6, '3\n'],
    [10, '5'],
  ]);
  expect(table?.rows[0]?.cells.note).toBe('one\ntwo\nthree');
  expect(faults.map(({ line, rule }) => [line, rule])).toEqual([[9, 'row-cells']]);
  expect(table?.sourceOf(table.rows[1]!).placeOf(['note'])).toEqual({ line: 5, column: 3 });
});

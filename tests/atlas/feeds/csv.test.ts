import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvText } from '../../../src/atlas/feeds/csv.ts';

describe('a CSV file', () => {
  it('comes back from another reader as it was written', () => {
    const cell = fc.string().filter((text) => !/^[=+\-@\t\r]/.test(text) && !text.includes('\uFEFF'));
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1 }), (rows) => {
        const text = csvText(['a', 'b'], rows);
        expect(parse(text, { record_delimiter: '\r\n', relax_column_count: false }).slice(1)).toEqual(rows);
      }),
    );
  });

  it('is never a formula in a spreadsheet', () => {
    expect(csvText(['note'], [['=HYPERLINK("x")']])).toBe('note\r\n"\'=HYPERLINK(""x"")"\r\n');
    expect(csvText(['n'], [[-3]])).toBe('n\r\n-3\r\n');
  });
});

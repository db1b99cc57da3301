import { describe, expect, test } from 'vitest';
import * as z from 'zod';
import { text } from '../../../src/content/schemas/fields.ts';
import { length } from '../../../src/content/schemas/measures.ts';
import { named, recordSchema } from '../../../src/content/schemas/record-schema.ts';
import { rowColumns } from '../../../src/content/schemas/row-columns.ts';

const schema = recordSchema({
  kind: text('what it is'),
  'rail-height': named('railHeightMetres', length({ length: 'm', weight: 'kg' }, 'its rail', 3).exactOptional()),
});

describe('a record read by its table', () => {
  test('has the names of code, and lacks what was not written', () => {
    expect(schema.parse({ kind: 'timber', 'rail-height': '0.9 m' })).toEqual({ kind: 'timber', railHeightMetres: 0.9 });
    expect(Object.keys(schema.parse({ kind: 'timber' }))).toEqual(['kind']);
  });

  test('refuses a field the table lacks, and a name of code in place of the key', () => {
    expect(schema.safeParse({ kind: 'timber', colour: 'red' }).success).toBe(false);
    expect(schema.safeParse({ kind: 'timber', railHeightMetres: '0.9 m' }).success).toBe(false);
  });
});

describe('columns of a schema', () => {
  test('need not be there where the field may be left out', () => {
    expect(rowColumns(schema)).toEqual({ required: ['kind'], optional: ['rail-height'] });
    expect(rowColumns(schema.transform((row) => row.kind))).toEqual({ required: ['kind'], optional: ['rail-height'] });
  });

  test('are those of rows alone', () => {
    expect(() => rowColumns(z.string())).toThrow('the schema of a row');
  });
});

import * as z from 'zod';
import type { CsvColumns } from '../sources/csv-header.ts';

/** The columns of a kind of file, from the schema of its rows: those of fields that may be left out need not be there. */
export function rowColumns(schema: z.ZodType): CsvColumns {
  if (schema instanceof z.ZodPipe) return rowColumns(schema.in as z.ZodType);
  if (!(schema instanceof z.ZodObject)) throw new TypeError('rowColumns: expected the schema of a row');
  const required: string[] = [];
  const optional: string[] = [];
  for (const [column, field] of Object.entries(schema.shape)) {
    (field instanceof z.ZodExactOptional ? optional : required).push(column);
  }
  return { required, optional };
}
